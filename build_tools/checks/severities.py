"""What a fault changes on the simulated home: ranges to draw from, in classes of homes we know."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from build_tools.content.diagnosis_models import WATERS, Change, Fault
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.models import Control
from build_tools.content.problems import Problem, choosing
from build_tools.content.severity import severity
from build_tools.content.yaml_file import KeyPath
from calculators.simulation.changes import CHANGES


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each range that cannot be drawn from, and each unknown class of home."""
    classes = [*get_args(Control), *WATERS]
    for fault in handbook.faults.values():
        for name in fault.content.homes:
            if name not in classes:
                said = choosing(f'there is no class of homes "{name}"', name, classes)
                yield fault.problem(("homes", name), said)
        for index, change in enumerate(fault.content.simulation):
            if change.change in CHANGES:
                yield from _range(fault, ("simulation", index), change)


def _range(fault: Entry[Fault], path: KeyPath, change: Change) -> Iterator[Problem]:
    written = {"from": change.low, "to": change.high, "grows_per_day": change.grows_per_day}
    numbers = {}
    for key, text in written.items():
        try:
            numbers[key] = severity(change.change, text)
        except ValueError as error:
            yield fault.problem((*path, key), f'"{key}": {error}')
    if len(numbers) < len(written):
        return
    known = CHANGES[change.change]
    for key in ("from", "to"):
        if not known.low <= numbers[key] <= known.high:
            said = (
                f'"{key}" is {written[key]}, which "{change.change}" cannot be (expected '
                f"{known.low:g} to {known.high:g}, in the unit {known.unit})"
            )
            yield fault.problem((*path, key), said)
    whole = change.spread == "whole"
    if numbers["from"] > numbers["to"]:
        said = f'"from" is {change.low}, more than "to", {change.high} (expected the lesser first)'
        yield fault.problem((*path, "from"), said)
    elif whole and not (numbers["from"].is_integer() and numbers["to"].is_integer()):
        said = f"whole numbers lie between {change.low} and {change.high} (expected two of them)"
        yield fault.problem((*path, "spread"), said)
    elif change.spread == "ratio" and numbers["from"] <= 0:
        said = f'a spread by ratio begins at {change.low} (expected a "from" above 0)'
        yield fault.problem((*path, "from"), said)
