"""Counts of drops and the flush before a sample."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.sampling import pipe_volume, reading_error


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


DROPS = st.integers(1, 60)
DROP = st.sampled_from([0.1, 0.25, 0.5, 1, 1.17, 2])
ERROR = readings(0, 20)


@given(DROPS, DROP, ERROR)
def test_the_estimate_is_half_a_drop_below_the_reading_and_within_its_range(
    answer, drops, drop, error
):
    inputs = {"drops": drops, "drop_hardness": drop, "drop_error": error}
    estimate = answer("drop-count", "estimate", **inputs)

    assert answer("drop-count", "reading", **inputs) - estimate == pytest.approx(drop / 2)
    assert 0 <= answer("drop-count", "lowest", **inputs) <= estimate
    assert estimate < answer("drop-count", "highest", **inputs)


@given(DROPS, DROP, ERROR)
def test_twice_the_sample_halves_everything(answer, drops, drop, error):
    whole = {"drops": drops, "drop_hardness": drop, "drop_error": error}
    half = {**whole, "drop_hardness": drop / 2}

    for output in ("reading", "estimate", "uncertainty", "lowest", "highest"):
        assert answer("drop-count", output, **half) == pytest.approx(
            answer("drop-count", output, **whole) / 2
        )


@given(readings(0, 60), DROP, st.floats(0, 0.2), st.floats(0.01, 0.1))
def test_an_error_grows_with_drops_and_their_error(hardness, drop, error, more):
    before = reading_error(hardness, drop, error)

    assert before >= drop / math.sqrt(12)
    assert reading_error(hardness, drop, error + more) >= before
    assert reading_error(hardness, drop * (1 + more), error) > before


@given(DROP)
def test_no_drop_is_less_than_half_of_one(answer, drop):
    inputs = {"drops": 0, "drop_hardness": drop}

    assert answer("drop-count", "reading", **inputs) == 0
    assert answer("drop-count", "estimate", **inputs) == 0
    assert answer("drop-count", "highest", **inputs) == pytest.approx(drop / 2)
    assert "uncertainty" not in run("drop-count", inputs)["values"]


@pytest.mark.parametrize(("drops", "few"), [(0, False), (1, True), (3, True), (4, False)])
def test_few_drops_are_warned_about(drops, few):
    warnings = run("drop-count", {"drops": drops})["warnings"]

    assert any("larger sample" in text for text in warnings) == few


@pytest.mark.parametrize(
    ("units", "drop", "lowest", "highest"),
    [("us", "1 gpg", "8.3", "10.7"), ("metric", "20 mg/L", "167", "213")],
)
def test_a_range_is_rounded_outward(units, drop, lowest, highest):
    values = run("drop-count", {"drops": 10, "drop_hardness": drop}, units)["values"]

    assert values["lowest"]["shown"].startswith(lowest)
    assert values["highest"]["shown"].startswith(highest)


def test_a_range_never_reaches_below_zero(answer):
    assert answer("drop-count", "lowest", drops=1) == 0
    assert answer("drop-count", "lowest", drops=3) == pytest.approx(2.5 - 2 * 0.3146, abs=1e-3)


@pytest.mark.parametrize("drops", [2.5, "1/2"])
def test_half_a_drop_is_not_counted(drops):
    assert "not a whole number" in run("drop-count", {"drops": drops})["problems"]["drops"]


@given(st.floats(0.25, 3), st.floats(0.1, 250), st.floats(1.01, 2))
def test_water_in_a_pipe_goes_with_its_length_and_the_square_of_its_bore(bore, length, times):
    held = pipe_volume(bore, length)

    assert pipe_volume(bore, length * times) == pytest.approx(held * times)
    assert pipe_volume(bore * times, length) == pytest.approx(held * times**2)


@given(st.floats(0.25, 3), readings(0, 500), st.floats(1, 10), st.floats(0.1, 20))
def test_a_flush_is_so_many_contents_and_takes_its_time(answer, bore, length, contents, flow):
    inputs = {"bore": bore, "length": length, "contents": contents, "flow": flow}
    flush = answer("sample-flush", "flush", **inputs)

    assert flush == pytest.approx(contents * answer("sample-flush", "held", **inputs))
    assert answer("sample-flush", "time", **inputs) / 60 * flow == pytest.approx(flush)


@pytest.mark.parametrize(
    ("units", "flush", "time"), [("us", "3.5\u00a0gal", "105"), ("metric", "13.1\u00a0L", "105")]
)
def test_a_flush_and_its_time_are_rounded_up(units, flush, time):
    inputs = {"bore": "0.75 in", "length": "50 ft", "flow": "2 gpm"}
    values = run("sample-flush", inputs, units)["values"]

    assert values["flush"]["shown"] == flush
    assert values["time"]["shown"] == f"{time}\u00a0s"


def test_without_a_flow_there_is_no_time():
    result = run("sample-flush", {"bore": 0.75, "length": 50})

    assert set(result["values"]) == {"held", "flush"}
