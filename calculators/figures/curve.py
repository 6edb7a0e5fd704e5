"""The curve of a calculator: its answers over one input, and the place of the reader's numbers."""

import math

from calculators import CALCULATORS, run
from calculators.declare import Curve
from calculators.figures.axes import BOTTOM, HEIGHT, LEFT, RIGHT, TOP, Axes
from calculators.figures.shapes import WIDTH, line, picture, place, text
from calculators.quantities import plain, significant, snap, with_unit

SAMPLES = 48
#: Lines of one picture differ by their dashes, not by color alone.
DASHES = ("none", "7 4", "2 4")
KEY_ROOM = 0.11  # of the height, for each line of the key


def curve_picture(name, inputs, units="us"):
    """Return the picture of a calculator's curve for a reader of `units`, or None.

    name, inputs, units: as `calculators.run` takes them. None for a calculator without a curve,
    for inputs that have a problem, and where the curve's input or outputs do not count. The curve's
    own input is varied, all others keep what is given; where the calculator gives no answer the
    line has a gap.
    """
    declared = CALCULATORS[name].picture
    result = run(name, inputs, units)
    if not isinstance(declared, Curve) or result["problems"]:
        return None
    curve = declared.for_inputs(result["inputs"])
    outputs = curve.outputs if curve else ()
    values = {one: result["values"][one] for one in outputs if one in result["values"]}
    if not values:
        return None
    return _draw(CALCULATORS[name], curve, inputs, units, result["inputs"][curve.input], values)


def _draw(calculator, curve, inputs, units, understood, values):
    """Return the picture of a curve.

    understood: its input as the reader gave it; values: what comes out there.
    """
    here = understood["number"]
    varied = calculator.input(curve.input)
    low, unit = varied.displayed(curve.low, units)
    high, _ = varied.displayed(curve.high, units)
    low, high = min(low, here), max(high, here)
    across = _across(low, high, varied.kind == "count")
    lines = _lines(calculator, inputs, units, curve.input, across, list(values))
    first = next(iter(values.values()))
    axes = Axes(
        (low, high, _axis_label(varied.label, unit)),
        (*_reach(lines, values), _axis_label(first["label"], first["unit"])),
    )
    course = [(x, y) for x, y in next(iter(lines.values())) if y is not None]
    falls = bool(course) and course[-1][1] < course[0][1]
    parts = [axes.draw()]
    for index, (output, value) in enumerate(values.items()):
        parts.append(_along(axes, lines[output], DASHES[index]))
        if len(values) > 1:
            parts.append(_legend(index, value["label"], falls))
    parts += [_mark(axes, here, value["number"]) for value in values.values()]
    at_here = ", ".join(f"{value['label']} {value['shown']}" for value in values.values())
    words = f"{_told(course, first, unit)}At {_shown(here, unit)}: {at_here}."
    return picture(parts, words, HEIGHT)


def _reach(lines, values):
    """Return the least and the greatest height in the picture, which starts at zero or below."""
    heights = [y for points in lines.values() for _, y in points if y is not None]
    heights += [value["number"] for value in values.values()]
    low, high = min(0.0, *heights), max(heights)
    if high <= low:
        high = low + 1
    if len(lines) > 1:  # room for the key above the lines
        high += (high - low) * KEY_ROOM * len(lines)
    return low, high


def _axis_label(label, unit):
    return f"{label}, {unit}" if unit else label


def _across(low, high, whole):
    """Return the numbers at which a curve is worked out: whole ones for a count."""
    if whole:
        step = max(1, math.ceil((high - low) / SAMPLES))
        return [*range(int(low), int(high), step), int(high)]
    return [snap(low + (high - low) * index / SAMPLES) for index in range(SAMPLES + 1)]


def _lines(calculator, inputs, units, varied, across, outputs):
    """Return the points (x, y) of each output in the reader's units; y is None in a gap."""
    points = {output: [] for output in outputs}
    for x in across:
        given = {**inputs, varied: x}
        values = run(calculator.name, given, units, workings=False)["values"]
        for output in outputs:
            points[output].append((x, values[output]["number"] if output in values else None))
    return points


def _along(axes, points, dashes):
    """Return the line through the points, broken where there is no answer."""
    path, command = [], "M"
    for x, y in points:
        if y is None:
            command = "M"
            continue
        path.append(f"{command}{place(axes.x(x))} {place(axes.y(y))}")
        command = "L"
    return line("curve", "".join(path), dashes) if path else ""


def _legend(index, label, falls):
    """Return the key of one line, in the corner that its lines leave free."""
    y = TOP + 14 + 16 * index
    if falls:
        words = text(WIDTH - RIGHT - 34, y, label, "end")
        return line("curve", f"M{WIDTH - RIGHT - 28} {y - 4}h28", DASHES[index]) + words
    return line("curve", f"M{LEFT + 12} {y - 4}h28", DASHES[index]) + text(
        LEFT + 46, y, label, "start"
    )


def _mark(axes, x, y):
    across, down = place(axes.x(x)), place(axes.y(y))
    point = f'<circle class="figure-point" cx="{across}" cy="{down}" r="5"/>'
    return line("here", f"M{across} {down}V{HEIGHT - BOTTOM}", "3 3") + point


def _told(course, value, unit):
    """Return where a line comes from and goes to, for those who cannot see it."""
    if not course:
        return ""
    (first_x, first), (last_x, last) = course[0], course[-1]
    return (
        f"{value['label']}: {_shown(first, value['unit'])} at {_shown(first_x, unit)}, "
        f"{_shown(last, value['unit'])} at {_shown(last_x, unit)}. "
    )


def _shown(number, unit):
    return with_unit(plain(significant(number, 3)), unit)
