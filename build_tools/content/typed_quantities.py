"""Finds quantities typed in prose: a number, in digits or words, with a unit, or a price."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

from calculators import CALCULATORS
from calculators.quantities import Quantity, QuantityError, normal_spelling, parse, spellings

_UNDER_TWENTY = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
    "sixteen seventeen eighteen nineteen"
)
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
_ADDED = {word: number for number, word in enumerate(_UNDER_TWENTY.split(), 1)} | {
    word: 10 * number for number, word in enumerate(_TENS.split(), 2)
}
_MULTIPLIED = {
    "half": 0.5,
    "quarter": 0.25,
    "dozen": 12,
    "hundred": 100,
    "thousand": 1000,
    "million": 1e6,
}
#: Parts of a whole, which are ordinals too: they count after a number, or before "of a".
_PARTS = {
    "third": 1 / 3, "quarter": 1 / 4, "fifth": 1 / 5, "sixth": 1 / 6, "eighth": 1 / 8,
    "tenth": 1 / 10, "sixteenth": 1 / 16, "hundredth": 1 / 100,
}  # fmt: skip

_PART = "|".join(sorted(_PARTS, key=len, reverse=True))
_WORD = "|".join(sorted([*_ADDED, *_MULTIPLIED], key=len, reverse=True))
_WORDS = (
    rf"\b(?:(?:{_WORD})[\s-](?:{_PART})s?\b(?:\sof\san?\b)?|(?:{_PART})s?\sof\san?\b"
    rf"|(?:{_WORD})(?:[\s-](?:{_WORD}))*\b(?:(?<=half|rter)\s(?:of\s)?an?\b)?)"
)
_DIGITS = (
    r"(?:(?:\d+[\s-])?\d+\s?[/⁄]\s?\d+|\d+(?:[.,]\d+)*(?:e\d+|k\b|[⁰¹²³⁴-⁹]+|\s?[½⅓⅔¼¾⅛⅜⅝⅞])?"
    r"|\.\d+|[½⅓⅔¼¾⅛⅜⅝⅞])"
)
_BETWEEN = r"\s?(?:–|—|-|to|or|×|x)\s?"
#: What may stand between a number and its unit, some of it unseen.
_GAP = r"[\u200b-\u200d\u2060\ufeff\u00ad]*\+?\s?[\u200b-\u200d\u2060\ufeff\u00ad]*-?(?:(?:full|whole|or so|or more)\s)?"
_NUMBER = re.compile(
    rf"(?<![\w.,:/⁄])(?P<money>[$€£¥]\s?)?(?P<number>{_DIGITS}(?:{_BETWEEN}{_DIGITS})*|{_WORDS})"
    rf"(?P<gap>{_GAP})",
    re.IGNORECASE,
)
_NEXT_WORDS = re.compile(r"[^\s,;:()!?\"“”]+(?:\s[^\s,;:()!?\"“”]+){0,4}|\"")
_MONEY_OR_DEGREES = re.compile(
    r"(?:dollars?|cents?|euros?|degrees?|usd|eur|gbp)\b|[°º$€£¥]", re.IGNORECASE
)
#: A unit of one letter counts only in the case in which it is written.
_LETTERS = frozenset("sghdmlLVAFC")
#: Spellings that number words never stand before, or that are words of their own there.
_NOT_AFTER_WORDS = frozenset(["in", "gr", "pt", "c", "f", "'", '"'])
#: What follows "in" where it is the word and not the unit.
_WORD_IN = re.compile(
    r"in\s(?:\d|(?:the|an?|this|that|these|those|each|every|any|all|its?|your|our|their|his|her|"
    r"which|order|case|turn|total|full|front|place|use|service|one|two|three|four|five|ten)\b)",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Typed:
    """A quantity typed in a text: where, its whole text, its number and its unit as written."""

    start: int
    end: int
    text: str
    number: str
    unit: str

    def ends(self) -> list[str]:
        """Return the quantity's text, or those of both ends of a range."""
        return [f"{number} {self.unit}" for number in _split(self.number)]

    def with_numbers(self, write: Callable[[str], str]) -> str:
        """Return the number, or both of a range, each as `write` makes it of its digits."""
        if self.number[0].isalpha():
            return write(_split(self.number)[0])
        return re.sub(_DIGITS, lambda match: write(match[0]), self.number)

    def quantities(self, kind: str) -> list[Quantity]:
        """Return the quantity, or both ends of a range, read as a kind; nothing if it is none."""
        try:
            return [parse(end, kind) for end in self.ends()]
        except QuantityError:
            return []


def prices(text: str, currency: str) -> Iterator[Typed]:
    """Yield every price in a currency whose sign nothing else knows, such as "149 kr"."""
    if not currency or currency in "$€£¥":  # which every price has before its number anyway
        return
    sign = re.escape(currency)
    pattern = (
        rf"(?<![\w.,])(?P<after>{_DIGITS})\s?{sign}(?!\w)|(?<!\w){sign}\s?(?P<before>{_DIGITS})"
    )
    for match in re.finditer(pattern, text):
        number = match["after"] or match["before"]
        yield Typed(match.start(), match.end(), match[0], number, currency)


def _split(number: str) -> list[str]:
    if number[0].isalpha():
        return [f"{_in_digits(number):g}"]
    return re.findall(_DIGITS, number)


def _in_digits(words: str) -> float:
    total = 0.0
    for word in re.split(r"[\s-]", words.lower()):
        part = _PARTS.get(word.removesuffix("s"))
        if part and word not in _MULTIPLIED:
            total = (total or 1) * part
        if word in _MULTIPLIED:
            total = (total or 1) * _MULTIPLIED[word]
        total += _ADDED.get(word, 0)
    return total


def typed_quantities(text: str) -> Iterator[Typed]:
    """Yield every number with a unit, and every price; clock times and ordinals are neither."""
    for match in _NUMBER.finditer(text):
        unit = _unit_after(text, match)
        if unit or match["money"]:
            end = match.end() + len(unit) if unit else match.end("number")
            whole = " ".join(text[match.start() : end].split())
            yield Typed(match.start(), end, whole, match["number"], unit)


#: A unit after one of these divides a count.
_FOR_EACH = ("a", "an", "per", "each", "every")


def typed_under_head(cell: str, head: str) -> Iterator[Typed]:
    """Yield the number that is all of a table's cell, where the column's head has its unit."""
    number = _NUMBER.fullmatch(cell.strip())
    words = re.findall(r"[^\s,;:()]+", head)
    if number is None or not words:
        return
    # The unit ends the head or stands in brackets; "In words" begins with no inch, "Day" counts,
    # and so does "Times a day".
    tails = [
        " ".join(words[place:])
        for place in range(len(words))
        if not (place and words[place - 1].lower() in _FOR_EACH)
    ]
    for tail in [*re.findall(r"\(([^()]+)\)", head), *tails]:
        alone = "(" not in head and tail.lower() in ("in", "day", "second", "minute", "hour")
        if _is_unit(tail) and not alone:
            start = cell.index(cell.strip())
            end = start + len(cell.strip())
            yield Typed(start, end, f"{cell.strip()} {tail}", number["number"], tail)
            return


def _unit_after(text: str, match: re.Match[str]) -> str:
    """Return the unit that follows a number, as written, or nothing."""
    rest = text[match.end() : match.end() + 60]
    unit = _longest_unit(rest)
    if not unit:
        other = _MONEY_OR_DEGREES.match(rest)
        return other[0] if other else ""
    if unit.lower() == "in" and _WORD_IN.match(rest):
        return ""
    if unit in "'\"′″" and text[max(0, match.start() - 1) : match.start()] in ("'", '"'):
        return ""  # a number in quotes
    if match["number"][0].isalpha() and (len(unit) == 1 or unit.lower() in _NOT_AFTER_WORDS):
        return ""
    return "" if unit in ("s", "m") and not match["gap"] else unit  # the 1990s


def _longest_unit(rest: str) -> str:
    found = _NEXT_WORDS.match(rest)
    words = found[0] if found else ""
    first_word = words.partition(" ")[0]
    while words:
        for part in (words.rstrip(".'’*_+=~^"), words):
            if _is_unit(part):
                return part
        words = words.rpartition(" ")[0]
    first_part = re.split(r"[-–—/]", first_word)[0]  # "5 gal/visit", "10 minute-long"
    return first_part if _is_unit(first_part) else ""


def _is_unit(text: str) -> bool:
    if len(text) == 1 and text.isalpha() and text not in _LETTERS:
        return False
    plain = unicodedata.normalize("NFKC", text)  # "℃" is "°C"
    return any(normal_spelling(one) in _spellings() for one in (text, plain, _without_dots(plain)))


def _without_dots(text: str) -> str:
    """Return "p.s.i." as "psi"."""
    return text.replace(".", "") if re.fullmatch(r"(?:[a-z]\.){2,}[a-z]?", text, re.I) else text


@cache
def _spellings() -> dict[str, set[str]]:
    return spellings()


def kinds_of(unit: str) -> set[str]:
    """Return the kinds that a unit, as written, may belong to."""
    return _spellings().get(normal_spelling(unit), set())


def typed_in_calculators() -> list[str]:
    """Return a sentence for each quantity typed in the calculators' own texts."""
    found = []
    for calculator in CALCULATORS.values():
        texts = [calculator.title, calculator.question, *calculator.cautions]
        for one in calculator.inputs:
            texts += [one.label, one.help, one.unusual]
        texts += [one.label for one in calculator.outputs]
        found += [
            f'the calculator "{calculator.name}" types "{typed.text}" in "{text}"'
            for text in texts
            for typed in typed_quantities(text)
        ]
    return found
