"""The meter against a bucket."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.meter import count_error, meter_verdict

CAUGHT = st.floats(1, 200)
COUNT = st.decimals(0, 10000, places=2).map(float)


@given(CAUGHT, COUNT, COUNT)
def test_the_share_is_the_count_over_the_water_up_or_down(answer, caught, one, other):
    asked = {"caught": caught, "count_before": one, "count_after": other}
    swapped = {"caught": caught, "count_before": other, "count_after": one}

    share = answer("meter-check", "share", **asked)
    assert share == pytest.approx(100 * abs(other - one) / caught)
    assert answer("meter-check", "share", **swapped) == share


@given(CAUGHT, st.floats(0, 5), st.floats(0.01, 10), st.floats(1.01, 10))
def test_more_water_lessens_the_error_in_proportion(volume, off, step, times):
    assert count_error(volume * times, off, step) == pytest.approx(
        count_error(volume, off, step) / times
    )


@given(CAUGHT, st.floats(0, 5), st.floats(0.01, 10))
def test_the_error_is_between_the_larger_part_and_the_sum(volume, off, step):
    parts = off / volume, step / 2 / volume

    assert max(parts) - 1e-12 <= count_error(volume, off, step) <= sum(parts) + 1e-12


@pytest.mark.parametrize(
    ("share", "error", "word"),
    [
        (0, 0, "not counting"),
        (4.99, 0, "not counting"),
        (5, 0, "counts too little"),
        (89.9, 0, "counts too little"),
        (90, 0, "true"),
        (90 * (1 - 1e-15), 0, "true"),
        (110, 0, "true"),
        (110.1, 0, "counts too much"),
        (100, 0.05, "true"),
        (100, 0.0501, "cannot tell: draw more water"),
        (93, 0.052, "cannot tell: draw more water"),
        (80, 0.05, "counts too little"),
        (7, 0.02, "cannot tell: draw more water"),
        (108, 0.02, "cannot tell: draw more water"),
        (140, 0.05, "counts too much"),
    ],
)
def test_the_verdict(share, error, word):
    assert meter_verdict(share, error) == word


@given(st.floats(0, 300), st.floats(0, 100))
def test_without_error_a_higher_count_is_never_a_lower_word(share, more):
    words = ["not counting", "counts too little", "true", "counts too much"]

    assert words.index(meter_verdict(share, 0)) <= words.index(meter_verdict(share + more, 0))


@pytest.mark.parametrize(
    ("caught", "step", "word"),
    [
        (5, 1, "not counting"),
        (4.9, 1, "cannot tell: draw more water"),
        (20, 10, "cannot tell: draw more water"),
    ],
)
def test_a_counter_that_stands_still_over_five_steps_is_not_counting(caught, step, word):
    asked = {"caught": caught, "count_before": 840, "count_after": 840, "count_step": step}

    assert run("meter-check", asked)["values"]["verdict"]["words"] == word


def test_ten_gallons_with_whole_gallons_prove_nothing_at_93_percent():
    asked = {"caught": 10, "count_before": 840, "count_after": 830.7}

    assert run("meter-check", asked)["values"]["verdict"]["words"] == "cannot tell: draw more water"


def test_a_count_in_another_unit_is_the_same_count():
    us = run("meter-check", {"caught": 20, "count_before": 100, "count_after": 120})
    mixed = run(
        "meter-check", {"caught": "20 gal", "count_before": "0 L", "count_after": "75.708 L"}
    )

    assert mixed["values"]["share"]["number"] == pytest.approx(
        us["values"]["share"]["number"], rel=1e-4
    )


NORMAL = {"caught": 50, "count_before": 840, "count_after": 790, "count_step": 0.1}


def test_one_run_does_not_clear_a_leak():
    result = run("meter-check", NORMAL)

    assert result["values"]["verdict"]["words"] == "true"
    assert result["warnings"] == [
        "A turbine may stand still in a slow flow: this run does not clear a small leak."
    ]


@pytest.mark.parametrize(
    ("counted", "word", "warned"),
    [
        (0, "not counting", True),
        (2, "counts too little", True),
        (5, "true", False),
        (7, "counts too much", False),
    ],
)
def test_the_slow_run_finds_a_meter_that_misses_leaks(counted, word, warned):
    slow = {"slow_caught": 5, "slow_counted": counted, "volume_error": 0.05}
    result = run("meter-check", {**NORMAL, **slow})

    assert result["values"]["slow_verdict"]["words"] == word
    assert result["values"]["slow_share"]["number"] == pytest.approx(20 * counted)
    assert any("misses slow flows" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(
    ("given_one", "missing"),
    [({"slow_caught": 2}, "slow_counted"), ({"slow_counted": 2}, "slow_caught")],
)
def test_half_a_slow_run_is_asked_back(given_one, missing):
    result = run("meter-check", {**NORMAL, **given_one})

    assert result["problems"] == {missing: "The slow run needs both the water drawn and the count."}


@pytest.mark.parametrize(("after", "warned"), [(799, True), (800, False), (10, True)])
def test_a_counter_that_started_anew_is_asked_about(after, warned):
    asked = {"caught": 20, "count_before": 840, "count_after": after}
    warnings = run("meter-check", asked)["warnings"]

    assert any("started anew" in text for text in warnings) == warned


def test_a_share_below_a_line_is_not_shown_on_it():
    asked = {"caught": 100, "count_before": 0, "count_after": 89.6, "count_step": 0.01}
    values = run("meter-check", {**asked, "volume_error": 0.1})["values"]

    assert values["verdict"]["words"] == "counts too little"
    assert values["share"]["shown"] == "89.6\u00a0%"


def test_the_uncertainty_is_that_of_bucket_and_counter():
    values = run("meter-check", {"caught": 10, "count_before": 0, "count_after": 10})["values"]

    assert values["uncertainty"]["number"] == pytest.approx(100 * math.hypot(0.015, 0.05))
