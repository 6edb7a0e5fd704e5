"""The ground of a picture: a plane with its two axes, marked at round numbers."""

import math

from calculators.figures.shapes import WIDTH, line, place, text
from calculators.quantities import plain, snap

HEIGHT = 250
LEFT, RIGHT, TOP, BOTTOM = 64, 24, 30, 48
MARKS = 4


def round_marks(low, high):
    """Return round numbers (steps of 1, 2 or 5) that mark the way from `low` to `high`."""
    if snap(high) <= snap(low):
        return [low]
    rough = (high - low) / MARKS
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(power * factor for factor in (1, 2, 5, 10) if snap(power * factor) >= snap(rough))
    first = math.ceil(snap(low / step))
    last = math.floor(snap(high / step))
    return [snap(index * step) for index in range(first, last + 1)]


class Axes:
    """Places points of a plane in the picture and draws its axes.

    across, up: (low, high, label) of each axis; an axis across without a label has no numbers.
    top, floor: between which heights of the picture the plane stands. marks: (number, words) along
    the axis across, where they are not round numbers.
    """

    def __init__(self, across, up, top=TOP, floor=HEIGHT - BOTTOM, marks=None):
        self.across = across
        self.up = up
        self.top = top
        self.floor = floor
        if marks is None:
            numbers = round_marks(*across[:2])
            marks = [(number, plain(number) if across[2] else "") for number in numbers]
        self.marks = marks

    def x(self, number):
        """Return how far across a number stands."""
        low, high, _ = self.across
        return LEFT + (number - low) / (high - low) * (WIDTH - LEFT - RIGHT)

    def y(self, number):
        """Return how far down a number stands."""
        low, high, _ = self.up
        return self.floor - (number - low) / (high - low) * (self.floor - self.top)

    def draw(self):
        """Return the drawing of both axes with their marks and labels."""
        top, floor, wall = self.top, self.floor, LEFT
        parts = [line("axis", f"M{wall} {top}V{floor}H{WIDTH - RIGHT}")]
        for number, words in self.marks:
            x = place(self.x(number))
            parts.append(line("grid", f"M{x} {top}V{floor}"))
            if words:
                parts.append(text(x, floor + 16, words, "middle"))
        for number in round_marks(*self.up[:2]):
            y = place(self.y(number))
            parts.append(line("grid", f"M{wall} {y}H{WIDTH - RIGHT}"))
            parts.append(text(wall - 6, place(self.y(number) + 4), plain(number), "end"))
        if self.across[2]:
            middle = place((wall + WIDTH - RIGHT) / 2)
            parts.append(text(middle, floor + BOTTOM - 8, self.across[2], "middle"))
        parts.append(text(4, top - 16, self.up[2], "start"))
        return "".join(parts)
