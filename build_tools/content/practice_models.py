"""The format of exercises: practice/*.yaml.

A trainer names calculators and ranges, steps and what must come first, or faults; never an answer.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from build_tools.content.fields import Format, Given, Name, Text, reference
from build_tools.content.models import Control
from build_tools.content.page_models import Cautions, Lessons
from calculators.practice.mistakes import SENTENCES

Kind = Literal["number", "pair", "settings", "order", "evidence"]
#: What an exercise belongs to, by its name in files: exercises of one family are interleaved.
FAMILIES = {
    "water-tests": "Testing water",
    "household": "The household",
    "capacity-and-salt": "Capacity and salt",
    "settings": "Settings",
    "brine-tank": "The brine tank",
    "drain-and-flow": "Drain and flow",
    "water-at-the-taps": "Water at the taps",
    "clock-and-meter": "Clock and meter",
    "cleaning": "Cleaning the resin",
    "safe-work": "Safe work",
    "finding-the-cause": "Finding the cause",
}
#: The fewest and the most steps to put in order.
ORDERED = range(6, 11)
#: The most calculators in a row: of a number, and of a whole sheet of settings.
LONGEST_CHAIN, LONGEST_SHEET = 3, 6


class Source(Format):
    """Where an input comes from, when it is not one fixed text."""

    low: Given | None = Field(None, alias="from", description='the least, such as "12 gpg"')
    high: Given | None = Field(None, alias="to", description='the most, such as "30 gpg"')
    step: Given | None = Field(None, description='the step between draws, such as "1 gpg"')
    one_of: list[Given] | None = Field(None, min_length=2, description="a list to draw one from")
    answer: Name | None = Field(None, description="the answer of an earlier step")
    same: Name | None = Field(None, description="an input that is drawn in an earlier step")

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        drawn = [one is not None for one in (self.low, self.high, self.step)]
        ways = [any(drawn), *(one is not None for one in (self.one_of, self.answer, self.same))]
        if sum(ways) != 1 or any(drawn) != all(drawn):
            raise ValueError(
                'what is given has either "from", "to" and "step", or "one_of", "answer" or "same"'
            )
        return self


def _given(value: object) -> object:
    if isinstance(value, dict):
        return Source.model_validate(value)
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise ValueError('this is nothing to give. Write a text such as "10 gal", or a range.')
    return str(value)


_SCHEMA: dict[str, Any] = {"description": "a fixed text, or a range to draw from"}
GivenOrDrawn = Annotated[str | Source, PlainValidator(_given), WithJsonSchema(_SCHEMA)]


class Worked(Format):
    """One calculator of an exercise and what it is given."""

    calculate: reference("calculators") = Field(description="a calculator")
    given: dict[str, GivenOrDrawn] = Field({}, description="what the calculator is given")


class Aside(Format):
    """A quantity that the story mentions and no calculator takes."""

    what: Text = Field(alias="is", description="what it is, in a few words")
    low: Given = Field(alias="from", description='the least, such as "40 gal/day"')
    high: Given = Field(alias="to", description='the most, such as "90 gal/day"')
    step: Given = Field(description='the step between draws, such as "10 gal/day"')


class Asked(Format):
    """What the learner works out."""

    answer: Name = Field(description="the name of an answer")
    of: reference("calculators") | None = Field(
        None, description="its calculator, where several give an answer of this name"
    )
    choices: list[Name] = Field([], description="a list of words to choose from")


class Taken(Format):
    """A step of the procedure that is put in order."""

    name: Name = Field(description="a short name for this step, used in the pairs")
    begins: Name = Field(description="how the step begins in the procedure")


class Pair(Format):
    """Two steps of which one must come first."""

    first: Name = Field(description="the name of the step that comes first")
    then: Name = Field(description="the name of the step that comes later")
    why: Text = Field(description="why, in a sentence for who had it the other way round")
    safety: bool = Field(False, description="true where the other order can hurt somebody")


#: By kind: the keys it needs, and those it may have beside them.
_KEYS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "number": (("story", "steps", "ask"), ("asides", "mistakes")),
    "pair": (("story", "steps", "ask"), ("asides", "mistakes")),
    "settings": (("story", "steps", "ask"), ("asides", "mistakes")),
    "order": (("story", "procedure", "take", "pairs"), ()),
    "evidence": (("story", "faults"), ("control",)),
}


class Exercise(Format):
    """practice/*.yaml"""

    title: Text = Field(description="the exercise's title")
    kind: Kind = Field(description="what is done in it")
    skill: reference("skills") = Field(description="the skill that it practises")
    family: Literal[tuple(FAMILIES)] = Field(description="the family that it belongs to")
    order: int = Field(0, description="its place in its family, a whole number")
    story: Text | None = Field(
        None, description="the situation; names of what is drawn stand in braces, as in {hardness}"
    )
    steps: list[Worked] | None = Field(None, min_length=1, description="a list of calculators")
    asides: dict[str, Aside] = Field({}, description="what the story mentions besides")
    ask: list[Asked] | None = Field(None, min_length=1, description="a list of what is asked")
    mistakes: list[Literal[tuple(SENTENCES)]] | None = Field(
        None, description="a list of mistakes to tell; missing: all that can be made"
    )
    procedure: reference("procedures") | None = Field(None, description="a procedure")
    take: list[Taken] | None = Field(None, description="a list of its steps to put in order")
    pairs: list[Pair] | None = Field(
        None, min_length=1, description="a list of two steps each, of which one comes first"
    )
    faults: list[reference("faults")] | None = Field(
        None, min_length=2, description="a list of faults, of which one is hidden"
    )
    control: Control | None = Field(None, description="the control of the home; missing: any")
    cautions: Cautions = Field([], description="a list of cautions")
    learn: Lessons = Field([], description="a list of lessons")
    procedures: list[reference("procedures")] = Field([], description="a list of procedures")

    @model_validator(mode="after")
    def _keys_of_the_kind(self) -> Self:
        needed, allowed = _KEYS[self.kind]
        for key in needed:
            if getattr(self, key) is None:
                described = type(self).model_fields[key].description
                raise ValueError(
                    f'an exercise of the kind "{self.kind}" has no "{key}" (expected {described})'
                )
        every = {key for one in _KEYS.values() for part in one for key in part}
        for key in sorted(every - {*needed, *allowed}):
            if getattr(self, key) not in (None, {}, []):
                raise ValueError(
                    f'"{key}" does not belong to the kind "{self.kind}" '
                    f"(expected {', '.join((*needed, *allowed))})"
                )
        return self
