"""The formats of pages: procedures, lessons, plain pages, their blocks, and tables."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from build_tools.content.fields import (
    Format,
    Given,
    GivenOrNamed,
    Name,
    NameOrNames,
    Text,
    Whole,
    either,
    reference,
)
from build_tools.content.models import Control

#: What a procedure is for, in the order in which the handbook lists them.
ProcedureGroup = Literal[
    "On every call",
    "Testing water",
    "Settings and control",
    "Salt and brine",
    "Flow and drain",
    "Valve and injector",
    "Resin and tank",
    "Starting, cleaning, stopping",
]

Texts = Annotated[list[Text], Field(min_length=1)]
Cautions = list[reference("cautions")]
Lessons = list[reference("learn")]


class Reading(Format):
    """What a technician should read at a step: a value of the unit, or a calculated one."""

    model_config = either("value", "calculate show")

    label: Text = Field(alias="reading", description="what is read")
    value: Text | None = Field(None, description='such as "unit.backwash_flow"')
    calculate: reference("calculators") | None = Field(None, description="a calculator")
    inputs: dict[str, Given] = Field({}, description="what the calculator is given")
    show: NameOrNames | None = Field(None, description="the answers to show")
    only_for: list[Control] | None = Field(None, description="a list of controls")

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if (self.value is None) == (self.calculate is None):
            raise ValueError('a reading needs either "value" or "calculate"')
        if self.calculate and not self.show:
            raise ValueError('the key "show" is missing (expected the name of an answer)')
        if self.value and (self.show or self.inputs):
            raise ValueError('"inputs" and "show" belong to "calculate" (expected only "value")')
        return self


class Decision(Format):
    """A fork in the way: what was found, what follows, and where that leads."""

    found: Text = Field(alias="if", description="what was found")
    then: Text = Field(description="what follows from it")
    go_to: reference("pages") | None = Field(None, description='such as "faults/no-brine-drawn"')


class Step(Format):
    """One step of a procedure."""

    do: Text = Field(description="what to do")
    why: Text | None = Field(None, description="why it is done")
    expect: list[Reading] = Field([], description="a list of expected readings")
    decide: list[Decision] = Field([], description="a list of decisions")


class Procedure(Format):
    """procedures/*.yaml"""

    title: Text = Field(description="the procedure's title")
    group: ProcedureGroup = Field(description="what it is for")
    order: int = Field(0, description="its place in its group, a whole number")
    goal: Text = Field(description="what is achieved when it is done")
    when: Texts = Field(description="a list of occasions to use it")
    cautions: Cautions = Field(description="a list of cautions, or [] for none")
    before: list[Text] = Field(description="a list of what must be so before the start, or []")
    tools: list[Text] = Field(description="a list of tools, or [] for none")
    parts: list[Text] = Field([], description="a list of parts")
    steps: list[Step] = Field(min_length=1, description="a list of steps")
    decide: list[Decision] = Field([], description="a list of decisions")
    close: Texts = Field(description="a list of what closes the visit")
    learn: Lessons = Field([], description="a list of lessons")


class Question(Format):
    """A question a lesson ends with, and its answer."""

    ask: Text = Field(description="the question")
    answer: Text = Field(description="its answer")


class LessonFront(Format):
    """The front matter of learn/*.md"""

    title: Text = Field(description="the lesson's title")
    order: int = Field(description="its place among the lessons, a whole number")
    minutes: Whole = Field(description="how long it takes, in whole minutes")
    aim: Text = Field(description="what the lesson is for")
    can_now: Texts = Field(description="a list of what the learner can do afterwards")
    questions: list[Question] = Field(description="a list of questions with answers, or []")


class PlainFront(Format):
    """The front matter of any other page."""

    title: Text | None = Field(None, description="the page's title")


class WorkedExample(Format):
    """A fenced block of a Markdown page: a story, its givens and its answers."""

    id: Name = Field(description="its name, such as gannet-lane-setting")
    title: Text = Field(description="a title")
    story: Text = Field(description="the situation, in a few sentences")
    calculate: reference("calculators") = Field(description="a calculator")
    given: dict[str, Given] = Field(description="what the calculator is given")
    answers: dict[str, Given] = Field(min_length=1, description="the answers it states")


class Through(Format):
    """Another calculator that turns the values of a side into what the table's takes."""

    calculate: reference("calculators") = Field(description="a calculator")
    input: Name = Field(description="its input that takes the values")
    given: dict[str, Given] = Field({}, description="what its other inputs are given")
    show: Name = Field(description="its answer, which the table's calculator takes")


class Picture(Format):
    """A fenced block of a Markdown page: a calculator's picture, or a drawing, and its caption."""

    model_config = either("calculate", "drawing")

    id: Name = Field(description="its name, such as brine-after-a-refill")
    title: Text = Field(description="a title")
    calculate: reference("calculators") | None = Field(
        None, description="a calculator that has a picture"
    )
    drawing: Name | None = Field(None, description="the name of a drawing")
    given: dict[str, GivenOrNamed] = Field({}, description="what it is given")
    note: Text = Field(description="a sentence or two on what to see in it")

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        if (self.calculate is None) == (self.drawing is None):
            raise ValueError('a picture needs either "calculate" or "drawing"')
        return self


class Axis(Format):
    """One side of a table: an input of the calculator and the values it takes."""

    input: Name = Field(description="the name of an input")
    values: list[Given] = Field(min_length=1, description="a list of what it is given")
    through: Through | None = Field(
        None, description="a calculator that the values go through, to get the input"
    )


class Table(Format):
    """One table of tables.yaml: a calculator's answers for the values people meet."""

    title: Text = Field(description="the table's title")
    note: Text = Field(description="a sentence on how to read the table")
    calculate: reference("calculators") = Field(description="a calculator")
    down: Axis = Field(description="the input down the side, and its values")
    across: Axis | None = Field(None, description="the input across the top, and its values")
    given: dict[str, Given] = Field({}, description="what the other inputs are given")
    show: NameOrNames = Field(description="the answer to show, or a list of them")

    @model_validator(mode="after")
    def _one_answer_in_a_cell(self) -> Self:
        if self.across is not None and len(self.show) != 1:
            raise ValueError('a table with "across" shows one answer (expected one name in "show")')
        return self
