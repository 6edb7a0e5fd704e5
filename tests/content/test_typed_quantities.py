"""Quantities typed in prose are found in every way people write them, and nothing else is."""

from __future__ import annotations

import pytest

from build_tools.content.typed_quantities import (
    prices,
    typed_in_calculators,
    typed_quantities,
    typed_under_head,
)

FOUND = [
    ("5 gal", "5 gal", ["5 gal"]),
    ("5gal", "5gal", ["5 gal"]),
    ("5\u00a0gal", "5 gal", ["5 gal"]),
    ("5\ngal", "5 gal", ["5 gal"]),
    ("(5 gal)", "5 gal", ["5 gal"]),
    ("5 gal.", "5 gal", ["5 gal"]),
    ("“5 gal”", "5 gal", ["5 gal"]),
    ("1,000 gal", "1,000 gal", ["1,000 gal"]),
    ("3/4 in pipe", "3/4 in", ["3/4 in"]),
    ("1 1/2 in", "1 1/2 in", ["1 1/2 in"]),
    ("½ in", "½ in", ["½ in"]),
    ("1½ in", "1½ in", ["1½ in"]),
    ('a 3/4" hose', '3/4"', ['3/4 "']),
    ("3–5 gpm", "3–5 gpm", ["3 gpm", "5 gpm"]),
    ("3 to 5 gpm", "3 to 5 gpm", ["3 gpm", "5 gpm"]),
    ("10 × 54 in", "10 × 54 in", ["10 in", "54 in"]),
    ("35 %", "35 %", ["35 %"]),
    ("35%", "35%", ["35 %"]),
    ("thirty percent", "thirty percent", ["30 percent"]),
    ("5 per cent", "5 per cent", ["5 per cent"]),
    ("140 °F", "140 °F", ["140 °F"]),
    ("140 degrees", "140 degrees", ["140 degrees"]),
    ("140°", "140°", ["140 °"]),
    ("24V", "24V", ["24 V"]),
    ("$8", "$8", ["8 "]),
    ("€ 5.50", "€ 5.50", ["5.50 "]),
    ("8 dollars", "8 dollars", ["8 dollars"]),
    ("ten minutes", "ten minutes", ["10 minutes"]),
    ("ten minutes’ wait", "ten minutes", ["10 minutes"]),
    ("a 2.5-minute step", "2.5-minute", ["2.5 minute"]),
    ("a five-gallon bucket", "five-gallon", ["5 gallon"]),
    ("twenty-five minutes", "twenty-five minutes", ["25 minutes"]),
    ("two hundred gallons", "two hundred gallons", ["200 gallons"]),
    ("half an hour", "half an hour", ["0.5 hour"]),
    ("a quarter of an inch", "quarter of an inch", ["0.25 inch"]),
    ("Ten Minutes", "Ten Minutes", ["10 Minutes"]),
    ("5 gallons a minute", "5 gallons a minute", ["5 gallons a minute"]),
    ("60 per minute", "60 per minute", ["60 per minute"]),
    ("4 gpg per mg/L", "4 gpg per mg/L", ["4 gpg per mg/L"]),
    ("0.5 gpm/ft² of bed", "0.5 gpm/ft²", ["0.5 gpm/ft²"]),
    ("20 mg/L as CaCO3.", "20 mg/L as CaCO3", ["20 mg/L as CaCO3"]),
    ("5 gal/visit", "5 gal", ["5 gal"]),
    ("one second", "one second", ["1 second"]),
    ("5\u200bgal", "5\u200bgal", ["5 gal"]),
    ("5+ gal", "5+ gal", ["5 gal"]),
    ("5 full gallons", "5 full gallons", ["5 gallons"]),
    ("5 or so gallons", "5 or so gallons", ["5 gallons"]),
    ("10³ gal", "10³ gal", ["10³ gal"]),
    ("1e3 gal", "1e3 gal", ["1e3 gal"]),
    ("5k grains", "5k grains", ["5k grains"]),
    ("5 p.s.i. more", "5 p.s.i", ["5 p.s.i"]),
    ("5 ℃", "5 ℃", ["5 ℃"]),
    ("5 €", "5 €", ["5 €"]),
    ("a dozen gallons", "dozen gallons", ["12 gallons"]),
    ("three quarters of an inch", "three quarters of an inch", ["0.75 inch"]),
    ("a third of a gallon", "third of a gallon", ["0.333333 gallon"]),
    ("one-eighth inch", "one-eighth inch", ["0.125 inch"]),
]
NOT_FOUND = [
    "at 2:00 in the morning", "at 2 a.m.", "step 3 in the list", "1 in 4 homes", "2 in total",
    "one in ten", "two in the morning", "the 3rd day", "the 1990s", "the second test", "a minute",
    "page 12", "4 people", "one at a time", "3 of 4", "pH 7.2", "NR 811.57(2)", 'press "2" twice',
    "5 insects", "8 grips", "4 a year", "step 12 and 13", "version 3.1", "C4 and D5", "3 I think",
    "a third time", "a third of the bed", "one third of it", "a third hour", "a tenth of homes",
    "a couple of weeks",
]  # fmt: skip


@pytest.mark.parametrize(("text", "shown", "ends"), FOUND)
def test_a_quantity_is_found_with_its_number_and_unit(
    text: str, shown: str, ends: list[str]
) -> None:
    (typed,) = typed_quantities(f"Words before {text} words after")
    assert (typed.text, typed.ends()) == (shown, ends)
    assert text.find(shown[0]) + len("Words before ") == typed.start


@pytest.mark.parametrize("text", NOT_FOUND)
def test_a_number_that_is_no_quantity_is_left_alone(text: str) -> None:
    assert [*typed_quantities(f"Words before {text} words after")] == []


def test_several_quantities_of_a_text_are_all_found() -> None:
    found = [typed.text for typed in typed_quantities("Pour 5 gal in ten minutes at 50 psi.")]
    assert found == ["5 gal", "ten minutes", "50 psi"]


def test_the_calculators_type_no_quantity_in_their_own_texts() -> None:
    assert typed_in_calculators() == []


@pytest.mark.parametrize(
    ("head", "found"),
    [
        ("Flow, gpm", ["3 gpm"]),
        ("Width (in)", ["3 in"]),
        ("Wait in minutes", ["3 minutes"]),
        ("A day (gal)", ["3 gal"]),
        ("In words", []),
        ("Day", []),
        ("Times a day", []),
        ("Turns of the valve, a minute", []),
    ],
)
def test_a_bare_number_takes_the_unit_over_its_column(head: str, found: list[str]) -> None:
    assert [typed.text for typed in typed_under_head(" 3 ", head)] == found


def test_prices_in_a_currency_of_letters_are_found() -> None:
    found = [typed.text for typed in prices("A bag is 149 kr, or kr 149; no kr at all.", "kr")]
    assert found == ["149 kr", "kr 149"]
    assert [typed.text for typed in prices("₹149, or 149 ₹", "₹")] == ["₹149", "149 ₹"]
    assert [*prices("A bag is 8 $.", "$")] == []
