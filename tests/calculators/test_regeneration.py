"""Drawing brine and rinsing it through."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run

SHEET = {"slow_rinse_flow": "0.45 gpm", "brine_draw_flow": "0.7 gpm"}
USUAL = {"brine": "3.4 gal", "resin_volume": "1.5 ft³", **SHEET}


def result(**changed):
    return run("brine-draw", {**USUAL, **changed})


def numbers(**changed):
    found = result(**changed)
    assert found["problems"] == {}
    return {name: value["number"] for name, value in found["values"].items()}


def warnings(**changed):
    return " ".join(result(**changed)["warnings"])


@given(st.floats(0.5, 20), st.floats(10, 120), st.floats(16, 125))
def test_the_brine_is_drawn_or_left(brine, time, pressure):
    found = numbers(brine=brine, brine_time=time, pressure=pressure)

    drawn = found["suction"] * min(time, found["draw_time"])
    assert drawn + found["brine_left"] == pytest.approx(brine)
    assert found["least_suction"] == pytest.approx(brine / time)
    assert (found["brine_left"] > 1e-9) == (found["draw_time"] > time * (1 + 1e-9))


@given(st.floats(0.5, 10), st.floats(16, 125), st.floats(0.2, 8))
def test_draw_and_slow_rinse_fill_the_time(brine, pressure, volume):
    found = numbers(brine=brine, pressure=pressure, resin_volume=volume)
    assume(found["draw_time"] < 60)

    assert found["draw_time"] + found["slow_rinse_time"] == pytest.approx(60)
    water = found["slow_rinse_time"] * found["motive_flow"]
    assert found["slow_rinse_water"] == pytest.approx(water)
    assert found["bed_volumes"] == pytest.approx(water / (volume * 7.480519), rel=1e-6)


@given(st.floats(16, 120), st.floats(0.1, 5))
def test_more_pressure_draws_more_and_back_pressure_takes_it_away(pressure, more):
    strong = numbers(pressure=pressure + more)
    back = numbers(pressure=pressure + more, back_pressure=more)

    assert strong["suction"] > numbers(pressure=pressure)["suction"]
    assert back["suction"] == pytest.approx(numbers(pressure=pressure)["suction"])


def test_the_resin_s_volume_gives_the_usual_injector():
    """0.16 and 0.30 gpm for each cubic foot at 50 psi; common practice, no source."""
    found = run(
        "brine-draw", {"brine": "3.4 gal", "resin_volume": "2 ft³", "figures_from": "resin volume"}
    )["values"]

    assert found["suction"]["number"] == pytest.approx(0.32)
    assert found["motive_flow"]["number"] == pytest.approx(0.60)


def test_without_suction_there_is_no_time_and_all_brine_is_left():
    found = result(pressure="15 psi")

    assert "draw_time" not in found["values"]
    assert found["values"]["brine_left"]["number"] == pytest.approx(3.4)
    assert found["values"]["slow_rinse_time"]["number"] == 0
    assert found["values"]["strength"]["number"] == 0
    assert found["warnings"][1:] == ["At this pressure the injector draws no brine at all."]


def test_what_cannot_be_is_refused():
    assert (
        "takes all the pressure"
        in result(pressure="20 psi", back_pressure="20 psi")["problems"]["back_pressure"]
    )
    assert numbers(pressure="20 psi", back_pressure="19.9 psi")["suction"] == 0
    assert "brine_draw_flow" in result(brine_draw_flow="0.45 gpm")["problems"]
    assert result(brine_draw_flow="0.46 gpm")["problems"] == {}


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"brine": "20 gal"}, "Brine is left each time"),
        ({"brine_draw_flow": "0.55 gpm"}, "The brine is thin at the bed"),
        ({"brine_draw_flow": "0.8 gpm"}, "The brine is strong at the bed"),
        ({"brine_time": "27 min"}, "little time for slow rinse"),
        ({"brine_time": "40 min"}, "The slow rinse is short"),
        ({"brine_time": "100 min"}, "longer than any in print"),
    ],
)
def test_the_unusual_is_told(changed, said):
    assert warnings() == ""
    assert said in warnings(**changed)


def test_warnings_begin_just_past_their_marks():
    assert "little time" not in warnings(brine_time="28.7 min")
    assert "little time" in warnings(brine_time="28.5 min")
    assert "is short" in warnings(brine_time="43.4 min")
    assert "is short" not in warnings(brine_time="43.6 min")
    assert "in print" not in warnings(brine_time="88.3 min")
    assert "in print" in warnings(brine_time="88.5 min")
