"""Pressure lost to friction in a pipe, and to height."""

import math

from calculators.quantities import convert
from calculators.water_properties import GRAVITY, density, viscosity

#: Roughness of smooth plastic and drawn tube.
SMOOTH = 0.0015  # mm


def height_pressure(temperature):
    """Return the pressure [psi/ft] under a column of water [°F] for each foot of height.

    >>> round(height_pressure(60), 3)
    0.433
    """
    return convert(density(temperature) * GRAVITY / 1000, "kPa/m", "psi/ft", "pressure gradient")


def hazen_williams(flow, bore, smoothness, temperature=60):
    """Return the friction [psi/ft] of a flow [gpm] in a bore [in] by the rule of the trade.

    smoothness: the coefficient C, 140 for smooth tube. Made for pipes of 2 in and more and for
    ordinary temperatures; in thin tube it is off by a fifth. Loss of height in feet, flow in cubic
    feet a second and bore in feet go with 4.727; the 10.67 often seen belongs to meters. Source:
    pipe-friction.

    >>> round(100 * hazen_williams(10, 0.785, 140), 1)
    11.1
    """
    cubic_feet = convert(flow, "gpm", "ft³/min", "flow") / 60
    height = 4.727 * (cubic_feet / smoothness) ** 1.852 / (bore / 12) ** 4.871
    return height * height_pressure(temperature)


def pipe_reynolds(flow, bore, temperature):
    """Return the Reynolds number of a flow [gpm] of water [°F] in a bore [in]."""
    speed = convert(flow, "gpm", "m³/h", "flow") / 3600 / (math.pi / 4 * (bore * 0.0254) ** 2)
    return speed * bore * 0.0254 * density(temperature) / (viscosity(temperature) / 1000)


def friction_factor(reynolds, roughness):
    """Return the Darcy friction factor for a Reynolds number and a roughness over the bore.

    One equation for smooth and whirling flow and what lies between. Source: pipe-friction-again.

    >>> round(friction_factor(1e5, 1e-4), 4)
    0.0185
    """
    whirling = (2.457 * math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * roughness))) ** 16
    between = (37530 / reynolds) ** 16
    return 8 * ((8 / reynolds) ** 12 + (whirling + between) ** -1.5) ** (1 / 12)


def darcy_weisbach(flow, bore, temperature):
    """Return the friction [psi/ft] of a flow [gpm] of water [°F] in a smooth bore [in].

    The physical law, which knows thick cold water and quiet flow. Source: pipe-friction-again.
    """
    reynolds = pipe_reynolds(flow, bore, temperature)
    meters = bore * 0.0254
    speed = reynolds * viscosity(temperature) / 1000 / (density(temperature) * meters)
    factor = friction_factor(reynolds, SMOOTH / (bore * 25.4))
    pascal = factor / meters * density(temperature) * speed**2 / 2
    return convert(pascal / 1000, "kPa/m", "psi/ft", "pressure gradient")
