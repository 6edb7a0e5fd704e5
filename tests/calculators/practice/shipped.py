"""The exercises of the shipped handbook as plain data, and what its diagnosis knows."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from build_tools.content.handbook import Handbook, load_handbook
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge_data
from build_tools.practice.exercise_data import exercise_data
from calculators.diagnosis import Knowledge

ROOT = Path(__file__).parents[3]


@cache
def handbook() -> Handbook:
    """Return the shipped handbook."""
    return load_handbook(ROOT / "docs_src", ROOT)


@cache
def exercises() -> dict[str, dict[str, Any]]:
    """Return every shipped exercise by its name."""
    values = Values(handbook())
    return {name: exercise_data(one, values)[0] for name, one in handbook().practice.items()}


def of_kinds(*kinds: str) -> list[dict[str, Any]]:
    """Return the shipped exercises of some kinds."""
    return [one for one in exercises().values() if one["kind"] in kinds]


@cache
def knowledge() -> Knowledge:
    """Return what the shipped diagnosis knows."""
    return Knowledge(knowledge_data(handbook()))
