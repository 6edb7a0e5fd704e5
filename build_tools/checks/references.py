"""Everything that a field names must exist, and a list names it once."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, choosing, shortened

_WORDS = {
    "procedures": "procedure",
    "faults": "fault",
    "checks": "check",
    "changes": "change of the simulation",
    "learn": "lesson",
    "calculators": "calculator",
    "sources": "source",
    "cautions": "caution",
    "equipment": "unit of equipment",
    "tables": "table",
    "pages": "page",
    "fault groups": "group of faults",
    "skills": "skill",
}


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each name of nothing, and each name that a list repeats."""
    for entry in handbook.entries():
        seen: set[tuple[object, ...]] = set()
        for path, group, name in entry.references():
            if not handbook.knows(group, name):
                choices = sorted(handbook.names(group))
                said = choosing(f'there is no {_WORDS[group]} "{shortened(name)}"', name, choices)
                yield entry.problem(path, said)
            if isinstance(path[-1], int):
                if (*path[:-1], name) in seen:
                    said = f'the {_WORDS[group]} "{name}" is listed twice (expected each once)'
                    yield entry.problem(path, said)
                seen.add((*path[:-1], name))
