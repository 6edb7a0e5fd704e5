"""Numbers on a scale: a hardness among its classes, and what a count of drops may mean."""

from calculators import run, understood
from calculators.figures.axes import round_marks
from calculators.figures.shapes import (
    WIDTH,
    area,
    arrow,
    hatched,
    line,
    picture,
    place,
    text,
)
from calculators.quantities import convert, display_unit, plain, with_unit
from calculators.units import GRAIN_PER_GALLON
from calculators.water import CLASSES

LEFT, RIGHT = 16, WIDTH - 16
#: Where the bar of the classes stands, and how close its slanted lines lie in each class.
BAR, BAR_HEIGHT = 78, 34
GAPS = (None, 18, 10, 5)
TOP = 400.0  # mg/L at the end of the bar


def hardness_bar(name, inputs, units="us"):
    """Return a hardness among the classes for a reader of `units`, or None with a problem."""
    result = run(name, inputs, units)
    if result["problems"]:
        return None
    values = result["values"]
    here = values["mg_per_liter"]["number"]

    def x(milligrams):
        return LEFT + min(1.0, milligrams / TOP) * (RIGHT - LEFT)

    shown = f"{values['grains_per_gallon']['shown']} = {values['mg_per_liter']['shown']}"
    word = values["wording"]["words"]
    if here > TOP:
        word += ", beyond this bar"
    anchor = "start" if x(here) < WIDTH / 2 else "end"
    parts = [
        text(place(x(here) + (8 if anchor == "start" else -8)), 36, shown, anchor, True),
        text(place(x(here) + (8 if anchor == "start" else -8)), 54, word, anchor, True),
        line("here", f"M{place(x(here))} 28V{BAR + BAR_HEIGHT}"),
        arrow("here", x(here), BAR, "down"),
    ]
    limits = [0.0, *(limit for limit, _ in CLASSES), TOP]
    words = [*(one for _, one in CLASSES), "very hard"]
    told = []
    for index, one in enumerate(words):
        start, end = x(limits[index]), x(limits[index + 1])
        parts.append(
            line("axis", f"M{place(start)} {BAR}H{place(end)}V{BAR + BAR_HEIGHT}H{place(start)}Z")
        )
        if GAPS[index]:
            parts.append(hatched("spent", start, BAR, end, BAR + BAR_HEIGHT, GAPS[index]))
        y = BAR + BAR_HEIGHT + 20 + 18 * (index % 2)
        parts.append(line("thin", f"M{place((start + end) / 2)} {BAR + BAR_HEIGHT}V{y - 11}"))
        parts.append(text(place((start + end) / 2), y, one, "middle"))
        limit = with_unit(plain(limits[index]), "mg/L")
        told.append(f"{one} from {limit}")
    parts += _scales(x)
    words = f"{shown}, {word}. Classes: {', '.join(told)}."
    return picture(parts, words, BAR + 148)


def _scales(x):
    """Return the two scales under the bar, in mg/L and in grains."""
    parts = []
    for y, unit, factor in ((BAR + 94, "mg/L", 1.0), (BAR + 124, "gpg", GRAIN_PER_GALLON)):
        parts.append(line("axis", f"M{LEFT} {y}H{RIGHT}"))
        for mark in round_marks(0.0, TOP / factor):
            across = place(x(mark * factor))
            parts.append(line("axis", f"M{across} {y - 3}v6"))
            if x(mark * factor) < RIGHT - 44:
                parts.append(text(across, y + 16, plain(mark), "middle"))
        parts.append(text(RIGHT, y + 16, unit, "end"))
    return parts


def drop_scale(name, inputs, units="us"):
    """Return what a count of drops may mean for a reader of `units`, or None with a problem."""
    result = run(name, inputs, units)
    if result["problems"]:
        return None
    given = understood(name, inputs, units)
    values = result["values"]
    unit = display_unit("gpg", units)
    drop = convert(given.drop_hardness, "gpg", unit, "hardness")
    lowest, highest = values["lowest"]["number"], values["highest"]["number"]
    low = max(0.0, min(lowest, values["estimate"]["number"]) - 2 * drop)
    high = max(highest, values["reading"]["number"]) + 2 * drop

    def x(number):
        return LEFT + (number - low) / (high - low) * (RIGHT - LEFT)

    y = 44
    parts = [line("axis", f"M{LEFT} {y}H{RIGHT}")]
    for mark in round_marks(low, high):
        parts.append(line("axis", f"M{place(x(mark))} {y}v6"))
        parts.append(text(place(x(mark)), y + 20, plain(mark), "middle"))
    reading, estimate = values["reading"], values["estimate"]
    parts += [
        text(WIDTH / 2, y + 40, f"Hardness, {unit}", "middle"),
        area("bar", x(lowest), y - 22, x(highest) - x(lowest), 22),
        line("here", f"M{place(x(reading['number']))} {y}V{y - 34}", "3 3"),
        line("surface", f"M{place(x(estimate['number']))} {y}V{y - 34}"),
    ]
    span = f"{values['lowest']['shown']} to {values['highest']['shown']}"
    parts += [
        line("here", f"M6 {y + 62}h26", "3 3"),
        text(40, y + 66, f"the count as it reads: {reading['shown']}", "start"),
        line("surface", f"M6 {y + 82}h26"),
        text(40, y + 86, f"best estimate: {estimate['shown']}", "start", True),
        area("bar", 6, y + 96, 26, 12),
        text(40, y + 106, f"probably: {span}", "start"),
    ]
    words = (
        f"{plain(given.drops)} drops: the count reads {reading['shown']}; the best estimate is "
        f"{estimate['shown']}; probably the hardness is {span}."
    )
    return picture(parts, words, y + 118)
