"""The gap of air between the drain line and the drain."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.air_gap import air_gap, reading

SUCKED_BACK = "Drain water could be sucked back into the softener: lift the line now."
BORE = st.floats(0.125, 4)


@pytest.mark.parametrize(
    ("bore", "gap"), [(0.375, 1), (0.5, 1), (0.51, 1.02), (0.625, 1.25), (0.75, 1.5), (4, 8)]
)
def test_twice_the_bore_and_never_under_an_inch(bore, gap):
    assert air_gap(bore) == pytest.approx(gap)


@given(BORE, st.floats(0.01, 1))
def test_a_wider_line_never_asks_for_less(bore, more):
    assert air_gap(bore + more) >= air_gap(bore) >= 1
    assert air_gap(bore) >= 2 * bore


@pytest.mark.parametrize(
    ("bore", "shown"),
    [(0.5, "1.00"), (0.51, "1.25"), (0.6, "1.25"), (0.625, "1.25"), (0.75, "1.50")],
)
def test_the_gap_shown_is_never_smaller_than_the_gap_needed(bore, shown):
    assert run("air-gap", {"bore": bore})["values"]["gap"]["shown"] == f"{shown}\u00a0in"


@given(BORE)
def test_the_gap_is_rounded_up_in_both_systems(bore):
    for units in ("us", "metric"):
        gap = run("air-gap", {"bore": f"{bore} in"}, units)["values"]["gap"]

        assert float(gap["shown"].split("\u00a0")[0]) >= gap["number"] * (1 - 1e-9)
        assert gap["rounded"] >= gap["number"] * (1 - 1e-9)


@pytest.mark.parametrize(
    ("measured", "word"),
    [
        (0, "no air gap"),
        (0.01, "too small"),
        (1.24, "too small"),
        (1.25, "wide enough"),
        (1.25 * (1 - 1e-15), "wide enough"),
        (2, "wide enough"),
    ],
)
def test_the_reading(measured, word):
    assert reading(measured, 1.25) == word

    result = run("air-gap", {"bore": 0.625, "measured": measured})

    assert result["values"]["reading"]["words"] == word
    assert result["warnings"] == ([] if word == "wide enough" else [SUCKED_BACK])


def test_without_a_gap_measured_there_is_no_reading():
    result = run("air-gap", {"bore": 2})

    assert set(result["values"]) == {"gap"}
    assert result["values"]["gap"]["number"] == 4
    assert result["warnings"] == []
