"""How far the salt falls."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.salt_use import salt_fall

SALT, DENSITY, DIAMETER = st.floats(0.5, 100), st.floats(50, 100), st.floats(8, 48)


@given(SALT, DENSITY, DIAMETER, st.floats(1, 3))
def test_the_fall_scales_with_salt_and_against_density_and_area(salt, density, diameter, times):
    fall = salt_fall(salt, density, diameter)

    assert salt_fall(salt * times, density, diameter) == pytest.approx(fall * times)
    assert salt_fall(salt, density * times, diameter) == pytest.approx(fall / times)
    assert salt_fall(salt, density, diameter * times) == pytest.approx(fall / times**2)


@given(SALT, DIAMETER, st.integers(1, 50), st.floats(1, 30))
def test_falls_add_up(answer, salt, diameter, regenerations, interval):
    inputs = {"salt": salt, "tank_diameter": diameter, "regenerations": regenerations}
    each = answer("salt-fall", "each", **inputs)

    assert answer("salt-fall", "expected", **inputs) == pytest.approx(each * regenerations)
    month = answer("salt-fall", "month", interval=interval, **inputs)
    assert month == pytest.approx(each * 30.4 / interval)


@pytest.mark.parametrize(
    ("share", "verdict"),
    [
        (0, "hardly"),
        (29.9, "hardly"),
        (30, "as expected"),
        (170, "as expected"),
        (170.1, "too much"),
    ],
)
def test_the_mark_is_judged(answer, share, verdict):
    inputs = {"salt": 9, "tank_diameter": 18, "regenerations": 6}
    observed = share / 100 * answer("salt-fall", "expected", **inputs)
    result = run("salt-fall", {"observed": observed, **inputs})

    assert result["values"]["share"]["number"] == pytest.approx(share)
    assert result["values"]["verdict"]["words"].startswith(verdict)


def test_nothing_is_judged_that_was_not_seen():
    values = run("salt-fall", {"salt": 9, "tank_diameter": 18, "regenerations": 6})["values"]

    assert set(values) == {"expected", "each"}


@pytest.mark.parametrize(("regenerations", "warned"), [(2, True), (3, False)])
def test_a_fall_too_small_to_read_is_warned_about(regenerations, warned):
    inputs = {"salt": 9, "tank_diameter": 18, "regenerations": regenerations, "observed": 1}
    warnings = run("salt-fall", inputs)["warnings"]

    assert any("hard to read" in text for text in warnings) == warned
