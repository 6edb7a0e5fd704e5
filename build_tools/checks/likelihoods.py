"""What faults say of the checks: chances of results that exist, which tell something."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.diagnosis_models import COMPLAINT, Check, Fault
from build_tools.content.entries import Entry
from build_tools.content.fields import Measure
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, asking, choosing, shortened


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each row that fits no check, and for what the rows leave untold."""
    for fault in handbook.faults.values():
        for name, chances in fault.content.likelihoods.items():
            yield from _row(handbook, fault, name, chances)
        yield from _untold(handbook, fault)
    yield from _unexpected(handbook)


def _row(
    handbook: Handbook, fault: Entry[Fault], name: str, chances: dict[str, Measure]
) -> Iterator[Problem]:
    path = ("likelihoods", name)
    if not handbook.knows("checks", name):
        choices = sorted(handbook.names("checks"))
        said = choosing(f'there is no check "{shortened(name)}"', name, choices)
        yield fault.problem(path, said)
        return
    if not chances:
        yield fault.problem(path, f'"{name}" is empty (expected a result and its chance)')
    total = sum(chance.quantity.number for chance in chances.values())
    if total > 100 + 1e-9:
        said = f'the chances of "{name}" make {total:g} % (expected at most 100 % together)'
        yield fault.problem(path, said)
    entry = handbook.checks.get(name)
    names = [one.name for one in entry.content.results] if entry else [*chances]
    for result in chances:
        if result not in names:
            said = choosing(f'the check "{name}" has no result "{result}"', result, names)
            yield fault.problem((*path, result), said)


def _untold(handbook: Handbook, fault: Entry[Fault]) -> Iterator[Problem]:
    rows = fault.content.likelihoods
    if COMPLAINT not in rows:
        said = (
            f'the fault says of no complaint how likely it is (expected a line "{COMPLAINT}" '
            "with its chances)"
        )
        yield fault.problem(("likelihoods",), said)
    known = all(name in handbook.checks for name in rows)
    if known and not fault.content.simulation and not any(_tells(handbook, fault)):
        said = (
            'no check can tell this fault (expected a change under "simulation", or the chance of '
            "an abnormal result of some check)"
        )
        yield fault.problem(("likelihoods",), said)


def _tells(handbook: Handbook, fault: Entry[Fault]) -> Iterator[bool]:
    """Yield for each row but the complaints whether it expects anything out of the ordinary."""
    for name, chances in fault.content.likelihoods.items():
        if name != COMPLAINT:
            normal = handbook.checks[name].content.results[0].name
            yield any(chances[one].quantity.number > 0 for one in chances if one != normal)


def _unexpected(handbook: Handbook) -> Iterator[Problem]:
    if handbook.broken:
        return  # a fault that failed to load may expect it
    for entry in handbook.checks.values():
        rows = [one.content.likelihoods.get(entry.id, {}) for one in handbook.faults.values()]
        if not any(_abnormal(entry, row) for row in rows):
            said = "no fault expects an abnormal result of this check"
            wanted = 'its chance under "likelihoods" of a fault'
            yield Problem(entry.file, 1, asking(said, wanted))


def _abnormal(entry: Entry[Check], chances: dict[str, Measure]) -> bool:
    return any(name != entry.content.results[0].name for name in chances)
