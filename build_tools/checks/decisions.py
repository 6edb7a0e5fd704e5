"""Decisions must lead on: a technician must not be sent round in a circle."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Procedure
from build_tools.content.problems import Problem
from build_tools.content.yaml_file import KeyPath


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each "go_to" that closes a ring of procedures."""
    done: set[str] = set()
    for start in handbook.procedures:
        if start not in done:
            yield from _rings(handbook, start, done)


def _rings(handbook: Handbook, start: str, done: set[str]) -> Iterator[Problem]:
    """Walk on from one procedure, depth first, with a stack of our own: a way may be long."""
    way = [start]
    ahead = [_leads(handbook.procedures[start])]
    while way:
        step = next(ahead[-1], None)
        if step is None:
            done.add(way.pop())
            ahead.pop()
            continue
        path, name = step
        if name in way:
            ring = [*way[way.index(name) :], name]
            said = f'"go_to" leads round in a circle: {" → ".join(ring)} (expected a way that ends)'
            yield handbook.procedures[way[-1]].problem(path, said)
        elif name in handbook.procedures and name not in done:
            way.append(name)
            ahead.append(_leads(handbook.procedures[name]))


def _leads(entry: Entry[Procedure]) -> Iterator[tuple[KeyPath, str]]:
    for path, group, name in entry.references():
        section, _, procedure = name.partition("/")
        if group == "pages" and section == "procedures":
            yield path, procedure
