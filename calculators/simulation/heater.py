"""The water heater: a stirred tank that remembers the hardness of the days before."""

from calculators.heater import share_left


def mixed(holds, inflow, drawn, tank):
    """Return the hardness a heater [gal] holds after a draw [gal] replaced by water of a hardness.

    holds, inflow: hardness in one unit. Hardness that left: inflow x drawn + tank x (holds -
    answer), so none is lost. Source: stirred-tank.

    >>> round(mixed(20.0, 0.0, 100.0, 50.0), 2)
    2.71
    """
    return inflow + (holds - inflow) * share_left(drawn, tank)
