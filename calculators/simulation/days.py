"""What a story shows through its days, place by place: the course for a picture."""

from calculators.simulation.clock import DAY
from calculators.simulation.regeneration import tank_until
from calculators.simulation.service import hot_tap, tap

PLACES = 112  # of a picture along its days
SLOW = 1.0  # gpm


def course_of_days(story, days):
    """Return the course of a story that begins now: times, marks, and what stood at each time.

    days: how many it lives. Hardness is the hardest since the time before, so that no short rush of
    raw water is missed. Of cold water that nobody drew, as at night in a regeneration, nothing new
    is told.
    """
    times, cold, hot, capacity, level, salt = [0.0], [], [], [], [], []
    for place in range(PLACES + 1):
        now = days * place / PLACES
        if place:
            times.append(now)
            story.watch()
            story.run(DAY * now)
        tank_until(story, story.time)
        cold.append(story.hardest_cold or (cold[-1] if cold else tap(story, SLOW)))
        hot.append(story.hardest_hot or hot_tap(story))
        capacity.append(story.left)
        level.append(story.tank.level())
        salt.append(story.tank.salt + story.tank.hanging)
    return {
        "times": times,
        "marks": [cycle.begun / DAY for cycle in story.history],
        "panels": [
            ("Hardness", "hardness", "gpg", [("Cold", cold), ("Hot", hot)]),
            ("Capacity left", "capacity", "grains", [("Capacity left", capacity)]),
            ("Brine level", "length", "in", [("Brine level", level)]),
            ("Salt in the tank", "mass", "lb", [("Salt in the tank", salt)]),
        ],
    }
