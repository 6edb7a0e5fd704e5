"""What a learner sees of a practice call, as plain data; nothing in it tells the hidden fault."""

from calculators.diagnosis.knowledge import COMPLAINT
from calculators.practice.shown import line_in

CANNOT_TELL = "Too close to a line to tell."
#: The first sentence of a danger is what is seen; the others say what to do about it.
_SENTENCE = ". "


def pictured(played, units):
    """Return the picture of a played call for a reader of "us" or "metric" units."""
    hidden, knowledge = played.hidden, played.knowledge
    return {
        "problem": "",
        "problems": played.problems,
        "code": played.of.code.text,
        "minutes": round(played.minutes, 2),
        "over": played.over,
        "home": _home(hidden, units),
        "complaint": label_of(knowledge, COMPLAINT, hidden.complaint),
        "words": hidden.words,
        "checks": [_check(played, check) for check in knowledge.checks if check != COMPLAINT],
        "readings": [
            reading_of(played, check, one, units) for check, one in played.readings.items()
        ],
        "waiting": any(
            one["ready"] > played.minutes
            for one in (*played.readings.values(), *(one["reading"] for one in played.proofs))
        ),
        "consent": played.consent,
        "safe": played.safe,
        "danger": _danger(played),
        "sprayed": any("pressure" in one.get("missed", ()) for one in played.log),
        "named": [
            {"causes": one["causes"], "confidence": one["confidence"]} for one in played.named
        ],
        "remedies": [
            {"remedy": one["remedy"], "parts": one["parts"], "at": round(one["at"], 2)}
            for one in played.remedies
        ],
        "proofs": [reading_of(played, one["check"], one["reading"], units) for one in played.proofs],
        "told": played.told,
        "next": _next(played),
    }


def label_of(knowledge, check, result):
    """Return the words for a result of a check."""
    if result is None:
        return CANNOT_TELL
    found = {one["name"]: one["label"] for one in knowledge.checks[check]["results"]}
    return found[result]


def reading_of(played, check, one, units):
    """Return a reading as it is shown; one that is not ready shows nothing yet."""
    ready = one["ready"] <= played.minutes
    danger = played.hidden.danger
    met = danger and danger[0] == check and check in played.readings
    return {
        "check": check,
        "title": played.knowledge.checks[check]["title"],
        "at": round(one["ready"], 2),
        "ready": ready,
        "lines": [line_in(units, line) for line in one["lines"]] if ready else [],
        "result": one["result"] if ready else None,
        "label": label_of(played.knowledge, check, one["result"]) if ready else "",
        "danger": seen(danger[1]) if met else "",
    }


def seen(danger):
    """Return the sentence of a danger that tells what is seen.

    >>> seen("The line ends inside a waste pipe. The gap comes first.")
    'The line ends inside a waste pipe.'
    """
    first, more, _ = danger.partition(_SENTENCE)
    return f"{first}." if more else danger


def _home(hidden, units):
    home = hidden.story.home
    lines = [
        ("Planned for people", str(home.people)),
        ("Resin", home.resin, "ft³"),
        ("Hardness that is set", home.plan.setting, "gpg"),
    ]
    return {
        "control": hidden.control,
        "water": hidden.water,
        "lines": [line_in(units, line) for line in lines],
    }


def _check(played, check):
    of_check = played.knowledge.checks[check]
    state, why = played.state_of(check)
    waits = of_check.get("overlaps_minutes")
    return {
        "check": check,
        "state": state,
        "why": why,
        "minutes": of_check["minutes"] if waits is None else waits,
        "ready_after": of_check["minutes"],
        "opens": bool(of_check.get("opens")),
    }


def _danger(played):
    """Return what was seen that must stop the work, and whether the learner did."""
    if not played.danger_seen:
        return None
    return {"seen": seen(played.hidden.danger[1]), "stopped": played.stopped}


def _next(played):
    """Return what is asked for next."""
    if played.over:
        return "over"
    if not played.named:
        return "search"
    if not played.remedies:
        return "repair"
    return "prove" if not played.proofs else "tell"
