"""Exercises: what they name exists, and a question can be posed from them."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.content.values import Values
from build_tools.practice.exercise_data import exercise_data
from calculators.practice.drawing import TRIES
from calculators.practice.exercises import pose
from calculators.practice.number import CannotBePosed

#: The seed of the example that an exercise's page prints.
PRINTED = "printed"


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each part of an exercise that is wrong, and each that poses nothing."""
    if handbook.shop is None:  # its units and allowances decide the answers
        return
    for entry in handbook.practice.values():
        named = list(entry.references())
        if not all(handbook.knows(group, name) for _, group, name in named):
            continue  # told as a name of nothing
        data, report = exercise_data(entry, values)
        for path, said in report:
            yield entry.problem(path, said)
        if report:
            continue
        try:
            pose(data, PRINTED, handbook.units)
        except CannotBePosed:
            said = (
                f"no question can be posed in {TRIES} draws: answers or mistakes come too close to "
                "each other, or lie outside the limits (expected wider or other ranges, or "
                '"mistakes" with fewer of them)'
            )
            yield entry.problem(("steps",), said)
