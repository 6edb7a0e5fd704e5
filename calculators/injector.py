"""The injector: a nozzle whose jet draws brine and thins it."""

import math

from calculators.quantities import snap

#: What a fitting injector gives for each volume of resin; common practice, no source.
USUAL_SUCTION, USUAL_MOTIVE = 0.16, 0.30  # gpm/ft3
USUAL_PRESSURE = 50.0  # psi, at which those flows hold
LEAST_PRESSURE = 15.0  # psi, up to which an injector does not draw; common practice, no source
#: Full brine: see the sources "salt-solubility" and "brine-density".
FULL_BRINE, WEIGHT_OF_BRINE = 26.4, 1.2  # percent by weight; times the weight of water


def motive_at(pressure, flow, flow_pressure):
    """Return the flow [gpm] through an injector's nozzle at a pressure [psi, 0 or more].

    flow: what it is at flow_pressure [psi, above 0]. An opening passes water with the square root
    of the pressure.

    >>> round(motive_at(25, 0.4, 100), 3)
    0.2
    """
    return flow * math.sqrt(pressure / flow_pressure)


def suction_at(pressure, flow, flow_pressure):
    """Return the brine [gpm] an injector draws at a pressure [psi]: none up to 15 psi.

    flow: what it draws at flow_pressure [psi, above 15]. Common practice, no source.

    >>> suction_at(15, 0.24, 50), round(suction_at(50, 0.24, 50), 2)
    (0.0, 0.24)
    """
    if snap(pressure) <= LEAST_PRESSURE:
        return 0.0
    return flow * math.sqrt((pressure - LEAST_PRESSURE) / (flow_pressure - LEAST_PRESSURE))


def strength_at_bed(suction, motive):
    """Return the strength [percent by weight] of full brine thinned by the injector's water.

    suction, motive: flows in one unit, motive above 0. A balance of salt over weight. Sources:
    salt-solubility, brine-density.

    >>> round(strength_at_bed(1, 2), 1)
    9.9
    """
    return FULL_BRINE * WEIGHT_OF_BRINE * suction / (WEIGHT_OF_BRINE * suction + motive)
