"""Exercises: what they name exists, and a question can be posed from each."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.practice_models import Exercise
from build_tools.content.problems import Problem
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge
from build_tools.practice.exercise_data import exercise_data
from build_tools.practice.printed import printed
from calculators.practice.drawing import TRIES
from calculators.practice.evidence import HOMES

#: The kind whose questions come from the simulated homes.
OF_HOMES = "evidence"


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each part of an exercise that is wrong, and each that poses nothing."""
    if handbook.shop is None:  # its units and allowances decide the answers
        return
    for entry in handbook.practice.values():
        if not all(handbook.knows(group, name) for _, group, name in entry.references()):
            continue  # told as a name of nothing
        data, report = exercise_data(entry, values)
        for path, said in report:
            yield entry.problem(path, said)
        if report or data["kind"] == OF_HOMES or data.get("items") == []:
            continue  # told; or posed where homes are at hand; or its procedure failed to load
        if not printed(data, handbook.units):
            said = (
                f"no question can be posed in {TRIES} draws: answers or mistakes come too close to "
                "each other, or lie outside the limits (expected wider or other ranges, or "
                '"mistakes" with fewer of them)'
            )
            yield entry.problem(("steps",), said)


def check_evidence(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each exercise on evidence that poses nothing.

    The handbook has no other problem, so that its simulated homes can be used.
    """
    entries = [one for one in handbook.practice.values() if one.content.kind == OF_HOMES]
    if not entries:
        return
    library = knowledge(handbook)
    for entry in entries:
        data, _ = exercise_data(entry, values)
        if not printed(data, handbook.units, library):
            yield _unclear(entry)


def _unclear(entry: Entry[Exercise]) -> Problem:
    said = (
        f"no home in {HOMES} shows one of these faults clearly and leaves something to find out "
        "(expected other faults, or another control)"
    )
    return entry.problem(("faults",), said)
