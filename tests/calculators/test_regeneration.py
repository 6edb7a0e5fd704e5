"""Drawing brine and rinsing it through the bed."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run

#: Flows of an injector that hold at 50 psi: 0.3 gpm of brine, 0.6 gpm of its own water.
HOUSE = {"brine": 3, "resin_volume": 1, "slow_rinse_flow": 0.6, "brine_draw_flow": 0.9}
BRINE = st.floats(0.2, 20)
RESIN = st.floats(0.5, 4)
PRESSURE = st.floats(25, 80)
MORE = st.floats(1.01, 2)

THIN = "The brine is thin at the bed: it gives back less capacity."
STRONG = "The brine is strong at the bed: it passes before all of it has worked."
LITTLE_TIME = "The draw leaves little time for slow rinse: there is no room for a weak injector."
SHORT = "The slow rinse is short: the first water afterwards may taste of salt."
LONG = "The slow rinse is longer than any in print: it may waste water."
LEFT = (
    "Brine is left each time and the salt is not rinsed out: clean the injector, see to the "
    "pressure and the drain line, or set more time."
)
NOTHING_DRAWN = "At this pressure the injector draws no brine at all."


def numbers(**inputs):
    """Return the numbers of an answer; fail when the calculator refuses."""
    result = run("brine-draw", {**HOUSE, **inputs})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items()}


def warnings(**inputs):
    result = run("brine-draw", {**HOUSE, **inputs})
    assert result["problems"] == {}
    return result["warnings"]


def sentences(**inputs):
    return list(results(**inputs))


def results(**inputs):
    """Return the result of each step of the working by its sentence."""
    steps = run("brine-draw", {**HOUSE, **inputs})["workings"]
    return {step["sentence"]: step["result"].replace("\u00a0", " ") for step in steps}


def test_an_injector_at_the_pressure_of_its_sheet():
    values = numbers()

    assert values == pytest.approx(
        {
            "draw_time": 10,  # 3 gal ÷ 0.3 gpm
            "slow_rinse_time": 50,
            "slow_rinse_water": 30,  # 50 min × 0.6 gpm
            "bed_volumes": 30 * 231 / 1728,
            "strength": 26.4 * 0.36 / 0.96,
            "suction": 0.3,
            "motive_flow": 0.6,
            "least_suction": 0.05,
            "brine_left": 0,
        }
    )


def test_an_injector_at_low_pressure():
    """At 23.75 psi a quarter of the pressure above 15 psi is left, so half the suction."""
    values = numbers(pressure=28.75, back_pressure=5)

    assert values["suction"] == pytest.approx(0.15)
    assert values["motive_flow"] == pytest.approx(0.6 * 0.475**0.5)
    assert values["draw_time"] == pytest.approx(20)


def test_the_sheet_may_hold_at_another_pressure():
    values = numbers(flow_pressure=30, pressure=75)

    assert values["suction"] == pytest.approx(0.3 * 2)
    assert values["motive_flow"] == pytest.approx(0.6 * 2.5**0.5)


def test_without_figures_an_injector_is_taken_that_fits_the_resin():
    inputs = {"brine": 3, "resin_volume": 2, "figures_from": "resin volume", "pressure": 23.75}
    values = run("brine-draw", inputs)["values"]

    assert values["suction"]["number"] == pytest.approx(0.16 * 2 / 2)
    assert values["motive_flow"]["number"] == pytest.approx(0.3 * 2 * 0.475**0.5)


@given(BRINE, RESIN, PRESSURE, st.floats(0.01, 9), st.integers(10, 120))
def test_no_brine_and_no_time_is_lost(brine, resin, pressure, back, minutes):
    values = numbers(
        brine=brine,
        resin_volume=resin,
        pressure=pressure,
        back_pressure=back,
        brine_time=minutes,
        figures_from="resin volume",
        slow_rinse_flow=None,
        brine_draw_flow=None,
    )
    assume("draw_time" in values)
    drawing = min(values["draw_time"], minutes)

    assert values["suction"] * drawing + values["brine_left"] == pytest.approx(brine)
    assert drawing + values["slow_rinse_time"] == pytest.approx(minutes)
    assert values["slow_rinse_water"] == pytest.approx(
        values["slow_rinse_time"] * values["motive_flow"]
    )
    assert values["bed_volumes"] * resin * 1728 / 231 == pytest.approx(values["slow_rinse_water"])
    assert (values["brine_left"] > 1e-9) == (values["suction"] < values["least_suction"] - 1e-9)
    assert min(values.values()) >= 0


@given(PRESSURE, st.floats(0.1, 20))
def test_back_pressure_is_pressure_lost(pressure, back):
    assume(pressure - back >= 10)

    behind = numbers(pressure=pressure, back_pressure=back)
    free = numbers(pressure=pressure - back)

    assert behind == pytest.approx(free)


@given(PRESSURE, st.floats(1, 20))
def test_more_pressure_draws_faster_and_stronger(pressure, more):
    low, high = numbers(pressure=pressure), numbers(pressure=pressure + more)

    assert high["draw_time"] < low["draw_time"]
    assert high["motive_flow"] > low["motive_flow"]
    assert high["strength"] > low["strength"]


@given(BRINE, MORE)
def test_more_brine_takes_longer_in_proportion(brine, times):
    once, more = numbers(brine=brine), numbers(brine=brine * times)

    assert more["draw_time"] == pytest.approx(times * once["draw_time"])
    assert more["least_suction"] == pytest.approx(times * once["least_suction"])
    assert more["strength"] == once["strength"]


def test_a_draw_longer_than_the_time_set_leaves_brine():
    values = numbers(brine=7.5, brine_time=20)

    assert values["draw_time"] == pytest.approx(25)
    assert values["brine_left"] == pytest.approx(1.5)
    assert values["least_suction"] == pytest.approx(0.375)
    assert values["slow_rinse_time"] == values["slow_rinse_water"] == values["bed_volumes"] == 0
    assert warnings(brine=7.5, brine_time=20) == [LEFT]
    assert sentences(brine=7.5, brine_time=20)[5:8] == [
        "The suction is less, so brine stays in the tank each time and no slow rinse follows.",
        "To draw all of it would take this time.",
        "No time is left for slow rinse.",
    ]


def test_a_draw_that_just_fits_leaves_no_brine_and_no_rinse():
    values = numbers(brine=6, brine_time=20)

    assert values["brine_left"] == values["slow_rinse_time"] == 0
    assert warnings(brine=6, brine_time=20) == [LITTLE_TIME, SHORT]


@pytest.mark.parametrize("pressure", [10, 15])
def test_an_injector_without_pressure_draws_nothing(pressure):
    values = numbers(pressure=pressure)

    assert "draw_time" not in values
    assert values["suction"] == values["strength"] == values["slow_rinse_time"] == 0
    assert values["brine_left"] == 3
    assert warnings(pressure=pressure)[-1:] == [NOTHING_DRAWN]
    assert LEFT not in warnings(pressure=pressure)
    steps = results(pressure=pressure)
    assert steps["Up to its least pressure the injector does not draw."] == "0 gpm"
    assert steps["No time is left for slow rinse."] == "0 min"
    assert steps["The injector's water rinses on alone."] == "0 gal"


def test_just_above_the_least_pressure_a_little_is_drawn():
    values = numbers(pressure=15.1)

    assert 0 < values["suction"] < 0.02
    assert LEFT in warnings(pressure=15.1)


@pytest.mark.parametrize(("back", "refused"), [(29.9, False), (30, True), (40, True)])
def test_a_line_that_takes_all_the_pressure_is_refused(back, refused):
    result = run("brine-draw", {**HOUSE, "pressure": 30, "back_pressure": back})

    assert result["problems"] == (
        {"back_pressure": "The drain line takes all the pressure, so nothing flows through it."}
        if refused
        else {}
    )


@pytest.mark.parametrize(("draw", "refused"), [(0.61, False), (0.6, True), (0.5, True)])
def test_an_injector_that_draws_nothing_by_its_sheet_is_refused(draw, refused):
    result = run("brine-draw", {**HOUSE, "brine_draw_flow": draw})

    assert result["problems"] == (
        {
            "brine_draw_flow": "While brine is drawn more must run at the drain than in the slow "
            "rinse: if it does not, the injector draws nothing."
        }
        if refused
        else {}
    )


@pytest.mark.parametrize(
    ("suction", "warned"),
    # 8 percent: suction is 8 ÷ (1.2 × 18.4) of the water; 12 percent: 12 ÷ (1.2 × 14.4)
    [(0.3622, [THIN]), (0.3625, []), (0.6943, []), (0.6946, [STRONG])],
)
def test_brine_from_eight_to_twelve_percent_is_right(suction, warned):
    said = warnings(slow_rinse_flow=1, brine_draw_flow=1 + suction, resin_volume=3)

    assert [text for text in said if text in (THIN, STRONG)] == warned


@pytest.mark.parametrize("suction", [8 / 22.08, 12 / 17.28])
def test_eight_and_twelve_percent_themselves_are_right(suction):
    assert warnings(slow_rinse_flow=1, brine_draw_flow=1 + suction, resin_volume=3) == []


@pytest.mark.parametrize(("brine", "warned"), [(4.5, False), (4.53, True), (8.9, True)])
def test_a_draw_in_the_last_quarter_hour_leaves_little_time(brine, warned):
    """0.3 gpm draws 4.5 gal in 15 of 30 min."""
    assert (LITTLE_TIME in warnings(brine=brine, brine_time=30)) == warned


@pytest.mark.parametrize(
    ("resin", "warned"), [(3.342, []), (3.343, [SHORT]), (1.337, []), (1.336, [LONG])]
)
def test_a_slow_rinse_of_one_and_a_fifth_to_three_bed_volumes_is_right(resin, warned):
    """50 min × 0.6 gpm are 30 gal, 4.0104 ft³."""
    assert warnings(resin_volume=resin) == warned


@pytest.mark.parametrize(("volumes", "minutes"), [(1.2, 10 + 1.2 * 1728 / 231 / 0.6), (3, None)])
def test_the_ends_of_the_band_of_slow_rinse_are_right(volumes, minutes):
    minutes = minutes or 10 + volumes * 1728 / 231 / 0.6
    said = warnings(brine_time=minutes)

    assert numbers(brine_time=minutes)["bed_volumes"] == pytest.approx(volumes)
    assert SHORT not in said
    assert LONG not in said


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_same_unit_in_both_systems(units):
    result = run(
        "brine-draw",
        {
            "brine": "3 gal",
            "resin_volume": "1 ft³",
            "slow_rinse_flow": "0.6 gpm",
            "brine_draw_flow": "0.9 gpm",
            "pressure": "50 psi",
            "flow_pressure": "50 psi",
        },
        units,
    )

    assert result["values"]["draw_time"]["shown"] == "10.0\u00a0min"
    assert result["values"]["bed_volumes"]["shown"] == "4.0"
    assert result["warnings"] == [LONG]
