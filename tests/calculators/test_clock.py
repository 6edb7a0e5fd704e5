"""The control's clock and the hard water of a regeneration at the wrong hour."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.clock import HOURLY_WATER, clock_word, share_drawn, short_way_round

HOME = {"water": 240, "hardness": 20, "tank": 50}
HOURS = st.floats(0, 23.98)
MECHANICAL, HELD_UP = "power cuts, mechanical clock", "power cuts, clock with hold-up"


def clock(**inputs):
    return run("clock-error", {**HOME, **inputs})


def test_the_hours_of_a_day_make_the_whole_day():
    assert len(HOURLY_WATER) == 24
    assert sum(HOURLY_WATER) == pytest.approx(100)
    assert min(HOURLY_WATER) > 0


@given(HOURS)
def test_a_whole_day_from_any_hour_is_the_whole_water(start):
    assert share_drawn(start, 24) == pytest.approx(100)


@given(HOURS, st.floats(0, 5), st.floats(0, 5))
def test_two_spans_in_a_row_are_one_longer_span(start, first, second):
    together = share_drawn(start, first) + share_drawn(start + first, second)

    assert together == pytest.approx(share_drawn(start, first + second), abs=1e-9)


@given(HOURS, st.floats(0.001, 5))
def test_a_span_takes_between_the_least_and_the_busiest_hour(start, length):
    share = share_drawn(start, length)

    assert min(HOURLY_WATER) * length - 1e-9 <= share <= max(HOURLY_WATER) * length + 1e-9
    assert share_drawn(start + 24, length) == pytest.approx(share)


@given(st.floats(-100, 100))
def test_the_short_way_round_is_the_same_hand_on_the_dial(hours):
    short = short_way_round(hours)

    assert -12 <= short < 12
    assert (hours - short) / 24 == pytest.approx(round((hours - short) / 24), abs=1e-9)


@pytest.mark.parametrize(
    ("error", "word"),
    [
        (0, "right"),
        (0.5, "right"),
        (-0.5, "right"),
        (0.51, "ahead"),
        (-0.51, "behind"),
        (10.99, "ahead"),
        (-10.99, "behind"),
        (11, "about half a day out: look at am and pm"),
        (-12, "about half a day out: look at am and pm"),
    ],
)
def test_the_word_for_a_clock(error, word):
    assert clock_word(error) == word


@pytest.mark.parametrize(
    ("inputs", "start", "word", "off"),
    [
        ({"shown_time": "5:00 am", "true_time": "9:30 am"}, "6:30 am", "behind", "4.5 h"),
        ({"shown_time": "9:30 am", "true_time": "5:00 am"}, "9:30 pm", "ahead", "4.5 h"),
        ({"shown_time": "11:50 pm", "true_time": "0:10"}, "2:20 am", "right", "0.3 h"),
        ({"shown_time": "1:00 am", "true_time": "11:00 pm"}, "12:00 am", "ahead", "2.0 h"),
        (
            {"shown_time": "3 am", "true_time": "3 pm"},
            "2:00 pm",
            "about half a day out: look at am and pm",
            "12.0 h",
        ),
        ({"told_by": MECHANICAL, "power_off": 4.5}, "6:30 am", "behind", "4.5 h"),
        ({"told_by": MECHANICAL, "power_off": 48}, "2:00 am", "right", "0.0 h"),
        ({"told_by": MECHANICAL, "power_off": "1 day"}, "2:00 am", "right", "0.0 h"),
        ({"told_by": MECHANICAL, "power_off": 20}, "10:00 pm", "ahead", "4.0 h"),
        (
            {"told_by": HELD_UP, "longest_cut": 24, "back_at": "7:30 pm"},
            "2:00 am",
            "right",
            "0.0 h",
        ),
        (
            {"told_by": HELD_UP, "longest_cut": 24.1, "back_at": "7:30 pm"},
            "9:30 pm",
            "ahead",
            "4.5 h",
        ),
        (
            {"told_by": HELD_UP, "longest_cut": 9, "hold_up": 8, "back_at": "5:00 am"},
            "7:00 am",
            "behind",
            "5.0 h",
        ),
    ],
)
def test_when_regeneration_really_starts(inputs, start, word, off):
    values = clock(**inputs)["values"]

    assert values["true_start"]["shown"].replace("\u00a0", " ") == start
    assert values["clock_is"]["words"] == word
    assert values["off_by"]["shown"].replace("\u00a0", " ") == off


def test_a_metric_reader_sees_a_24_hour_clock():
    values = run(
        "clock-error",
        {"shown_time": "5:00", "true_time": "17:00", **HOME, "set_time": "2:30"},
        "metric",
    )["values"]

    assert values["true_start"] == {
        "label": "Regeneration starts at",
        "number": 14.5,
        "rounded": 14.5,
        "unit": "24-hour clock",
        "shown": "14:30",
        "rounding": "to the nearest minute",
    }


@given(HOURS, HOURS)
def test_the_start_is_off_by_the_error_the_other_way(shown, true):
    result = clock(shown_time=shown, true_time=true)
    start = result["values"]["true_start"]["number"]

    assert short_way_round(start - 2 - (true - shown)) == pytest.approx(0, abs=1e-9)
    assert 0 <= start < 24


@given(HOURS, HOURS, st.floats(1, 200), st.floats(1.01, 3))
def test_hard_water_is_proportional_to_the_use_and_its_hardness(answer, shown, true, water, times):
    asked = {**HOME, "shown_time": shown, "true_time": true, "water": water}
    more = {**asked, "water": water * times}

    hard = answer("clock-error", "hard_water", **asked)
    assert answer("clock-error", "hard_water", **more) == pytest.approx(times * hard)
    assert answer("clock-error", "grains", **asked) == pytest.approx(20 * hard)
    assert answer("clock-error", "hot_rise", **more) > answer("clock-error", "hot_rise", **asked)


@given(HOURS, HOURS, st.floats(0.01, 150), st.floats(0.01, 150))
def test_a_longer_cycle_passes_no_less(answer, shown, true, minutes, more):
    asked = {**HOME, "shown_time": shown, "true_time": true}
    short = answer("clock-error", "hard_water", raw_time=minutes, **asked)

    assert answer("clock-error", "hard_water", raw_time=minutes + more, **asked) >= short - 1e-9


@given(HOURS, HOURS)
def test_the_heater_never_holds_more_than_went_in(answer, shown, true):
    asked = {**HOME, "shown_time": shown, "true_time": true}
    into_the_heater = 0.35 * answer("clock-error", "grains", **asked)

    assert answer("clock-error", "hot_rise", **asked) * 50 <= into_the_heater + 1e-9


def test_a_right_clock_passes_what_it_always_does():
    values = clock(shown_time="9 am", true_time="9 am")["values"]

    assert values["hard_water"]["number"] == pytest.approx(values["hard_water_on_time"]["number"])


def test_no_raw_water_passes_where_the_valve_holds_it_off():
    values = clock(shown_time="5 am", true_time="9 am", raw_time=0)["values"]

    assert values["hard_water"]["number"] == 0
    assert values["hot_rise"]["number"] == 0


@pytest.mark.parametrize(("raw_time", "warned"), [(30, True), (5, False)])
def test_overlap_with_use_is_warned_about(raw_time, warned):
    result = clock(shown_time="5 am", true_time="9 am", raw_time=raw_time)

    assert any("overlaps" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(
    ("shown", "said"),
    [("5 am", "set the clock, then a time at"), ("9 am", "set a time at")],
)
def test_a_clock_that_is_right_is_not_to_be_set(shown, said):
    result = clock(shown_time=shown, true_time="9 am", set_time="8 am")

    assert f"Regeneration overlaps with water use: {said}" in result["warnings"][0]


@pytest.mark.parametrize(("true", "warned"), [("2:45", True), ("2:45 pm", False), ("6:00", False)])
def test_a_visit_in_the_night_is_asked_about(true, warned):
    result = clock(shown_time="10:15", true_time=true)

    assert any("If you meant the afternoon" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(
    ("inputs", "problems"),
    [
        (
            {"shown_time": "2.30", "true_time": "25:00"},
            {
                "shown_time": "“2.30” can be read in two ways. Write the minutes after a colon, "
                "such as 2:30.",
                "true_time": "“25:00” is no time of day. Write it like 2:30 pm or 14:30.",
            },
        ),
        (
            {"shown_time": 2.25},
            {"true_time": "The true time is missing. Write a time of day, such as 9:30 am."},
        ),
        (
            {"shown_time": "26", "true_time": "9 am"},
            {"shown_time": "“26” is no time of day. Write it like 2:30 pm or 14:30."},
        ),
    ],
)
def test_problems_with_times_of_day_are_sentences(inputs, problems):
    told = clock(**inputs)["problems"]

    assert {name: text.replace("\u00a0", " ") for name, text in told.items()} == problems
