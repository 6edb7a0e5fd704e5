"""Quantities typed in prose, for readers of the other unit system."""

from __future__ import annotations

import pytest

from build_tools.content.entries import Passage
from build_tools.content.typed_in_units import in_units
from calculators.quantities import Quantity


def seen(text: str, units: str = "metric", *, kinds: set[str] | None = None) -> str:
    passage = Passage(None, text, lambda offset: 1)
    return in_units(passage, units, [], kinds or set()).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "metric"),
    [
        ("The well tests 18 gpg, no more.", "The well tests 308 mg/L, no more."),
        ("A **40 gal** tank", "A **151 L** tank"),
        ("from 12 to 18 gpg", "from 205 to 308 mg/L"),
        ("half a gallon", "1.89 L"),
        ("It starts at 2:30 pm.", "It starts at 14:30."),
        ("A report says 290 mg/L, a kit 16 °dH.", "A report says 290 mg/L, a kit 16 °dH."),
        ("Wait 10 min.", "Wait 10 min."),
        ("{{ fact.bucket }} and 9 lb", "{{ fact.bucket }} and 4.08 kg"),
    ],
)
def test_metric_readers(text: str, metric: str) -> None:
    assert seen(text) == metric


@pytest.mark.parametrize(
    ("text", "us"),
    [
        ("The flat uses 280 L/day.", "The flat uses 74 gal/day."),
        ("A cup of 500 mL", "A cup of 16.9 fl oz"),
        ("It lasts 1:30.", "It lasts 1:30."),
    ],
)
def test_us_readers(text: str, us: str) -> None:
    assert seen(text, "us") == us


def test_the_block_s_givens_decide_what_a_spelling_means() -> None:
    assert seen("18 grains", kinds={"hardness"}) == "308 mg/L"
    assert seen("18 grains", kinds={"capacity"}) == "1.17 g"
    assert seen("at 14:30", "us", kinds={"time of day"}) == "at 2:30 pm"


def test_a_stated_answer_becomes_the_calculator_s_own() -> None:
    passage = Passage(None, "It takes 9.3 lb of salt.", lambda offset: 1)
    answers = [(Quantity(9.3, "lb", "mass"), "4.2 kg")]
    assert in_units(passage, "metric", answers, {"mass"}) == "It takes 4.2 kg of salt."
