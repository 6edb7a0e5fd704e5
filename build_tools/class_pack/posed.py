"""An exercise posed for one sheet: its question, its right answers and what they rest on.

The right answers are handed to `calculators.practice.exercises.mark`, which must take them: the key
holds nothing else.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calculators.practice import answers, evidence
from calculators.practice.drawing import CannotBePosed
from calculators.practice.exercises import mark, pose
from calculators.practice.mistakes import SENTENCES, mistakes_in
from calculators.practice.worked import accepted
from calculators.quantities import clock, plain, significant, snap, with_unit

Data = dict[str, Any]

#: What stands behind a seed in turn, until a clear question comes of it.
LETTERS = ("", *"bcdefgh")
#: Hours of the day, and minutes of the hour.
DAY, HOUR = 24, 60
#: Digits of a number that only bounds others.
DIGITS = 4


class Slip:
    """A listed mistake in one field: its sentence, the answer as shown, where it lies."""

    def __init__(self, name: str, shown: str, ranges: list[tuple[float, float]]) -> None:
        self.name = name
        self.sentence = SENTENCES[name]
        self.shown = shown
        self.ranges = ranges


class Field:
    """What one field asks and its right answer.

    kind: "number", "time", "choice" or "order". ranges: between which numbers of `unit` an answer
    is right; times: the minutes of the day that are; share: what part of the score it counts.
    """

    def __init__(self, asked: Data, share: float) -> None:
        self.name: str = asked["name"]
        self.label: str = asked["label"]
        self.help: str = asked["help"]
        self.choices: list[str] = asked["choices"]
        self.kind = "choice" if self.choices else "number"
        self.right: Any = None
        self.shown = ""
        self.also = ""
        self.unit = ""
        self.number = 0.0
        self.ranges: list[tuple[float, float]] = []
        self.times: list[int] = []
        self.slips: list[Slip] = []
        self.share = share


class Posed:
    """An exercise with the numbers of one seed. Raises `CannotBePosed` where it has none."""

    def __init__(self, exercise: Data, seed: str, units: str, library: Any) -> None:
        self.exercise = exercise
        self.seed = seed
        self.units = units
        self.library = library
        #: {"title", "text"} of each standing caution that the exercise prints.
        self.cautions: list[dict[str, str]] = []
        self.question = pose(exercise, seed, units, library)
        self._worked = None if calculates_nothing(exercise) else accepted(exercise, seed, units)
        self.fields = [Field(one, self._share(one)) for one in self.question["asked"]]
        for field in self.fields:
            if exercise["kind"] == "order":
                self._order(field)
            elif field.choices:
                self._choice(field)
            else:
                self._number(field)
        marked = self.mark({field.name: field.right for field in self.fields})
        if not marked["right"]:
            raise ValueError(f"The key of “{exercise['id']}” is not what its marking takes.")
        self.solution: list[Data] = marked["solution"]

    @property
    def calculators(self) -> list[str]:
        """The calculators that work it out, each once."""
        return list(dict.fromkeys(one["calculate"] for one in self.exercise.get("steps", ())))

    def mark(self, given: Data) -> Data:
        """Return what the exercise's own marking says to answers."""
        return mark(self.exercise, self.seed, self.units, given, self.library)

    def _share(self, asked: Data) -> float:
        if self.exercise["kind"] == "evidence":
            return evidence.COUNTS[asked["name"]]
        return 1 / len(self.question["asked"])

    def _order(self, field: Field) -> None:
        field.kind = "order"
        field.right = [one["name"] for one in self.exercise["items"]]

    def _choice(self, field: Field) -> None:
        """Find the right choice by marking each."""
        for one in field.choices:
            said = self.mark({field.name: one})["fields"].get(field.name)
            if said and said["right"]:
                field.right = field.shown = one

    def _number(self, field: Field) -> None:
        worked = self._worked
        asked = self.exercise["ask"][self.fields.index(field)]
        output = worked.output(asked)
        value = worked.value(worked.right, asked)
        field.right = field.shown = value["shown"]
        field.number, field.unit = value["rounded"], value["unit"]
        if output.kind == "time of day":
            field.kind = "time"
            field.times = list(_minutes(value["number"]))
            field.unit = ""
            return
        for other in worked.right_answers(asked):
            field.ranges += answers.accepted_between(other, output)
        if asked.get("between"):
            ends = [
                worked.value(worked.right, {**asked, "output": one}) for one in asked["between"]
            ]
            field.ranges.append(tuple(sorted(end["number"] for end in ends)))
        field.ranges = joined(field.ranges)
        field.also = "; ".join(_between(low, high, field.unit) for low, high in field.ranges)
        field.slips = list(self._slips(worked, asked, output, value))

    def _slips(self, worked: Any, asked: Data, output: Any, right: Data) -> Iterator[Slip]:
        """Yield the listed mistakes of a field, those without one number last, as marking has it."""
        several = mistakes_in(self.exercise).items()
        for name, ways in several:
            values = [value for way in ways for value in worked.wrong_values((way,), asked)]
            shown = list(dict.fromkeys(value["shown"] for value in values))
            ranges = [one for value in values for one in answers.alike_between(value)]
            if values:
                yield Slip(name, " or ".join(shown), joined(ranges))
        for name, ways in several:
            for way in ways:
                if way.reach:
                    low, high = sorted(share * right["number"] for share in way.reach)
                    yield Slip(name, _between(low, high, right["unit"]), [(low, high)])


def posed(exercise: Data, seed: str, units: str, library: Any) -> Posed:
    """Return an exercise for a sheet's seed; one without a clear question for it takes the next.

    The next seeds are the same with a letter behind. Raises CannotBePosed where none of them does.
    """
    for letter in LETTERS:
        try:
            return Posed(exercise, f"{seed}{letter}", units, library)
        except CannotBePosed:
            continue
    raise CannotBePosed(f"“{exercise['id']}” has no clear question for the seed {seed}.")


def calculates_nothing(exercise: Data) -> bool:
    """Tell whether an exercise is of a kind that calculates nothing."""
    return "steps" not in exercise


def joined(ranges: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return ranges in their order, those that overlap as one.

    >>> joined([(5, 6), (1, 2), (1.5, 3), (4, 4)])
    [(1, 3), (4, 4), (5, 6)]
    """
    found: list[tuple[float, float]] = []
    for low, high in sorted(ranges):
        if found and low <= found[-1][1]:
            found[-1] = (found[-1][0], max(high, found[-1][1]))
        else:
            found.append((low, high))
    return found


def _between(low: float, high: float, unit: str) -> str:
    """Return a range of numbers in words."""
    first, last = (plain(significant(one, DIGITS)) for one in (low, high))
    return with_unit(first if first == last else f"{first} to {last}", unit)


def _minutes(hours: float) -> Iterator[int]:
    """Yield the whole minutes of the day that count as a time of day."""
    for minute in range(DAY * HOUR):
        apart = abs(snap(minute / HOUR - hours)) % DAY
        if min(apart, DAY - apart) <= answers.SAME_TIME:
            yield minute


def spellings(minute: int) -> list[str]:
    """Return how people may write a minute of the day.

    >>> spellings(90)
    ['1:30 am', '1:30am', '1:30 a.m.', '1:30', '01:30']
    """
    hours = minute / HOUR
    twelve = clock(hours, "12-hour clock").replace("\u00a0", " ")
    whole = clock(hours, "24-hour clock").replace("\u00a0", " ")
    dotted = twelve.replace("am", "a.m.").replace("pm", "p.m.")
    padded = f"{minute // HOUR:02d}:{minute % HOUR:02d}"
    return list(dict.fromkeys([twelve, twelve.replace(" ", ""), dotted, whole, padded]))
