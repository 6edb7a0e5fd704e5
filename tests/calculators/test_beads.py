"""Beads of resin in water."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.beads import (
    BEAD_DENSITY,
    SETTLED_VOIDS,
    balanced_voids,
    bead_weight_number,
    carman,
    crowding_index,
    expansion,
    flow_for_expansion,
    lifted_loss,
    settling_flow,
    settling_reynolds,
    tank_area,
    viscous_loss,
    voids_of_expansion,
    whirling_loss,
)

BEAD, WARMTH, FLOW = st.floats(0.35, 1.2), st.floats(33, 109), st.floats(0.5, 30)
VOIDS = st.floats(30, 50)


def test_a_tank_of_twelve_inches_has_a_quarter_pi_of_area():
    assert tank_area(12) == pytest.approx(math.pi / 4)


@given(st.floats(0.01, 5e4))
def test_at_the_settling_speed_drag_carries_the_weight(number):
    reynolds = settling_reynolds(number)

    assert 18 * reynolds * (1 + 0.15 * reynolds**0.687) == pytest.approx(number)


@given(BEAD, WARMTH, st.floats(1.01, 2))
def test_larger_beads_and_warmer_water_sink_faster(bead, temperature, times):
    assert settling_flow(bead * times, temperature) > settling_flow(bead, temperature)
    assert settling_flow(bead, temperature + 1) > settling_flow(bead, temperature)


@given(BEAD, WARMTH, st.floats(1.01, 2))
def test_the_weight_number_goes_with_the_cube_of_the_bead(bead, temperature, times):
    assert bead_weight_number(bead * times, temperature) == pytest.approx(
        times**3 * bead_weight_number(bead, temperature)
    )


@given(st.floats(1, 400), st.floats(1.01, 3))
def test_the_crowding_index_falls_slowly(reynolds, times):
    assert crowding_index(reynolds * times) == pytest.approx(crowding_index(reynolds) / times**0.1)
    assert crowding_index(1) == 4.45


@given(st.floats(0, 200))
def test_expansion_and_voids_turn_into_each_other(percent):
    assert expansion(voids_of_expansion(percent)) == pytest.approx(percent, abs=1e-9)


@given(st.floats(0, SETTLED_VOIDS))
def test_a_bed_with_no_more_voids_than_settled_has_not_lifted(voids):
    assert expansion(voids) == 0


def test_beads_of_a_lifted_bed_stay_as_many():
    assert (1 + expansion(60) / 100) * (1 - 0.60) == pytest.approx(1 - SETTLED_VOIDS / 100)


@given(BEAD, WARMTH, st.floats(1, 120))
def test_a_farther_lift_needs_more_flow_and_colder_water_less(bead, temperature, percent):
    flow = flow_for_expansion(percent, bead, temperature)

    assert flow_for_expansion(percent + 1, bead, temperature) > flow
    assert flow_for_expansion(percent, bead, temperature + 1) > flow
    assert flow < settling_flow(bead, temperature)


@given(FLOW, BEAD, WARMTH)
def test_at_the_balanced_voids_the_loss_is_the_weight_of_the_beads(flow, bead, temperature):
    voids = balanced_voids(flow, bead, temperature)
    assume(1 < voids < 99)
    weight = (100 - voids) / (100 - SETTLED_VOIDS) * lifted_loss(12, temperature)

    loss = viscous_loss(flow, bead, voids, temperature) + whirling_loss(
        flow, bead, voids, temperature
    )
    assert loss == pytest.approx(weight)


@given(FLOW, BEAD, VOIDS, WARMTH, st.floats(1.01, 3))
def test_rubbing_goes_with_the_flow_and_whirling_with_its_square(
    flow, bead, voids, temperature, times
):
    bed = (bead, voids, temperature)

    assert viscous_loss(flow * times, *bed) == pytest.approx(times * viscous_loss(flow, *bed))
    assert whirling_loss(flow * times, *bed) == pytest.approx(times**2 * whirling_loss(flow, *bed))


@given(FLOW, BEAD, VOIDS, WARMTH, st.floats(1.01, 2))
def test_small_beads_rub_with_the_square_and_whirl_in_proportion(
    flow, bead, voids, temperature, times
):
    small, large = (bead, voids, temperature), (bead * times, voids, temperature)

    assert viscous_loss(flow, *small) == pytest.approx(times**2 * viscous_loss(flow, *large))
    assert whirling_loss(flow, *small) == pytest.approx(times * whirling_loss(flow, *large))


@given(st.floats(1, 30), st.floats(0.4, 0.8), VOIDS, WARMTH)
def test_carman_lies_a_little_above_ergun(flow, bead, voids, temperature):
    bed = (flow, bead, voids, temperature)

    assert 1.1 < carman(*bed) / (viscous_loss(*bed) + whirling_loss(*bed)) < 1.4


@given(st.floats(6, 72), WARMTH, st.floats(1.01, 3))
def test_a_deeper_lifted_bed_weighs_more(depth, temperature, times):
    assert lifted_loss(depth * times, temperature) == pytest.approx(
        times * lifted_loss(depth, temperature)
    )


def test_beads_sink():
    assert BEAD_DENSITY > 1000
