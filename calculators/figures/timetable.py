"""The flow at the drain through a regeneration, position by position."""

from calculators import run, understood
from calculators.figures.axes import Axes
from calculators.figures.shapes import WIDTH, line, picture, place, text
from calculators.quantities import convert, display_unit, plain, significant, with_unit
from calculators.timetable import POSITIONS, drain_flows

FLOOR, ROW = 176, 19
MANY_MINUTES = 130
#: Where the columns of the table under the plane stand.
COLUMNS = (4, 190, 266, WIDTH - 4)


def timetable_picture(name, inputs, units="us"):
    """Return the timetable as a picture for a reader of `units`, or None with a problem."""
    result = run(name, inputs, units)
    if result["problems"]:
        return None
    given = understood(name, inputs, units)
    values = result["values"]
    unit = display_unit("gpm", units)
    flows = {
        position: convert(flow, "gpm", unit, "flow")
        for position, flow in drain_flows(given).items()
    }
    begins = [0.0, *(values[f"{one}_begins"]["number"] for one in list(POSITIONS)[1:])]
    ends = [*begins[1:], values["minutes"]["number"]]
    axes = Axes(
        (0.0, ends[-1], "Minutes"),
        (0.0, 1.2 * max(flows.values()), f"Flow at the drain, {unit}"),
        floor=FLOOR,
        marks=_marks(ends[-1]),
    )
    parts = [axes.draw(), line("curve", _steps(axes, begins, ends, flows.values()))]
    rows = []
    for number, position in enumerate(POSITIONS):
        begin, end = begins[number], ends[number]
        if end > begin:
            middle = place(axes.x((begin + end) / 2))
            parts.append(text(middle, axes.top + 14, str(number + 1), "middle", True))
        if number:
            x = place(axes.x(begin))
            parts.append(line("here", f"M{x} {axes.top}V{FLOOR}", "2 3"))
        water = values[f"{position}_water"]["shown"] if f"{position}_water" in values else "none"
        shown = with_unit(plain(significant(flows[position], 3)), unit)
        minutes = values[f"{position}_begins"]["shown"] if number else with_unit("0", "min")
        rows.append((f"{number + 1} {POSITIONS[position]}", minutes, shown, water))
    y = FLOOR + 62
    parts += _row(y, ("position", "begins", "flow", "to drain"), True)
    for index, row in enumerate(rows):
        parts += _row(y + ROW * (index + 1), row)
    y += ROW * (len(rows) + 1)
    total = values["drained"]["shown"]
    parts += _row(y, ("end", values["minutes"]["shown"], "", total), True)
    words = "; ".join(
        f"{POSITIONS[position]} from {row[1]}, {row[2]}, {row[3]} in all"
        for position, row in zip(POSITIONS, rows, strict=True)
    )
    end = values["minutes"]["shown"]
    words = (
        f"Flow at the drain through a regeneration: {words}. It ends after {end}; {total} in all."
    )
    return picture(parts, words, y + 10)


def _marks(total):
    """Return a mark at every ten minutes, words at every second one; None for many minutes."""
    if total > MANY_MINUTES:
        return None
    return [(ten, "" if ten % 20 else plain(ten)) for ten in range(0, int(total) + 1, 10)]


def _steps(axes, begins, ends, flows):
    """Return the line of the flow, level in each position."""
    path = [f"M{place(axes.x(0.0))} {place(axes.y(0.0))}"]
    for begin, end, flow in zip(begins, ends, flows, strict=True):
        if end > begin:
            path.append(f"L{place(axes.x(begin))} {place(axes.y(flow))}")
            path.append(f"L{place(axes.x(end))} {place(axes.y(flow))}")
    return "".join(path)


def _row(y, cells, strong=False):
    anchors = ("start", "end", "end", "end")
    return [
        text(x, y, words, anchor, strong)
        for x, words, anchor in zip(COLUMNS, cells, anchors, strict=True)
        if words
    ]
