"""What salt gives back to the resin."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.capacity import SALT_CEILING, capacity_of_dose

DOSE = st.floats(1, 25)


@given(DOSE, DOSE)
def test_capacity_rises_with_the_dose_and_efficiency_falls(one, other):
    assume(abs(one - other) > 1e-6)
    less, more = sorted([one, other])

    assert capacity_of_dose(less) < capacity_of_dose(more)
    assert capacity_of_dose(less) / less > capacity_of_dose(more) / more


@given(DOSE, DOSE)
def test_capacity_is_concave(one, other):
    assume(abs(one - other) > 0.01)
    halfway = capacity_of_dose((one + other) / 2)

    assert halfway > (capacity_of_dose(one) + capacity_of_dose(other)) / 2


@given(st.floats(1, 25), st.floats(0.2, 1), st.floats(1, 4))
def test_twice_the_resin_and_salt_give_twice_the_capacity(answer, dose, volume, times):
    assume(0.5 <= dose * volume)
    small = {"salt": dose * volume, "resin_volume": volume}
    large = {"salt": times * dose * volume, "resin_volume": times * volume}

    for output, factor in (
        ("capacity", times),
        ("dose", 1),
        ("efficiency", 1),
        ("share_of_ceiling", 1),
    ):
        once = answer("resin-capacity", output, **small)
        assert answer("resin-capacity", output, **large) == pytest.approx(factor * once)


@given(st.floats(10, 110), DOSE)
def test_capacity_is_proportional_to_the_condition_of_the_resin(answer, condition, dose):
    inputs = {"salt": dose, "resin_volume": 1}
    new = answer("resin-capacity", "capacity", **inputs)
    worn = answer("resin-capacity", "capacity", resin_condition=condition, **inputs)

    assert worn == pytest.approx(new * condition / 100)
    assert new == pytest.approx(capacity_of_dose(dose))


@given(DOSE)
def test_efficiency_times_salt_is_capacity(answer, dose):
    inputs = {"salt": dose, "resin_volume": 1}
    efficiency = answer("resin-capacity", "efficiency", **inputs)

    assert efficiency * dose == pytest.approx(answer("resin-capacity", "capacity", **inputs))


@pytest.mark.parametrize(("salt", "warned"), [(2.9, True), (3, False), (20, False), (20.1, True)])
def test_a_dose_outside_the_fit_is_answered_with_a_warning(salt, warned):
    result = run("resin-capacity", {"salt": salt, "resin_volume": 1})

    assert any("outside the range" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(("salt", "refused"), [(0.99, True), (1, False), (25, False), (25.1, True)])
def test_a_dose_outside_the_relation_is_refused(salt, refused):
    result = run("resin-capacity", {"salt": salt, "resin_volume": 1})

    assert ("salt" in result["problems"]) == refused


@given(st.floats(1, 20), st.floats(0.2, 4), st.floats(10, 110))
def test_salt_for_capacity_turns_the_capacity_round(answer, dose, volume, condition):
    capacity = capacity_of_dose(dose) * volume * condition / 100
    assume(2000 <= capacity <= 200000)
    inputs = {"resin_volume": volume, "resin_condition": condition}

    assert answer("salt-for-capacity", "dose", capacity=capacity, **inputs) == pytest.approx(dose)


@given(st.floats(6000, 32000), st.sampled_from([0.05, 0.5, 1, 5]))
def test_the_set_salt_gives_the_capacity_wanted(answer, capacity, step):
    inputs = {"capacity": capacity, "resin_volume": 1, "salt_step": step}
    salt, exact = (answer("salt-for-capacity", name, **inputs) for name in ("salt", "exact_salt"))

    assert exact - 1e-8 <= salt < exact + step
    assert salt / step == pytest.approx(round(salt / step))
    assert capacity_of_dose(salt) >= capacity * (1 - 1e-8)
    assert answer("salt-for-capacity", "efficiency", **inputs) == pytest.approx(capacity / salt)


@given(st.floats(6000, 32000))
def test_chemistry_alone_would_take_less_salt(answer, capacity):
    inputs = {"capacity": capacity, "resin_volume": 1}
    least, exact = (
        answer("salt-for-capacity", name, **inputs) for name in ("least_salt", "exact_salt")
    )

    assert least == pytest.approx(capacity / SALT_CEILING)
    assert least < exact


@given(st.floats(6000, 30000), st.floats(1, 4))
def test_twice_the_bed_and_capacity_take_twice_the_salt(answer, capacity, times):
    small = answer("salt-for-capacity", "exact_salt", capacity=capacity, resin_volume=1)
    large = answer("salt-for-capacity", "exact_salt", capacity=capacity * times, resin_volume=times)

    assert large == pytest.approx(times * small)


@pytest.mark.parametrize(("capacity", "refused"), [(32710, False), (32720, True)])
def test_more_than_the_largest_dose_gives_is_refused(capacity, refused):
    result = run("salt-for-capacity", {"capacity": capacity, "resin_volume": 1})

    assert ("use more resin" in result["problems"].get("capacity", "")) == refused


@pytest.mark.parametrize(("capacity", "refused"), [(5290, False), (5280, True)])
def test_less_than_the_smallest_dose_gives_is_refused(capacity, refused):
    result = run("salt-for-capacity", {"capacity": capacity, "resin_volume": 1})

    assert ("too little" in result["problems"].get("capacity", "")) == refused


@pytest.mark.parametrize(
    ("capacity", "step", "warned"),
    [(10000, 0.5, True), (20000, 0.5, False), (31000, 5, False), (32600, 3, True)],
)
def test_a_set_dose_outside_the_fit_is_warned_about(capacity, step, warned):
    inputs = {"capacity": capacity, "resin_volume": 1, "salt_step": step}
    result = run("salt-for-capacity", inputs)

    assert any("outside the range" in text for text in result["warnings"]) == warned
