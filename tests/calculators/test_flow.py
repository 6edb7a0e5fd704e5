"""A bucket and a watch at the drain."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.flow import reading_error, usual_backwash, verdict

CAUGHT = st.floats(0.1, 55)
SECONDS = st.floats(1, 3600)


@given(CAUGHT, SECONDS, st.floats(0.02, 30))
def test_flow_is_water_over_time(answer, caught, time, expected):
    inputs = {"caught": caught, "time": time, "expected_flow": expected}

    assert answer("bucket-flow", "flow", **inputs) == pytest.approx(60 * caught / time)
    assert answer("bucket-flow", "share", **inputs) == pytest.approx(
        6000 * caught / time / expected
    )


@given(st.floats(6, 23), st.floats(0.01, 1))
def test_backwash_rises_with_the_square_of_the_diameter(diameter, more):
    ratio = usual_backwash(diameter + more) / usual_backwash(diameter)

    assert ratio == pytest.approx(((diameter + more) / diameter) ** 2)


@given(CAUGHT, st.floats(0, 5), SECONDS, st.floats(0, 60))
def test_the_error_is_between_the_larger_part_and_the_sum(volume, off, time, late):
    error = reading_error(volume, off, time, late)

    assert max(off / volume, late / time) - 1e-12 <= error <= off / volume + late / time + 1e-12
    assert reading_error(volume, 0, time, 0) == 0


@given(CAUGHT, SECONDS, st.floats(1.01, 4))
def test_a_bigger_bucket_reads_better(caught, time, times):
    assert reading_error(caught * times, 0.1, time * times, 1) < reading_error(caught, 0.1, time, 1)


@pytest.mark.parametrize(
    ("share", "error", "word"),
    [
        (0, 0, "none to speak of"),
        (9.99, 0, "none to speak of"),
        (10, 0, "low"),
        (84.9, 0, "low"),
        (85, 0, "as expected"),
        (100, 0.05, "as expected"),
        (115, 0, "as expected"),
        (115 * (1 + 1e-15), 0, "as expected"),
        (115.1, 0, "high"),
        (140, 0.05, "high"),
        (100, 0.08, "cannot tell: repeat with a bigger bucket"),
        (90, 0.05, "cannot tell: repeat with a bigger bucket"),
        (120, 0.05, "cannot tell: repeat with a bigger bucket"),
    ],
)
def test_the_verdict(share, error, word):
    assert verdict(share, error) == word


@given(st.floats(0, 500), st.floats(0, 100))
def test_without_error_more_flow_is_never_a_lower_word(share, more):
    words = ["none to speak of", "low", "as expected", "high"]

    assert words.index(verdict(share, 0)) <= words.index(verdict(share + more, 0))


@pytest.mark.parametrize(("caught", "warned"), [(1.1, True), (2, False)])
def test_a_rough_reading_is_warned_about(caught, warned):
    result = run("bucket-flow", {"caught": caught, "time": 50, "expected_flow": 2.4})

    assert any("rough" in text for text in result["warnings"]) == warned


def test_a_tank_of_ten_inches():
    result = run(
        "bucket-flow",
        {"caught": 2.4, "time": 60, "expected_from": "tank diameter", "tank_diameter": 10},
    )

    assert result["values"]["share"]["number"] == pytest.approx(240 / (4.5 * math.pi * 25 / 144))
    assert result["values"]["verdict"]["words"] == "as expected"
