"""Quantities as people write them: reading "18 gpg", converting, rounding, showing.

A number is shown the same whichever mathematics library made it: before it is rounded for show it
is cut to twelve significant digits, far more than a reading has and far fewer than libraries
disagree in.
"""

import math
import re

from calculators.units import METRIC, TABLES

SYSTEMS = ("us", "metric")
LONGEST_TEXT = 60
#: Beyond these no reading of the trade lies, and arithmetic with them would lose its sense.
SMALLEST, LARGEST = 1e-12, 1e15

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_NUMBER = re.compile(
    r"""(?P<sign>[-+−]?)\s*
    (?:(?:(?P<whole>\d+)[\s-]+)?(?P<above>\d+)\s*/\s*(?P<below>\d+)
      |(?P<grouped>[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?)(?![\d,])
      |(?P<plain>(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(?![\d.,]))""",
    re.VERBOSE,
)
_CLOCK = re.compile(r"(\d{1,2})(?:([:.])(\d{2}))?\s*(?:([ap])\.?m\.?)?", re.IGNORECASE)
_SUPERSCRIPTS = str.maketrans({"³": "3", "²": "2", "µ": "u", "μ": "u", "^": None})


class QuantityError(ValueError):
    """A text that is no quantity of the wanted kind; its message is a sentence for the typist."""


class Quantity:
    """A number with its unit and kind."""

    def __init__(self, number, unit, kind):
        self.number = number
        self.unit = unit
        self.kind = kind

    def to(self, unit):
        """Return the same quantity in another unit of its kind."""
        return Quantity(convert(self.number, self.unit, unit, self.kind), unit, self.kind)

    def shown(self, units):
        """Return the text a reader of the unit system `units` ("us" or "metric") sees."""
        unit = display_unit(self.unit, units)
        number = convert(self.number, self.unit, unit, self.kind)
        return show(number if number == self.number else significant(number, 3), unit)

    def __repr__(self):
        return f"Quantity({self.number!r}, {self.unit!r}, {self.kind!r})"


class Kind:
    """A kind of quantity: how a sentence calls it and the units it may be written in."""

    def __init__(self, name, words, table):
        self.name = name
        self.words = words
        self.factors = {unit: factor for unit, (factor, _) in table.items()}
        self.units = tuple(table)
        self.spelled = {}
        for unit, (_, others) in table.items():
            for spelling in (unit, *others.split(",")):
                if spelling.strip():
                    self.spelled.setdefault(normal_spelling(spelling), unit)


def normal_spelling(text):
    """Return a unit's text in the form spellings are compared in."""
    text = " ".join(text.translate(_SUPERSCRIPTS).lower().split()).rstrip(".")
    for joined in (" per ", " a ", " an ", " / ", "/ ", " /"):
        text = text.replace(joined, "/")
    return f"/{text[4:]}" if text.startswith("per ") and text != "per cent" else text


KINDS = {name: Kind(name, words, table) for name, (words, table) in TABLES.items()}


def spellings():
    """Return every spelling of a unit, in normal form, with the kinds it may mean."""
    found = {}
    for kind in KINDS.values():
        for spelling in kind.spelled:
            found.setdefault(spelling, set()).add(kind.name)
    return found


def nearest(word, choices):
    """Return the choice spelled most like `word`, or None when none is close."""
    import difflib  # only when someone misspelled something: keeps the start fast

    lowered = {choice.lower(): choice for choice in choices}
    close = difflib.get_close_matches(str(word).lower(), lowered, n=1, cutoff=0.6)
    return lowered[close[0]] if close else None


def convert(number, unit, to_unit, kind):
    """Return `number` of `unit` in `to_unit`, both of the kind named `kind`."""
    if unit == to_unit:
        return number
    factors = KINDS[kind].factors
    if kind == "temperature":
        return number * 1.8 + 32 if to_unit == "°F" else (number - 32) / 1.8
    return number * factors[unit] / factors[to_unit]


def kind_of(unit):
    """Return the name of the first kind that has `unit`, or None for no unit."""
    return next((kind.name for kind in KINDS.values() if unit in kind.factors), None)


def display_unit(unit, units):
    """Return the unit in which a reader of the system `units` sees a quantity given in `unit`."""
    return METRIC.get(unit, unit) if units == "metric" else unit


def read_number(text):
    """Read the number at the start of a text: return it and the rest of the text.

    Takes 18, 1,000, 0.5, .5, 1e3, 3/4, 1 1/2 and ½. Asks back where a comma could be a decimal
    comma. Raises QuantityError with a sentence.
    """
    for sign, fraction in _VULGAR.items():
        text = text.replace(sign, f" {fraction}")
    text = text.strip()
    match = _NUMBER.match(text)
    if not match:
        if re.match(r"[-+−]?\s*[\d.,]*\d,", text):
            comma_number = re.match(r"[-+−]?\s*[\d.,]+", text).group()
            raise QuantityError(
                f"“{comma_number}” can be read in two ways. "
                "Write a decimal point (1.5) or no comma at all."
            )
        raise QuantityError(f"“{text}” does not start with a number. Write one, such as 12 or 3/4.")
    if match["above"]:
        if int(match["below"]) == 0:
            raise QuantityError(f"“{text}” divides by zero. Write a number, such as 3/4.")
        number = int(match["whole"] or 0) + int(match["above"]) / int(match["below"])
    else:
        number = float((match["grouped"] or match["plain"]).replace(",", ""))
    if number and not SMALLEST <= abs(number) <= LARGEST:
        raise QuantityError(f"“{text}” is a number far too {'large' if number > 1 else 'small'}.")
    return (-number if match["sign"] in ("-", "−") else number), text[match.end() :].strip(" \t-")


def check_length(text):
    """Raise QuantityError when a text is longer than any quantity is."""
    if len(text) > LONGEST_TEXT:
        raise QuantityError(f"“{text[:20]}…” is too long. Write a number and its unit.")


def parse(text, kind, unit=None):
    """Read a text such as "18 gpg" as a quantity of a kind.

    A number without a unit is taken in `unit`; where that is None, the unit must be written.
    Raises QuantityError with a sentence that says what is wrong and what would be right.
    """
    check_length(text)
    wanted = KINDS[kind]
    if kind == "time of day":
        unit = unit or wanted.units[0]
        hours = read_clock(text)
        if hours is not None:
            return Quantity(hours, unit, kind)
    number, rest = read_number(text)
    if not rest:
        if unit is None:
            raise QuantityError(
                f"“{text.strip()}” has no unit. Write {wanted.words}, such as "
                f"{with_unit(plain(number), wanted.units[0])}."
            )
        return Quantity(number, unit, kind)
    found = wanted.spelled.get(normal_spelling(rest))
    if found is None:
        raise QuantityError(_unit_problem(text.strip(), rest, wanted))
    return Quantity(number, found, kind)


def read_clock(text):
    """Return the hours since midnight that "2:30 pm", "14:30", "2 am" or "noon" tell.

    Without am or pm the day has twenty-four hours. None for a text that has neither am, pm nor
    minutes. Raises QuantityError with a sentence for a time that no clock shows, and asks back
    where minutes could be decimals.
    """
    text = text.strip()
    named = {"midnight": 0.0, "noon": 12.0}.get(text.lower())
    match = _CLOCK.fullmatch(text)
    if named is not None or not match:
        return named
    hour, mark, minute, half = match.groups()
    if not (mark or half):
        return None
    if mark == "." and not half:
        raise QuantityError(
            f"“{text}” can be read in two ways. Write the minutes after a colon, such as "
            f"{hour}:{minute}."
        )
    first, last = (1, 12) if half else (0, 23)
    if not first <= int(hour) <= last or int(minute or 0) > 59:
        raise QuantityError(_no_clock(text))
    hours = int(hour) % 12 + 12 * (half in "pP") if half else int(hour)
    return hours + int(minute or 0) / 60


def _no_clock(text):
    return f"“{text}” is no time of day. Write it like 2:30 pm or 14:30."


def _unit_problem(text, rest, wanted):
    if wanted.name == "time of day":
        return _no_clock(text)
    units = ", ".join(wanted.units[:8])
    spelled = normal_spelling(rest)
    others = [kind.words for kind in KINDS.values() if spelled in kind.spelled]
    if others:
        return f"“{text}” is {others[0]}. Write {wanted.words} ({units})."
    close = nearest(spelled, wanted.spelled)
    guess = f" The nearest is {wanted.spelled[close]}." if close else ""
    return f"“{rest}” is no unit for {wanted.words}. Use {units}.{guess}"


def snap(number):
    """Return the number cut to twelve significant digits: see the top of this file."""
    return float(f"{number:.12g}")


def round_to(number, step, direction="nearest"):
    """Round to a multiple of `step`: to the nearest (halves up), up or down.

    "up" and "down" leave alone what already is a multiple but for the last digits of arithmetic.
    """
    count = snap(number / step)
    if direction == "up":
        count = math.ceil(snap(count - 1e-9))
    elif direction == "down":
        count = math.floor(snap(count + 1e-9))
    else:
        count = math.floor(snap(count + 0.5))
    return snap(count * step)


def significant(number, digits, direction="nearest"):
    """Round to a number of significant digits: to the nearest (halves up), up or down."""
    number = snap(number)
    if abs(number) < SMALLEST:  # a result so small is none, and its power of ten may not exist
        return 0.0
    exponent = math.floor(math.log10(abs(number))) - digits + 1
    step = 10.0**exponent if exponent >= 0 else 1 / 10.0**-exponent
    return round_to(number, step, direction)


def plain(number):
    """Show a number without needless digits: 18, 0.5, 1,363.6, 0.0023."""
    rounded = significant(number, 6)
    text = f"{rounded:,.10f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text.replace("-", "−")


def working_number(number):
    """Show a number inside a working: four significant digits, whole from a thousand up."""
    return plain(round_to(number, 1.0) if abs(number) >= 1000 else significant(number, 4))


def fixed(number, step):
    """Show a number already rounded to `step` with the decimals that the step has."""
    decimals = len(f"{step:.10f}".rstrip("0").partition(".")[2])
    text = f"{snap(number):,.{decimals}f}"
    return text.replace("-", "−") if float(text.replace(",", "")) else text.replace("-", "")


def clock(hours, unit):
    """Show hours since midnight to the minute as "2:30 pm" or "14:30", as `unit` says.

    What lies outside the day is shown in hours and minutes all the same: a refusal names it.
    """
    minutes = int(round_to(hours * 60, 1.0))
    if not 0 <= minutes <= 1440:
        return f"{'−' * (minutes < 0)}{abs(minutes) // 60}:{abs(minutes) % 60:02}"
    hour, minute = minutes // 60 % 24, minutes % 60
    if unit == "24-hour clock":
        return f"{hour}:{minute:02}"
    return f"{(hour - 1) % 12 + 1}:{minute:02}\u00a0{'pm' if hour >= 12 else 'am'}"


def show(number, unit, write=plain):
    """Show a number with its unit; `write` says with which digits. A time of day is a clock's."""
    if unit in KINDS["time of day"].units:
        return clock(number, unit)
    return with_unit(write(number), unit)


def with_unit(number_text, unit):
    """Join a shown number and its unit with a space that does not break."""
    return f"{number_text}\u00a0{unit}" if unit else number_text
