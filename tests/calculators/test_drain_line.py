"""What the drain line costs in pressure."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.pipe import darcy_weisbach, hazen_williams, height_pressure

LINE = {"flow": 2.4, "length": 30, "rise": 6, "pressure": 55}
FLOW = st.floats(0.5, 10)
BORE = st.floats(0.375, 1)
MORE = st.floats(1.01, 1.5)

SPARE = (
    "The pressure does not suffice: backwash and fast rinse run below their rating, and the "
    "injector draws less. Use a wider, shorter or lower line."
)
APART = (
    "The two laws of friction lie far apart here, as with old rough pipe, a trickle or a rush: "
    "measure before you change the line."
)


def numbers(**inputs):
    result = run("drain-line", {**LINE, **inputs})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items()}


def warnings(**inputs):
    """Return the warnings but for those of unusual inputs."""
    said = run("drain-line", {**LINE, **inputs})["warnings"]
    return [text for text in said if text in (SPARE, APART)]


def test_thirty_feet_of_half_inch_six_feet_up():
    """0.0711571 psi/ft × 30 ft and 0.4332708 psi/ft × 6 ft, of 55 − 5 − 15 psi."""
    assert numbers() == pytest.approx(
        {
            "friction": 2.1347137,
            "friction_by_darcy": 30 * darcy_weisbach(2.4, 0.5, 55),
            "lift": 2.5996251,
            "line_loss": 4.7343388,
            "spare": 30.2656612,
            "longest": (35 - 2.5996251) / 0.07115712,
        },
        rel=1e-6,
    )
    assert warnings() == []


@given(FLOW, BORE, MORE)
def test_friction_rises_with_flow_and_length_and_falls_with_bore(flow, bore, times):
    once = numbers(flow=flow, bore=bore)

    for friction in ("friction", "friction_by_darcy"):
        longer = numbers(flow=flow, bore=bore, length=30 * times)
        assert numbers(flow=flow * times, bore=bore)[friction] > once[friction]
        assert numbers(flow=flow, bore=bore * times)[friction] < once[friction]
        assert longer[friction] == pytest.approx(times * once[friction])


@given(st.floats(60, 140), MORE)
def test_a_rougher_line_costs_more_by_the_rule_alone(smoothness, times):
    rough = numbers(smoothness=smoothness)
    smooth = numbers(smoothness=smoothness + 20 * (times - 1))

    assert rough["friction"] > smooth["friction"]
    assert rough["friction_by_darcy"] == smooth["friction_by_darcy"]


@given(st.integers(0, 40), st.floats(1, 60))
def test_a_fitting_counts_for_two_feet(fittings, length):
    with_fittings = numbers(fittings=fittings, length=length)
    longer = numbers(length=length + 2 * fittings)

    assert with_fittings["friction"] == pytest.approx(longer["friction"])
    assert with_fittings["friction_by_darcy"] == pytest.approx(longer["friction_by_darcy"])
    assert with_fittings["longest"] == pytest.approx(longer["longest"] - 2 * fittings)


@given(st.floats(0.1, 20), st.floats(33, 110))
def test_lift_is_the_weight_of_the_water(rise, temperature):
    values = numbers(rise=rise, temperature=temperature)

    assert values["lift"] == pytest.approx(rise * height_pressure(temperature))
    assert values["line_loss"] == pytest.approx(values["lift"] + values["friction"])


@given(FLOW, st.floats(-10, -0.1))
def test_a_falling_line_gives_back_no_more_than_its_friction(flow, rise):
    values = numbers(flow=flow, rise=rise)

    assert values["lift"] == pytest.approx(rise * height_pressure(55))
    assert values["line_loss"] == pytest.approx(max(0, values["friction"] + values["lift"]))
    assert values["spare"] == pytest.approx(55 - 5 - 15 - values["line_loss"])


def test_a_line_that_falls_steeply_does_not_run_full():
    steps = run("drain-line", {**LINE, "rise": -10})["workings"]

    assert steps[5]["sentence"] == (
        "The fall gives more than the friction takes, so the line does not run full and pushes "
        "nothing back."
    )
    assert steps[5]["result"] == "0\u00a0psi"


@given(st.floats(40, 100), st.integers(0, 20), st.integers(0, 20))
def test_what_is_spent_and_spare_is_the_pressure(pressure, valve, need):
    values = numbers(pressure=pressure, valve_loss=valve, control_need=need)

    assert values["spare"] + values["line_loss"] + valve + need == pytest.approx(pressure)


@given(FLOW, st.floats(-10, 8), st.integers(0, 3))
def test_the_longest_line_leaves_nothing_spare(flow, rise, fittings):
    inputs = {"flow": flow, "rise": round(rise, 2), "fittings": fittings}
    longest = numbers(**inputs).get("longest", 0)
    if 0 < longest <= 200:
        assert numbers(**inputs, length=longest)["spare"] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("pressure", "warned"), [(24.73, True), (24.74, False)])
def test_pressure_that_does_not_suffice_is_warned_about(pressure, warned):
    """Valve 5, control 15 and line 4.7343 psi."""
    values = numbers(pressure=pressure)

    assert (values["spare"] < 0) == warned
    assert warnings(pressure=pressure) == [SPARE] * warned
    assert (values["longest"] < 30) == warned


def test_where_no_line_is_short_enough_none_is_called_longest():
    """Valve, control and lift take 22.5996 psi; two fittings take 4 ft of line."""
    assert "longest" not in numbers(pressure=22.5)
    assert "longest" in numbers(pressure=22.7)
    assert "longest" not in numbers(pressure=22.7, fittings=2)


def test_no_spare_pressure_is_no_warning():
    inputs = {**LINE, "length": 0, "rise": 0, "pressure": 20, "valve_loss": 5, "control_need": 15}

    result = run("drain-line", inputs)

    assert result["values"]["spare"]["number"] == 0
    assert SPARE not in result["warnings"]


@pytest.mark.parametrize(
    ("inputs", "warned"),
    [
        ({}, False),
        ({"flow": 0.05, "bore": 1.5}, True),
        ({"smoothness": 80}, True),
        ({"flow": 0.7}, False),
    ],
)
def test_laws_that_lie_far_apart_are_warned_about(inputs, warned):
    assert (APART in warnings(**inputs)) == warned


@pytest.mark.parametrize(("share", "warned"), [(0.749, 1), (0.751, 0), (1.329, 0), (1.331, 1)])
def test_laws_may_differ_by_a_quarter_or_a_third(share, warned):
    """The rule goes with smoothness to the power of 1.852, so this one gives that share."""
    physical = darcy_weisbach(1, 0.5, 55)
    smoothness = 140 * (share * hazen_williams(1, 0.5, 140, 55) / physical) ** (1 / 1.852)

    assert warnings(flow=1, bore=0.5, smoothness=smoothness) == [APART] * warned
