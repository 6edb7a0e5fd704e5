"""Simulated homes for every fault that acts on the simulation, kept as compact text.

The file has for each fault a digest of what its homes were made from. Where the simulation or the
fault's own `simulation` has changed since, the homes are stale and only they are made anew.
"""

from __future__ import annotations

import json
import multiprocessing
import os
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

from build_tools.diagnosis.digest import digest_of
from calculators.diagnosis.home_codes import pack
from calculators.diagnosis.knowledge import COMPLAINT, class_letters
from calculators.simulation.visit import draw, visit

FILE = "simulated_homes.json"
#: Homes kept for each fault, tries at most, and readings drawn in each home.
HOMES, TRIES, DRAWS = 150, 4000, 4
#: Complaints are kept in parts of this many.
PARTS_OF_COMPLAINT = 10


def simulated(data: dict[str, Any]) -> dict[str, list[dict[str, Any]]]:
    """Return the changes of every fault that acts on the simulation, and of every pair of them.

    data: what the knowledge is made of. A pair is named by both faults, the cause first.
    """
    faults = data["faults"]
    found = {name: fault["simulation"] for name, fault in faults.items() if fault["simulation"]}
    for effect, fault in faults.items():
        for cause in fault.get("follows") or []:
            if cause in found and effect in found:
                found[f"{cause}+{effect}"] = found[cause] + found[effect]
    return found


def stale(data: dict[str, Any], kept: dict[str, Any], root: Path) -> list[str]:
    """Return the faults and pairs whose homes are missing or older than what they come from."""
    homes = kept.get("faults", {})
    return [
        name
        for name, ranges in simulated(data).items()
        if name not in homes or homes[name]["digest"] != digest_of(ranges, root)
    ]


def make(
    data: dict[str, Any],
    names: list[str],
    kept: dict[str, Any],
    root: Path,
    tell: Callable[[str], None],
) -> dict[str, Any]:
    """Return the kept homes with those of some faults made anew, and without those not wanted."""
    wanted = simulated(data)
    results = {
        name: [one["name"] for one in check["results"]] for name, check in data["checks"].items()
    }
    homes = {name: one for name, one in kept.get("faults", {}).items() if name in wanted}
    work = [(name, wanted[name], _factors(data, name), results) for name in names]
    with multiprocessing.Pool(os.cpu_count()) as pool:
        for name, made in pool.imap_unordered(_homes, work):
            tell(f"{name}: {len(made['control'])} homes of {made['tries']} tries")
            homes[name] = {"digest": digest_of(wanted[name], root), **made}
    read = {check for one in homes.values() for check in one["readings"]}
    return {
        "results": {name: results[name] for name in results if name in read},
        "faults": {name: homes[name] for name in wanted if name in homes},
    }


def as_text(homes: dict[str, Any]) -> str:
    """Return the homes as JSON, each fault on a line of its own."""
    lines = [
        f"{json.dumps(name)}: {json.dumps(one, ensure_ascii=False, separators=(',', ':'))}"
        for name, one in homes["faults"].items()
    ]
    results = json.dumps(homes["results"], separators=(",", ":"))
    of_faults = ",\n".join(lines)
    return f'{{"results": {results},\n"faults": {{\n{of_faults}\n}}}}\n'


def class_factor(factors: dict[str, float], control: str, water: str) -> float:
    """Return how likely a fault occurs in a home of this class, against where it occurs most."""
    return factors.get(control, 1.0) * factors.get(water, 1.0)


def _factors(data: dict[str, Any], name: str) -> dict[str, float]:
    factors: dict[str, float] = {}
    for fault in name.split("+"):
        for key, factor in (data["faults"][fault].get("homes") or {}).items():
            factors[key] = factors.get(key, 1.0) * factor
    return factors


def _homes(work: tuple[str, list[dict[str, Any]], dict[str, float], dict[str, list[str]]]):
    name, ranges, factors, results = work
    found = []
    tries = 0
    while len(found) < HOMES and tries < TRIES:
        tries += 1
        source = random.Random(f"{name} {tries}")
        home = visit(source.getrandbits(48), draw(ranges, source))
        if home is not None and source.random() < class_factor(factors, home.control, home.water):
            found.append((home, [home.readings(source) for _ in range(DRAWS)]))
    classes = [class_letters(home.control, home.water) for home, _ in found]
    checks = [check for check in results if any(check in draws[0] for _, draws in found)]
    readings = {
        check: pack([_counts(draws, check, results[check]) for _, draws in found])
        for check in checks
    }
    readings[COMPLAINT] = pack([_parts(home.complaints, results[COMPLAINT]) for home, _ in found])
    return name, {
        "tries": tries,
        "control": "".join(control for control, _ in classes),
        "water": "".join(water for _, water in classes),
        "readings": readings,
    }


def _counts(draws: list[dict[str, str]], check: str, names: list[str]) -> list[int]:
    """Return how often each result was drawn; a check that cannot tell in a home has none."""
    drawn = [one.get(check) for one in draws]
    return [drawn.count(name) for name in names]


def _parts(chances: dict[str, float], names: list[str]) -> list[int]:
    """Return chances as parts of ten, the largest rests rounded up."""
    total = sum(chances.values())
    exact = [PARTS_OF_COMPLAINT * chances.get(name, 0.0) / total for name in names]
    parts = [int(one) for one in exact]
    by_rest = sorted(range(len(names)), key=lambda one: parts[one] - exact[one])
    for place in by_rest[: PARTS_OF_COMPLAINT - sum(parts)]:
        parts[place] += 1
    return parts
