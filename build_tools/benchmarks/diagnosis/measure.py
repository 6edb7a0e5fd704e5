"""All policies on the same hidden calls, on all processors, and what came out as numbers."""

from __future__ import annotations

import multiprocessing
import os
from collections import defaultdict
from collections.abc import Iterable
from statistics import mean, median
from typing import Any

from build_tools.benchmarks.diagnosis.hidden_calls import CALLS_OF_A_TABLE, hidden_calls
from build_tools.benchmarks.diagnosis.policies import Outcome, policies, work_through
from calculators.diagnosis.knowledge import Knowledge

BINS = 10
_given: dict[str, Any] = {}


def measure(data: dict[str, Any], calls: int, seed: int) -> dict[str, Any]:
    """Return the figures of each policy, over all calls, per group of faults and per complaint."""
    tables = [
        (seed * 100_000 + start, min(CALLS_OF_A_TABLE, calls - start))
        for start in range(0, calls, CALLS_OF_A_TABLE)
    ]
    outcomes: dict[str, list[Outcome]] = defaultdict(list)
    with multiprocessing.Pool(os.cpu_count(), _take, (data,)) as pool:
        for of_table in pool.imap(_of_table, tables):
            for name, some in of_table.items():
                outcomes[name] += some
    groups = {name: fault["group"] for name, fault in data["faults"].items()}
    return {
        "calls": calls,
        "seed": seed,
        "policies": {name: figures(some) for name, some in outcomes.items()},
        "groups": _parted(outcomes, lambda one: groups[one.fault]),
        "complaints": _parted(outcomes, lambda one: one.complaint),
        "faults": _parted(outcomes, lambda one: one.fault),
        "calibration": {name: reliability(some) for name, some in outcomes.items()},
    }


def figures(outcomes: Iterable[Outcome]) -> dict[str, float]:
    """Return what a policy is measured by."""
    some = list(outcomes)
    found = {
        "calls": len(some),
        "first at 5 minutes": mean(one.place == 1 for one in some),
        "first three at 5 minutes": mean(one.place <= 3 for one in some),
        "right group at 5 minutes": mean(one.group_right for one in some),
        "declared right within 5 minutes": mean(one.declared_right_in_time for one in some),
        "mean minutes to the cause": mean(one.minutes for one in some),
        "median minutes to the cause": median(one.minutes for one in some),
        "wrong declarations a call": mean(one.wrong for one in some),
        "Brier score at 5 minutes": mean(one.brier for one in some),
        "log loss at 5 minutes": mean(one.log_loss for one in some),
        "calibration error at 5 minutes": calibration_error(some),
    }
    return {name: round(float(value), 4) for name, value in found.items()}


def reliability(outcomes: Iterable[Outcome]) -> list[dict[str, float]]:
    """Return, for each tenth of confidence, how often the leader was right."""
    bins = defaultdict(list)
    for one in outcomes:
        bins[min(BINS - 1, int(BINS * one.confidence))].append(one)
    return [
        {
            "calls": len(bins[number]),
            "confidence": round(mean(one.confidence for one in bins[number]), 3),
            "right": round(mean(one.place == 1 for one in bins[number]), 3),
        }
        for number in sorted(bins)
    ]


def calibration_error(outcomes: Iterable[Outcome]) -> float:
    """Return the expected calibration error of the leader's chance, in ten bins.

    The mean distance between the leader's chance and how often it was right, weighted by calls.
    """
    some = list(outcomes)
    bins = reliability(some)
    return sum(one["calls"] * abs(one["confidence"] - one["right"]) for one in bins) / len(some)


def _parted(outcomes: dict[str, list[Outcome]], part) -> dict[str, dict[str, dict[str, float]]]:
    parts: dict[str, dict[str, list[Outcome]]] = defaultdict(lambda: defaultdict(list))
    for name, some in outcomes.items():
        for one in some:
            parts[part(one)][name].append(one)
    return {
        key: {name: figures(some) for name, some in of_key.items()}
        for key, of_key in sorted(parts.items())
    }


def _take(data: dict[str, Any]) -> None:
    _given["data"], _given["knowledge"] = data, Knowledge(data)


def _of_table(table: tuple[int, int]) -> dict[str, list[Outcome]]:
    seed, count = table
    outcomes: dict[str, list[Outcome]] = defaultdict(list)
    for number, call in enumerate(hidden_calls(_given["data"], count, seed)):
        for name, policy in policies(_given["knowledge"], seed + number).items():
            outcomes[name].append(work_through(_given["knowledge"], call, policy))
    return dict(outcomes)
