"""A day of water, hour by hour, with the regeneration as it is set and as it really runs."""

from calculators import run, understood
from calculators.clock import HOURLY_WATER
from calculators.figures.axes import Axes
from calculators.figures.shapes import area, hatched, line, picture, place, text
from calculators.quantities import plain, show

FLOOR, HEIGHT = 190, 284
HOURS = (0, 6, 12, 18, 24)


def day_picture(name, inputs, units="us"):
    """Return the picture of the day for a reader of `units`, or None with a problem."""
    result = run(name, inputs, units)
    if result["problems"]:
        return None
    given = understood(name, inputs, units)
    unit = result["values"]["true_start"]["unit"]
    really = result["values"]["true_start"]["number"]
    hours = given.raw_time / 60
    marks = [(hour, _short(hour, unit)) for hour in HOURS]
    axes = Axes(
        (0, 24, ""),
        (0.0, 10.0, "Share of the day's water in each hour, %"),
        floor=FLOOR,
        marks=marks,
    )
    parts = [axes.draw()]
    for hour, share in enumerate(HOURLY_WATER):
        x, y = axes.x(hour), axes.y(share)
        parts.append(area("bar", x + 1, y, axes.x(hour + 1) - x - 2, FLOOR - y))
    for start, end in _windows(given.set_time, hours):
        parts.append(line("set", _outline(axes, start, end), "5 3"))
    for start, end in _windows(really, hours):
        parts.append(hatched("really", axes.x(start), axes.top, axes.x(end), FLOOR))
        parts.append(line("really", _outline(axes, start, end)))
    told = [
        f"set for: {_span(given.set_time, hours, unit)}",
        f"really: {_span(really, hours, unit)}",
    ]
    y = FLOOR + 44
    parts.append(line("set", f"M6 {y - 11}h26v13h-26z", "5 3"))
    parts.append(text(40, y, told[0], "start"))
    parts.append(
        hatched("really", 6, y + 11, 32, y + 24) + line("really", f"M6 {y + 11}h26v13h-26z")
    )
    parts.append(text(40, y + 22, told[1], "start", True))
    share = result["values"]["overlap"]["shown"]
    parts.append(text(40, y + 42, f"{share} of the day's water passes hard", "start", True))
    most = max(range(24), key=HOURLY_WATER.__getitem__)
    words = (
        f"Water used in each hour of the day, most from {show(float(most), unit)} with "
        f"{plain(HOURLY_WATER[most])} %. Regeneration {told[0]}; {told[1]}, in which {share} of the "
        "day's water passes hard."
    )
    return picture(parts, words, HEIGHT)


def _short(hour, unit):
    """Return a full hour as a clock shows it, without its minutes where am or pm follows."""
    return show(float(hour % 24), unit).replace(":00\u00a0", "\u00a0").replace(":00 ", " ")


def _windows(start, hours):
    """Return the parts of a regeneration within one day, two where it runs past midnight."""
    end = start + hours
    if end <= 24:
        return [(start, end)]
    return [(start, 24.0), (0.0, end - 24)]


def _span(start, hours, unit):
    end = (start + hours) % 24
    return f"{show(start, unit)} to {show(end, unit)}"


def _outline(axes, start, end):
    left, right = place(axes.x(start)), place(axes.x(end))
    return f"M{left} {FLOOR}V{axes.top}H{right}V{FLOOR}"
