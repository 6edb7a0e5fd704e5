"""How the diagnosis, and a fixed order of all checks, work through the same call."""

from calculators.diagnosis.call import NOT_SURE, Call
from calculators.diagnosis.next_check import is_open, needs_not_met
from calculators.diagnosis.standing import Standing
from calculators.diagnosis.stopping import FOUND, advised_check
from calculators.practice.practice_call import CONSENT, MAKING_SAFE

#: After so many minutes a call is given up (common practice, no source).
GIVEN_UP = 150.0


class Worked:
    """steps: the checks in their order; minutes: up to the last cause, with repairs in vain;
    wrong: the faults repaired in vain; found: whether every cause was."""

    __slots__ = ("steps", "minutes", "wrong", "found")


def by_diagnosis(call):
    """Return how the diagnosis works through a PracticeCall, with its own rules to stop."""
    if "diagnosis" not in call.kept:
        call.kept["diagnosis"] = _worked(call.hidden, lambda standing: advised(call, standing))
    return call.kept["diagnosis"]


def by_fixed_order(call):
    """Return how a call goes in the running order, until one cause has reached the bound."""
    if "fixed" not in call.kept:
        call.kept["fixed"] = _worked(call.hidden, _first_left)
    return call.kept["fixed"]


def advised(call, standing):
    """Return the check that the diagnosis would make next, or None where it names the leader."""
    of_standing = standing.call
    key = frozenset(of_standing.readings.items()), frozenset(of_standing.excluded)
    advice = call.kept.setdefault("advice", {})
    if (key, *of_standing.passed) not in advice:
        advice[(key, *of_standing.passed)] = advised_check(standing)
    return advice[(key, *of_standing.passed)]


def _first_left(standing):
    if standing.causes[standing.leader] >= FOUND:
        return None
    for check in standing.knowledge.checks:
        if is_open(standing, check) and not needs_not_met(standing, check):
            return check
    return None


def _worked(hidden, next_check):
    """Check after check until all causes are found; a repair in vain costs its minutes.

    Opening takes consent once, and making safe again after each check that needs the unit running,
    as it does for a learner. What was found is out of the question for the next cause.
    """
    knowledge, made = hidden.knowledge, Worked()
    made.steps, made.wrong, made.minutes, made.found = [], [], 0.0, False
    given = {
        "complaint": hidden.complaint,
        "home": {"control": hidden.control, "water": hidden.water},
        "readings": {},
        "excluded": [],
    }
    left = list(hidden.faults)
    asked = safe = False
    while made.minutes < GIVEN_UP:
        standing = Standing(knowledge, Call(knowledge, given))
        check = next_check(standing)
        if check is not None:
            of_check = knowledge.checks[check]
            waits = of_check.get("overlaps_minutes")
            made.minutes += of_check["minutes"] if waits is None else waits
            if of_check.get("opens"):
                made.minutes += (0.0 if asked else CONSENT) + (0.0 if safe else MAKING_SAFE)
                asked = True
            safe = bool(of_check.get("opens"))
            given["readings"][check] = hidden.reading(check, hidden.faults)["result"] or NOT_SURE
            made.steps.append(check)
            continue
        leader = standing.leader
        if not standing.causes[leader]:
            break
        given["excluded"].append(leader)
        if leader in left:
            left.remove(leader)
            if not left:
                made.found = True
                break
        else:
            made.wrong.append(leader)
            made.minutes += knowledge.faults[leader].get("minutes", 0.0)
            safe = False
    made.minutes = min(made.minutes, GIVEN_UP)
    return made
