"""Skills cover all of the work: each procedure and each group of faults, and no family twice."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for what no skill covers, and for a family that two skills have."""
    if not handbook.skills or "skills" in handbook.unread:
        return
    skills = handbook.skills.values()
    owners: dict[str, str] = {}
    for entry in skills:
        for index, family in enumerate(entry.content.families):
            if family in owners:
                said = (
                    f'the family "{family}" belongs to "{owners[family]}" already '
                    "(expected each family once)"
                )
                yield entry.problem(("families", index), said)
            owners.setdefault(family, entry.id)
    if handbook.names("skills") != set(handbook.skills):
        return  # what is missing may stand in an entry that failed
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
