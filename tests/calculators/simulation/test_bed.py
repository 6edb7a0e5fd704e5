"""The resin bed: exact breakthrough in service, and what salt gives back."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.capacity import SALT_CEILING, capacity_of_dose
from calculators.leakage import front_length, passing_share
from calculators.simulation.bed import (
    MOST_HELD,
    exchanged_salt,
    front_of,
    left_after,
    regenerated,
    share_that_counts,
)
from calculators.simulation.physics import USUAL_PHYSICS

HEEL = USUAL_PHYSICS.heel
left = st.floats(0, 150_000)
load = st.floats(0, 50_000)
front = st.floats(300, 20_000)
dose = st.floats(0.5, 20)
quality = st.floats(0.4, 1.1)


@given(flow=st.floats(0.1, 30), volume=st.floats(0.5, 4))
def test_the_front_is_that_of_the_calculator_for_the_whole_bed(flow, volume):
    assert front_of(flow, volume) == pytest.approx(front_length(flow / volume) * volume)


@given(left, load, load, front)
def test_a_draw_cut_in_two_takes_the_same(left, first, second, front):
    at_once = left_after(left, first + second, front)

    assert left_after(left_after(left, first, front), second, front) == pytest.approx(
        at_once, rel=1e-9, abs=1e-9 * front
    )


@given(left, load, front)
def test_capacity_falls_by_no_more_than_the_load_and_never_below_nothing(left, load, front):
    after = left_after(left, load, front)

    assert 0 <= after <= left
    assert left - after <= load * (1 + 1e-12) + 1e-9


@given(left=st.floats(0, 60_000), front=front)
def test_what_passes_at_first_is_the_share_of_the_calculator(left, front):
    assume(left < 12 * front)
    little = 1e-4 * front

    passed = little - (left - left_after(left, little, front))

    assert passed / little == pytest.approx(passing_share(left, front), rel=1e-3, abs=1e-9)


def test_a_bed_without_capacity_lets_everything_pass():
    assert left_after(0.0, 500.0, 1000.0) == 0


def test_a_front_many_times_shorter_than_the_bed_is_no_trouble():
    assert left_after(900_000.0, 899_000.0, 300.0) == pytest.approx(1010.5, abs=0.1)


@given(dose, st.floats(0.5, 4))
def test_a_bed_run_to_its_heel_gets_the_capacity_of_its_dose(dose, volume):
    gained = regenerated(HEEL * volume, dose * volume, volume) - HEEL * volume

    if capacity_of_dose(dose) + HEEL < MOST_HELD:
        assert gained == pytest.approx(capacity_of_dose(dose) * volume)


@given(dose, quality)
def test_worse_resin_gets_so_much_less(dose, quality):
    gained = regenerated(HEEL, dose, 1.0, quality) - HEEL

    assert gained == pytest.approx(quality * (regenerated(HEEL, dose, 1.0) - HEEL), rel=1e-9)


@pytest.mark.parametrize(("dose", "back"), [(6, 19022), (3, 11237)])
def test_a_bed_run_dry_gets_less_so_it_wants_two_regenerations(dose, back):
    first = regenerated(0.0, dose, 1.0)

    assert first - HEEL == pytest.approx(back, rel=2e-3)
    assert first < regenerated(HEEL, dose, 1.0)
    assert regenerated(first, dose, 1.0) > first


def test_a_bed_regenerated_at_half_use_settles_higher_and_uses_salt_badly():
    left = HEEL
    for _ in range(60):
        full = regenerated(left, 6.0, 1.0)
        left = full - 10_000

    assert full == pytest.approx(28_750, rel=5e-3)
    assert 10_000 / 6 == pytest.approx(1666, rel=1e-3)


@given(st.floats(0, 43_000), dose, st.floats(0.5, 4), quality)
def test_no_pound_converts_more_than_chemistry_and_no_site_holds_two(each, dose, volume, quality):
    before = min(each, MOST_HELD * quality) * volume
    after = regenerated(before, dose * volume, volume, quality)

    assert before <= after * (1 + 1e-12)
    assert after <= max(before, MOST_HELD * quality * volume) * (1 + 1e-12)
    assert exchanged_salt(after - before) <= dose * volume
    assert after - before <= SALT_CEILING * dose * volume


@given(st.floats(0, 30_000), dose, dose, st.floats(0.5, 4))
def test_salt_in_portions_gives_the_same(before, first, second, volume):
    at_once = regenerated(before, first + second, volume)
    assume(at_once < 0.99 * MOST_HELD * volume)

    assert regenerated(regenerated(before, first, volume), second, volume) == pytest.approx(at_once)


@given(st.floats(0.5, 10))
def test_twice_the_salt_never_gives_twice_the_capacity(dose):
    once = regenerated(HEEL, dose, 1.0) - HEEL

    assert regenerated(HEEL, 2 * dose, 1.0) - HEEL < 2 * once


@pytest.mark.parametrize(
    ("strength", "share"), [(0, 0), (1.5, 0.2), (3, 0.4), (5, 0.75), (8, 1), (26, 1)]
)
def test_weak_brine_counts_less(strength, share):
    assert share_that_counts(strength) == pytest.approx(share)


def test_the_salt_of_an_exchange_is_that_of_chemistry():
    assert exchanged_salt(SALT_CEILING) == 1
    assert math.isclose(SALT_CEILING, 5994, rel_tol=1e-3)
