"""Calls whose fault the diagnosis does not know, from homes that it has never seen.

A simulated fault acts on a home from a fresh seed, with the simulation's physical figures shifted.
What a judged likelihood gives comes from a table that differs from the handbook's: each row is
drawn anew for every hundred calls, as if it had been counted on a few calls. Every reading is then
noted wrongly as often as its kind of check is.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from build_tools.diagnosis.homes_of_fault import class_factor
from calculators.diagnosis.call import NOT_DONE
from calculators.diagnosis.knowledge import COMPLAINT
from calculators.diagnosis.likelihoods import MISREADING, judged_row
from calculators.simulation.visit import CHECKS, draw, visit

#: How many calls a judged row is counted on: the fewer, the further it lies from the handbook's.
PSEUDO_COUNTS = 20
#: How far the simulation's physical figures are shifted, up or down.
SHIFT = 0.15
#: Calls that share one jittered table.
CALLS_OF_A_TABLE = 100
#: A fault that no home notices in so many tries makes no call.
TRIES = 400


@dataclass(frozen=True)
class HiddenCall:
    """One call: the fault behind it, what is known at the door, and what every check would show."""

    fault: str
    complaint: str
    home: dict[str, str] = field(default_factory=dict)
    results: dict[str, str] = field(default_factory=dict)


def hidden_calls(data: dict[str, Any], count: int, seed: int) -> Iterator[HiddenCall]:
    """Yield calls that share one jittered table; `data` is what the knowledge is made of."""
    source = random.Random(f"hidden calls {seed}")
    table = jittered(data, source)
    names = list(data["faults"])
    shares = [fault["share_of_calls"] for fault in data["faults"].values()]
    for number in range(count):
        fault = source.choices(names, shares)[0]
        yield hidden_call(data, table, fault, random.Random(f"{seed} {number} {fault}"))


def hidden_call(
    data: dict[str, Any],
    table: dict[tuple[str, str], list[float]],
    fault: str,
    source: random.Random,
) -> HiddenCall:
    """Return a call with a known fault."""
    results: dict[str, str] = {}
    home: dict[str, str] = {}
    complaint = None
    if data["faults"][fault].get("simulation"):
        found = _noticed(data["faults"][fault], source)
        home = {"control": found.control, "water": found.water}
        results = {**dict.fromkeys(CHECKS, NOT_DONE), **found.readings(source)}
        complaint = source.choices(list(found.complaints), list(found.complaints.values()))[0]
    for name, check in data["checks"].items():
        names = [one["name"] for one in check["results"]]
        if name == COMPLAINT:
            complaint = complaint or source.choices(names, table[fault, name])[0]
            continue
        if name not in results:
            results[name] = source.choices(names, table[fault, name])[0]
        if results[name] != NOT_DONE and source.random() < MISREADING[check["kind"]]:
            results[name] = source.choice(names)
    return HiddenCall(fault, complaint, home, results)


def jittered(data: dict[str, Any], source: random.Random) -> dict[tuple[str, str], list[float]]:
    """Return judged rows as if each had been counted on few calls: a Dirichlet draw around it."""
    table = {}
    for fault, of_fault in data["faults"].items():
        for check, of_check in data["checks"].items():
            names = [one["name"] for one in of_check["results"]]
            row = judged_row(names, of_fault["likelihoods"].get(check))
            draws = [
                source.gammavariate(PSEUDO_COUNTS * chance, 1) if chance else 0.0 for chance in row
            ]
            total = sum(draws)
            table[fault, check] = [one / total for one in draws] if total else row
    return table


def _noticed(fault: dict[str, Any], source: random.Random):
    for _ in range(TRIES):
        changes = draw(fault["simulation"], source)
        found = visit(source.getrandbits(48), changes, shift=SHIFT)
        factors = fault.get("homes") or {}
        if found and source.random() < class_factor(factors, found.control, found.water):
            return found
    raise LookupError(f"No home notices the fault in {TRIES} tries.")
