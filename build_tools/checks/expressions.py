"""Every expression in a text must have a value."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.content.values import Values


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each expression that fails."""
    for passage in handbook.passages:
        entry = passage.entry
        own_unit = entry if handbook.equipment.get(entry.id) is entry else None
        if "expect" not in passage.path:  # those are filled in for each unit: see `expectations`
            values.fill(passage, own_unit)
    yield from values.problems
