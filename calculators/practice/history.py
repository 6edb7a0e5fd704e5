"""What went on in the hidden home before the visit, drawn over its days."""

from calculators.figures.course import course_drawing
from calculators.simulation.clock import DAY
from calculators.simulation.regeneration import tank_until
from calculators.simulation.service import hot_tap, tap
from calculators.simulation.visit import days_before

SAMPLES = 112  # places of the picture along its days
SLOW = 1.0  # gpm


def history(hidden, units):
    """Return {"picture": SVG, "days": since the fault began or None, "regenerations": how many}.

    The home lives its days again; hardness is the hardest since the place before.
    """
    changes = [change for fault in hidden.faults for change in hidden.changes[fault]]
    story, now = days_before(hidden.home_seed, tuple(changes))
    times, cold, hot, capacity, level, salt = [], [], [], [], [], []
    for place in range(SAMPLES + 1):
        story.watch()
        story.run(now * place / SAMPLES)
        tank_until(story, story.time)
        times.append(now * place / SAMPLES / DAY)
        cold.append(story.hardest_cold or tap(story, SLOW))
        hot.append(story.hardest_hot or hot_tap(story))
        capacity.append(story.left)
        level.append(story.tank.level())
        salt.append(story.tank.salt + story.tank.hanging)
    course = {
        "times": times,
        "marks": [cycle.begun / DAY for cycle in story.history],
        "panels": [
            ("Hardness", "hardness", "gpg", [("Cold", cold), ("Hot", hot)]),
            ("Capacity left", "capacity", "grains", [("Capacity left", capacity)]),
            ("Brine level", "length", "in", [("Brine level", level)]),
            ("Salt in the tank", "mass", "lb", [("Salt in the tank", salt)]),
        ],
    }
    return {
        "picture": course_drawing(course, units),
        "day": round(story.onset / DAY, 1) if changes else None,
        "visit": round(now / DAY, 1),
        "regenerations": len(story.history),
    }
