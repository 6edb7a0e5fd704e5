"""The example that an exercise's page prints, with its solution."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calculators.diagnosis import Knowledge
from calculators.practice.drawing import CannotBePosed
from calculators.practice.exercises import pose, solve

#: The seed of every printed example.
SEED = "printed"


@dataclass(frozen=True)
class Printed:
    """A question, and what solves it; nobody changes either."""

    question: dict[str, Any]
    solved: dict[str, Any]


def printed(
    exercise: dict[str, Any], units: str, library: Knowledge | None = None
) -> Printed | None:
    """Return the printed example of an exercise, or None where none can be posed.

    While authors work, most exercises are as they were, and so are their examples.
    """
    return _printed(json.dumps(exercise), units, library)


@lru_cache(maxsize=1000)
def _printed(data: str, units: str, library: Knowledge | None) -> Printed | None:
    exercise = json.loads(data)
    try:
        question = pose(exercise, SEED, units, library)
    except CannotBePosed:
        return None
    return Printed(question, solve(exercise, SEED, units, library))
