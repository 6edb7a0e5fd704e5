"""Simulated homes that are older than what they were made from would rank faults wrongly."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.diagnosis.knowledge_data import kept_homes
from build_tools.diagnosis.simulated_homes import COMMAND, FILE, stale

#: So many faults are named; of more only the number is told.
NAMED = 4


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem where the homes are stale; the handbook has no other problem.

    A shop without the file has no simulated homes: its diagnosis goes by judged likelihoods.
    """
    path = handbook.docs_folder / FILE
    if not path.is_file():
        return
    file = handbook.file_name(path)
    try:
        names = stale(diagnosis_data(handbook), kept_homes(handbook))
    except (ValueError, KeyError, TypeError, AttributeError):
        yield Problem(file, 1, f"this is no file of simulated homes (expected: run {COMMAND})")
        return
    if names:
        told = f": {', '.join(names)}" if len(names) <= NAMED else ""
        count = "1 fault" if len(names) == 1 else f"{len(names)} faults"
        yield Problem(
            file,
            1,
            f"the homes of {count} are missing, or older than the simulation or the fault{told} "
            f"(expected: run {COMMAND})",
        )
