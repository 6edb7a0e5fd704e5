"""The checks of a call: each in a place of its own, after what it needs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from build_tools.content.diagnosis_models import Check, Finding
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, choosing, shortened
from build_tools.content.yaml_file import KeyPath

_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each place taken twice, and for each finding that no check can show."""
    places: dict[tuple[str, int], Entry[Check]] = {}
    for entry in handbook.checks.values():
        place = (entry.content.stage, entry.content.order)
        first = places.setdefault(place, entry)
        if first is not entry:
            said = (
                f'the check "{first.id}" has the same place, {place[1]} in the stage "{place[0]}" '
                "(expected a place of its own)"
            )
            yield entry.problem(("order",), said)
        yield from _own(entry)
        yield from _findings(handbook, entry, "needs", entry.content.needs)
    for fault in handbook.faults.values():
        yield from _findings(handbook, fault, "proved_by", fault.content.proved_by)
    yield from _circles(handbook)


def _own(entry: Entry[Check]) -> Iterator[Problem]:
    seen = set()
    for index, one in enumerate(entry.content.results):
        path = ("results", index, "name")
        if one.name in seen:
            yield entry.problem(path, f'"{one.name}" is here twice (expected each name once)')
        elif not _NAME.fullmatch(one.name):
            said = (
                f'the name "{shortened(one.name)}" cannot stand in a fault (expected lower '
                'case letters, digits and "-")'
            )
            yield entry.problem(path, said)
        seen.add(one.name)
    for index, name in enumerate(entry.content.erases):
        if name == entry.id:
            said = "the check erases its own evidence (expected another check)"
            yield entry.problem(("erases", index), said)


def _findings(
    handbook: Handbook, entry: Entry[object], key: str, findings: list[Finding]
) -> Iterator[Problem]:
    for index, finding in enumerate(findings):
        found = handbook.checks.get(finding.check)
        names = [one.name for one in found.content.results] if found else []
        for name in finding.result:
            if found and name not in names:
                path: KeyPath = (key, index, "result")
                said = choosing(f'the check "{finding.check}" has no result "{name}"', name, names)
                yield entry.problem(path, said)


def _circles(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each need that leads back to its own check."""
    needs = {
        entry.id: [one.check for one in entry.content.needs] for entry in handbook.checks.values()
    }
    for start in needs:
        way, ahead = {start}, [*needs[start]]
        while ahead:
            name = ahead.pop()
            if name == start:
                said = "the check needs itself first, by way of others (expected a way that begins)"
                yield handbook.checks[start].problem(("needs",), said)
                break
            if name not in way:
                way.add(name)
                ahead += needs.get(name, [])
