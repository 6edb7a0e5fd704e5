"""From a measurement to the name of a result: every line, from both sides."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.brine_strength import WATER_DENSITY, brine_density
from calculators.simulation import results

hardness = st.floats(0, 60)


@pytest.mark.parametrize(
    ("cold", "hot", "raw", "name"),
    [
        (0.5, 0.5, 19.5, "both-soft"),
        (0.0, 0.99, 5.0, "both-soft"),
        (1.5, 1.5, 39.5, "both-soft"),  # a twenty-fifth of very hard water
        (14.7, 19.5, 19.5, "both-raw"),
        (0.5, 12.5, 19.5, "hot-harder"),
        (0.5, 2.5, 19.5, "hot-harder"),
        (12.5, 0.5, 19.5, "hot-softer"),
        (4.5, 4.5, 19.5, "slip"),
        (1.5, 2.5, 19.5, "slip"),
        (9.5, 9.5, 19.5, "partial"),
    ],
)
def test_a_pair_of_samples(cold, hot, raw, name):
    assert results.pair(cold, hot, raw) == name


@given(hardness, hardness, st.floats(1, 60))
def test_every_pair_has_one_name(cold, hot, raw):
    assert results.pair(cold, hot, raw) in {
        "both-soft", "both-raw", "hot-harder", "hot-softer", "slip", "partial",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("raw", "allowance", "setting", "name"),
    [(21.5, 2.0, 20.0, "matches"), (22.0, 2.0, 20.0, "higher"), (23.9, 0, 20, "matches")],
)
def test_raw_hardness_counts_the_allowance(raw, allowance, setting, name):
    assert results.raw_hardness(raw, allowance, setting) == name


@pytest.mark.parametrize(
    ("error", "blank", "name"),
    [
        (0, False, "right"), (30, False, "right"), (-30, False, "right"), (35, False, "hours-out"),
        (-650, False, "hours-out"), (660, False, "half-day-out"), (-720, False, "half-day-out"),
        (1430, False, "right"), (0, True, "blank"),
    ],
)  # fmt: skip
def test_a_clock_is_read_the_short_way_round(error, blank, name):
    assert results.clock_reading(error, blank) == name


AGREES = {"days": 3, "interval": 5, "longest": 7, "counter": 1000, "planned_counter": 1000,
          "refill": 6, "planned_refill": 6, "counted": 10.0, "drawn": 10.0}  # fmt: skip


@pytest.mark.parametrize(
    ("changed", "name"),
    [
        ({}, "agree"),
        ({"counted": 0.0}, "frozen"),
        ({"counted": 0.0, "drawn": 3.0}, "agree"),
        ({"counted": None}, "agree"),
        ({"counted": 0.0, "days": 30}, "frozen"),
        ({"days": 7.5}, "agree"),
        ({"days": 7.6}, "overdue"),
        ({"counter": 1150}, "agree"),
        ({"counter": 1160}, "optimistic"),
        ({"refill": 5.1}, "agree"),
        ({"refill": 5}, "optimistic"),
        ({"set_interval": 6}, "optimistic"),
        ({"counter": None, "counted": None}, "agree"),
    ],
)
def test_settings_and_counters_in_their_order(changed, name):
    assert results.settings_and_counters(**{**AGREES, **changed}) == name


@pytest.mark.parametrize(
    ("salt", "water", "name"), [(10, 8, "above"), (8, 8, "above"), (7, 8, "below"), (0, 8, "empty")]
)
def test_salt_beside_water(salt, water, name):
    assert results.salt_height(salt, water) == name


@pytest.mark.parametrize(
    ("level", "name"),
    [(8.4, "expected"), (9.9, "expected"), (6.9, "expected"), (10, "high"), (6.8, "low")],
)
def test_a_brine_level_beside_the_expected(level, name):
    assert results.brine_level(level, 8.4) == name


@pytest.mark.parametrize(
    ("share", "error", "name"),
    [
        (1.0, 0.02, "in-band"), (0.85, 0.0, "in-band"), (1.15, 0.0, "in-band"), (1.2, 0.01, "high"),
        (0.5, 0.02, "low"), (0.05, 0.1, "none"), (0.84, 0.02, None), (1.15, 0.05, None),
    ],
)  # fmt: skip
def test_a_backwash_that_cannot_be_told_has_no_result(share, error, name):
    assert results.backwash_flow(share, error) == name


@pytest.mark.parametrize(
    ("share", "rises", "name"),
    [(0.8, False, "draws"), (0.79, False, "slow"), (0.2, False, "slow"), (0.1, False, "none"),
     (0.0, True, "pushes")],
)  # fmt: skip
def test_brine_drawn(share, rises, name):
    assert results.brine_draw(share, rises) == name


@pytest.mark.parametrize(
    ("share", "name"), [(0.84, "low"), (0.85, "in-band"), (1.15, "in-band"), (1.2, "over")]
)
def test_a_refill(share, name):
    assert results.refill_measured(share) == name


@pytest.mark.parametrize(
    ("slow", "fast", "name"),
    [(0.5, 0.5, "soft-both"), (0.5, 4.5, "hard-fast"), (4.5, 4.5, "hard-both")],
)
def test_leakage_at_two_flows(slow, fast, name):
    assert results.leakage_slow_and_fast(slow, fast, 19.5) == name


@pytest.mark.parametrize(
    ("share", "error", "name"),
    [(0.0, 0.02, "zero"), (0.5, 0.02, "low"), (1.0, 0.02, "agrees"), (1.3, 0.02, "agrees"),
     (0.91, 0.02, None)],
)  # fmt: skip
def test_a_meter(share, error, name):
    assert results.meter_against_bucket(share, error) == name


@pytest.mark.parametrize(
    ("loss", "expected", "name"), [(4, 4, "normal"), (8, 4, "normal"), (9, 4, "high"), (16, 9, "high")]  # fmt: skip
)  # fmt: skip
def test_a_pressure_loss(loss, expected, name):
    assert results.pressure_loss(loss, expected) == name


def test_voltage_pressure_and_peak():
    assert results.supply_voltage(0.85) == "in-band"
    assert results.supply_voltage(0.84) == "low-or-none"
    assert results.supply_pressure(25) == "enough"
    assert results.supply_pressure(24.9) == "low"
    assert results.peak_flow(15.0, 1.5, 14.0) == "within"
    assert results.peak_flow(15.1, 1.5, 14.0) == "over"
    assert results.peak_flow(10.0, 1.5, 15.1) == "over"


@pytest.mark.parametrize(("strength", "name"), [(26.4, "strong"), (24.0, "strong"), (23.0, "weak")])
def test_brine_by_the_hydrometer(strength, name):
    assert results.brine_hydrometer(brine_density(strength) / WATER_DENSITY) == name
