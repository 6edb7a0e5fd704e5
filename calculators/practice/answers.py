"""Reading what a learner answers, and comparing it with a right or a wrong number."""

import math

from calculators.quantities import (
    KINDS,
    QuantityError,
    check_length,
    nearest,
    parse,
    plain,
    read_number,
    snap,
    with_unit,
)

#: An answer is right within this share of the number before rounding.
RIGHT_WITHIN = 0.01
#: An answer is a mistake within this share of the number that the mistake gives.
ALIKE_WITHIN = 0.015
#: A question is drawn again where a mistake lies within this share of another number to tell.
APART = 0.05
#: For a time of day: what counts as the same, and as apart, in hours.
SAME_TIME, TIMES_APART = 1.5 / 60, 0.5
#: A mistake that moves an answer by less changes nothing: so much may come of showing a drawn number
#: in the other unit system, with three digits. Nor may a rounding to steps hang on so little.
CONVERTED = 0.005
#: So many units are named to who left the unit out.
UNITS_NAMED = 5


class AnswerProblem(Exception):
    """Why an answer cannot be marked, as a sentence for who wrote it."""


def read_answer(text, output, unit, choices=()):
    """Return the number in `unit`, or the choice, that a learner wrote. Raises AnswerProblem.

    output: of the calculator. A number that has a unit must be written with it, in any unit of its
    kind; a time of day is read as a clock has it.
    """
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        text = plain(text) if math.isfinite(text) else ""
    if not isinstance(text, str):
        raise AnswerProblem("That is no answer that can be read. Write one.")
    text = text.strip()
    if not text:
        raise AnswerProblem("Write your answer here first.")
    if choices:
        return _choice(text, choices)
    try:
        if output.kind not in KINDS:
            check_length(text)
            number, rest = read_number(text)
            if rest:
                raise AnswerProblem(f"“{rest[:30]}” does not belong here. Write a number alone.")
            return number
        if output.kind == "time of day":
            return parse(text, output.kind, unit).number
        check_length(text)
        if not read_number(text)[1]:
            raise AnswerProblem(_unit_missing(text, output.kind, unit))
        return parse(text, output.kind).to(unit).number
    except QuantityError as error:
        raise AnswerProblem(str(error)) from None


def _choice(text, choices):
    wanted = " ".join(text.lower().split())
    for one in choices:
        if one.lower() == wanted:
            return one
    close = nearest(wanted[:60], choices)
    guess = f" The nearest is “{close}”." if close else ""
    raise AnswerProblem(f"Choose one of: {', '.join(choices)}.{guess}")


def _unit_missing(text, kind, unit):
    units = [unit, *(one for one in KINDS[kind].units if one != unit)][:UNITS_NAMED]
    named = ", ".join(units[:-1]) + f" or {units[-1]}" if len(units) > 1 else units[0]
    return (
        f"“{text}” has no unit. Write {with_unit(text, units[0])}, or the unit you mean: {named}."
    )


def unit_words(output, unit):
    """Return the few words that stand beside the field of an answer."""
    if output.kind not in KINDS:
        return "a number"
    if output.kind == "time of day":
        return KINDS[output.kind].words
    return f"{KINDS[output.kind].words} with its unit, such as {unit}"


def is_right(number, value, output):
    """Tell whether a number of the shown unit is the right one.

    value: the output as `Worked.answer` returns it. Right is what lies within 1 % before rounding,
    what the trade's rounding makes of it, and one step of the display more or less.
    """
    if output.kind == "time of day":
        return _apart_on_the_dial(number, value["number"]) <= SAME_TIME
    exact = (value["number"], value["unrounded"])
    if any(snap(abs(number - one)) <= snap(RIGHT_WITHIN * abs(one)) for one in exact):
        return True
    room = _display_step(value, output) if _is_only_shown(output) else 0.0
    return snap(abs(number - value["rounded"])) <= snap(room * (1 + 1e-9) + 1e-12)


def numbers_of(value):
    """Return the numbers that stand for an answer: exact, as the trade rounds it, and before that."""
    return value["number"], value["rounded"], value["unrounded"]


def accepted_between(value, output):
    """Return the (least, most) pairs of numbers between which `is_right` takes an answer.

    They are for whoever marks without this module, such as a learning system.
    """
    if output.kind == "time of day":
        return [(value["number"] - SAME_TIME, value["number"] + SAME_TIME)]
    room = _display_step(value, output) if _is_only_shown(output) else 0.0
    exact = dict.fromkeys((value["number"], value["unrounded"]))
    return [
        *(_around(one, RIGHT_WITHIN) for one in exact),
        (snap(value["rounded"] - room), snap(value["rounded"] + room)),
    ]


def alike_between(value):
    """Return the (least, most) pairs of numbers between which `is_alike` takes a mistake's answer."""
    return [_around(one, ALIKE_WITHIN) for one in dict.fromkeys(numbers_of(value))]


def _around(number, share):
    return snap(number - share * abs(number)), snap(number + share * abs(number))


def _is_only_shown(output):
    """Tell whether the rounding is for show, not a step of the trade with a direction."""
    return output.direction == "nearest" and not (output.step is None and output.digits is None)


def _display_step(value, output):
    if output.step is not None:
        text = value["shown"].split("\u00a0")[0].replace(",", "")
        decimals = len(text.partition(".")[2])
        return max(10.0**-decimals, output.step if value["unit"] == output.unit else 0.0)
    rounded = abs(value["rounded"])
    if not rounded:
        return 0.0
    return 10.0 ** (math.floor(math.log10(snap(rounded))) - output.digits + 1)


def is_alike(number, value, output, reach=None):
    """Tell whether a number is the one that a mistake gives.

    reach: the shares of `value` between which a mistake without one value lies.
    """
    if reach is not None:
        low, high = sorted(share * value["number"] for share in reach)
        return low <= number <= high
    if output.kind == "time of day":
        return _apart_on_the_dial(number, value["number"]) <= SAME_TIME
    return any(
        snap(abs(number - wrong)) <= snap(ALIKE_WITHIN * abs(wrong)) for wrong in numbers_of(value)
    )


def are_apart(one, other, output):
    """Tell whether two numbers of an output are far enough apart to be told from each other."""
    if output.kind == "time of day":
        return _apart_on_the_dial(one["number"], other["number"]) >= TIMES_APART
    return all(
        snap(abs(one[which] - other[which])) > snap(APART * max(abs(one[which]), abs(other[which])))
        for which in ("number", "rounded")
    ) and not any(
        is_alike(number, value, output)
        for here, value in ((one, other), (other, one))
        for number in numbers_of(here)
    )


def are_same(one, other):
    """Tell whether two numbers of an output are one: the mistake changed nothing."""
    apart = abs(one["number"] - other["number"])
    return snap(apart) <= snap(CONVERTED * abs(other["number"]))


def is_on_an_edge(exact, rounded, step):
    """Tell whether a number that was rounded to a step, up or down, is hardly off the next one."""
    if snap(abs(exact - rounded)) <= snap(1e-9 * abs(exact) + 1e-6):
        return False  # it is a multiple itself
    other = rounded - step if rounded > exact else rounded + step
    return snap(abs(exact - other)) <= snap(CONVERTED * abs(exact))


def _apart_on_the_dial(one, other):
    apart = abs(snap(one - other)) % 24
    return min(apart, 24 - apart)
