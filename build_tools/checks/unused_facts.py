"""A fact that no page prints is kept true by nobody."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, asking
from build_tools.content.values import Values


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each fact that no text uses; `values` must know all uses.

    One of the library that a shop draws on is kept for other shops. Where a file failed to load, it
    may hold the use: then nothing is told.
    """
    if handbook.broken or handbook.unread:
        return
    for name, entry in handbook.facts.items():
        if not values.uses.get(name) and not handbook.is_shipped(entry):
            wanted = f"{{{{ fact.{name} }}}} somewhere, or no such fact"
            yield entry.problem((), asking(f'no text uses the fact "{name}"', wanted))
