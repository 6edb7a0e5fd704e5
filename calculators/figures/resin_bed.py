"""The bed in section: the part that is spent, the front, and the part that is fresh."""

import math

from calculators.declare import Drawing, Input
from calculators.figures.shapes import arrow, dots, hatched, line, picture, place, text
from calculators.leakage import FASTEST_FLOW, USUAL_FLOW, front_length, passing_share
from calculators.quantities import plain, significant
from calculators.simulation.physics import USUAL_PHYSICS

#: What a dose of common size gives back; common practice, no source.
USUAL_CAPACITY = 20000.0  # grains/ft3
#: Below this share of the raw hardness the front counts as ended.
END_OF_FRONT = 0.05
LEFT, RIGHT, TOP, BOTTOM = 24, 134, 66, 286
PLANE_LEFT, PLANE_RIGHT = 262, 350
STEPS = 60
LEAST_TOLD = 0.1  # percent


def _draw(given):
    held = given.capacity + USUAL_PHYSICS.heel
    used = given.used / 100 * given.capacity / held  # in parts of all that the bed holds
    front = front_length(given.flow) / held
    end = min(1.0, used - front * math.log(END_OF_FRONT))
    outlet = 100 * passing_share(max(0.0, 1 - used), front)
    parts = [_tank(), _bed(used, end), _profile(used, front)]
    shares = [("spent", 0.0, used), ("front", used, end), ("fresh", end, 1.0)]
    for name, start, stop in shares:
        if stop - start > 0.005:
            y = _y((start + stop) / 2)
            parts.append(line("thin", f"M{RIGHT + 2} {place(y)}h10"))
            share = f"{name}: {_percent(100 * (stop - start))}"
            parts.append(text(RIGHT + 16, place(y + 4), share, "start", name == "front"))
    parts.append(
        text(4, BOTTOM + 48, f"{_percent(outlet)} of the hardness passes the bed", "start", True)
    )
    told = ", ".join(
        f"{name} {_percent(100 * max(0.0, stop - start))}" for name, start, stop in shares
    )
    words = (
        f"The bed in section, from top to bottom, with {_percent(given.used)} of its capacity "
        f"used: {told}. {_percent(outlet)} of the hardness passes the bed."
    )
    return picture(parts, words, BOTTOM + 58)


def _percent(number):
    if 0 < number < LEAST_TOLD:
        return f"less than {plain(LEAST_TOLD)} %"
    return f"{plain(significant(number, 2) if number < 99.5 else 100)} %"


def _y(part):
    return TOP + part * (BOTTOM - TOP)


def _tank():
    return "".join(
        [
            line("wall", f"M{LEFT} 40V{BOTTOM - 6}q0 12 12 12H{RIGHT - 12}q12 0 12-12V40"),
            text(LEFT, 16, "raw water", "start"),
            line("raw", f"M{(LEFT + RIGHT) / 2} 24V48"),
            arrow("raw", (LEFT + RIGHT) / 2, 56, "down"),
            line("softened", f"M{(LEFT + RIGHT) / 2} {BOTTOM + 8}v8"),
            arrow("softened", (LEFT + RIGHT) / 2, BOTTOM + 24, "down"),
            text((LEFT + RIGHT) / 2 + 14, BOTTOM + 22, "to the riser and the house", "start"),
        ]
    )


def _bed(used, end):
    grains = [
        (x + 5 * (row % 2), TOP + 5 + 10 * row)
        for row in range(22)
        for x in range(LEFT + 7, RIGHT - 6, 10)
    ]
    parts = [dots("grain", grains)]
    parts.append(hatched("spent", LEFT + 2, _y(0), RIGHT - 2, _y(used), 6))
    parts.append(hatched("spent", LEFT + 2, _y(used), RIGHT - 2, _y(end), 14))
    for part in (0.0, used, end):
        if 0 <= part < 1:
            parts.append(line("axis", f"M{LEFT} {place(_y(part))}H{RIGHT}"))
    return "".join(parts)


def _profile(used, front):
    """Return the hardness of the water on its way down, beside the bed."""
    points = []
    for step in range(STEPS + 1):
        part = step / STEPS
        share = passing_share(max(0.0, part - used), front)
        points.append(f"{place(PLANE_LEFT + share * (PLANE_RIGHT - PLANE_LEFT))} {place(_y(part))}")
    return "".join(
        [
            line("axis", f"M{PLANE_LEFT} {TOP}V{BOTTOM}M{PLANE_LEFT} {TOP}H{PLANE_RIGHT}"),
            line("grid", f"M{PLANE_RIGHT} {TOP}V{BOTTOM}"),
            line("curve", "M" + "L".join(points)),
            text(PLANE_RIGHT, TOP - 34, "hardness of the water", "end"),
            text(PLANE_LEFT, TOP - 8, "none", "middle"),
            text(PLANE_RIGHT, TOP - 8, "all", "middle"),
        ]
    )


RESIN_BED = Drawing(
    "resin-bed",
    [
        Input("used", "Share of the capacity used", "share", "%", low=0, high=100, example=60),
        Input(
            "flow",
            "Flow for each volume of resin",
            "flow per volume",
            "gpm/ft³",
            default=USUAL_FLOW,
            low=0.1,
            high=FASTEST_FLOW,
        ),
        Input(
            "capacity",
            "Capacity of each volume of resin",
            "resin capacity",
            "grains/ft³",
            default=USUAL_CAPACITY,
            low=3000,
            high=40000,
        ),
    ],
    _draw,
)
