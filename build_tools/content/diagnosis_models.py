"""The formats of the diagnosis: faults, and the checks that tell them apart."""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from build_tools.content.fields import (
    Format,
    Given,
    Measure,
    Name,
    NameOrNames,
    Text,
    Whole,
    reference,
)
from build_tools.content.models import Control
from build_tools.content.page_models import Cautions, Lessons, Texts
from calculators.quantities import parse

#: The stages of a call in their order: the first asks, the next four are the arrival check.
STAGES = (
    "telephone",
    "water's way",
    "water tests",
    "power and clock",
    "salt and brine",
    "deeper",
)
#: The check whose results are the complaints that customers come with.
COMPLAINT = "complaint"
#: The classes of homes by their water; those by their control are the controls.
WATERS = ("town", "well")


def _chance(value: object) -> Measure:
    text = str(value)
    if not isinstance(value, str) or not text.rstrip().endswith("%"):
        raise ValueError('this is no share. Write it with its sign, such as "65 %".')
    read = Measure(text, parse(text, "share"))
    if not 0 <= read.quantity.number <= 100:
        raise ValueError('a share lies between "0 %" and "100 %".')
    return read


_SCHEMA: dict[str, Any] = {
    "type": "string",
    "pattern": r"%\s*$",
    "title": "a share",
    "examples": ["65 %"],
}
Chance = Annotated[Measure, PlainValidator(_chance), WithJsonSchema(_SCHEMA)]
Minutes = Annotated[float, Field(ge=0)]
Procedures = list[reference("procedures")]


class Lookalike(Format):
    """Another fault that looks the same at first, and how to tell."""

    fault: reference("faults") = Field(description="a fault")
    tell: Text = Field(description="how to tell the two apart")


class Change(Format):
    """What a fault changes on the simulated home, and the range its severity is drawn from."""

    change: reference("changes") = Field(description="a change that the simulation knows")
    low: Given = Field(alias="from", description="the least of it, a number or a quantity")
    high: Given = Field(alias="to", description="the most of it, a number or a quantity")
    spread: Literal["even", "ratio", "whole"] = Field(
        "even", description='"even", "ratio" or "whole": how severities are drawn'
    )
    grows_per_day: Given = Field("0", description="how much it grows in a day")


class Finding(Format):
    """A result of a check, or several of which any will do."""

    check: reference("checks") = Field(description="a check")
    result: NameOrNames = Field(description="a result of that check, or a list of them")


class Fault(Format):
    """faults/*.yaml"""

    title: Text = Field(description="the fault's title")
    group: Text = Field(description="the group of faults it belongs to")
    share_of_calls: Chance = Field(description='how many calls it makes, such as "4 %"')
    minutes: Minutes = Field(description="how many minutes its repair takes")
    homes: dict[str, Chance] = Field(
        {}, description='classes of homes in which it is rarer, such as "town: 30 %"'
    )
    customer_says: Texts = Field(description="a list of what customers say")
    seen: Texts = Field(description="a list of what a technician sees")
    mistaken_for: list[Lookalike] = Field([], description="a list of faults that look alike")
    confirm: Text = Field(description="the one check that proves it")
    proved_by: list[Finding] = Field([], description="a list of findings that prove it")
    remedy: Texts = Field(description="a list of what to do about it")
    repair_opens: bool = Field(
        False, description="true where the repair opens what stands under pressure"
    )
    prevent: Text = Field(description="how to keep it from coming back")
    parts: list[Text] = Field([], description="a list of parts")
    cautions: Cautions = Field(description="a list of cautions, or [] for none")
    procedures: Procedures = Field(description="a list of procedures that help, or [] for none")
    learn: Lessons = Field([], description="a list of lessons")
    follows: list[reference("faults")] = Field(
        [], description="a list of faults that it may follow as their effect"
    )
    simulation: list[Change] = Field(
        description="a list of what it changes on the simulated home, or [] for nothing"
    )
    likelihoods_from: Text = Field(
        description='whose judgement the likelihoods are, such as "common practice, no source"'
    )
    likelihoods: dict[str, dict[str, Chance]] = Field(
        description='lines of a check and the chance of each result, "complaint" among them'
    )


class Result(Format):
    """One thing a check may show."""

    name: Name = Field(description="its name in lower case, such as hot-harder")
    label: Text = Field(description="its name for readers, in a few words")
    means: Text = Field(description="what is seen then, and what it means, in a line")
    only_for: list[Control] | None = Field(None, description="a list of controls that can show it")


class Check(Format):
    """checks/*.yaml"""

    title: Text = Field(description="the check's title")
    stage: Literal[STAGES] = Field(description="the stage of the call it belongs to")
    order: Whole = Field(description="its place in the stage, a whole number")
    minutes: Minutes = Field(description="how many minutes it takes")
    kind: Literal["look", "instrument", "feel"] = Field(
        description='"look", "instrument" or "feel": how it is read'
    )
    how: Texts = Field(description="a list of what to do")
    say: Text | None = Field(None, description="what to tell the customer")
    tools: list[Text] = Field(description="a list of tools, or [] for none")
    results: list[Result] = Field(min_length=2, description="a list of results, the normal first")
    only_for: list[Control] | None = Field(None, description="a list of controls it is for")
    needs: list[Finding] = Field([], description="a list of findings that must come first")
    erases: list[reference("checks")] = Field(
        [], description="a list of checks whose evidence it destroys"
    )
    opens: bool = Field(False, description="true where something is opened, with consent")
    overlaps_minutes: Minutes | None = Field(
        None, description="the minutes it takes while other checks go on"
    )
    stop_if: list[Text] = Field([], description="a list of dangers that end the work at once")
    cautions: Cautions = Field(description="a list of cautions, or [] for none")
    procedures: Procedures = Field(description="a list of procedures that describe it, or []")
    learn: Lessons = Field([], description="a list of lessons")

    @model_validator(mode="after")
    def _overlap(self) -> Self:
        if self.overlaps_minutes is not None and self.overlaps_minutes >= self.minutes:
            raise ValueError('"overlaps_minutes" must be below "minutes"')
        return self

    def result(self, name: str) -> Result | None:
        """Return a result by its name."""
        return next((one for one in self.results if one.name == name), None)
