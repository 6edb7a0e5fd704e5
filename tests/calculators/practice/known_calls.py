"""Calls with a known fault in a tiny handbook, and moves through them."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from calculators.diagnosis import Knowledge
from calculators.practice.call_code import CallCode, edition_of
from calculators.practice.practice_call import Played, PracticeCall
from tests.calculators.diagnosis.small_knowledge import DATA

#: The code's number, by the faults that it hides: found once, and checked by every use.
TRIES = 2000


def small(**faults: dict[str, Any]) -> Knowledge:
    """Return the tiny knowledge with further keys for some of its faults, by name with "_"."""
    data = deepcopy(DATA)
    for name, more in faults.items():
        data["faults"][name.replace("_", "-")].update(more)
    return Knowledge(data)


def call_with(knowledge: Knowledge, *faults: str, danger: bool = False) -> PracticeCall:
    """Return the first call that hides these faults, in this order."""
    edition = edition_of(knowledge)
    for number in range(TRIES):
        call = PracticeCall(knowledge, CallCode(0, number, edition).text)
        if call.hidden.faults == list(faults) and bool(call.hidden.danger) == danger:
            return call
    raise AssertionError(f"No call of {TRIES} hides {faults}.")


def check(name: str) -> dict[str, Any]:
    """Return the move that makes a check."""
    return {"do": "check", "check": name}


def named(cause: str, confidence: float = 100, second: str | None = None) -> dict[str, Any]:
    """Return the move that names a cause."""
    return {"do": "name", "cause": cause, "second": second, "confidence": confidence}


def remedy(fault: str, *parts: str) -> dict[str, Any]:
    """Return the move that repairs."""
    return {"do": "remedy", "remedy": fault, "parts": list(parts)}


def proved(name: str) -> dict[str, Any]:
    """Return the move of a closing test."""
    return {"do": "prove", "check": name}


def told(text: str) -> dict[str, Any]:
    """Return the move that tells the customer."""
    return {"do": "tell", "text": text}


SAFE = [{"do": "consent"}, {"do": "make-safe"}]
GOOD_WORDS = (
    "I found the salt stuck together above the water and broke it up. Please look at it every "
    "month, and call me if the water is hard again."
)


def played(call: PracticeCall, *moves: dict[str, Any]) -> Played:
    """Return a call after moves that all can be made."""
    result = call.play(list(moves))
    assert result.problems == []
    return result
