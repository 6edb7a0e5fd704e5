"""The depth of the resin in its tank."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.bed_depth import bed_depth, resin_of_depth, verdict

RESIN = st.floats(0.2, 10)
DIAMETER = st.floats(6, 24)


@given(RESIN, DIAMETER)
def test_depth_and_resin_turn_into_each_other(resin, diameter):
    assert resin_of_depth(bed_depth(resin, diameter), diameter) == pytest.approx(resin)


@given(RESIN, DIAMETER)
def test_twice_the_diameter_is_a_quarter_of_the_depth(resin, diameter):
    assert bed_depth(resin, 2 * diameter) == pytest.approx(bed_depth(resin, diameter) / 4)


@pytest.mark.parametrize(
    ("share", "word"),
    [
        (0, "short: find out how resin was lost"),
        (89.9, "short: find out how resin was lost"),
        (90 * (1 - 1e-15), "as it should be"),
        (110 * (1 + 1e-15), "as it should be"),
        (110.1, "deeper than expected: check the volume, or the resin is swollen"),
    ],
)
def test_the_reading(share, word):
    assert verdict(share) == word


def test_without_a_depth_measured_there_is_only_the_depth_expected():
    result = run("bed-depth", {"resin_volume": 0.75, "tank_diameter": 8})

    assert set(result["values"]) == {"depth"}
    assert result["values"]["depth"]["shown"] == "26.0\u00a0in"


def test_a_bed_deeper_than_expected_misses_nothing():
    result = run("bed-depth", {"resin_volume": 1, "tank_diameter": 9, "measured": 40})

    assert result["values"]["missing"]["number"] == 0
    assert result["values"]["share"]["number"] > 100
