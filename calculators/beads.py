"""Beads of resin in water: how fast they sink, how far they lift, what they cost in pressure."""

import math

from calculators.quantities import convert, snap
from calculators.units import FLOW_PER_AREA
from calculators.water_properties import GRAVITY, density, viscosity

#: Wet gel resin in the sodium form; common practice, no source.
BEAD = 0.58  # mm, hydraulic diameter
BEAD_DENSITY = 1260.0  # kg/m3
SETTLED_VOIDS = 39.0  # percent

#: Speed [m/s] of water that flows at 1 gpm through each square foot.
GPM_PER_SQUARE_FOOT = FLOW_PER_AREA["gpm/ft²"][0] / 60000


def tank_area(diameter):
    """Return the area [ft2] of a round tank of a diameter [in]."""
    return math.pi / 4 * diameter**2 / 144


def bead_weight_number(bead, temperature):
    """Return the weight of a bead [mm] in water [°F] over what holds it back, squared viscosity.

    Without unit, known as the Archimedes number.
    """
    water, thickness = density(temperature), viscosity(temperature) / 1000
    return (bead / 1000) ** 3 * water * (BEAD_DENSITY - water) * GRAVITY / thickness**2


def settling_reynolds(weight_number):
    """Return the Reynolds number of a bead that sinks alone, from its weight number.

    Solves 18 Re (1 + 0.15 Re^0.687) = weight number by Newton's method, which comes down to the
    root from above. Valid for Re up to 800. Source: sphere-drag.

    >>> round(settling_reynolds(18 * 1.15), 9)
    1.0
    """
    reynolds = weight_number / 18
    while True:
        over = 18 * (reynolds + 0.15 * reynolds**1.687) - weight_number
        better = reynolds - over / (18 * (1 + 0.15 * 1.687 * reynolds**0.687))
        if snap(better) >= snap(reynolds):
            return better
        reynolds = better


def settling_flow(bead, temperature):
    """Return the rising flow [gpm/ft2] that just holds a single bead [mm] up in water [°F].

    Source: sphere-drag.

    >>> round(settling_flow(0.58, 50), 1)
    31.6
    """
    reynolds = settling_reynolds(bead_weight_number(bead, temperature))
    return reynolds * viscosity(temperature) / density(temperature) / bead / GPM_PER_SQUARE_FOOT


def crowding_index(reynolds):
    """Return the power by which beads in a crowd hinder each other, for Re from 1 to 500.

    Source: bed-expansion.
    """
    return 4.45 * reynolds**-0.1


def expansion(voids):
    """Return how far a bed lifts [percent of its settled depth] at its voids [percent, under 100].

    The beads stay as many: (1 − settled voids) of the settled depth is beads.

    >>> round(expansion(59.333333), 3)
    50.0
    """
    return max(0.0, 100 * ((100 - SETTLED_VOIDS) / (100 - voids) - 1))


def voids_of_expansion(percent):
    """Return the voids [percent] of a bed lifted by a percentage; the inverse of `expansion`."""
    return 100 - (100 - SETTLED_VOIDS) / (1 + percent / 100)


def balanced_voids(flow_per_area, bead, temperature):
    """Return the voids [percent] at which pressure by Ergun's equation carries the beads' weight.

    flow_per_area [gpm/ft2], bead [mm], temperature [°F]. The one real root of
    voids³ + p voids − q = 0, in closed form as p is above 0. Source: bed-pressure.
    """
    weight = bead_weight_number(bead, temperature)
    reynolds = (
        flow_per_area * GPM_PER_SQUARE_FOOT * bead * density(temperature) / viscosity(temperature)
    )
    p = 150 * reynolds / weight
    q = p + 1.75 * reynolds**2 / weight
    third = math.sqrt(p / 3)
    return 100 * 2 * third * math.sinh(math.asinh(q / (2 * third**3)) / 3)


def flow_for_expansion(percent, bead, temperature):
    """Return the flow [gpm/ft2] that lifts a bed of beads [mm] in water [°F] by a percentage.

    Source: bed-expansion.

    >>> round(flow_for_expansion(50, 0.58, 50), 1)
    4.9
    """
    index = crowding_index(settling_reynolds(bead_weight_number(bead, temperature)))
    return settling_flow(bead, temperature) * (voids_of_expansion(percent) / 100) ** index


def lifted_loss(depth, temperature):
    """Return the pressure [psi] that a lifted bed of a settled depth [in] costs in water [°F].

    The weight of the beads in water; no flow makes it more.

    >>> round(lifted_loss(12, 50), 3)
    0.069
    """
    beads = (1 - SETTLED_VOIDS / 100) * depth * 0.0254
    pascal = beads * (BEAD_DENSITY - density(temperature)) * GRAVITY
    return convert(pascal / 1000, "kPa", "psi", "pressure")


def viscous_loss(flow_per_area, bead, voids, temperature):
    """Return the part of the bed's loss [psi/ft] that thickness makes: in proportion to the flow.

    flow_per_area [gpm/ft2], bead [mm], voids [percent], temperature [°F]. The first term of the
    equation of Ergun. Source: bed-pressure.
    """
    speed, part = flow_per_area * GPM_PER_SQUARE_FOOT, voids / 100
    thickness = viscosity(temperature) / 1000
    pascal = 150 * thickness * (1 - part) ** 2 * speed / (part**3 * (bead / 1000) ** 2)
    return convert(pascal / 1000, "kPa/m", "psi/ft", "pressure gradient")


def whirling_loss(flow_per_area, bead, voids, temperature):
    """Return the part of the bed's loss [psi/ft] that grows with the square of the flow.

    As `viscous_loss`; the second term of the equation of Ergun.
    """
    speed, part = flow_per_area * GPM_PER_SQUARE_FOOT, voids / 100
    pascal = 1.75 * density(temperature) * (1 - part) * speed**2 / (part**3 * bead / 1000)
    return convert(pascal / 1000, "kPa/m", "psi/ft", "pressure gradient")


def carman(flow_per_area, bead, voids, temperature):
    """Return the bed's loss [psi/ft] by the equation of Carman, about a fifth above Ergun's here.

    As `viscous_loss`. Source: bed-pressure-again.
    """
    speed, part = flow_per_area * GPM_PER_SQUARE_FOOT, voids / 100
    water, meters = density(temperature), bead / 1000
    reynolds = water * speed * meters / (viscosity(temperature) / 1000 * (1 - part))
    factor = 180 / reynolds + 2.87 / reynolds**0.1
    pascal = factor * water * speed**2 * (1 - part) / (part**3 * meters)
    return convert(pascal / 1000, "kPa/m", "psi/ft", "pressure gradient")
