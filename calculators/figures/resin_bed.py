"""The bed in section: the part that is spent, the front, and the part that is fresh."""

from calculators.declare import Drawing, Input
from calculators.figures.shapes import picture


def _draw(given):
    return picture([], f"{given.used} %", 100)


RESIN_BED = Drawing(
    "resin-bed",
    [Input("used", "Share of the capacity used", "share", "%", low=0, high=100)],
    _draw,
)
