"""Pressure lost in service."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.pipe import hazen_williams

BED = {"flow": 8, "tank_diameter": 10, "bed_depth": 33}
FLOW = st.floats(1, 20)
DEPTH = st.floats(10, 60)
MORE = st.floats(1.01, 1.5)

OVER_MARK = (
    "The softener alone costs more than 15 psi, the most that the standard allows at the rated "
    "flow."
)
OVER_FEDERAL = (
    "With its pipe the softener costs more than 10 psi, the most that federal buildings allow: the "
    "shower may tell."
)
TOO_SHORT = "The water is in the bed for too short a time: expect hardness to slip through."
NOT_ALL_DAY = "The bed stands this flow for some minutes, not all day."
PLUGGED = (
    "The loss is more than twice what is expected: look for broken or swollen beads, dirt in the "
    "bed and plugged screens."
)


def numbers(**inputs):
    result = run("service-pressure", {**BED, **inputs})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items()}


def warnings(**inputs):
    said = run("service-pressure", {**BED, **inputs})["warnings"]
    return [text.replace("\u00a0", " ") for text in said if "the usual" not in text]


def test_eight_gallons_a_minute_by_hand():
    """By Ergun 1.4875889 + 0.1360110 psi/ft; valve (8 ÷ 4)²; bed 0.5454154 ft² × 2.75 ft."""
    assert numbers() == pytest.approx(
        {
            "bed_loss": 4.4648998,
            "bed_loss_by_carman": 5.4083142,
            "valve_loss": 4,
            "pipe_loss": 0.7351274,
            "softener_loss": 8.4648998,
            "total_loss": 9.2000272,
            "margin": 6.5351002,
            "stay": 1.4024967,
        },
        rel=1e-6,
    )


def test_fine_beads_and_full_voids_cost_twice_as_much():
    fines = numbers(bead=0.45, voids=36)

    assert fines["bed_loss"] == pytest.approx(10.1, abs=0.1)


@given(FLOW, MORE)
def test_every_loss_rises_with_the_flow(flow, times):
    once, more = numbers(flow=flow), numbers(flow=flow * times)

    for loss in ("bed_loss", "bed_loss_by_carman"):
        assert times * once[loss] < more[loss] < times**2 * once[loss]
    assert more["valve_loss"] == pytest.approx(times**2 * once["valve_loss"])
    assert more["pipe_loss"] == pytest.approx(times**1.852 * once["pipe_loss"])
    assert more["stay"] == pytest.approx(once["stay"] / times)


@given(DEPTH, st.floats(1.01, 1.2))
def test_a_deeper_bed_costs_and_holds_in_proportion(depth, times):
    once, deeper = numbers(bed_depth=depth), numbers(bed_depth=depth * times)

    for value in ("bed_loss", "bed_loss_by_carman", "stay"):
        assert deeper[value] == pytest.approx(times * once[value])
    assert deeper["valve_loss"] == once["valve_loss"]


@given(st.floats(6, 15), MORE)
def test_a_wider_tank_costs_less_and_holds_longer(diameter, times):
    once, wider = numbers(tank_diameter=diameter), numbers(tank_diameter=diameter * times)

    assert wider["bed_loss"] < once["bed_loss"]
    assert wider["bed_loss_by_carman"] < once["bed_loss_by_carman"]
    assert wider["stay"] == pytest.approx(times**2 * once["stay"])


@given(st.floats(33, 100), st.floats(1, 10))
def test_cold_water_costs_more_in_the_bed(temperature, more):
    cold, warm = numbers(temperature=temperature), numbers(temperature=temperature + more)

    assert cold["bed_loss"] > warm["bed_loss"]
    assert cold["bed_loss_by_carman"] > warm["bed_loss_by_carman"]
    assert cold["valve_loss"] == warm["valve_loss"]


@given(st.floats(0.45, 0.8), st.floats(32, 48), st.floats(1.01, 1.2))
def test_fines_and_dirt_cost_more(bead, voids, times):
    once = numbers(bead=bead, voids=voids)

    assert numbers(bead=bead * times, voids=voids)["bed_loss"] < once["bed_loss"]
    assert numbers(bead=bead, voids=voids + times)["bed_loss"] < once["bed_loss"]


@given(FLOW, st.floats(0.5, 2), st.floats(0.1, 100), st.floats(60, 160))
def test_the_pipe_costs_by_its_length_and_bore_and_smoothness(flow, bore, length, smoothness):
    values = numbers(flow=flow, pipe_bore=bore, pipe_length=length, smoothness=smoothness)

    assert values["pipe_loss"] == pytest.approx(length * hazen_williams(flow, bore, smoothness, 55))
    assert numbers(pipe_length=0)["pipe_loss"] == 0


@given(FLOW, DEPTH, st.floats(1, 40))
def test_the_parts_add_up(flow, depth, coefficient):
    values = numbers(flow=flow, bed_depth=depth, valve_coefficient=coefficient)

    assert values["valve_loss"] == pytest.approx((flow / coefficient) ** 2)
    assert values["softener_loss"] == pytest.approx(values["bed_loss"] + values["valve_loss"])
    assert values["total_loss"] == pytest.approx(values["softener_loss"] + values["pipe_loss"])
    assert values["margin"] + values["softener_loss"] == pytest.approx(15)


def test_a_coefficient_of_one_costs_the_square_in_either_system():
    us = run("service-pressure", {**BED, "valve_coefficient": "4 Cv"})["values"]
    metric = run(
        "service-pressure",
        {
            "flow": "8 gpm",
            "tank_diameter": "10 in",
            "bed_depth": "33 in",
            "valve_coefficient": "1 Kv",
        },
        "metric",
    )["values"]

    assert us["valve_loss"]["number"] == pytest.approx(4)
    # 8 gpm are 1.816994 m3/h, whose square is the loss in bar
    assert metric["valve_loss"]["number"] == pytest.approx(1.816994**2, rel=1e-5)


@pytest.mark.parametrize(
    ("coefficient", "length", "warned"),
    # the bed costs 4.4649 psi and the valve the rest of 15 psi at 2.4645
    [
        (2.464, 0, [OVER_MARK]),
        (2.465, 0, [OVER_FEDERAL]),
        (2.464, 100, [OVER_MARK]),
        (4, 20.8, []),
        (4, 20.9, [OVER_FEDERAL]),
        (3.401, 0, []),
        (3.400, 0, [OVER_FEDERAL]),
    ],
)
def test_a_loss_above_a_mark_is_warned_about(coefficient, length, warned):
    said = warnings(valve_coefficient=coefficient, pipe_length=length)

    assert said == [*warned, NOT_ALL_DAY]


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_mark_is_told_in_the_readers_unit(units):
    inputs = {"flow": "16 gpm", "tank_diameter": "10 in", "bed_depth": "33 in"}

    said = run("service-pressure", inputs, units)["warnings"][0].replace("\u00a0", " ")

    assert ("1.034 bar" if units == "metric" else "15 psi") in said


@pytest.mark.parametrize(
    ("flow", "warned"),
    # the bed holds 11.21997 gal
    [
        (7.47, []),
        (7.49, [NOT_ALL_DAY]),
        (14.95, [NOT_ALL_DAY]),
        (14.97, [TOO_SHORT]),
    ],
)
def test_a_short_stay_is_warned_about(flow, warned):
    said = warnings(flow=flow, valve_coefficient=20, pipe_length=0)

    assert [text for text in said if text in (TOO_SHORT, NOT_ALL_DAY)] == warned


@pytest.mark.parametrize(
    ("measured", "share", "warned"),
    [(0, 0, False), (9.2000272, 100, False), (18.39, 199.9, False), (18.41, 200.1, True)],
)
def test_a_loss_twice_the_expected_points_to_a_plugged_bed(measured, share, warned):
    values = numbers(measured=measured)

    assert values["measured_share"] == pytest.approx(share, abs=0.02)
    assert (PLUGGED in warnings(measured=measured)) == warned


def test_without_gauges_there_is_no_share():
    assert "measured_share" not in numbers()


def test_the_marks_themselves_are_not_warned_about():
    """Each input is worked back so that the answer falls on its mark."""
    usual = numbers()
    loss, held = usual["bed_loss"], usual["stay"] * 8
    wide = {"valve_coefficient": 20, "pipe_length": 0}

    assert warnings(valve_coefficient=8 / (15 - loss) ** 0.5, pipe_length=0) == [
        OVER_FEDERAL,
        NOT_ALL_DAY,
    ]
    assert warnings(valve_coefficient=8 / (10 - loss) ** 0.5, pipe_length=0) == [NOT_ALL_DAY]
    assert warnings(flow=held / 1.5, **wide) == []
    assert NOT_ALL_DAY in warnings(flow=held / 0.75, **wide)
    assert PLUGGED not in warnings(measured=2 * usual["total_loss"])
