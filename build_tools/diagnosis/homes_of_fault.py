"""Homes in which one fault acts, as the technicians of noticed ones would find them."""

from __future__ import annotations

import random
from typing import Any

from calculators.diagnosis.home_codes import pack
from calculators.diagnosis.knowledge import COMPLAINT, class_letters
from calculators.simulation.visit import draw, visit

#: Homes kept for each fault, tries at most, and readings drawn in each home.
HOMES, TRIES, DRAWS = 150, 4000, 4
#: Complaints are kept in parts of this many.
PARTS_OF_COMPLAINT = 10


def class_factor(factors: dict[str, float], control: str, water: str) -> float:
    """Return how likely a fault occurs in a home of this class, against where it occurs most."""
    return factors.get(control, 1.0) * factors.get(water, 1.0)


def homes_of_fault(
    name: str,
    ranges: list[dict[str, Any]],
    factors: dict[str, float],
    results: dict[str, list[str]],
    homes: int = HOMES,
) -> dict[str, Any]:
    """Return homes that notice a fault: their classes, and packed what each check shows in them.

    ranges: what the fault changes; factors: how likely it is in a class of homes; results: the
    names of each check's results. Deterministic: the name and the number of the try are the seed.
    """
    found = []
    tries = 0
    while len(found) < homes and tries < TRIES:
        tries += 1
        source = random.Random(f"{name} {tries}")
        home = visit(source.getrandbits(48), draw(ranges, source))
        if home is not None and source.random() < class_factor(factors, home.control, home.water):
            found.append((home, [home.readings(source) for _ in range(DRAWS)]))
    classes = [class_letters(home.control, home.water) for home, _ in found]
    shown = {check for _, draws in found for one in draws for check in one}
    readings = {
        check: pack([_counts(draws, check, results[check]) for _, draws in found])
        for check in results
        if check in shown
    }
    readings[COMPLAINT] = pack([_parts(home.complaints, results[COMPLAINT]) for home, _ in found])
    return {
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
    """Return chances as parts of ten, the largest rests rounded up; nothing for other names."""
    total = sum(chances.get(name, 0.0) for name in names)
    if not total:
        return [0] * len(names)
    exact = [PARTS_OF_COMPLAINT * chances.get(name, 0.0) / total for name in names]
    parts = [int(one) for one in exact]
    by_rest = sorted(range(len(names)), key=lambda one: parts[one] - exact[one])
    for place in by_rest[: PARTS_OF_COMPLAINT - sum(parts)]:
        parts[place] += 1
    return parts
