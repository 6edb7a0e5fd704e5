"""The bed in backwash."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.bed import verdict

USUAL = {"flow": "2.4 gpm", "tank_diameter": "10 in", "bed_depth": "33 in", "tank_height": "54 in"}


def result(**changed):
    return run("bed-expansion", {**USUAL, **changed})


def numbers(**changed):
    found = result(**changed)
    assert found["problems"] == {}
    return {name: one["number"] for name, one in found["values"].items() if "number" in one}


@given(st.floats(1, 4), st.floats(36, 90), st.floats(0.45, 0.7))
def test_more_flow_colder_water_and_smaller_beads_lift_more(flow, temperature, bead):
    inputs = {"flow": flow, "temperature": temperature, "bead": f"{bead} mm"}
    lifted = numbers(**inputs)["expansion"]
    assume(lifted > 0)

    assert numbers(**{**inputs, "flow": flow * 1.05})["expansion"] > lifted
    assert numbers(**{**inputs, "temperature": temperature - 2})["expansion"] > lifted
    assert numbers(**{**inputs, "bead": f"{bead * 0.97} mm"})["expansion"] > lifted


@given(st.floats(1, 5), st.floats(6, 20), st.floats(36, 90))
def test_the_flow_for_each_area_counts(flow, diameter, temperature):
    wide = run(
        "bed-expansion",
        {**USUAL, "flow": flow * 1.44, "tank_diameter": diameter * 1.2, "temperature": temperature},
    )
    thin = run(
        "bed-expansion",
        {**USUAL, "flow": flow, "tank_diameter": diameter, "temperature": temperature},
    )
    assert bool(wide["problems"]) == bool(thin["problems"])
    assume(not wide["problems"])

    assert wide["values"]["expansion"]["number"] == pytest.approx(
        thin["values"]["expansion"]["number"], abs=1e-6
    )


@given(st.floats(36, 90), st.floats(0.45, 0.7))
def test_the_flow_for_half_lifts_by_half(temperature, bead):
    inputs = {"temperature": temperature, "bead": f"{bead} mm"}
    flow = numbers(**inputs)["flow_for_half"]

    assert numbers(**{**inputs, "flow": flow})["expansion"] == pytest.approx(50)


@given(st.floats(1, 4), st.floats(10, 40))
def test_bed_and_free_height_fill_the_tank(flow, depth):
    found = numbers(flow=flow, bed_depth=depth)

    assert depth * (1 + found["expansion"] / 100) + found["free_height"] == pytest.approx(54)


@pytest.mark.parametrize(
    ("lifted", "free", "word"),
    [
        (0, 20, "the bed does not lift"),
        (0.1, 20, "too little: the bed will not clean"),
        (19.9, 20, "too little: the bed will not clean"),
        (20, 20, "a little low"),
        (29.9, 20, "a little low"),
        (30, 20, "good"),
        (50, 20, "good"),
        (50.1, 20, "ample: watch for beads at the drain"),
        (75, 20, "ample: watch for beads at the drain"),
        (75.1, 20, "too far: resin may go to the drain"),
        (40, 3, "good"),
        (40, 2.9, "too far: resin may go to the drain"),
    ],
)
def test_the_words_change_at_their_marks(lifted, free, word):
    assert verdict(lifted, free) == word


def test_a_slow_flow_leaves_the_bed_lying():
    found = result(flow="0.2 gpm")

    assert found["values"]["expansion"]["number"] == 0
    assert found["values"]["verdict"]["words"] == "the bed does not lift"
    assert any(step["formula"] == "0" for step in found["workings"])


def test_a_flow_that_carries_the_beads_off_is_refused():
    assert "carries the beads off" in result(flow="14 gpm")["problems"]["flow"]


def test_a_flow_at_which_ergun_alone_finds_no_bed_is_refused():
    coarse = {"bead": "1.2 mm", "temperature": "110 °F", "tank_diameter": "8 in"}

    assert result(flow="14 gpm", **coarse)["problems"] == {}
    assert "carries the beads off" in result(flow="21 gpm", **coarse)["problems"]["flow"]


def test_resin_deeper_than_the_tank_is_refused():
    assert "bed_depth" in result(bed_depth="54.1 in")["problems"]
    assert result(bed_depth="54 in")["problems"] == {}


def test_a_tank_filled_too_high_is_told():
    """Half the depth of the bed; the source is named in the calculator."""
    assert result(flow="1 gpm", tank_height="49.6 in")["warnings"] == []
    [said] = result(flow="1 gpm", tank_height="49.4 in")["warnings"]
    assert "less than half the depth of the bed free" in said


def test_what_ergun_would_lift_into_the_drain_is_told():
    assert result(tank_height="54 in")["warnings"] == []
    assert "By the Ergun equation" in result(tank_height="50 in")["warnings"][0]
    assert result(tank_height="50 in")["values"]["free_height"]["number"] > 3
