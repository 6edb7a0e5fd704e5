"""How a softener behaves, with a fault and without: the home of the handbook's examples.

The figures in the tests come from our own first, coarser model; where this one gives another, the
test says why. All are common practice, no source, unless a test names a calculator.
"""

from random import Random

import pytest

from calculators import run
from calculators.readings import CLOCK, DELAYED, IMMEDIATE, TWIN
from calculators.simulation.clock import DAY
from calculators.simulation.home import Home, sampled_home
from calculators.simulation.positions import SERVICE
from calculators.simulation.regeneration import tank_until
from calculators.simulation.service import hot_tap, tap
from calculators.simulation.story import Story

ONSET = 6
PLENTY = 400.0  # lb: salt that covers the water all the time


def lived(*changes, days=40, onset=ONSET, seed=3, **figures):
    story = Story(Home(**figures), seed, [(name, value, 0.0) for name, value in changes],
                  onset * DAY)  # fmt: skip
    story.run(days * DAY)
    return story


def passed_after_onset(*changes, days=60, **figures):
    """Return the share of raw grains that reached the taps after a fault began."""
    story = lived(*changes, days=ONSET, **figures)
    grains, raw = story.ledger.tap_grains, story.ledger.raw_grains
    story.run(days * DAY)
    return (story.ledger.tap_grains - grains) / (story.ledger.raw_grains - raw)


def salt_of_cycles(story, after=ONSET):
    return [cycle.salt for cycle in story.history if cycle.begun > after * DAY]


def levels_after_refills(story, days):
    """Live on, and return the brine level after each regeneration."""
    levels, count = [], len(story.history)
    while story.time < days * DAY:
        story.run(story.time + 60)
        if len(story.history) > count and story.mode == SERVICE:
            count = len(story.history)
            tank_until(story, story.time)
            levels.append(story.tank.level())
    return levels


def test_a_sound_home_uses_its_planned_salt_and_passes_next_to_nothing():
    story = lived(salt=PLENTY)

    assert salt_of_cycles(story, 0) == pytest.approx([9.0] * len(story.history), rel=0.01)
    assert story.ledger.tap_grains / story.ledger.raw_grains < 0.02
    planned = run("regeneration-interval", {"capacity": "29978 grains", "setting": "22 gpg",
                                            "water": "240 gal/day"})  # fmt: skip
    interval = planned["values"]["interval"]["number"]
    assert story.home.plan.interval == pytest.approx(interval, abs=0.01)
    assert 40 / len(story.history) == pytest.approx(interval, rel=0.35)


def test_sampled_sound_homes_pass_few_grains():
    shares = []
    for seed in range(60):
        story = Story(sampled_home(Random(seed)), seed, phase=seed % 10 / 10)
        story.run(25 * DAY)
        shares.append(story.ledger.tap_grains / story.ledger.raw_grains)

    assert sum(shares) / len(shares) < 0.03


def test_hot_water_clears_by_the_law_of_a_stirred_tank():
    story = lived(("heater_hardness", 20.0), days=ONSET, salt=PLENTY)
    story.run(ONSET * DAY + 1e-6)
    soft = story.leakage
    before = story.ledger.hot_water
    while story.ledger.hot_water - before < 100:
        story.run(story.time + 5)
    drawn = story.ledger.hot_water - before

    left = (story.heater - soft) / (20.0 - soft)
    assert drawn / 50 == pytest.approx(2, abs=0.35)
    assert left == pytest.approx(2.718281828 ** (-drawn / 50), rel=0.02)


def test_a_pint_a_minute_is_a_hundred_and_eighty_gallons_a_day():
    days = 10
    more = lived(("leak_flow", 0.125), days=days, onset=0).ledger.softened
    more += lived(("leak_flow", 0.125), days=days, onset=0).ledger.passed_by
    usual = lived(days=days)

    assert (more - usual.ledger.softened - usual.ledger.passed_by) / days == pytest.approx(180)


def test_without_suction_the_tank_fills_to_the_float_while_the_bed_gives_out():
    story = lived(("suction_factor", 0.0), days=0, onset=0)
    levels = levels_after_refills(story, 40)

    # Eight inches stood before; each refill adds to them until the float shuts.
    assert levels[:3] == pytest.approx([11.1, 13.8, 14.0], abs=0.2)
    assert tap(story, 2.0) > 0.9 * story.raw
    # In more salt there is less room, and the float acts a refill sooner.
    story = lived(("suction_factor", 0.0), days=0, onset=0, salt=160.0)
    assert levels_after_refills(story, 15)[0] == pytest.approx(14.0, abs=0.1)


@pytest.mark.parametrize(
    ("gain", "salt", "passed"),
    [(0.30, 8.9, 0.008), (0.20, 7.9, 0.009), (0.15, 5.9, 0.015), (0.10, 3.9, 0.17)],
)
def test_a_plugged_injector_shows_in_the_tank_before_it_shows_at_the_tap(gain, salt, passed):
    # Nozzle and throat plug together. The first model had 7.6, 5.7 and 3.8 lb: here the injector
    # feels the home's own pressure, which is a little above the rated one.
    plugged = ("suction_factor", gain), ("motive_flow_factor", gain)
    story = lived(*plugged, days=60, salt=PLENTY)

    assert salt_of_cycles(story)[-1] == pytest.approx(salt, abs=0.3)
    assert passed_after_onset(*plugged, salt=PLENTY) == pytest.approx(passed, rel=0.5)
    high = story.tank.level() > 12
    assert high == (gain < 0.24)


def test_suction_alone_lost_thins_the_brine_and_the_bed_feels_it():
    # With the injector's own water at full flow the brine reaches the bed at two percent, where
    # only a part of its salt counts; the first model left that out.
    alone = passed_after_onset(("suction_factor", 0.2), salt=PLENTY)
    together = passed_after_onset(("suction_factor", 0.2), ("motive_flow_factor", 0.2), salt=PLENTY)
    assert alone > 0.1 > 10 * together


def test_a_refill_that_stopped_gives_no_brine_and_the_bed_is_spent_in_two_cycles():
    story = lived(("refill_factor", 0.0), salt=PLENTY)
    salt = salt_of_cycles(story)

    # The first cycle draws the brine that stood ready.
    assert salt[0] == pytest.approx(9, rel=0.01)
    assert max(salt[1:]) < 0.01
    assert story.left < 0.01 * story.home.plan.capacity


def test_a_bridge_starves_the_brine_cycle_by_cycle():
    salt = salt_of_cycles(lived(("salt_bridged", 1.0), salt=150.0))

    # The first model fell to 1.2 and then below 0.4 lb at once. Here the hollow under the bridge
    # holds more brine below the heel, which thins by refill and draw and lasts some cycles longer.
    assert salt[0] < 6.5
    assert all(more < 0.62 * less for less, more in zip(salt, salt[1:], strict=False))
    assert salt[3] < 0.7


def test_salt_that_falls_under_water_gives_less_each_cycle():
    salt = salt_of_cycles(lived(days=75, salt=94.0), 0)
    falling = salt[1:]

    assert falling[:7] == pytest.approx([8.97, 8.4, 7.8, 7.25, 6.7, 6.2, 5.75], rel=0.06)
    assert all(more < less for less, more in zip(falling[1:], falling[2:], strict=False))


def test_a_brine_valve_that_leaks_costs_salt_and_the_water_stays_soft():
    story = lived(("brine_valve_leak", 3 / 24), days=60, salt=PLENTY)

    # 15.9 lb in the first model; this float leaves a little more brine below it.
    assert salt_of_cycles(story)[1:4] == pytest.approx([16.5] * 3, rel=0.06)
    assert story.tank.level() == pytest.approx(14, abs=0.8)
    assert passed_after_onset(("brine_valve_leak", 3 / 24), salt=PLENTY) < 0.01


def test_seals_that_leak_a_twentieth_pass_it_for_ever():
    story = lived(("seal_leak_share", 0.05), onset=0, days=3)
    fresh = tap(story, 2.0)

    assert fresh == pytest.approx(0.05 * 20 + 0.95 * story.leakage, abs=0.1)
    story.run(4 * DAY)
    assert tap(story, 2.0) == pytest.approx(fresh, abs=0.05)


def test_a_leak_the_meter_does_not_see_is_paid_in_hardness_one_it_sees_in_salt():
    usual = passed_after_onset(salt=PLENTY)
    unseen = passed_after_onset(("leak_flow", 0.125), salt=PLENTY)
    seen = passed_after_onset(("leak_flow", 0.25), salt=PLENTY, brine_tank=24.0)

    # 23 and 2 percent in the first model. Draws that overlap the leak now lift it over the meter's
    # stall, and this home's setting has the iron's allowance in hand.
    assert usual < 0.012
    assert 0.12 < unseen < 0.30
    assert seen < 0.035
    more = len(lived(("leak_flow", 0.25), days=60, salt=PLENTY).history)
    assert more > 1.7 * len(lived(days=60, salt=PLENTY).history)


@pytest.mark.parametrize(
    "change", [("power_on", 0.0), ("meter_factor", 0.0), ("clock_runs", 0.0), ("days_blocked", 1.0)]
)
def test_a_control_that_does_nothing_lets_all_hardness_pass(change):
    story = lived(change, days=30)

    if change[0] == "meter_factor":  # the longest interval still acts, once a week
        assert len(story.history) <= 5
    else:
        assert len(story.history) == 1
        assert tap(story, 2.0) == pytest.approx(story.raw)
        assert hot_tap(story) > 0.75 * story.raw


def test_a_clock_behind_regenerates_while_the_house_draws():
    slow = lived(("clock_offset", -270.0), onset=0, days=60, salt=PLENTY)
    hours = {round(cycle.begun % DAY / 60, 2) for cycle in slow.history}
    hard = slow.ledger.passed_by / len(slow.history)

    assert hours == {6.5}
    told = run("clock-error", {"told_by": "both clocks", "shown_time": "2:00", "true_time": "6:30",
                               "set_time": "2:00", "raw_time": "80 min", "water": "240 gal/day",
                               "raw": "20 gpg", "soft": "0 gpg", "tank": "50 gal"})  # fmt: skip
    planned = told["values"]["hard_water"]["number"] if not told["problems"] else 26.9
    # Weekends have other hours, and days differ.
    assert hard == pytest.approx(planned, rel=0.35)
    assert 0.015 < slow.ledger.tap_grains / slow.ledger.raw_grains < 0.05
    assert slow.hardest_hot > 3


def test_half_a_day_out_passes_less_than_breakfast_does():
    half = lived(("clock_offset", 720.0), onset=0, days=60, salt=PLENTY)
    slow = lived(("clock_offset", -270.0), onset=0, days=60, salt=PLENTY)

    assert {cycle.begun % DAY // 60 for cycle in half.history} == {14}
    assert 0 < half.ledger.passed_by / len(half.history) < slow.ledger.passed_by / len(slow.history)


def test_an_immediate_control_passes_more_raw_water_than_a_delayed_and_a_twin_none():
    passed = {
        control: lived(days=60, salt=PLENTY, control=control).ledger.passed_by
        for control in (DELAYED, IMMEDIATE, TWIN)
    }

    assert passed[IMMEDIATE] > passed[DELAYED] > 0
    assert passed[TWIN] == 0


def test_an_immediate_control_starts_in_the_midst_of_a_draw():
    story = lived(days=30, salt=PLENTY, control=IMMEDIATE, iron=0.0)
    draws_of = {round(cycle.begun % DAY) for cycle in story.history}

    assert len(draws_of) > 2
    assert 120 not in draws_of
    used = story.home.plan.counter * len(story.history)
    counted = story.ledger.softened - used
    assert 0 < counted <= story.home.plan.counter


def test_any_number_of_regenerations_fits_into_a_day():
    story = lived(days=12, salt=PLENTY, control=IMMEDIATE, resin=0.75, hardness=100.0, people=6)

    assert len(story.history) > 2 * 12


def test_a_twin_tank_goes_on_serving_soft_water():
    story = lived(days=60, salt=PLENTY, control=TWIN)

    assert len(story.history) > 8
    assert story.hardest_cold < 1.5
    assert salt_of_cycles(story, 0) == pytest.approx([9.0] * len(story.history), rel=0.01)


def test_a_bypass_left_open_spares_the_bed():
    story = lived(("bypass_share", 1.0), days=30, salt=PLENTY)

    assert passed_after_onset(("bypass_share", 1.0), salt=PLENTY) == pytest.approx(1)
    assert story.counter == lived(("bypass_share", 1.0), days=15).counter
    clock = lived(("bypass_share", 1.0), days=60, salt=PLENTY, control=CLOCK)
    assert clock.left > 1.3 * clock.home.plan.capacity


def test_a_day_in_reserve_is_the_knee():
    """How often a delayed control runs the bed below its heel, by its reserve."""
    shares = []
    for reserve in (0.0, 120.0, 240.0, 312.0):
        cycles = below = 0
        for seed in range(12):
            home = Home(reserve=reserve, salt=PLENTY, iron=0.0)
            story = Story(home, seed, phase=seed / 12)
            story.run(40 * DAY)
            cycles += len(story.history)
            below += sum(cycle.left_before < 4500 for cycle in story.history)
        shares.append(below / cycles)

    # 75, 33, 6 and 4 percent in the first model, whose setting had iron's allowance in hand.
    assert shares[0] > 0.8
    assert 0.25 < shares[1] < 0.65
    assert shares[2] < 0.12
    assert shares[3] < 0.06
    assert shares == sorted(shares, reverse=True)


def test_a_drive_that_stalls_in_backwash_runs_to_the_drain_and_passes_raw_water():
    story = lived(("stall_position", 1.0), days=20)
    usual = lived(days=20)

    day = 24 * 60 * story.home.backwash
    assert story.ledger.to_drain - usual.ledger.to_drain > 5 * day
    assert tap(story, 2.0) == story.raw
    assert story.time - story.last_begun > 5 * DAY


def test_a_drain_that_is_shut_pushes_water_into_the_brine_tank():
    story = lived(("drain_flow_factor", 0.05), days=25)

    assert salt_of_cycles(story) == pytest.approx([0.0] * len(salt_of_cycles(story)))
    assert story.tank.level() > 13.5


def test_low_supply_pressure_slows_suction_and_backwash_together():
    low = lived(("supply_pressure_factor", 0.35), days=30, salt=PLENTY)
    usual = lived(days=30, salt=PLENTY)
    flows = low.pressure.injector_flows(0.0, low.condition)

    assert flows[0] < 0.5 * usual.pressure.injector_flows(0.0, usual.condition)[0]
    assert low.pressure.drain_flow(0, low.condition) < usual.pressure.drain_flow(0, usual.condition)


def test_a_house_that_draws_slows_the_brine():
    """Pressure is felt: the same home on a thin supply pipe, regenerating at breakfast."""
    figures = {"supply_bore": 0.5, "pressure": 30.0, "salt": PLENTY}
    night = lived(days=40, **figures)
    morning = lived(("clock_offset", -330.0), onset=0, days=40, **figures)

    drawn = [sum(one.salt for one in story.history) / len(story.history) for story in
             (night, morning)]  # fmt: skip
    assert drawn[1] <= drawn[0]


def test_resin_that_is_lost_each_cycle_takes_its_capacity_along():
    story = lived(("resin_loss_per_cycle", 0.1), days=40, salt=PLENTY)
    cycles = sum(cycle.begun > ONSET * DAY for cycle in story.history)

    assert story.volume == pytest.approx(1.5 * 0.9**cycles)
    assert story.ledger.lost > 0


def test_a_fault_may_grow_day_by_day():
    story = Story(Home(), 3, [("seal_leak_share", 0.0, 0.01)], ONSET * DAY)
    story.run((ONSET + 10) * DAY + 1)

    assert story.condition.seal_leak_share == pytest.approx(0.10)


def test_the_hot_side_of_a_cross_connection_is_harder():
    story = lived(("cross_connection_share", 0.3), days=20, salt=PLENTY)

    assert hot_tap(story) == pytest.approx(0.3 * 20, abs=1)
    assert tap(story, 2.0) < 1


def test_iron_comes_on_top_of_the_hardness():
    assert lived(("iron", 5.0), days=7).raw == pytest.approx(20.52, abs=0.01)
