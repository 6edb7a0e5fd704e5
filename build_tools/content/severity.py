"""How much a fault changes on the simulated home, as a number in the simulation's own unit."""

from __future__ import annotations

import math

from calculators.quantities import QuantityError, kind_of, parse
from calculators.simulation.changes import CHANGES


def severity(change: str, text: str) -> float:
    """Return what a file gives for a change as a number in that change's unit.

    A bare number is in that unit already. A quantity is turned into it; where the unit is no unit
    of the trade (a share, a factor, a switch), a share such as "40 %" becomes 0.4. Raises
    ValueError with a sentence when the text is neither.
    """
    unit = CHANGES[change].unit
    kind = kind_of(unit)
    try:
        number = float(text)
    except ValueError:
        number = parse(text, kind).to(unit).number if kind else parse(text, "share").number / 100
    if not math.isfinite(number):
        raise QuantityError(f"“{text}” is no number.")
    return number
