"""The same home minute by minute: a plain second reckoning that knows nothing of closed forms."""

import math
from random import Random

import pytest

from calculators.leakage import front_length, passing_share
from calculators.readings import CLOCK, DELAYED, IMMEDIATE
from calculators.simulation.clock import DAY
from calculators.simulation.home import Home
from calculators.simulation.household import Household
from calculators.simulation.physics import USUAL_PHYSICS
from calculators.simulation.service import hot_tap
from calculators.simulation.story import Story

DAYS = 30
SALT, BRINE_LEFT = 8.94, 1.0


def minute_by_minute(home, seed):
    """Return grains passed, hot hardness at the end and regenerations, in steps of a minute.

    The draws are the same ones; everything else is reckoned anew and plainly: hardness that passes
    by the capacity left at the start of a minute, the heater by a mixing in each minute, a salt
    dose that converts in one piece.
    """
    random = Random(seed)
    household = Household(4, 60.0, 0.0, 0, Random(random.getrandbits(64)), guests=False)
    volume, raw, leak = home.resin, home.hardness + 0.5 * 0.1047, home.leakage
    gained = 45_000 * home.dose / (home.dose + 7.51)
    left = (3000 + gained) * volume
    heater, counter, since = leak, home.plan.counter, 0
    passed = regenerations = 0
    raw_until = -1.0
    for day in range(DAYS):
        minutes = [[] for _ in range(1440)]
        for start, end, flow, hot in household.day(day):
            for minute in range(int(start - day * DAY), 1440):
                begin = day * DAY + minute
                shared = min(end, begin + 1) - max(start, begin)
                if shared <= 0:
                    break
                minutes[minute].append((shared * flow, shared * hot))
        for minute in range(1440):
            now = day * DAY + minute
            if minute == 120:
                since += 1
                empty = counter is not None and counter <= 0
                due = empty and home.control == DELAYED or since >= home.plan.days
                if due and now >= raw_until:
                    raw_until, regenerations, since = now + 80, regenerations + 1, 0
                    counter, left = home.plan.counter, _regenerated(left, volume)
            water = sum(one for one, _ in minutes[minute])
            hot = sum(one for _, one in minutes[minute])
            if water <= 0:
                continue
            if now < raw_until:
                cold = raw
            else:
                if counter is not None:
                    counter -= water
                share = passing_share(left / volume, front_length(max(water / volume, 0.01)))
                cold = leak + (raw - leak) * share
                left = max(0.0, left - (raw - cold) * water)
                if home.control == IMMEDIATE and counter <= 0:
                    raw_until, regenerations, since = now + 81, regenerations + 1, 0
                    counter, left = home.plan.counter, _regenerated(left, volume)
            passed += cold * water
            heater = cold + (heater - cold) * math.exp(-hot / home.heater)
    return passed, heater, regenerations


def _regenerated(left, volume):
    """Convert by small portions of salt: all it can below the heel, less and less above."""
    each, dose = left / volume, SALT / volume
    portions = 2000
    for _ in range(portions):
        reach = 1.0 if each < 3000 else (1 - (each - 3000) / 45_000) ** 2
        each += 45_000 / 7.51 * reach * dose / portions
    return each * volume


@pytest.mark.parametrize("control", [DELAYED, CLOCK, IMMEDIATE])
@pytest.mark.parametrize("hardness", [20.0, 24.0])
def test_the_story_agrees_with_a_reckoning_minute_by_minute(control, hardness):
    # Harder water than the plan knows, so that the bed runs low and passes hardness.
    home = Home(control=control, salt=400.0, iron=0.5)
    home.hardness = hardness
    story = Story(home, 7)
    story.run(DAYS * DAY)
    ledger = story.ledger

    passed, hot, regenerations = minute_by_minute(home, 7)

    assert USUAL_PHYSICS.heel == 3000
    assert len(story.history) == regenerations
    assert (passed - ledger.tap_grains) / ledger.raw_grains == pytest.approx(0, abs=0.005)
    assert hot_tap(story) == pytest.approx(hot, abs=0.005 * hardness)
