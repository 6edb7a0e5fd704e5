"""The bed in rising water."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.beads import lifted_loss
from calculators.bed import verdict

BED = {"flow": 2.4, "tank_diameter": 10, "bed_depth": 33, "tank_height": 90}
FLOW = st.floats(2, 4)
TEMPERATURE = st.floats(40, 90)

TOO_FAR = "too far: resin may go to the drain"
ERGUN = "By the Ergun equation the bed would reach the top: watch the drain for beads."
TOO_NEAR = (
    "The lifted bed comes too near the top of the tank: resin goes to the drain. See to the flow "
    "control, and to the depth of the bed."
)
FREEBOARD = (
    "The tank leaves less than half the depth of the bed free, which is less than federal works "
    "ask for: it may be filled too high."
)


def numbers(**inputs):
    result = run("bed-expansion", {**BED, **inputs})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items() if "number" in value}


@pytest.mark.parametrize(
    ("lifted", "free", "word"),
    [
        (0, 20, "the bed does not lift"),
        (0, 1, "the bed does not lift"),
        (1, 20, "too little: the bed will not clean"),
        (19.9, 20, "too little: the bed will not clean"),
        (20, 20, "a little low"),
        (29.9, 20, "a little low"),
        (30, 20, "good"),
        (50, 20, "good"),
        (50 * (1 + 1e-15), 20, "good"),
        (50.1, 20, "ample: watch for beads at the drain"),
        (75, 20, "ample: watch for beads at the drain"),
        (75.1, 20, TOO_FAR),
        (40, 3, "good"),
        (40, 2.9, TOO_FAR),
        (1, 2.9, TOO_FAR),
    ],
)
def test_the_verdict(lifted, free, word):
    assert verdict(lifted, free) == word


@given(FLOW, TEMPERATURE, st.floats(0.05, 1))
def test_more_flow_and_colder_water_lift_the_bed_more(flow, temperature, more):
    once = numbers(flow=flow, temperature=temperature)

    for other in (
        numbers(flow=flow + more, temperature=temperature),
        numbers(flow=flow, temperature=temperature - more),
    ):
        assert other["expansion"] > once["expansion"] > 0
        assert other["expansion_by_ergun"] > once["expansion_by_ergun"]
        assert other["free_height"] < once["free_height"]


@given(FLOW, st.floats(0.5, 0.9), st.floats(1.01, 1.2))
def test_larger_beads_and_a_wider_tank_lift_less(flow, bead, times):
    once = numbers(flow=flow, bead=bead)
    assume(once["expansion"] > 0)

    assert numbers(flow=flow, bead=bead * times)["expansion"] < once["expansion"]
    assert numbers(flow=flow, bead=bead, tank_diameter=10 * times)["expansion"] < once["expansion"]


@given(FLOW, TEMPERATURE, st.floats(6, 40))
def test_the_flow_for_half_lifts_the_bed_by_half(flow, temperature, depth):
    half = numbers(flow=flow, temperature=temperature, bed_depth=depth)["flow_for_half"]
    lifted = numbers(flow=half, temperature=temperature, bed_depth=depth)

    assert lifted["expansion"] == pytest.approx(50)
    assert lifted["free_height"] == pytest.approx(90 - 1.5 * depth)


@given(st.floats(0.1, 30), st.floats(33, 110), st.floats(6, 72), st.floats(12, 96))
def test_nothing_is_ever_less_than_none(flow, temperature, depth, height):
    assume(depth <= height)
    inputs = {**BED, "flow": flow, "bed_depth": depth, "tank_height": height}
    result = run("bed-expansion", {**inputs, "temperature": temperature})
    assume(not result["problems"])

    assert all(value.get("number", 0) >= 0 for value in result["values"].values())


@given(FLOW, st.floats(6, 40))
def test_the_pressure_of_a_lifted_bed_knows_no_flow(flow, depth):
    assert numbers(flow=flow, bed_depth=depth)["lifted_loss"] == pytest.approx(
        lifted_loss(depth, 55)
    )


def test_a_trickle_lifts_nothing():
    result = run("bed-expansion", {**BED, "flow": 0.3})

    assert result["values"]["verdict"]["words"] == "the bed does not lift"
    assert result["values"]["expansion"]["number"] == 0
    assert result["values"]["free_height"]["number"] == 57
    assert result["warnings"] == []
    step = next(step for step in result["workings"] if step["formula"] == "0")
    assert step["sentence"] == (
        "That is no more than the voids of the settled bed, so it lies still."
    )
    assert step["result"] == "0\u00a0%"


@pytest.mark.parametrize(("height", "refused"), [(33, False), (32.9, True)])
def test_resin_deeper_than_the_tank_is_refused(height, refused):
    result = run("bed-expansion", {**BED, "tank_height": height})

    assert result["problems"] == (
        {"bed_depth": "The resin cannot be deeper than the tank is high."} if refused else {}
    )


@pytest.mark.parametrize(("voids", "refused"), [(89.9, False), (90.1, True)])
def test_a_flow_that_carries_the_beads_off_is_refused(voids, refused):
    # area × settling flow × voids to the power of the index, of a bead of 0.58 mm at 55 °F
    flow = 0.54541539 * 32.963832 * (voids / 100) ** 3.5094988

    result = run("bed-expansion", {**BED, "flow": flow})

    assert result["problems"] == (
        {
            "flow": "This flow carries the beads off one by one, so no bed is left in the tank: "
            "check the flow, the diameter and the size of the beads."
        }
        if refused
        else {}
    )


@pytest.mark.parametrize(("flow", "refused"), [(9.16, False), (9.17, True)])
def test_a_flow_at_which_ergun_alone_leaves_no_bed_is_refused(flow, refused):
    """Beads of 1.2 mm in a thin tank: by Ergun their voids reach 90 percent at 9.1643 gpm."""
    inputs = {**BED, "tank_diameter": 6, "bead": 1.2, "bed_depth": 12, "flow": flow}

    assert ("flow" in run("bed-expansion", inputs)["problems"]) == refused


@pytest.mark.parametrize(("height", "warned"), [(49.5, False), (49.4, True)])
def test_a_tank_filled_too_high_is_warned_about(height, warned):
    result = run("bed-expansion", {**BED, "flow": 1.5, "tank_height": height})

    assert (FREEBOARD in result["warnings"]) == warned


@pytest.mark.parametrize(
    ("height", "warned", "word"),
    # the bed of 33 in stands 46.1045 in high, or 53.8829 in by the Ergun equation
    [
        (53.9, [], "good"),
        (53.88, [ERGUN], "good"),
        (49.2, [FREEBOARD, ERGUN], "good"),
        (49.1, [FREEBOARD, TOO_NEAR], TOO_FAR),
        (40, [FREEBOARD, TOO_NEAR], TOO_FAR),
    ],
)
def test_a_bed_that_comes_near_the_top_is_warned_about(height, warned, word):
    result = run("bed-expansion", {**BED, "tank_height": height})

    assert result["warnings"] == warned
    assert result["values"]["verdict"]["words"] == word


def test_a_bed_higher_than_its_tank_leaves_nothing_free():
    result = run("bed-expansion", {**BED, "tank_height": 40})

    assert result["values"]["free_height"]["shown"] == "0.0\u00a0in"
    step = next(step for step in result["workings"] if step["formula"] == "0")
    assert step["sentence"] == "So high a bed fills the tank to its top, and nothing stays free."
    assert step["result"] == "0\u00a0in"


def test_three_inches_free_are_enough():
    height = 93 - numbers()["free_height"]
    result = run("bed-expansion", {**BED, "tank_height": height})

    assert result["values"]["verdict"]["words"] == "good"
    assert result["warnings"] == [FREEBOARD, ERGUN]


def test_a_bed_that_lies_still_at_the_top_loses_nothing():
    result = run("bed-expansion", {**BED, "flow": 0.3, "tank_height": 33})

    assert result["values"]["verdict"]["words"] == "the bed does not lift"
    assert result["warnings"] == [FREEBOARD]


def test_a_bed_by_hand():
    assert numbers() == pytest.approx(
        {
            "expansion": 39.710563,
            "expansion_by_ergun": 63.281602,
            "free_height": 90 - 46.104486,
            "flow_for_half": 2.8784408,
            "lifted_loss": 0.18951357,
        },
        rel=1e-6,
    )
