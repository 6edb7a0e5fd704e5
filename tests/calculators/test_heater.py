"""The washout of the water heater."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.heater import draw_for_share, share_left


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


TANK = st.floats(5, 200)
DRAWN = readings(0, 1000)


@given(TANK, DRAWN, st.floats(0.1, 500))
def test_less_is_left_after_a_larger_draw(tank, drawn, more):
    assume(drawn + more < 20 * tank)

    assert share_left(drawn + more, tank) < share_left(drawn, tank) <= 1


@given(TANK, DRAWN, DRAWN)
def test_two_draws_are_one_larger_draw(tank, one, other):
    assert share_left(one, tank) * share_left(other, tank) == pytest.approx(
        share_left(one + other, tank)
    )


@given(st.floats(1e-6, 1), TANK)
def test_the_draw_for_a_share_leaves_that_share(share, tank):
    assert share_left(draw_for_share(share, tank), tank) == pytest.approx(share)


@given(TANK, readings(0, 200), readings(0, 200), DRAWN)
def test_hot_water_lies_between_old_and_new(answer, tank, before, cold, drawn):
    hot = answer("heater-washout", "hot_now", tank=tank, before=before, cold=cold, drawn=drawn)

    assert min(before, cold) - 1e-9 <= hot <= max(before, cold) + 1e-9


@given(TANK, st.floats(5, 100), readings(0, 0.5), st.floats(1, 4))
def test_the_water_needed_gives_the_hardness_wanted(answer, tank, before, cold, target):
    inputs = {"tank": tank, "before": before, "cold": cold, "target": target}
    needed = answer("heater-washout", "water_needed", drawn=0, **inputs)
    assume(needed <= 5000)

    assert answer("heater-washout", "hot_now", drawn=needed, **inputs) == pytest.approx(target)


@given(st.floats(5, 60), st.floats(1.01, 3))
def test_the_water_needed_is_proportional_to_the_tank(answer, tank, times):
    small = answer("heater-washout", "water_needed", tank=tank, before=20, drawn=0)
    large = answer("heater-washout", "water_needed", tank=tank * times, before=20, drawn=0)

    assert large == pytest.approx(times * small)


def test_the_wait_is_the_water_needed_over_the_use():
    values = run("heater-washout", {"tank": 50, "before": 20, "drawn": 0, "hot_use": 84})["values"]

    assert values["wait"]["number"] == pytest.approx(values["water_needed"]["number"] / 84)


def test_cold_water_that_is_not_soft_never_gets_there():
    result = run("heater-washout", {"tank": 50, "before": 20, "cold": 3, "drawn": 100, "target": 3})

    assert set(result["values"]) == {"hot_now", "share_left"}
    assert len(result["warnings"]) == 1


def test_hot_water_that_was_soft_enough_needs_no_draw():
    result = run("heater-washout", {"tank": 50, "before": 1, "drawn": 0, "target": 5})

    assert result["values"]["water_needed"]["shown"] == "0\u00a0gal"
    assert result["workings"][-1] == {
        "sentence": "The hot water was no harder than wanted: no draw.",
        "formula": "0",
        "numbers": "0",
        "result": "0\u00a0gal",
    }


@pytest.mark.parametrize("drawn", [150, 3605, 3725, 5000])
@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_heater_flushed_over_and_over_has_nothing_left(drawn, units):
    result = run(
        "heater-washout", {"tank": "5 gal", "before": "20 gpg", "drawn": f"{drawn} gal"}, units
    )

    assert result["problems"] == {}
    assert result["values"]["share_left"]["shown"] == "0.0\u00a0%"
    assert result["values"]["hot_now"]["rounded"] == 0
