"""Beads in water: sinking, lifting, and what they cost in pressure."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.beads import (
    BEAD,
    BEAD_DENSITY,
    GPM_PER_SQUARE_FOOT,
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
from calculators.water_properties import density, viscosity

SIZE = st.floats(0.35, 1.1)
TEMPERATURE = st.floats(33, 105)
PERCENT = st.floats(0, 150)
FLOW = st.floats(0.5, 30)
VOIDS = st.floats(30, 49)
MORE = st.floats(1.01, 3)


def test_usual_resin():
    assert (BEAD, BEAD_DENSITY, SETTLED_VOIDS) == (0.58, 1260, 39)


def test_a_tank_of_twelve_inches_has_a_quarter_pi_of_a_square_foot():
    assert tank_area(12) == pytest.approx(math.pi / 4)
    assert tank_area(24) == pytest.approx(math.pi)


def test_a_gallon_a_minute_through_a_square_foot_is_this_speed():
    # 231 in3 of 0.0254 m cubed, in 60 s, through 0.3048 m squared
    assert pytest.approx(231 * 0.0254**3 / 60 / 0.3048**2) == GPM_PER_SQUARE_FOOT


def test_the_weight_number_by_hand():
    """0.58 mm cubed × 999.7026 × (1260 − 999.7026) × 9.80665 ÷ 0.0013059018 squared."""
    expected = 0.00058**3 * 999.7026 * 260.2974 * 9.80665 / 0.0013059018**2

    assert bead_weight_number(0.58, 50) == pytest.approx(expected, rel=1e-6)


@given(st.floats(1, 20000))
def test_the_sinking_bead_fulfills_the_law_of_drag(weight_number):
    reynolds = settling_reynolds(weight_number)

    assert 18 * reynolds * (1 + 0.15 * reynolds**0.687) == pytest.approx(weight_number)


@pytest.mark.parametrize(
    ("bead", "temperature", "flow"),
    [(0.58, 50, 31.550249), (0.45, 40, 19.771258), (0.8, 80, 57.125317)],
)
def test_the_settling_flow_by_hand(bead, temperature, flow):
    assert settling_flow(bead, temperature) == pytest.approx(flow, rel=1e-5)


@given(SIZE, TEMPERATURE, st.floats(1, 5))
def test_larger_beads_and_warmer_water_sink_faster(bead, temperature, more):
    once = settling_flow(bead, temperature)

    assert settling_flow(bead * (1 + more / 100), temperature) > once
    assert settling_flow(bead, temperature + more) > once


@given(SIZE, TEMPERATURE)
def test_the_drag_at_the_settling_flow_is_the_weight_in_water(bead, temperature):
    speed, size = settling_flow(bead, temperature) * GPM_PER_SQUARE_FOOT, bead / 1000
    reynolds = speed * size * density(temperature) / (viscosity(temperature) / 1000)
    drag = 24 / reynolds * (1 + 0.15 * reynolds**0.687)
    force = drag * math.pi / 4 * size**2 * density(temperature) * speed**2 / 2
    weight = math.pi / 6 * size**3 * (1260 - density(temperature)) * 9.80665

    assert force == pytest.approx(weight)


@given(st.floats(1, 500), MORE)
def test_faster_beads_hinder_each_other_less(reynolds, times):
    assert crowding_index(reynolds * times) < crowding_index(reynolds)
    assert crowding_index(1) == 4.45
    assert crowding_index(500) == pytest.approx(4.45 / 500**0.1)


@given(PERCENT)
def test_the_voids_of_an_expansion_give_that_expansion(percent):
    assert expansion(voids_of_expansion(percent)) == pytest.approx(percent, abs=1e-9)


@given(PERCENT, st.floats(10, 80))
def test_the_beads_stay_as_many(percent, depth):
    beads = (1 - voids_of_expansion(percent) / 100) * depth * (1 + percent / 100)

    assert beads == pytest.approx(0.61 * depth)


def test_expansion_by_hand():
    assert expansion(69.5) == pytest.approx(100)  # half as much bead in each volume
    assert expansion(39) == 0
    assert expansion(20) == 0  # a settled bed is never closer than settled
    assert voids_of_expansion(0) == 39
    assert voids_of_expansion(100) == 69.5


@given(st.floats(1, 9), SIZE, TEMPERATURE)
def test_at_balanced_voids_the_pressure_carries_the_beads(flow, bead, temperature):
    voids = balanced_voids(flow, bead, temperature)
    speed, part, size = flow * GPM_PER_SQUARE_FOOT, voids / 100, bead / 1000
    water, thickness = density(temperature), viscosity(temperature) / 1000
    # Beyond voids of 1 the closed form is a root without sense: both sides over (1 - voids).
    pressure = 150 * thickness * (1 - part) * speed / (part**3 * size**2)
    pressure += 1.75 * water * speed**2 / (part**3 * size)

    assert pressure == pytest.approx((1260 - water) * 9.80665)


@pytest.mark.parametrize(
    ("flow", "bead", "temperature", "voids"),
    [(3, 0.58, 50, 58.336712), (5, 0.45, 40, 74.271660), (5, 0.8, 80, 51.615854)],
)
def test_balanced_voids_by_hand(flow, bead, temperature, voids):
    assert balanced_voids(flow, bead, temperature) == pytest.approx(voids, rel=1e-5)


@given(st.floats(1, 9), SIZE, TEMPERATURE, st.floats(1, 5))
def test_voids_rise_with_flow_and_cold_and_fall_with_the_size(flow, bead, temperature, more):
    once = balanced_voids(flow, bead, temperature)

    assert balanced_voids(flow * (1 + more / 100), bead, temperature) > once
    assert balanced_voids(flow, bead, temperature + more) < once
    assert balanced_voids(flow, bead * (1 + more / 100), temperature) < once


@given(PERCENT, SIZE, TEMPERATURE)
def test_the_flow_for_an_expansion_lifts_the_bed_by_it(percent, bead, temperature):
    flow = flow_for_expansion(percent, bead, temperature)
    index = crowding_index(settling_reynolds(bead_weight_number(bead, temperature)))
    voids = 100 * (flow / settling_flow(bead, temperature)) ** (1 / index)

    assert expansion(voids) == pytest.approx(percent, abs=1e-6)


@given(st.floats(0, 100), SIZE, TEMPERATURE, st.floats(1, 5))
def test_more_lift_warmer_water_and_larger_beads_take_more_flow(percent, bead, temperature, more):
    once = flow_for_expansion(percent, bead, temperature)

    assert flow_for_expansion(percent + more, bead, temperature) > once
    assert flow_for_expansion(percent, bead, temperature + more) > once
    assert flow_for_expansion(percent, bead * (1 + more / 100), temperature) > once


@pytest.mark.parametrize(
    ("percent", "bead", "temperature", "flow"),
    [(50, 0.58, 50, 4.9392208), (20, 0.45, 40, 1.2556373), (20, 0.8, 80, 6.2836203)],
)
def test_the_flow_for_an_expansion_by_hand(percent, bead, temperature, flow):
    assert flow_for_expansion(percent, bead, temperature) == pytest.approx(flow, rel=1e-5)


@given(st.floats(6, 72), TEMPERATURE, MORE)
def test_a_lifted_bed_costs_in_proportion_to_its_depth(depth, temperature, times):
    assert lifted_loss(depth * times, temperature) == pytest.approx(
        times * lifted_loss(depth, temperature)
    )


def test_the_lifted_loss_by_hand():
    # 0.61 × 0.3048 m × (1260 − 999.7026) kg/m3 × 9.80665 m/s2 ÷ 6894.757 Pa
    assert lifted_loss(12, 50) == pytest.approx(0.06883608, rel=1e-6)


@given(FLOW, SIZE, VOIDS, TEMPERATURE, MORE)
def test_rubbing_goes_with_flow_and_thickness_and_the_square_of_the_size(
    flow, bead, voids, temperature, times
):
    once = viscous_loss(flow, bead, voids, temperature)
    cold = viscous_loss(flow, bead, voids, 33)

    assert viscous_loss(flow * times, bead, voids, temperature) == pytest.approx(once * times)
    assert viscous_loss(flow, bead * times, voids, temperature) == pytest.approx(once / times**2)
    assert cold / once == pytest.approx(viscosity(33) / viscosity(temperature))
    assert viscous_loss(flow, bead, voids + 1, temperature) < once


@given(FLOW, SIZE, VOIDS, TEMPERATURE, MORE)
def test_whirling_goes_with_the_square_of_the_flow_and_with_the_size(
    flow, bead, voids, temperature, times
):
    once = whirling_loss(flow, bead, voids, temperature)
    cold = whirling_loss(flow, bead, voids, 33)

    assert whirling_loss(flow * times, bead, voids, temperature) == pytest.approx(once * times**2)
    assert whirling_loss(flow, bead * times, voids, temperature) == pytest.approx(once / times)
    assert cold / once == pytest.approx(density(33) / density(temperature))
    assert whirling_loss(flow, bead, voids + 1, temperature) < once


@given(FLOW, SIZE, VOIDS, TEMPERATURE, MORE)
def test_carman_rises_with_flow_and_cold_and_falls_with_size_and_voids(
    flow, bead, voids, temperature, times
):
    once = carman(flow, bead, voids, temperature)

    assert times * once < carman(flow * times, bead, voids, temperature) < times**2 * once
    assert carman(flow, bead * times, voids, temperature) < once
    assert carman(flow, bead, voids + 1, temperature) < once
    assert carman(flow, bead, voids, temperature + 1) < once


@pytest.mark.parametrize(
    ("bed", "viscous", "whirling", "other"),
    [
        ((10, 0.6, 38, 68), 0.87766626, 0.06706688, 1.14434365),
        ((12, 0.45, 36, 50), 3.05941473, 0.15656376, 3.89277256),
    ],
)
def test_losses_by_hand(bed, viscous, whirling, other):
    assert viscous_loss(*bed) == pytest.approx(viscous, rel=1e-5)
    assert whirling_loss(*bed) == pytest.approx(whirling, rel=1e-5)
    assert carman(*bed) == pytest.approx(other, rel=1e-5)


@given(st.floats(2, 25), st.floats(0.45, 0.7), VOIDS, st.floats(36, 90))
def test_carman_gives_about_a_fifth_more_than_ergun(flow, bead, voids, temperature):
    bed = (flow, bead, voids, temperature)

    assert 1.1 < carman(*bed) / (viscous_loss(*bed) + whirling_loss(*bed)) < 1.3
