"""Pictures drawn from the same numbers as the answers, as scalable vector graphics in text."""

from calculators import CALCULATORS
from calculators.figures.course import course_picture
from calculators.figures.curve import curve_picture

__all__ = ["course_picture", "curve_picture", "picture"]


def picture(name, inputs, units="us"):
    """Return the picture of a calculator, its curve or its course, or None where it has none.

    name, inputs, units: as `calculators.run` takes them.
    """
    if CALCULATORS[name].course:
        return course_picture(name, inputs, units)
    return curve_picture(name, inputs, units)
