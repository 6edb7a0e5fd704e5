"""The whole answer to a call as plain data: what a page shows after every tap."""

from calculators.diagnosis.call import Call
from calculators.diagnosis.explanation import explain, splits
from calculators.diagnosis.next_check import (
    OPENING,
    choose,
    evidence_at_stake,
    is_open,
    minutes_of,
    needs_not_met,
    options,
)
from calculators.diagnosis.standing import Standing
from calculators.diagnosis.stopping import repair_and_see, stop
from calculators.diagnosis.weighing import companions, evidence_for, surprise, unexplained
from calculators.diagnosis.words import chance_in_words, weight_in_words

#: Causes and checks further down are left out.
CAUSES_TOLD, CHECKS_TOLD = 8, 5


def picture(knowledge, given):
    """Return the ranking, the next checks, the reasons and whether to stop, as plain data.

    given: as `Call` takes it, and "dangers": a list of what was found that ends the work.
    """
    call = Call(knowledge, given)
    standing = Standing(knowledge, call)
    found = options(standing)
    option = choose(standing, found)
    stopped = stop(standing, option, given.get("dangers") or ())
    tried = (
        None
        if stopped and stopped["why"] in ("found", "danger")
        else repair_and_see(standing, option)
    )
    return {
        "causes": [_cause(standing, fault) for fault in standing.ranking[:CAUSES_TOLD]],
        "unknown": {
            "chance": _rounded(standing.unknown),
            "words": chance_in_words(standing.unknown),
        },
        "next": _next(standing, option) if option and not _is_danger(stopped) else None,
        "checks": [_next(standing, one) for one in found[:CHECKS_TOLD]],
        "locked": _locked(standing),
        "waiting": _waiting(standing),
        "repair_and_see": tried,
        "stop": stopped,
        "surprise": _surprise(standing),
        "reasons": _reasons(standing),
        "explanation": explain(standing, found, option, stopped, tried),
        "problems": call.problems,
    }


def _cause(standing, fault):
    chance, before = standing.causes[fault], standing.prior(fault)
    return {
        "fault": fault,
        "chance": _rounded(chance),
        "words": chance_in_words(chance),
        "before": chance_in_words(before),
        "with": [second for share, second in companions(standing, fault) if share > 0.5],
    }


def _next(standing, option):
    check = standing.knowledge.checks[option.first]
    pair = splits(standing, option.check)
    return {
        "check": option.first,
        "for": option.check,
        "minutes": _rounded(minutes_of(check)),
        "bits": _rounded(option.bits),
        "bits_per_minute": _rounded(option.rate),
        "consent": bool(check.get("opens")),
        "opening_minutes": OPENING if check.get("opens") else 0,
        "tells_apart": list(pair) if pair else [],
    }


def _locked(standing):
    """Return {check: the checks to make first, whose evidence it would destroy}."""
    return {
        check: stake
        for check in standing.knowledge.checks
        if is_open(standing, check) and (stake := evidence_at_stake(standing, check))
    }


def _waiting(standing):
    """Return {check: the findings it needs first}, of checks not made yet."""
    return {
        check: [{"check": needed, "results": results} for needed, results in missing]
        for check in standing.knowledge.checks
        if not standing.call.is_answered(check) and (missing := needs_not_met(standing, check))
    }


def _surprise(standing):
    found, bound = surprise(standing, standing.leader)
    return {
        "does_not_fit": found > bound,
        "unexplained": unexplained(standing, standing.leader),
    }


def _reasons(standing):
    """Return what each reading says for the leader, the loudest for it first."""
    return [
        {
            "check": check,
            "weight": round(weight, 1),
            "words": weight_in_words(weight),
            "for": weight > 0,
        }
        for weight, check in evidence_for(standing, standing.leader)
    ]


def _is_danger(stopped):
    return stopped is not None and stopped["why"] == "danger"


def _rounded(number):
    return round(number, 4)
