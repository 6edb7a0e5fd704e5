"""Simulated homes for every fault that acts on the simulation, kept as compact text.

The file has for each fault a digest of what its homes were made from. Where the simulation or the
fault's own `simulation` has changed since, the homes are stale and only they are made anew.
"""

from __future__ import annotations

import json
import multiprocessing
import os
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

from build_tools.diagnosis.digest import digest_of
from build_tools.diagnosis.homes_of_fault import homes_of_fault
from calculators.diagnosis.knowledge import COMPLAINT
from calculators.simulation.visit import CHECKS

FILE = "simulated_homes.json"
#: The repository, whose code makes the homes; a shop's own folder of sources may lie elsewhere.
ROOT = Path(__file__).resolve().parents[2]
COMMAND = "python3 -m build_tools simulate-homes"


def simulated(data: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Return what the homes of every fault that acts on the simulation are made from.

    data: what the knowledge is made of. Two faults of which one brings the other act together; they
    are named by both, the cause first.
    """
    faults = data["faults"]
    results = {
        name: [one["name"] for one in data["checks"][name]["results"]]
        for name in (COMPLAINT, *CHECKS)
        if name in data["checks"]
    }
    names = [(name,) for name in faults]
    names += [(cause, name) for name, fault in faults.items() for cause in fault["follows"]]
    return {
        "+".join(some): {
            "ranges": [one for name in some for one in faults[name]["simulation"]],
            "factors": _factors(faults[name]["homes"] for name in some),
            "results": results,
        }
        for some in names
        if all(faults[name]["simulation"] for name in some)
    }


def stale(data: dict[str, Any], kept: dict[str, Any]) -> list[str]:
    """Return the faults and pairs whose homes are missing or older than what they come from."""
    homes = kept.get("faults", {})
    return [
        name
        for name, given in simulated(data).items()
        if name not in homes or homes[name]["digest"] != digest_of(given, ROOT)
    ]


def make(
    data: dict[str, Any],
    names: list[str],
    kept: dict[str, Any],
    tell: Callable[[str], None],
) -> dict[str, Any]:
    """Return the kept homes with those of some faults made anew, and without those not wanted."""
    wanted = simulated(data)
    homes = {name: one for name, one in kept.get("faults", {}).items() if name in wanted}
    with multiprocessing.Pool(os.cpu_count()) as pool:
        for name, made in pool.imap_unordered(_named, [(name, wanted[name]) for name in names]):
            tell(f"{name}: {len(made['control'])} homes of {made['tries']} tries")
            homes[name] = {"digest": digest_of(wanted[name], ROOT), **made}
    return {
        "results": next(iter(wanted.values()))["results"] if wanted else {},
        "faults": {name: homes[name] for name in wanted if name in homes},
    }


def without(homes: dict[str, Any], others: dict[str, Any]) -> dict[str, Any]:
    """Return the homes of those faults whose homes are no others."""
    known = others.get("faults", {})
    own = {name: one for name, one in homes["faults"].items() if one != known.get(name)}
    return {**homes, "faults": own}


def as_text(homes: dict[str, Any]) -> str:
    """Return the homes as JSON, each fault on a line of its own."""
    lines = [
        f"{json.dumps(name)}: {json.dumps(one, ensure_ascii=False, separators=(',', ':'))}"
        for name, one in homes["faults"].items()
    ]
    results = json.dumps(homes["results"], separators=(",", ":"))
    of_faults = ",\n".join(lines)
    return f'{{"results": {results},\n"faults": {{\n{of_faults}\n}}}}\n'


def _factors(of_faults: Iterable[dict[str, float]]) -> dict[str, float]:
    factors: dict[str, float] = {}
    for of_fault in of_faults:
        for key, factor in of_fault.items():
            factors[key] = factors.get(key, 1.0) * factor
    return factors


def _named(work: tuple[str, dict[str, Any]]) -> tuple[str, dict[str, Any]]:
    name, given = work
    return name, homes_of_fault(name, **given)
