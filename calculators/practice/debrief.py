"""What a finished practice call was: its score, what each reading was worth, and how others went."""

from calculators.diagnosis.call import NOT_SURE, Call
from calculators.diagnosis.standing import Standing
from calculators.diagnosis.weighing import evidence_for
from calculators.diagnosis.words import chance_in_words, weight_in_words
from calculators.practice.hidden_call import NO_FAULT
from calculators.practice.history import history
from calculators.practice.others import advised, by_diagnosis, by_fixed_order
from calculators.practice.pictured import label_of, seen
from calculators.practice.scoring import first_look_minutes, score, tells

GOES_ON = "The call goes on: its debrief comes at its end."
#: A reading that weighs less, as a logarithm to ten, says nothing.
LEAST_WEIGHT = 0.05
#: How the parts of a score are called.
PARTS = {
    "cause": "The right cause",
    "remedy": "The right repair",
    "closing test": "The closing test",
    "economy": "Few minutes for the evidence",
    "confidence": "How sure you said you were",
    "safety": "Safety and consent",
    "words": "Words to the customer",
}


def debrief(call, moves, units="us", jargon=()):
    """Return the debrief of a finished call as plain data; {"problem": …} for one that goes on.

    call: a PracticeCall; jargon: words that a customer does not know.
    """
    played = call.play(moves)
    if not played.over:
        return {"problem": GOES_ON}
    hidden, knowledge = call.hidden, call.knowledge
    diagnosis, fixed = by_diagnosis(call), by_fixed_order(call)
    best = max(diagnosis.minutes, first_look_minutes(knowledge))
    made = score(played, best, jargon)
    first = hidden.faults[0]
    return {
        "problem": "",
        "code": call.code.text,
        "faults": [_fault(hidden, fault) for fault in hidden.faults],
        "family": knowledge.faults[first]["group"],
        "brought": len(hidden.faults) == 2
        and hidden.faults[0] in (knowledge.faults[hidden.faults[1]].get("follows") or []),
        "score": made.total,
        "right": made.right,
        "sure": made.sure,
        "critical": made.critical,
        "parts": [
            {"part": PARTS[name], "points": round(points, 1), "most": most}
            for name, (points, most) in made.points.items()
        ],
        "taken": [{"sentence": sentence, "points": points} for sentence, points in made.taken],
        "words": made.words,
        "minutes": round(made.minutes, 1),
        "wrong": [
            knowledge.faults[one["remedy"]]["title"] for one in played.remedies if not one["right"]
        ],
        "diagnosis": _other(knowledge, diagnosis),
        "fixed": _other(knowledge, fixed),
        "danger": seen(hidden.danger[1]) if hidden.danger else "",
    }


def replay(call, moves, units="us"):
    """Return what each reading of a finished call was worth, and the home's days before the visit.

    {"problem", "steps", "history"}; it takes longer than the debrief, which can be shown before.
    """
    played = call.play(moves)
    if not played.over:
        return {"problem": GOES_ON}
    return {"problem": "", "steps": _steps(played), "history": history(call.hidden, units)}


def _fault(hidden, fault):
    knowledge = hidden.knowledge
    return {
        "fault": fault,
        "title": knowledge.faults[fault]["title"],
        "simulated": bool(knowledge.faults[fault].get("simulation")),
        "none": fault == NO_FAULT,
        "tests": [
            knowledge.checks[check]["title"]
            for check in knowledge.checks
            if tells(hidden, [fault], check)
        ],
        "parts": knowledge.faults[fault].get("parts") or [],
    }


def _other(knowledge, worked):
    return {
        "minutes": round(worked.minutes, 1),
        "steps": [knowledge.checks[check]["title"] for check in worked.steps],
        "wrong": [knowledge.faults[fault]["title"] for fault in worked.wrong],
        "found": worked.found,
    }


def _steps(played):
    """Return what each check before the first repair was worth, and what would have come next.

    A reading's weight is what it says for the fault that was there against all others.
    """
    hidden, knowledge = played.hidden, played.knowledge
    fault = hidden.faults[0]
    given = {
        "complaint": hidden.complaint,
        "home": played.home,
        "readings": {},
    }
    standing = Standing(knowledge, Call(knowledge, given))
    steps = []
    for one in played.log:
        if one["what"] == "remedy":
            break
        if one["what"] != "check":
            continue
        check = one["check"]
        better = advised(played.of, standing)
        result = hidden.reading(check, hidden.faults)["result"]
        given["readings"][check] = result or NOT_SURE
        standing = Standing(knowledge, Call(knowledge, given))
        weights = {name: tenfold for tenfold, name in evidence_for(standing, fault)}
        weight = weights.get(check, 0.0)
        steps.append(
            {
                "title": knowledge.checks[check]["title"],
                "label": label_of(knowledge, check, result),
                "minutes": round(one["minutes"], 2),
                "words": weight_in_words(weight) if abs(weight) >= LEAST_WEIGHT else "nothing",
                "for": weight > 0,
                "weight": round(weight, 1),
                "chance": chance_in_words(standing.causes[fault]),
                "leader": knowledge.faults[standing.leader]["title"],
                "better": knowledge.checks[better]["title"] if better else "",
                "same": better == check,
            }
        )
    return steps
