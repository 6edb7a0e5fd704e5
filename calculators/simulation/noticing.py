"""What a customer would notice, and say on the telephone."""

from math import ceil

from calculators.leakage import FASTEST_FLOW
from calculators.pressure import MARK
from calculators.readings import TWIN
from calculators.simulation.clock import DAY
from calculators.simulation.measuring import TEST_FLOW, TWO_FIXTURES, expected_level
from calculators.simulation.story import LEAST_VOLTAGE

#: All lines: common practice, no source.
FELT_HARD, FELT_SHARE = 3.0, 0.12  # gpg, and share of the raw hardness
TOO_HIGH = 3.0  # in above what is expected
SEEN_DRAIN = 0.02  # gpm
STAINS = 0.3  # mg/L of iron
TASTES = 0.1  # lb of salt left in the bed after its rinse
WEAK_SHOWER = 20.0  # psi at the tap
HEAVY = 2.0  # times the planned salt
UNMOVED_DAYS, UNMOVED = 14, 1.0  # lb
#: How readily each sign becomes what the customer says first.
SAID = {
    "hard-everywhere": 1.0, "hard-hot-only": 1.0, "salty": 0.8, "salt-unused": 0.35,
    "salt-heavy": 0.5, "tank-overfull": 0.9, "drain-runs": 1.0, "low-pressure": 1.0,
    "stain": 0.7, "beads": 1.0, "dead-display": 0.4, "smell": 0.7,
}  # fmt: skip


def signs(story):
    """Return the complaints that a story's home gives reason for, as a set of names.

    The story must have watched its last days (`Story.watch`).
    """
    now, raw = story.condition, story.raw
    hard = max(FELT_HARD, FELT_SHARE * raw)
    found = set()
    if story.hardest_hot > hard or now.hard_tap:
        cold = story.usual_cold() > hard or now.hard_tap
        found.add("hard-everywhere" if cold else "hard-hot-only")
    found |= _tank_signs(story)
    stuck = 0 < story.mode < 4 and story.minutes_left > DAY and story.home.control != TWIN
    if now.drain_leak >= SEEN_DRAIN or stuck:
        found.add("drain-runs")
    if not now.power_on or now.supply_voltage_share < LEAST_VOLTAGE:
        found.add("dead-display")
    if now.beads_at_taps or now.flow_reversed:
        found.add("beads")
    if now.iron > STAINS:
        found.add("stain")
    if now.heater_scale > 0:
        found.add("smell")  # what rots in a heater lives in its scale
    if _weak_shower(story):
        found.add("low-pressure")
    return found


def _tank_signs(story):
    tank, plan = story.tank, story.home.plan
    found = set()
    level = tank.level()
    if tank.spilled or level > expected_level(story, tank.salt) + TOO_HIGH:
        found.add("tank-overfull")
    last = story.history[-1] if story.history else None
    if last and last.pore_salt > TASTES and story.time - last.begun < 3 * DAY:
        found.add("salty")
    seen = story.salt_seen
    days = max(UNMOVED_DAYS, ceil(2 * plan.interval))
    if len(seen) > days:
        used = seen[-1 - days] - seen[-1]
        if used < UNMOVED and tank.salt + tank.hanging > 1:
            found.add("salt-unused")
        elif used > HEAVY * plan.salt * days / plan.interval:
            found.add("salt-heavy")
    return found


def _weak_shower(story):
    now, pressure = story.condition, story.pressure
    through = 1 - now.bypass_share
    tap = pressure.at_softener(TEST_FLOW, now)
    loss = pressure.loss_in_service(TEST_FLOW * through, now)
    flow = TWO_FIXTURES * now.peak_flow_factor * through
    strained = now.peak_flow_factor > 1 and (
        flow > FASTEST_FLOW * story.volume or pressure.loss_in_service(flow, now) > MARK
    )
    return tap - loss < WEAK_SHOWER or strained or loss > MARK


def complaints(found):
    """Return the chances of what a customer says first, from the signs found."""
    weights = {name: SAID[name] for name in found}
    if not weights:
        return {"feel": 1.0}
    if "hard-everywhere" in weights:
        weights["hard-hot-only"] = 0.15
    elif "hard-hot-only" in weights:
        weights["hard-everywhere"] = 0.6
    weights["feel"] = 0.03
    total = sum(weights.values())
    return {name: weight / total for name, weight in weights.items()}
