"""One hidden call worked through by a policy: which check comes next, until a cause is declared."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass
from math import log
from typing import Any

from build_tools.benchmarks.diagnosis.hidden_calls import HiddenCall
from calculators.diagnosis.call import Call
from calculators.diagnosis.knowledge import Knowledge
from calculators.diagnosis.next_check import (
    CHANGE_OVER,
    OPENING,
    is_open,
    minutes_of,
    needs_not_met,
)
from calculators.diagnosis.standing import Standing
from calculators.diagnosis.stopping import FOUND, advised_check

#: The minute at which the ranking is looked at.
LOOKED_AT = 5
#: What a wrong repair costs, and after how many minutes a call is given up.
WRONG_REPAIR, GIVEN_UP = 20, 150


@dataclass(frozen=True)
class Outcome:
    """What became of one call; `place` is the true cause's place in the ranking at five minutes."""

    fault: str
    complaint: str
    place: int
    group_right: bool
    declared_right_in_time: bool
    minutes: float
    wrong: int
    confidence: float
    brier: float
    log_loss: float


def policies(knowledge: Knowledge, seed: int) -> dict[str, Callable[[Standing], str | None]]:
    """Return each policy: what it would check next, None where it declares the leader.

    All declare a cause that has reached the bound, or the likeliest where nothing is left to check.
    The engine proves the cause first where that needs no opening, and gives up checking where no
    check is worth its minutes.
    """
    fixed = list(knowledge.checks)
    shuffled = random.Random(seed).sample(fixed, len(fixed))
    return {
        "engine": advised_check,
        "fixed order": lambda standing: _first_of(fixed, standing),
        "random order": lambda standing: _first_of(shuffled, standing),
    }


def work_through(
    knowledge: Knowledge, call: HiddenCall, next_check: Callable[[Standing], str | None]
) -> Outcome:
    """Check after check until the true cause is declared, or the call is given up.

    A wrong declaration costs its minutes, and that cause is out of the question from then on.
    """
    given: dict[str, Any] = {
        "complaint": call.complaint,
        "home": call.home,
        "readings": {},
        "excluded": [],
    }
    minutes, wrong = 0.0, 0
    looked_at: dict[str, Any] = {}
    while True:
        standing = Standing(knowledge, Call(knowledge, given))
        if minutes <= LOOKED_AT and not wrong:
            looked_at = _looked_at(knowledge, standing, call.fault)
        if minutes >= GIVEN_UP:
            break
        leader = standing.leader
        check = next_check(standing)
        if check is not None:
            minutes += _minutes(knowledge, check)
            given["readings"][check] = call.results[check]
        elif leader == call.fault:
            break
        else:
            wrong += 1
            minutes += WRONG_REPAIR
            given["excluded"].append(leader)
    return Outcome(
        call.fault,
        call.complaint,
        declared_right_in_time=minutes <= LOOKED_AT,
        minutes=min(minutes, GIVEN_UP),
        wrong=wrong,
        **looked_at,
    )


def _looked_at(knowledge: Knowledge, standing: Standing, fault: str) -> dict[str, Any]:
    chances = standing.causes
    groups: dict[str, float] = {}
    for name, chance in chances.items():
        group = knowledge.faults[name]["group"]
        groups[group] = groups.get(group, 0.0) + chance
    squares = sum((chance - (name == fault)) ** 2 for name, chance in chances.items())
    return {
        "place": standing.ranking.index(fault) + 1,
        "group_right": max(groups, key=groups.__getitem__) == knowledge.faults[fault]["group"],
        "confidence": chances[standing.leader],
        "brier": squares + standing.unknown**2,
        "log_loss": -log(max(chances[fault], 1e-12)),
    }


def _first_of(order: list[str], standing: Standing) -> str | None:
    if standing.causes[standing.leader] >= FOUND:
        return None
    for check in order:
        if is_open(standing, check) and not needs_not_met(standing, check):
            return check
    return None


def _minutes(knowledge: Knowledge, check: str) -> float:
    """Return the minutes that pass, without what only weighs in the choice."""
    of_check = knowledge.checks[check]
    return minutes_of(of_check) - CHANGE_OVER - (OPENING if of_check.get("opens") else 0)
