"""The front in a bed whose beads take up hardness through a film of still water."""

import math

from molmass import Formula
from pint import UnitRegistry

UNITS = UnitRegistry()


def film_front(flow):
    """Return the front [grains/ft3] of a film around the beads at a flow [gpm].

    Carberry's relation for mass transfer in a fixed bed, with 0.6 mm beads, 38 percent voids, water
    of 15 °C, and 1.5 ft3 of resin of 2 eq/L in a tank of 10 in.
    """
    volume = 1.5 * UNITS.foot**3
    depth = (volume / (math.pi / 4 * (10 * UNITS.inch) ** 2)).to("m").m
    speed = (flow * UNITS.gallon / UNITS.minute).to("m**3/s").m * depth / volume.to("m**3").m
    bead, voids, viscosity, diffusion = 0.6e-3, 0.38, 1.1386e-6, 7.5e-10
    reynolds = speed * bead / viscosity / voids
    film = 1.15 * speed / voids * reynolds**-0.5 * (viscosity / diffusion) ** (-2 / 3)
    surface = 6 * (1 - voids) / bead
    held = (2 * Formula("CaCO3").mass / 2 * UNITS.gram / UNITS.liter).to("grain/foot**3").m
    return speed / (film * surface) / depth * held
