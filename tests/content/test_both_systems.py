"""Quantities of the sources for readers of the other unit system."""

from __future__ import annotations

import pytest

from build_tools.content.both_systems import (
    compares_units,
    fact_in,
    other_unit,
    shown_in,
    text_in,
    with_own_units,
)
from build_tools.content.fields import parse_any
from calculators import CALCULATORS, run
from calculators.quantities import parse


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "metric"),
    [
        ("1 in", "25 mm"),
        ("120 °F", "49 °C"),
        ("15 psi", "1.03 bar"),
        ("2 gal", "7.6 L"),
        ("7000 grains", "454 g"),
        ("0.4 mg/L", "0.4 mg/L"),
        ("10 min", "10 min"),
    ],
)
def test_a_fact_is_shown_about_as_exact_as_it_is_written(text: str, metric: str) -> None:
    assert plain(fact_in(text, parse_any(text), "metric")) == metric


@pytest.mark.parametrize(
    ("text", "kind", "us"),
    [
        ("300 mg/L", "hardness", "17.5 gpg"),
        ("0.3 mg/L", "concentration", "0.3 mg/L"),
        ("500 mL", "volume", "16.9 fl oz"),
        ("25 kg", "mass", "55.1 lb"),
        ("16 °dH", "hardness", "16 °dH"),
        ("14:30", "time of day", "2:30 pm"),
    ],
)
def test_metric_quantities_find_the_trade_s_unit(text: str, kind: str, us: str) -> None:
    unit = "24-hour clock" if kind == "time of day" else None
    assert plain(shown_in(parse(text, kind, unit), "us")) == us


def test_a_unit_of_neither_system_stays() -> None:
    assert other_unit("°dH", "hardness", "metric") == "°dH"
    assert other_unit("h", "time", "us") == "h"


def test_a_number_alone_gets_the_unit_it_was_meant_in() -> None:
    inputs = CALCULATORS["brine-refill"].inputs
    made = with_own_units(inputs, {"salt": "9", "refill_flow": "0.5 gpm"}, "us", defaults=False)
    assert made == {"salt": "9 lb", "refill_flow": "0.5 gpm"}


def test_the_other_reader_s_answer_comes_from_the_same_quantities() -> None:
    given = {"salt": "9 lb", "refill_flow": "0.5 gpm"}
    inputs = with_own_units(CALCULATORS["brine-refill"].inputs, given, "us", defaults=True)
    us, metric = (run("brine-refill", inputs, units) for units in ("us", "metric"))
    time = "refill_time"
    assert us["values"][time]["shown"] == metric["values"][time]["shown"]
    assert plain(metric["inputs"]["salt"]["shown"]) == "4.08 kg"


def test_the_text_of_a_field_is_converted_where_its_unit_is() -> None:
    hardness = CALCULATORS["hardness-setting"].input("hardness")
    assert plain(text_in(hardness, "18 gpg", "us", "metric")) == "308 mg/L"
    assert text_in(hardness, "290 mg/L", "us", "metric") == "290 mg/L"
    assert text_in(hardness, "no number", "us", "metric") == "no number"


def test_calculators_about_units_are_known() -> None:
    assert compares_units(CALCULATORS["hardness-units"])
    assert not compares_units(CALCULATORS["brine-refill"])
