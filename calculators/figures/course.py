"""The course of days: what a calculator follows through time, one plane under the other."""

from calculators import CALCULATORS, understood
from calculators.declare import Course
from calculators.figures.axes import BOTTOM, RIGHT, TOP, Axes
from calculators.figures.shapes import WIDTH, line, picture, place, text
from calculators.quantities import convert, display_unit, plain, significant, with_unit

PANEL, GAP = 86, 34  # heights of a plane, and of the room for the label of the next
#: Lines of one plane differ by their dashes, not by color alone.
DASHES = ("none", "7 4")
KEY = 92  # room for the key of one line
#: What is less than this share of a line's height is none to the eye, and is told as none.
LEAST_SEEN = 0.001


def course_picture(name, inputs, units="us"):
    """Return the picture of a calculator's days for a reader of `units`, or None.

    name, inputs, units: as `calculators.run` takes them. None for a calculator without a course
    and for inputs that have a problem.
    """
    calculator = CALCULATORS[name]
    given = understood(name, inputs, units)
    if not isinstance(calculator.picture, Course) or given is None:
        return None
    return course_drawing(calculator.picture.follow(given), units)


def course_drawing(course, units="us"):
    """Return the picture of a course, as `declare.Course` tells what one is."""
    times, panels = course["times"], course["panels"]
    parts, told = [], []
    for index, (title, kind, unit, lines) in enumerate(panels):
        own = display_unit(unit, units)
        lines = [
            (label, [convert(number, unit, own, kind) for number in numbers])
            for label, numbers in lines
        ]
        top = TOP + index * (PANEL + GAP)
        last = index == len(panels) - 1
        parts.append(_panel(times, course["marks"], f"{title}, {own}", lines, top, last))
        told += [_told(label, own, numbers) for label, numbers in lines]
    height = TOP + len(panels) * (PANEL + GAP) - GAP + BOTTOM
    count = len(course["marks"])
    words = f"{plain(significant(times[-1], 3))} days with {count} {'mark' if count == 1 else 'marks'}. "
    return picture(parts, words + " ".join(told), height)


def _panel(times, marks, label, lines, top, last):
    """Return one plane with its lines, and the marks as uprights."""
    most = max(max(numbers) for _, numbers in lines)
    axes = Axes(
        (times[0], times[-1], "Days" if last else ""),
        (0.0, most if most > 0 else 1.0, label),
        top,
        top + PANEL,
    )
    parts = [axes.draw()]
    for mark in marks:
        parts.append(line("here", f"M{place(axes.x(mark))} {top}V{top + PANEL}", "2 3"))
    for index, (name, numbers) in enumerate(lines):
        points = zip(times, numbers, strict=True)
        path = "L".join(f"{place(axes.x(x))} {place(axes.y(y))}" for x, y in points)
        parts.append(line("curve", f"M{path}", DASHES[index]))
        if len(lines) > 1:
            right = WIDTH - RIGHT - KEY * (len(lines) - 1 - index)
            parts.append(line("curve", f"M{right - 60} {top - 20}h24", DASHES[index]))
            parts.append(text(right - 30, top - 16, name, "start"))
    return "".join(parts)


def _told(label, unit, numbers):
    """Return what a line does, for those who cannot see it."""

    most = max(abs(number) for number in numbers)

    def shown(number):
        seen = number if abs(number) > LEAST_SEEN * most else 0.0
        return with_unit(plain(significant(seen, 3)), unit)

    return (
        f"{label}: from {shown(numbers[0])} to {shown(numbers[-1])}, at least "
        f"{shown(min(numbers))}, at most {shown(max(numbers))}."
    )
