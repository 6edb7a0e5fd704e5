"""A technician's visit to a simulated home: the door for the diagnosis and for practice calls."""

from random import Random

from calculators.simulation import results
from calculators.simulation.changes import draw
from calculators.simulation.clock import DAY
from calculators.simulation.home import sampled_home
from calculators.simulation.measuring import (
    METER_DRAW,
    allowance,
    control_numbers,
    flow_numbers,
    salt_numbers,
    water_numbers,
)
from calculators.simulation.noticing import complaints, signs
from calculators.simulation.physics import USUAL_PHYSICS, Physics
from calculators.simulation.story import Story

__all__ = ["CHECKS", "Visit", "draw", "visit"]

SETTLED = 8  # days that a home lives before the onset
ONSET = 6.0, 30.0  # days before the visit
HEATER_ONSET = 0.05, 2.0  # days: a heater that was filled earlier holds nothing of it any more
FROM, UNTIL = 8.0, 17.0  # hours of the day in which visits begin
WATCHED = 3  # days that a customer remembers

#: The checks whose results are simulated.
CHECKS = (
    "raw-hardness", "cold-and-hot-pair", "clock-reading", "settings-and-counters", "salt-height",
    "brine-level", "rod-through-salt", "backwash-flow", "brine-draw", "refill-measured",
    "leakage-slow-and-fast", "meter-against-bucket", "pressure-loss", "supply-voltage",
    "supply-pressure", "brine-hydrometer", "peak-flow",
)  # fmt: skip


class Visit:
    """A home at the hour of a visit.

    control, water: the home's class; signs: the complaints it gives reason for; complaints: the
    chance of each; story: all of its state.
    """

    __slots__ = ("story", "control", "water", "signs", "complaints")

    def __init__(self, story):
        self.story = story
        self.control, self.water = story.home.control, story.home.water
        self.signs = signs(story)
        self.complaints = complaints(self.signs)

    def numbers(self, random):
        """Return what instruments read once, with their errors; names tell, units in measuring."""
        story = self.story
        return {
            **water_numbers(story, random),
            **control_numbers(story, random),
            **salt_numbers(story, random),
            **flow_numbers(story, random),
        }

    def readings(self, random):
        """Return one set of results by check; a check that cannot tell or be done is left out."""
        found = results_of(self.numbers(random), self.story)
        return {check: result for check, result in found.items() if result is not None}


def results_of(numbers, story):
    """Return the result of each simulated check for the numbers read in a story's home."""
    plan, home = story.home.plan, story.home
    raw = numbers["raw_hardness"]
    metered = numbers["meter_share"] is not None
    return {
        "raw-hardness": results.raw_hardness(raw, allowance(story), plan.setting),
        "cold-and-hot-pair": results.pair(
            numbers["cold_hardness"], numbers["hot_hardness"], raw
        ),
        "clock-reading": results.clock_reading(numbers["clock_error"], numbers["clock_blank"]),
        "settings-and-counters": results.settings_and_counters(
            numbers["days_since"], plan.interval, plan.days,
            numbers["counter_set"], plan.counter, numbers["refill_set"], plan.refill,
            numbers["counted"], METER_DRAW, numbers["interval_set"],
        ),
        "salt-height": results.salt_height(numbers["salt_top"], numbers["water_level"]),
        "brine-level": results.brine_level(numbers["water_level"], numbers["expected_level"]),
        "rod-through-salt": numbers["rod"],
        "backwash-flow": results.backwash_flow(
            numbers["backwash_share"], numbers["backwash_error"]
        ),
        "brine-draw": results.brine_draw(numbers["suction_share"], numbers["level_rises"]),
        "refill-measured": results.refill_measured(numbers["refill_share"]),
        "leakage-slow-and-fast": results.leakage_slow_and_fast(
            numbers["slow_hardness"], numbers["fast_hardness"], raw
        ),
        "meter-against-bucket": results.meter_against_bucket(
            numbers["meter_share"], numbers["meter_error"]
        ) if metered else None,
        "pressure-loss": results.pressure_loss(
            numbers["pressure_loss"], numbers["pressure_loss_expected"]
        ),
        "supply-voltage": results.supply_voltage(numbers["supply_voltage"]),
        "supply-pressure": results.supply_pressure(numbers["running_pressure"]),
        "brine-hydrometer": results.brine_hydrometer(numbers["brine_gravity"]),
        "peak-flow": results.peak_flow(numbers["peak_flow"], home.resin, numbers["peak_loss"]),
    }  # fmt: skip


def visit(seed, changes, shift=0.0, notices=True):
    """Return the visit to a home sampled from a seed in which changes began some days before.

    changes: triples (name, value, growth a day), as `draw` returns them. shift: moves the physics
    by that share, up or down by the seed. Return None where the customer notices nothing; with
    notices=False every home is visited.
    """
    story, now = days_before(seed, changes, shift)
    story.run(now - WATCHED * DAY)
    story.watch()
    story.run(now)
    found = Visit(story)
    return found if found.signs or not notices else None


def days_before(seed, changes, shift=0.0):
    """Return the story that `visit` tells, still at its beginning, and when the visit is [min]."""
    random = Random(seed)
    home = sampled_home(random)
    physics = Physics(shift, random) if shift else USUAL_PHYSICS
    before = ONSET
    if any(name == "heater_hardness" for name, _, _ in changes):
        before = HEATER_ONSET
    since = DAY * random.uniform(*before)
    hour = random.uniform(FROM, UNTIL)
    days = SETTLED + int(since / DAY) + 1
    now = DAY * days + 60 * hour
    phase_seed = random.getrandbits(64)
    return Story(home, phase_seed, changes, now - since, physics, random.random()), now
