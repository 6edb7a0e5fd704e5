"""Pictures drawn from the same numbers as the answers, as scalable vector graphics in text."""

from calculators import CALCULATORS
from calculators.declare import Course, Curve, Drawing
from calculators.figures.brine_tank import brine_tank_picture
from calculators.figures.course import course_picture
from calculators.figures.curve import curve_picture
from calculators.figures.day import day_picture
from calculators.figures.scales import drop_scale, hardness_bar
from calculators.figures.timetable import timetable_picture

__all__ = ["course_picture", "curve_picture", "picture"]

#: The drawings that calculators have of their own, by name; each takes what `picture` takes.
_OWN = {
    "brine-tank": brine_tank_picture,
    "day": day_picture,
    "drop-scale": drop_scale,
    "hardness-bar": hardness_bar,
    "timetable": timetable_picture,
}
_KINDS = {
    Curve: curve_picture,
    Course: course_picture,
    Drawing: lambda name, *more: _OWN[CALCULATORS[name].picture.name](name, *more),
}


def picture(name, inputs, units="us"):
    """Return the picture of a calculator for a reader of `units`, or None where it has none.

    name, inputs, units: as `calculators.run` takes them. None also for inputs that have a problem.
    """
    declared = CALCULATORS[name].picture
    return _KINDS[type(declared)](name, inputs, units) if declared else None
