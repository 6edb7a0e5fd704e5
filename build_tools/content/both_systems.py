"""Quantities of the sources for readers of the other unit system than they are written in.

A handbook is written in the units of its shop. For readers of the other system calculators work
with the very same quantities: what they are given is told with its unit, and so are their
defaults, so that no answer depends on who reads it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from build_tools.content.fields import last_place
from calculators.declare import Calculator, Input
from calculators.quantities import (
    KINDS,
    Quantity,
    QuantityError,
    display_unit,
    parse,
    plain,
    read_number,
    show,
    significant,
    snap,
)
from calculators.units import METRIC

#: With so many digits a converted quantity is shown.
DIGITS = 3
#: A fact is shown with fewer digits, where that changes it by no more than this share.
_NEAR = 0.02
#: In which of several trade units readers see a metric one, where the first is not the usual.
_USUAL = {"mL": "fl oz", "mL/min": "fl oz/min"}


def compares_units(calculator: Calculator) -> bool:
    """Tell whether units themselves are what a calculator is about, so that both systems stand."""
    return any(one.fixed_unit and one.unit in METRIC for one in calculator.outputs)


def _trade_units() -> dict[tuple[str, str], str]:
    """Return the trade's unit for each metric one, by kind and metric unit."""
    found: dict[tuple[str, str], str] = {}
    for kind in KINDS.values():
        for unit in kind.units:
            metric = METRIC.get(unit)
            if metric in kind.units and _USUAL.get(metric, unit) == unit:
                found.setdefault((kind.name, metric), unit)
    return found


_TRADE = _trade_units()


def other_unit(unit: str, kind: str, units: str) -> str:
    """Return the unit in which readers of `units` see a quantity of the other system.

    A unit that is in neither, such as a German degree, stays.
    """
    if units == "metric":
        return display_unit(unit, units)
    return _TRADE.get((kind, unit), unit)


def in_units(quantity: Quantity, units: str) -> Quantity:
    """Return a quantity in the unit that readers of `units` see, not rounded."""
    return quantity.to(other_unit(quantity.unit, quantity.kind, units))


def shown_in(quantity: Quantity, units: str) -> str:
    """Return the text of a quantity for readers of `units`."""
    made = in_units(quantity, units)
    same = made.unit == quantity.unit
    return show(made.number if same else significant(made.number, DIGITS), made.unit)


def fact_in(text: str, quantity: Quantity, units: str) -> str:
    """Return a quantity of prose for readers of `units`, about as exact as its text.

    text: as it was written, such as "1 in", which becomes 25 mm and not 25.4 mm.
    """
    made = in_units(quantity, units)
    if made.unit == quantity.unit or made.kind == "time of day":
        return show(made.number, made.unit)
    if made.kind == "temperature":
        return show(_degrees(made.number, last_place(text)), made.unit)
    digits = max(2, len(re.sub(r"^0+|\D", "", text)))
    rounded = significant(made.number, min(digits, DIGITS))
    if abs(rounded - made.number) > _NEAR * abs(made.number):
        rounded = significant(made.number, DIGITS)
    return show(rounded, made.unit)


def _degrees(number: float, place: float) -> float:
    return float(round(number)) if place >= 1 else significant(number, DIGITS)


def with_own_units(
    inputs: Iterable[Input], given: Mapping[str, str], own: str, *, defaults: bool
) -> dict[str, str]:
    """Return what is given with the units that a reader of `own` means.

    defaults: also give what that reader has where nothing is given.
    """
    made = dict(given)
    for one in inputs:
        if one.name in made:
            made[one.name] = _with_unit(one, made[one.name], own)
        elif defaults and one.default is not None and one.kind != "choice":
            number, unit = one.round_default(own)
            text = show(number, unit) if one.kind == "time of day" else f"{snap(number)!r} {unit}"
            made[one.name] = text.strip()
    return made


def _with_unit(one: Input, text: str, own: str) -> str:
    if one.kind not in KINDS or one.kind == "time of day":
        return text
    try:
        bare = not read_number(text)[1]
    except (QuantityError, AttributeError):
        return text
    return f"{text} {display_unit(one.unit, own)}".strip() if bare else text


def text_in(one: Input, text: str, own: str, units: str) -> str:
    """Return the text of an input, written by a reader of `own`, for readers of `units`."""
    if one.kind not in KINDS or not text:
        return text
    try:
        quantity = parse(text, one.kind, display_unit(one.unit, own))
    except QuantityError:
        return text
    if other_unit(quantity.unit, quantity.kind, units) == quantity.unit:
        return text
    return shown_in(quantity, units)


def number_in(number: str, unit: str, kind: str, units: str) -> str:
    """Return a written number of `unit` as a number of the unit that readers of `units` see."""
    return plain(significant(in_units(parse(f"{number} {unit}", kind), units).number, DIGITS))
