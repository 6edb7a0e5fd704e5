"""What instruments and eyes would read in a simulated home, with the errors of a test kit."""

from math import ceil, hypot

from calculators.brine import ROOM_OF_SALT
from calculators.brine_level import water_height
from calculators.brine_strength import WATER_DENSITY, brine_density
from calculators.clock import short_way_round
from calculators.flow import reading_error
from calculators.leaks import CUBIC_INCHES_IN_A_GALLON
from calculators.meter import count_error
from calculators.readings import CLOCK
from calculators.sampling import drop_estimate
from calculators.simulation.bed import regenerated, share_that_counts
from calculators.simulation.changes import Condition
from calculators.simulation.plan import IRON_ALLOWANCE
from calculators.simulation.pressure import TURNS
from calculators.simulation.regeneration import float_height, refill_flow, tank_until
from calculators.simulation.service import hot_tap, tap, valve_outlet
from calculators.simulation.story import LEAST_VOLTAGE
from calculators.units import GALLON, POUND

#: Errors: common practice, no source.
DROP, DROP_ERROR, MISREAD = 1.0, 0.05, 0.01  # gpg; standard deviation [1]; chance
ROD_MISREAD = 0.03
LEVEL_ERROR, PRESSURE_ERROR, VOLTAGE_ERROR, GRAVITY_ERROR = 0.5, 1.0, 0.02, 0.005
METER_DRAW = 20.0  # gal, which is enough to tell
BUCKET_ERROR, WATCH_ERROR, METER_BUCKET_ERROR = 0.1, 1.0, 0.15  # gal, s, gal
SAMPLE_FLOW, SLOW_FLOW, FAST_FLOW, TEST_FLOW = 2.0, 1.0, 8.0, 5.0  # gpm
#: Two fixtures at once: a bath and a toilet [gpm].
TWO_FIXTURES = 7.0
PROBED_BRIDGE, PROBED_MUSH = 0.3, 0.3  # shares from which a rod feels it
SOUND = Condition()
_WATER = WATER_DENSITY * GALLON / POUND  # lb/gal


def drops(hardness, random):
    """Return the drops that a test of a hardness [gpg] takes."""
    sized = hardness / DROP * max(0.5, random.gauss(1.0, DROP_ERROR))
    count = ceil(sized - 1e-9)
    if random.random() < MISREAD:
        count = random.randint(0, count + 3)
    return count


def _level_error(random):
    return random.uniform(-LEVEL_ERROR, LEVEL_ERROR)


def water_numbers(story, random):
    """Return raw, cold and hot hardness, and behind the valve at slow and fast flow [gpg].

    What a technician takes from counts of drops: best estimates.
    """
    raw = story.home.hardness * story.condition.raw_hardness_factor
    cold = raw if story.condition.hard_tap else tap(story, SAMPLE_FLOW)
    left = story.left
    if not _quarter_left(story):
        left = fresh_bed(story)
    samples = {
        "raw_hardness": raw,
        "cold_hardness": cold,
        "hot_hardness": hot_tap(story),
        "slow_hardness": valve_outlet(story, SLOW_FLOW, left),
        "fast_hardness": valve_outlet(story, FAST_FLOW * story.condition.peak_flow_factor, left),
    }
    return {name: drop_estimate(drops(true, random), DROP) for name, true in samples.items()}


def _quarter_left(story):
    """Return whether by the known history a quarter of the capacity is left."""
    plan = story.home.plan
    days = (story.time - story.last_begun) / 1440
    return days * plan.water * plan.setting < 0.75 * plan.capacity


def fresh_bed(story):
    """Return the capacity [grains] the bed would have after a regeneration by hand now."""
    now, tank = story.condition, story.tank
    suction, motive = story.pressure.injector_flows(0.0, now)
    if suction <= 0 or not (now.brine_valve_opens and now.piston_travels):
        return story.left
    drawn = min(usable_brine(story), suction * story.home.brine_minutes)
    share = drawn / max(tank.brine(), 1e-9)
    salt, water = share * tank.dissolved, share * tank.water
    strength = 100 * salt / max(1e-9, salt + _WATER * (water + motive * drawn / suction))
    counts = salt * share_that_counts(strength)
    return regenerated(story.left, counts, story.volume, story.quality, story.physics)


def usable_brine(story):
    """Return the brine [gal] that can be drawn before the air check shuts or mush holds it."""
    now = story.condition
    return story.tank.above_heel() * now.usable_brine_share * (1 - now.mush_share)


def control_numbers(story, random):
    """Return what the control shows, and the voltage it gets [share of its rating]."""
    now, home, plan = story.condition, story.home, story.home.plan
    powered = bool(now.power_on and now.supply_voltage_share >= LEAST_VOLTAGE)
    mechanical = not home.hold_up
    error = story.clock.shown(story.time) - story.time % 1440 + random.uniform(-2.5, 2.5)
    voltage = now.supply_voltage_share if now.power_on else 0.0
    numbers = {
        "clock_error": 60 * short_way_round(error / 60),
        "clock_blank": story.clock.flashing or not (powered or mechanical),
        "days_since": (story.time - story.last_begun) / 1440,
        "refill_set": plan.refill * now.salt_dose_factor,
        "supply_voltage": voltage * random.gauss(1.0, VOLTAGE_ERROR),
        "counter_set": story.counter_set,
        "interval_set": story.interval if home.control == CLOCK else None,
        "counted": None,
        "meter_share": None,
        "meter_error": None,
    }
    if home.control != CLOCK:
        drawn = METER_DRAW
        share = story.meter_share if powered else 0.0
        numbers["counted"] = float(round(drawn * share))
        caught = random.gauss(drawn, METER_BUCKET_ERROR)
        numbers["meter_share"] = numbers["counted"] / caught
        numbers["meter_error"] = count_error(drawn, METER_BUCKET_ERROR, 1.0)
    return numbers


def salt_numbers(story, random):
    """Return heights [in] in the brine tank, what a rod feels, and the brine's gravity."""
    tank_until(story, story.time)
    tank, now = story.tank, story.condition
    seen = tank.salt + tank.hanging
    level = max(0.0, tank.level() + _level_error(random))
    top = max(0.1, seen * tank.in_a_pound + _level_error(random)) if seen > 0.5 else 0.0
    felt = "loose"
    if seen > 5:
        if tank.hanging > PROBED_BRIDGE * seen:
            felt = "bridge"
        elif now.mush_share > PROBED_MUSH:
            felt = "mush"
    if random.random() < ROD_MISREAD:
        felt = random.choice([other for other in ("loose", "bridge", "mush") if other != felt])
    weight = tank.dissolved + _WATER * tank.water
    strength = 100 * tank.dissolved / weight if weight else 0.0
    gravity = brine_density(strength) / WATER_DENSITY
    return {
        "salt_top": top,
        "water_level": level,
        "expected_level": expected_level(story, seen),
        "rod": felt,
        "brine_gravity": gravity + random.gauss(0.0, GRAVITY_ERROR),
    }


def expected_level(story, seen):
    """Return the height [in] that planned brine on the heel would stand at, in the salt seen [lb].

    The same geometry as the calculator of the brine level.
    """
    tank, plan = story.tank, story.home.plan
    was = tank.salt
    tank.salt = seen
    volume = tank.volume_at(tank.heel_height) + plan.brine
    level = water_height(volume * CUBIC_INCHES_IN_A_GALLON, tank.layers())
    tank.salt = was
    return level


def flow_numbers(story, random):
    """Return flows at the drain and of brine, refill and peak, and pressures."""
    now, home, pressure = story.condition, story.home, story.pressure
    backwash = pressure.drain_flow(0.0, now) if now.piston_travels else 0.0
    caught = 5.0 if backwash > 1.0 else 1.0 if backwash > 0.2 else 0.2
    seconds = 60 * caught / max(backwash, 0.01)
    error = reading_error(caught, BUCKET_ERROR, seconds, WATCH_ERROR)
    suction, _ = pressure.injector_flows(0.0, now)
    expected, _ = pressure.injector_flows(0.0, SOUND)
    drawn = suction if now.brine_valve_opens and now.piston_travels else 0.0
    usable = now.usable_brine_share * (1 - now.mush_share)
    drawn_share = drawn / expected if expected > 0 else 1.0
    if usable < 0.6:
        drawn_share *= usable
    peak = TWO_FIXTURES * now.peak_flow_factor * random.gauss(1.0, 0.05)
    through = 1 - now.bypass_share
    return {
        "backwash_share": backwash / home.backwash * random.gauss(1.0, error),
        "backwash_error": error,
        "suction_share": max(0.0, drawn_share * random.gauss(1.0, 0.05)),
        "level_rises": drawn < 0 and now.drain_flow_factor < TURNS,
        "refill_share": refill_share(story) * random.gauss(1.0, 0.03),
        "pressure_loss": _loss(story, TEST_FLOW * through)
        + hypot(1, 1) * random.gauss(0.0, PRESSURE_ERROR / 2),
        "pressure_loss_expected": pressure.loss_in_service(TEST_FLOW, SOUND),
        "running_pressure": pressure.at_softener(TEST_FLOW, now)
        + random.gauss(0.0, PRESSURE_ERROR),
        "peak_flow": peak,
        "peak_loss": pressure.loss_in_service(peak, SOUND),
    }


def _loss(story, flow):
    return story.pressure.loss_in_service(flow, story.condition)


def refill_share(story):
    """Return the refill from the heel up, beside minutes set times rated flow [1]."""
    now, home, tank = story.condition, story.home, story.tank
    minutes = home.plan.refill * now.salt_dose_factor
    room = tank.volume_at(float_height(story)) - tank.volume_at(tank.heel_height)
    room *= 1 + ROOM_OF_SALT  # what dissolves meanwhile takes a little room
    came = min(max(0.0, room), refill_flow(story) * minutes + now.brine_valve_leak * 0.25)
    return came / (minutes * home.refill_flow)


def allowance(story):
    """Return the card's allowance [gpg] for iron."""
    return IRON_ALLOWANCE * story.home.iron
