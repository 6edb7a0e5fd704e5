"""The brine tank in section, true to scale: floor, grid, salt, water, float and overflow."""

import math

from calculators import run, understood
from calculators.brine_level import ROUND
from calculators.figures.axes import round_marks
from calculators.figures.shapes import (
    area,
    arrow,
    dots,
    line,
    picture,
    place,
    text,
)
from calculators.quantities import convert, plain, significant, with_unit

#: The room of the tank in the picture, its floor and its left wall, and where labels may stand.
WIDEST, HIGHEST, TOP, WALL = 126, 260, 24, 70
LABEL_GAP = 17
RIM = 2.0  # inches of wall above the highest thing that is drawn
LEAST_SHAPE = 1.3  # times the width is the least height that is drawn
TITLES = {
    "water_left": "after draw",
    "grid_height": "grid",
    "float_height": "float",
    "overflow_height": "overflow",
}


def brine_tank_picture(name, inputs, units="us"):
    """Return the section of the brine tank for a reader of `units`, or None with a problem."""
    result = run(name, inputs, units)
    if result["problems"]:
        return None
    given = understood(name, inputs, units)
    height = result["values"]["height"]
    tank = _Tank(given, convert(height["number"], height["unit"], "in", "length"))
    labels = _labels(result, given, tank)
    parts = [
        _ruler(tank, height["unit"]),
        _water(tank),
        _salt(given, tank),
        line("wall", f"M{WALL} {TOP}V{tank.floor}H{tank.right}V{TOP}"),
        _well(given, tank),
        _fittings(given, tank),
        *_told(labels, tank),
    ]
    words = "; ".join(label for _, label, _ in sorted(labels, key=lambda one: one[0]))
    width = result["inputs"].get("tank_diameter") or result["inputs"]["tank_area"]
    return picture(
        parts,
        f"Section of the brine tank, {width['label'].lower()} {width['shown']}. From the floor: "
        f"{words}.",
        tank.floor + 26,
    )


class _Tank:
    """Where heights and widths of the tank [in] stand in the picture."""

    def __init__(self, given, height):
        self.height = height
        self.width = given.tank_diameter if given.shape == ROUND else math.sqrt(given.tank_area)
        if given.overflow_height is not None:  # above it the water runs over
            self.height = min(height, given.overflow_height)
        heights = [self.height, given.grid_height + given.salt_depth, given.water_left]
        heights += [one for one in (given.float_height, given.overflow_height) if one is not None]
        self.rim = max(max(heights) + RIM, LEAST_SHAPE * self.width)
        self.scale = min(WIDEST / self.width, HIGHEST / self.rim)
        self.right = float(place(WALL + self.width * self.scale))
        self.floor = float(place(TOP + self.rim * self.scale))

    def y(self, height):
        """Return how far down a height [in] stands."""
        return self.floor - height * self.scale


def _labels(result, given, tank):
    """Return (height, words, whether it is the answer) of everything that has a label."""
    shown = {
        name: with_unit(plain(significant(one["number"], 3)), one["unit"])
        for name, one in result["inputs"].items()
        if "number" in one
    }
    labels = [(tank.height, f"water {result['values']['height']['shown']}", True)]
    for name, title in TITLES.items():
        number = getattr(given, name)
        if number or (name == "water_left" and number is not None):
            labels.append((number, f"{title} {shown[name]}", False))
    if given.salt_depth > 0:
        top = given.grid_height + given.salt_depth
        labels.append((top, f"salt, {shown['salt_depth']} deep", False))
    return labels


def _told(labels, tank):
    """Return the labels at the right, apart from each other, each with a line to its height."""
    ordered = sorted(labels, key=lambda one: -one[0])
    heights = [tank.y(height) + 4 for height, _, _ in ordered]
    for index in range(1, len(heights)):
        heights[index] = max(heights[index], heights[index - 1] + LABEL_GAP)
    lowest = tank.floor + 4
    for index in range(len(heights) - 1, -1, -1):
        heights[index] = min(heights[index], lowest)
        lowest = heights[index] - LABEL_GAP
    parts = []
    for (height, words, strong), y in zip(ordered, heights, strict=True):
        start, end = tank.right + 3, tank.right + 22
        path = f"M{place(start)} {place(tank.y(height))}L{place(end - 3)} {place(y - 4)}"
        parts.append(line("thin", path))
        parts.append(text(place(end), place(y), words, "start", strong))
    return parts


def _ruler(tank, unit):
    high = convert(tank.rim, "in", unit, "length")
    parts = [line("axis", f"M{WALL - 22} {TOP}V{tank.floor}")]
    for mark in round_marks(0.0, high):
        y = tank.y(convert(mark, unit, "in", "length"))
        parts.append(line("axis", f"M{WALL - 27} {place(y)}h5"))
        parts.append(text(WALL - 30, place(y + 4), plain(mark), "end"))
    return "".join([*parts, text(4, tank.floor + 20, f"{unit} above the floor", "start")])


def _water(tank):
    """Return the water as an area with level lines, its surface strong."""
    top = tank.y(tank.height)
    parts = [area("water-area", WALL, top, tank.right - WALL, tank.floor - top)]
    y = top + 8
    while y < tank.floor - 2:
        parts.append(line("water", f"M{WALL + 3} {place(y)}H{place(tank.right - 3)}", "9 7"))
        y += 8
    parts.append(line("surface", f"M{WALL} {place(top)}H{tank.right}"))
    return "".join(parts)


def _well_sides(given, tank):
    """Return where the sides of the brine well stand, close to the right wall."""
    right = tank.right - 0.08 * tank.width * tank.scale
    return right - given.well_diameter * tank.scale, right


def _salt(given, tank):
    left, right = _well_sides(given, tank)
    bottom = tank.y(given.grid_height)
    top = tank.y(given.grid_height + given.salt_depth)
    rows = range(math.ceil((bottom - top) / 8))
    grains = [
        (x + 4 * (row % 2), bottom - 4 - 8 * row)
        for row in rows
        for x in range(WALL + 5, int(tank.right) - 4, 8)
        if bottom - 4 - 8 * row > top and not left - 8 < x < right + 3
    ]
    surface = line("thin", f"M{WALL} {place(top)}H{tank.right}", "4 3")
    return dots("grain", grains) + (surface if given.salt_depth > 0 else "")


def _well(given, tank):
    if given.well_diameter <= 0:
        return ""
    left, right = _well_sides(given, tank)
    middle = place((left + right) / 2)
    return line(
        "thin", f"M{place(left)} {tank.floor}V{TOP + 4}H{place(right)}V{tank.floor}"
    ) + text(middle, TOP - 6, "brine well", "middle")


def _fittings(given, tank):
    """Return the grid, the float in the well and the overflow, where they are given."""
    left, right = _well_sides(given, tank)
    parts = []
    if given.grid_height > 0:
        y = place(tank.y(given.grid_height))
        parts.append(line("wall", f"M{WALL} {y}H{place(left)}", "6 3"))
    if given.float_height is not None:
        y = tank.y(given.float_height)
        middle = (left + right) / 2
        half = max(4.0, (right - left) / 2 - 2)
        parts.append(
            line(
                "wall",
                f"M{place(middle - half)} {place(y - 5)}h{place(2 * half)}v10h-{place(2 * half)}z",
            )
        )
    if given.overflow_height is not None:
        y = tank.y(given.overflow_height)
        parts.append(line("wall", f"M{tank.right} {place(y)}h14v7"))
        parts.append(arrow("wall", tank.right + 14, y + 15, "down"))
    return "".join(parts)
