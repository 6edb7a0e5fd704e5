"""What a new shop is asked: each question with its default, and what its answer must be."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from build_tools.content.loading import FILE_NAME
from calculators import CALCULATORS
from calculators.declare import Input, InputProblem
from calculators.quantities import (
    SYSTEMS,
    QuantityError,
    display_unit,
    nearest,
    parse,
    plain,
    read_number,
)

Answers = dict[str, str]


class BadAnswer(ValueError):
    """What is wrong with an answer, as a sentence for who gave it."""


@dataclass(frozen=True)
class Question:
    """One question.

    name: of its option; words: the question itself. read: returns an answer as it is written into
    shop.yaml, or raises BadAnswer; it gets the earlier answers. default: for US and for metric
    units; None where there is none.
    """

    name: str
    words: str
    read: Callable[[str, Answers], str]
    default: tuple[str, str] | None = None

    def default_for(self, answers: Answers) -> str | None:
        """Return what is taken where nothing is answered, in the units that were chosen."""
        if self.default is None:
            return None
        text = self.default[answers.get("units") == "metric"]
        return text.format(**answers)


def _words(text: str, _: Answers) -> str:
    text = " ".join(text.split())
    if not text:
        raise BadAnswer("The answer is empty. Write a word or two.")
    if any(unicodedata.category(one) == "Cc" for one in text):
        raise BadAnswer("The answer has a character that cannot be seen. Type it once more.")
    if marks := [one for one in "{}<>|`" if one in text]:
        raise BadAnswer(f"Pages would take {' and '.join(marks)} for a mark. Leave it out.")
    return text


def _units(text: str, _: Answers) -> str:
    found = text.strip().lower()
    if found not in SYSTEMS:
        raise BadAnswer(f"“{text.strip()}” is no system of units. Write us or metric.")
    return found


def _people(text: str, answers: Answers) -> str:
    if not text.strip().isdecimal() or int(text) < 1:
        raise BadAnswer(f"“{text.strip()}” is not a number of people. Write one such as 3.")
    _hold_to("household-load.people", text, answers["units"])
    return str(int(text))


def _price(least: str, limits: str) -> Callable[[str, Answers], str]:
    def read(text: str, answers: Answers) -> str:
        try:
            number, rest = read_number(text)
        except QuantityError as problem:
            raise BadAnswer(str(problem)) from None
        if rest:
            raise BadAnswer("A price is a number alone. Leave out the sign of the currency.")
        if number < 0 or (least == "above zero" and number == 0):
            raise BadAnswer(f"A price is {least}. Write a number such as 8.25.")
        _hold_to(limits, text, answers["units"])
        return plain(number).replace(",", "")

    return read


def _quantity(kind: str, unit: str, *limits: str) -> Callable[[str, Answers], str]:
    """Return a reader of quantities; limits: of `_inputs`, what takes them."""

    def read(text: str, answers: Answers) -> str:
        units = answers["units"]
        own_unit = display_unit(unit, units)
        try:
            parse(text, kind, own_unit)
            written = " ".join(text.split())
            if not read_number(written)[1]:
                written = f"{written} {own_unit}"
        except QuantityError as problem:
            raise BadAnswer(_sentence(problem)) from None
        for name in limits:
            _hold_to(name, written, units)
        return written

    return read


def _hold_to(limits: str, text: str, units: str) -> None:
    """Raise BadAnswer where an input that takes an answer refuses it."""
    try:
        for one in _inputs(limits):
            one.read(text, units)
    except InputProblem as problem:
        raise BadAnswer(_sentence(problem)) from None


def _sentence(problem: Exception) -> str:
    return str(problem).replace("\u00a0", " ")


@cache
def _inputs(limits: str) -> tuple[Input, ...]:
    """Return the input that is named, or all that take a value of the shop."""
    calculator, _, name = limits.partition(".")
    if name:
        return (CALCULATORS[calculator].input(name),)
    every = (one for calculator in CALCULATORS.values() for one in calculator.inputs)
    return tuple(one for one in every if one.shop and one.shop == limits)


def _step(kind: str, unit: str) -> Callable[[str, Answers], str]:
    positive = _quantity(kind, unit)

    def read(text: str, answers: Answers) -> str:
        written = positive(text, answers)
        if read_number(written)[0] <= 0:
            raise BadAnswer("A step is above zero.")
        return written

    return read


_ALLOWANCE = ("4 gpg per mg/L", "68 mg/L per mg/L")

#: The questions, in their order: units come before whatever has a unit.
QUESTIONS = (
    Question("name", "The shop's name", _words),
    Question("town", "The town it works in", _words),
    Question(
        "region",
        "A sentence on the region and its water",
        _words,
        ("{town} and the homes around it.",) * 2,
    ),
    Question("units", "The units that readers see, us or metric", _units, ("us", "us")),
    Question("people", "People in the typical home", _people, ("4", "3")),
    Question(
        "hardness",
        "Hardness of its raw water",
        _quantity("hardness", "gpg", "hardness-setting.hardness", "crossover.raw"),
        ("17 gpg", "300 mg/L"),
    ),
    Question(
        "iron",
        "Dissolved iron in it",
        _quantity("concentration", "mg/L", "hardness-setting.iron"),
        ("0.4 mg/L", "0.4 mg/L"),
    ),
    Question(
        "iron-allowance",
        "Hardness to allow for iron",
        _quantity("allowance", "gpg per mg/L", "iron_allowance"),
        _ALLOWANCE,
    ),
    Question(
        "manganese-allowance",
        "Hardness to allow for manganese",
        _quantity("allowance", "gpg per mg/L", "manganese_allowance"),
        _ALLOWANCE,
    ),
    Question(
        "water-per-person",
        "Water that a person uses",
        _quantity("flow", "gal/day", "water_per_person"),
        ("60 gal/day", "230 L/day"),
    ),
    Question(
        "hot-share",
        "The share of it that is hot",
        _quantity("share", "%", "hot_share"),
        ("35 %", "35 %"),
    ),
    Question(
        "hardness-step",
        "What one drop of the hardness kit stands for",
        _step("hardness", "gpg"),
        ("1 gpg", "1 °dH"),
    ),
    Question(
        "iron-step",
        "The smallest step of the iron kit",
        _step("concentration", "mg/L"),
        ("0.1 mg/L", "0.1 mg/L"),
    ),
    Question("currency", "The sign of the currency", _words, ("$", "€")),
    Question(
        "salt-bag",
        "What a bag of salt weighs",
        _quantity("mass", "lb", "salt_bag"),
        ("40 lb", "25 kg"),
    ),
    Question(
        "salt-bag-price",
        "What a bag costs",
        _price("above zero", "salt_bag_price"),
        ("8.25", "12.50"),
    ),
    Question(
        "water-price-volume",
        "The volume that water's price is for",
        _quantity("volume", "gal", "water_price_volume"),
        ("1000 gal", "1 m3"),
    ),
    Question(
        "water-price",
        "What so much water costs",
        _price("above zero", "water_price"),
        ("6.40", "2.10"),
    ),
    Question(
        "sewer-price",
        "What sewer costs for it, 0 for none",
        _price("0 or above", "sewer_price"),
        ("7.10", "2.60"),
    ),
)


def names_in(text: str) -> list[str]:
    """Return the names of a list that is parted by commas or spaces, each once."""
    return list(dict.fromkeys(text.replace(",", " ").split()))


def carried(text: str, shipped: list[str]) -> list[str]:
    """Return the named units of equipment. Raises BadAnswer for one that is not shipped."""
    names = names_in(text)
    for name in names:
        _shipped(name, shipped)
    return names


def copies(text: str, shipped: list[str]) -> dict[str, str]:
    """Return the shipped unit that each new one begins as a copy of, from "new=shipped" pairs."""
    found: dict[str, str] = {}
    for pair in names_in(text):
        name, _, original = pair.partition("=")
        if not original:
            raise BadAnswer(f"“{pair}” names no copy. Write such as my-softener={shipped[0]}.")
        _shipped(original, shipped)
        if name in shipped or not FILE_NAME.fullmatch(name):
            raise BadAnswer(
                f"“{name}” cannot name a unit of your own. Write another name, in lower case "
                "letters, digits and hyphens."
            )
        found[name] = original
    return found


def _shipped(name: str, shipped: list[str]) -> None:
    if name not in shipped:
        close = nearest(name, shipped)
        guess = f" The nearest is “{close}”." if close else ""
        raise BadAnswer(f"There is no shipped unit “{name}”: {', '.join(shipped)}.{guess}")
