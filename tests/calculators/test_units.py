"""The unit tables: complete, without two meanings, and with a metric unit for every US one."""

import pytest

from calculators.quantities import KINDS, display_unit, normal_spelling, parse
from calculators.units import METRIC, TABLES

US_WORDS = {
    "gpg", "gal", "qt", "pint", "cup", "fl", "ft³", "gpm", "lb", "oz", "in", "ft",
    "in²", "ft²", "grains", "kilograins", "psi", "°F",
}  # fmt: skip

EVERY_UNIT = [(kind.name, unit) for kind in KINDS.values() for unit in kind.units]
EVERY_SPELLING = [
    (kind, unit, spelling.strip())
    for kind, (_, table) in TABLES.items()
    for unit, (_, others) in table.items()
    for spelling in (unit, *others.split(","))
    if spelling.strip()
]


def is_us(unit):
    return any(word in US_WORDS for word in unit.replace("/", " ").split())


@pytest.mark.parametrize("kind", KINDS)
def test_each_spelling_of_a_kind_means_one_unit(kind):
    meant = {}
    for of_kind, unit, spelling in EVERY_SPELLING:
        if of_kind == kind:
            meant.setdefault(normal_spelling(spelling), set()).add(unit)

    assert {spelling: units for spelling, units in meant.items() if len(units) > 1} == {}


@pytest.mark.parametrize("kind", KINDS)
def test_every_spelling_is_read(kind):
    for of_kind, unit, spelling in EVERY_SPELLING:
        if of_kind == kind:
            assert parse(f"2 {spelling}", kind).unit == unit, spelling


@pytest.mark.parametrize(("kind", "unit"), EVERY_UNIT)
def test_one_is_worth_more_than_nothing(kind, unit):
    assert KINDS[kind].factors[unit] > 0


@pytest.mark.parametrize(("kind", "unit"), [pair for pair in EVERY_UNIT if is_us(pair[1])])
def test_a_metric_reader_never_sees_a_us_unit(kind, unit):
    metric = display_unit(unit, "metric")

    assert metric in KINDS[kind].units
    assert not is_us(metric)


@pytest.mark.parametrize(("kind", "unit"), EVERY_UNIT)
def test_a_us_reader_sees_units_as_they_are_given(kind, unit):
    assert display_unit(unit, "us") == unit


def test_metric_units_stay_what_they_are():
    assert [unit for unit in METRIC.values() if unit in METRIC] == []


def test_the_words_of_every_kind_fit_into_a_sentence():
    assert [kind.name for kind in KINDS.values() if not kind.words.startswith(("a ", "an "))] == []
