"""Drawing what is given in an exercise: the same seed gives the same draw in every Python.

What may be drawn is plain data: {"kind", "unit"} of a quantity and either "from", "to" and "step",
numbers of that unit, or "one_of", a list of numbers or of choices. Only `Random.random` is used,
whose numbers do not change from one edition of Python to the next.
"""

from random import Random

from calculators.quantities import (
    KINDS,
    convert,
    display_unit,
    parse,
    plain,
    show,
    significant,
    snap,
)

#: After so many draws that cannot be used an exercise is given up.
TRIES = 200
#: Digits of a drawn number that was converted to the reader's unit.
DIGITS = 3


class CannotBePosed(LookupError):
    """Nothing that can be drawn makes a clear question."""


class Draw:
    """One drawn thing: its kind, and a number of a unit or a choice."""

    __slots__ = ("kind", "unit", "value")

    def __init__(self, kind, unit, value):
        self.kind = kind
        self.unit = unit
        self.value = value

    def shown(self, own_unit, units):
        """Return the text of it for a reader of `units`, which calculators read as well.

        own_unit: the unit of the input that takes it. A unit other than this was chosen by the
        trainer, as on a report, and is kept.
        """
        if isinstance(self.value, str):
            return self.value
        if self.kind not in KINDS:
            return plain(self.value)
        unit = display_unit(self.unit, units) if self.unit == own_unit else self.unit
        if unit == self.unit:
            return show(self.value, unit)
        number = convert(self.value, self.unit, unit, self.kind)
        if self.kind == "time of day":
            return show(number, unit)
        return show(significant(number, DIGITS), unit)


def random_for(exercise, seed):
    """Return the random numbers of an exercise for a seed, any text."""
    return Random(f"{exercise['id']} {seed}")


def choice(random, options):
    """Return one of the options."""
    return options[min(int(random.random() * len(options)), len(options) - 1)]


def shuffled(random, options):
    """Return the options in another order."""
    left = list(options)
    return [left.pop(int(random.random() * len(left))) for _ in range(len(left))]


def draws(exercise, seed):
    """Yield draws by name, at most TRIES, until one can be used."""
    random = random_for(exercise, seed)
    for _ in range(TRIES):
        yield {name: _draw(random, given) for name, given in exercise["drawn"].items()}


def _draw(random, given):
    if "one_of" in given:
        return Draw(given["kind"], given["unit"], choice(random, given["one_of"]))
    count = int(snap((given["to"] - given["from"]) / given["step"]) + 1e-9)
    place = min(int(random.random() * (count + 1)), count)
    return Draw(given["kind"], given["unit"], snap(given["from"] + place * given["step"]))


def fixed_text(text, one, units):
    """Return what an exercise fixes for an input as a reader of `units` sees it.

    text: what a person would type. one: the input. Where it is the input's default, a reader gets
    the default as round as people there have it.
    """
    if one.kind == "choice":
        return text
    number = one.read(text, "us")
    if one.default is not None and snap(number) == snap(one.default):
        return one.default_text(units)
    unit, value = one.unit, number
    if one.kind in KINDS:
        written = parse(text, one.kind, one.unit)
        unit, value = written.unit, written.number
    return Draw(one.kind, unit, value).shown(one.unit, units)
