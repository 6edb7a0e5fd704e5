"""Factors between the trade's units and metric ones, all from the calculators' own table."""

from __future__ import annotations

from calculators.quantities import KINDS, Kind, convert, plain, round_to, significant
from calculators.units import METRIC

#: Kinds with many units, each with a table of its own; all others share one.
OWN_TABLES = ("hardness", "volume", "flow", "mass", "length", "area", "capacity", "pressure")
OTHERS, COMMON = "other-quantities", "common-values"
#: Kinds that no factor converts: a clock is read, and a temperature has another zero.
_NO_FACTOR = ("time of day", "temperature")
#: The common values: unit, first number, step. All columns have as many rows.
_COLUMNS = (("gpg", "hardness", 1), ("gal", "volume", 1), ("psi", "pressure", 5))
_COLDEST, _STEP, _ROWS = 35, 5, 30
_DIGITS = 4


def title(kind: Kind) -> str:
    """Return the title of a kind: "Hardness", "Flow for each area of bed"."""
    words = kind.words.split(" ", 1)[1]
    return words[0].upper() + words[1:]


def anchor(kind: str) -> str:
    """Return the anchor of a kind's table."""
    return kind.replace(" ", "-")


def trade_units(kind: Kind) -> list[str]:
    """Return the units of a kind in whose place a metric reader sees another."""
    return [unit for unit in kind.units if METRIC.get(unit) in kind.units]


def other_kinds() -> list[Kind]:
    """Return the kinds with a trade's unit that have no table of their own."""
    left_out = (*OWN_TABLES, *_NO_FACTOR)
    return [kind for kind in KINDS.values() if kind.name not in left_out and trade_units(kind)]


def factors(kind: Kind) -> tuple[list[str], list[list[str]]]:
    """Return the head and the rows of a kind's table: each unit in the trade's and the metric."""
    trade = kind.units[0]
    metric = METRIC[trade]
    rows = [
        [f"1 {_one(unit)}", _in(unit, trade, kind), _in(unit, metric, kind)] for unit in kind.units
    ]
    return ["", trade, metric], rows


def pairs() -> list[list[str]]:
    """Return a row for each trade's unit of the other kinds: it in metric, and back."""
    rows = []
    for kind in other_kinds():
        for unit in trade_units(kind):
            metric = METRIC[unit]
            there = f"1 {_one(unit)} = {_in(unit, metric, kind)} {metric}"
            back = f"1 {_one(metric)} = {_in(metric, unit, kind)} {unit}"
            rows.append([title(kind), there, back])
    return rows


def temperature() -> str:
    """Return how degrees convert, in words."""
    zero = convert(0, "°C", "°F", "temperature")
    step = convert(1, "°C", "°F", "temperature") - zero
    return f"°F = °C × {plain(step)} + {plain(zero)}; °C = (°F − {plain(zero)}) ÷ {plain(step)}"


def common_values() -> tuple[list[str], list[list[str]]]:
    """Return the head and the rows of the values that people meet, in both units."""
    columns = []
    for unit, kind, step in _COLUMNS:
        numbers = [step * place for place in range(1, _ROWS + 1)]
        columns.append((unit, kind, numbers))
    degrees = [_COLDEST + _STEP * place for place in range(_ROWS)]
    columns.append(("°F", "temperature", degrees))
    head = [name for unit, _, _ in columns for name in (unit, METRIC[unit])]
    rows = [
        [
            shown
            for unit, kind, numbers in columns
            for shown in (plain(numbers[place]), _short(numbers[place], unit, kind))
        ]
        for place in range(_ROWS)
    ]
    return head, rows


def _one(unit: str) -> str:
    """Return a unit as it stands behind the number one."""
    return unit.replace("grains", "grain")


def _in(unit: str, other: str, kind: Kind) -> str:
    return plain(significant(convert(1, unit, other, kind.name), _DIGITS))


def _short(number: float, unit: str, kind: str) -> str:
    metric = convert(number, unit, METRIC[unit], kind)
    return plain(round_to(metric, 1)) if kind == "temperature" else plain(significant(metric, 3))
