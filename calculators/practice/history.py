"""What went on in the hidden home before the visit, drawn over its days."""

from calculators.figures.course import course_drawing
from calculators.simulation.clock import DAY
from calculators.simulation.days import course_of_days
from calculators.simulation.visit import days_before


def history(hidden, units):
    """Return {"picture": SVG, "days": since the fault began or None, "regenerations": how many}.

    The home lives its days again.
    """
    changes = [change for fault in hidden.faults for change in hidden.changes[fault]]
    story, now = days_before(hidden.home_seed, tuple(changes))
    course = course_of_days(story, now / DAY)
    return {
        "picture": course_drawing(course, units),
        "day": round(story.onset / DAY, 1) if changes else None,
        "visit": round(now / DAY, 1),
        "regenerations": len(story.history),
    }
