"""Skills cover all of the work, and each of them is practised."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each procedure and group of faults that no skill has.

    In a handbook with exercises, each skill has one.
    """
    if not handbook.skills or handbook.names("skills") != set(handbook.skills):
        return  # what is missing may stand in an entry that failed
    skills = handbook.skills.values()
    procedures = {name for one in skills for name in one.content.procedures}
    for name, procedure in handbook.procedures.items():
        if name not in procedures:
            said = 'no skill has this procedure (expected its name under "procedures" of one)'
            yield procedure.problem((), said)
    groups = {name for one in skills for name in one.content.faults}
    missed = {one.content.group: one for one in handbook.faults.values()}
    for group, fault in missed.items():
        if group not in groups:
            said = f'no skill has the group "{group}" (expected it under "faults" of one)'
            yield fault.problem(("group",), said)
    practised = {one.content.skill for one in handbook.practice.values()}
    if handbook.practice and handbook.names("practice") == set(handbook.practice):
        for entry in skills:
            if entry.id not in practised:
                said = 'no exercise has this skill (expected "skill: %s" in one of practice)'
                yield entry.problem((), said % entry.id)
