"""A knowledge of three causes and a few checks, small enough to work out by hand."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from calculators.diagnosis import Knowledge
from calculators.diagnosis.call import Call
from calculators.diagnosis.standing import Standing


def check(title: str, *results: str, **more: Any) -> dict[str, Any]:
    """Return a check; each result is its own label with a capital letter."""
    named = [{"name": one, "label": one.capitalize()} for one in results]
    given = {"title": title, "stage": 5, "order": 1, "minutes": 1, "kind": "look"}
    return {**given, "results": named, **more}


def fault(title: str, share: float, **more: Any) -> dict[str, Any]:
    """Return a fault that acts on nothing but what its likelihoods say."""
    given = {"title": title, "group": "Any", "share_of_calls": share, "minutes": 10}
    return {**given, "likelihoods": {}, "simulation": [], "follows": [], "homes": {}, **more}


DATA: dict[str, Any] = {
    "checks": {
        "complaint": check("What the customer says", "hard", "salty", stage=0, minutes=0),
        "lamp": check("Lamp at the outlet", "lit", "dark", stage=3, order=1),
        "level": check("Water in the well", "planned", "high", "low", stage=4, order=1, minutes=2),
        "rod": check("Rod through the salt", "loose", "crust", stage=4, order=2, erases=["level"]),
        "start": check(
            "Start by hand", "turns", "still", needs=[{"check": "lamp", "result": "lit"}]
        ),
        "draw": check(
            "Brine draw",
            "draws",
            "stands",
            minutes=4,
            needs=[{"check": "start", "result": ["turns"]}],
        ),
        "valve": check("Valve opened", "clean", "worn", minutes=10, opens=True),
    },
    "faults": {
        "no-power": fault(
            "No power",
            2,
            minutes=5,
            likelihoods={
                "complaint": {"hard": 1.0},
                "lamp": {"dark": 0.9},
                "start": {"still": 1.0},
            },
        ),
        "bridge": fault(
            "Salt bridge",
            5,
            likelihoods={
                "complaint": {"hard": 0.8, "salty": 0.2},
                "rod": {"crust": 0.9},
                "level": {"low": 0.4},
            },
        ),
        "plugged": fault(
            "Plugged injector",
            3,
            minutes=30,
            likelihoods={
                "complaint": {"hard": 0.5, "salty": 0.5},
                "level": {"high": 0.8},
                "draw": {"stands": 0.95},
                "valve": {"worn": 0.9},
            },
        ),
    },
    "homes": {},
}


def data(**faults: dict[str, Any]) -> dict[str, Any]:
    """Return the data with some keys of some faults changed; names with "_" for "-"."""
    changed = deepcopy(DATA)
    for name, keys in faults.items():
        changed["faults"][name.replace("_", "-")].update(keys)
    return changed


def standing(given: dict[str, Any], of: dict[str, Any] = DATA) -> Standing:
    """Return how the causes stand after a call."""
    knowledge = Knowledge(of)
    return Standing(knowledge, Call(knowledge, given))
