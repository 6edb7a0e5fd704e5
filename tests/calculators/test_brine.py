"""The refill of the brine tank."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run

SALT = st.floats(0.5, 60)
FLOW = st.floats(0.05, 3)
STRENGTH = st.floats(1, 3.1)
STEP = st.sampled_from([0.1, 0.5, 1, 2, 5])


@given(SALT, SALT, FLOW, STEP)
def test_more_salt_never_takes_less_time(answer, one, other, flow, step):
    less, more = sorted([one, other])
    short, long = (
        answer("brine-refill", "refill_time", salt=salt, refill_flow=flow, time_step=step)
        for salt in (less, more)
    )

    assert short <= long


@given(SALT, FLOW, STRENGTH, STEP)
def test_the_set_time_dissolves_at_least_the_salt_wanted(answer, salt, flow, strength, step):
    inputs = {"salt": salt, "refill_flow": flow, "salt_in_water": strength, "time_step": step}
    time = answer("brine-refill", "refill_time", **inputs)
    exact = answer("brine-refill", "exact_time", **inputs)
    dissolved = answer("brine-refill", "salt_dissolved", **inputs)

    assert exact - 1e-8 * step <= time < exact + step
    assert time / step == pytest.approx(round(time / step))
    assert salt * (1 - 1e-8) - 1e-8 <= dissolved < salt + step * flow * strength + 1e-9
    assert dissolved == pytest.approx(time * flow * strength)


@given(SALT, STRENGTH)
def test_water_is_proportional_to_salt(answer, salt, strength):
    water = answer("brine-refill", "water", salt=salt, refill_flow=1, salt_in_water=strength)

    assert water * strength == pytest.approx(salt)


@given(SALT, st.floats(0.05, 1), st.floats(1, 3))
def test_twice_the_flow_halves_the_exact_time(answer, salt, flow, times):
    slow = answer("brine-refill", "exact_time", salt=salt, refill_flow=flow)
    fast = answer("brine-refill", "exact_time", salt=salt, refill_flow=flow * times)

    assert slow == pytest.approx(fast * times)


@given(SALT, FLOW)
def test_brine_is_more_than_the_water_it_was_made_of(answer, salt, flow):
    inputs = {"salt": salt, "refill_flow": flow}
    let_in = answer("brine-refill", "refill_time", **inputs) * flow

    assert 1.1 * let_in < answer("brine-refill", "brine", **inputs) < 1.15 * let_in


@pytest.mark.parametrize(
    ("salt", "warned"),
    [(9, False), (10.5, False), (10.44, False), (10.43, True), (9.1, True)],
)
def test_much_more_salt_than_wanted_is_warned_about(salt, warned):
    """A minute at 1 gpm is 3 lb: 9.1 lb become 12 lb, 10.44 lb become not quite 15 % more."""
    result = run("brine-refill", {"salt": salt, "refill_flow": 1})

    assert any("more salt than wanted" in text for text in result["warnings"]) == warned
