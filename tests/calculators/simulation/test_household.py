"""The draws of a household, and the pieces of constant flow they make."""

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.clock import HOURLY_WATER
from calculators.simulation.clock import DAY
from calculators.simulation.household import (
    DRAWS,
    FACTORS,
    WATER_BY_TABLE,
    WEEKEND_WATER,
    Household,
    pieces_of,
)


def draws_strategy():
    draw = st.tuples(
        st.floats(0, 1440), st.floats(0.01, 60), st.floats(0.5, 5), st.floats(0, 1)
    ).map(lambda one: (one[0], one[0] + one[1], one[2], one[2] * one[3]))
    return st.lists(draw, max_size=12).map(sorted)


def water_of(parts, start, end, hot=False):
    return sum(
        max(0.0, min(stop, end) - max(begin, start)) * (hot_flow if hot else flow)
        for begin, stop, flow, hot_flow in parts
    )


@given(draws_strategy(), st.floats(0, 1000), st.floats(10, 800), st.sampled_from((0.0, 0.2)))
def test_pieces_carry_the_water_of_the_draws_and_never_overlap(draws, start, length, base):
    end = start + length
    pieces = pieces_of(draws, start, end, base)

    for hot in (False, True):
        wanted = water_of(draws, start, end, hot) + (0 if hot else base * length)
        assert water_of(pieces, start, end, hot) == pytest.approx(wanted, abs=1e-6)
    assert all(start <= one[0] <= one[1] <= end for one in pieces)
    assert all(one[1] <= other[0] for one, other in zip(pieces, pieces[1:], strict=False))
    assert all(0 <= hot <= flow + 1e-9 for _, _, flow, hot in pieces)


def test_overlapping_draws_are_summed():
    draws = [(0.0, 10.0, 2.0, 1.0), (4.0, 6.0, 3.0, 0.0)]

    assert pieces_of(draws, 0.0, 100.0) == [
        (0.0, 4.0, 2.0, 1.0), (4.0, 6.0, 5.0, 1.0), (6.0, 10.0, 2.0, 1.0),
    ]  # fmt: skip


def test_a_leak_leaves_no_gap():
    assert pieces_of([(10.0, 12.0, 2.0, 0.0)], 0.0, 20.0, 0.5) == [
        (0.0, 10.0, 0.5, 0.0), (10.0, 12.0, 2.5, 0.0), (12.0, 20.0, 0.5, 0.0),
    ]  # fmt: skip


def test_hours_of_both_kinds_of_day_add_up():
    assert sum(HOURLY_WATER) == pytest.approx(100)
    assert sum(WEEKEND_WATER) == pytest.approx(100)


def test_the_table_of_draws_gives_what_it_says():
    hot = sum(count * gallons * share for _, count, gallons, _, share in DRAWS)

    assert WATER_BY_TABLE == pytest.approx(47.2, abs=0.1)
    assert hot / WATER_BY_TABLE == pytest.approx(0.37, abs=0.01)


def test_volumes_spread_without_changing_the_mean():
    assert sum(FACTORS) / len(FACTORS) == pytest.approx(1)
    assert FACTORS[len(FACTORS) // 2] < 1
    assert sorted(FACTORS) == list(FACTORS)


def test_over_many_days_a_household_draws_what_it_is_said_to():
    household = Household(4, 60.0, 0.0, 0, Random(1), guests=False)
    days = 600

    drawn = sum((end - start) * flow for day in range(days) for start, end, flow, _ in
                household.day(day))  # fmt: skip

    assert drawn / days == pytest.approx(240, rel=0.02)


def test_draws_fall_at_the_hours_of_the_table():
    household = Household(4, 60.0, 0.0, 0, Random(2), guests=False)
    found = [0] * 24
    for week in range(60):
        for day in range(5):
            for start, _, _, _ in household.day(7 * week + day):
                found[int(start % DAY // 60)] += 1

    for share, count in zip(HOURLY_WATER, found, strict=True):
        assert 100 * count / sum(found) == pytest.approx(share, abs=0.4)


def test_guests_come_and_go():
    household = Household(2, 60.0, 0.0, 0, Random(3))
    plain = Household(2, 60.0, 0.0, 0, Random(3), guests=False)
    days = 900

    more = sum(len(household.day(day)) for day in range(days))
    usual = sum(len(plain.day(day)) for day in range(days))

    # Half a stay a month of two people for four nights is 0.13 people more.
    assert more / usual == pytest.approx(1 + 0.5 / 30.4 * 2 * 4 / 2, abs=0.02)


def test_faster_draws_take_the_same_water():
    slow = Household(3, 60.0, 0.0, 0, Random(4), guests=False).day(0)
    fast = Household(3, 60.0, 0.0, 0, Random(4), guests=False).day(0, peak=2.0)

    assert water_of(fast, 0, 9999) == pytest.approx(water_of(slow, 0, 9999))
    assert fast[0][2] == 2 * slow[0][2]
