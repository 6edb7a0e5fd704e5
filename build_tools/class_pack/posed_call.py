"""A practice call for paper: what the learner is told, and all that whoever plays the home knows."""

from __future__ import annotations

from typing import Any

from calculators.diagnosis import Knowledge
from calculators.diagnosis.knowledge import COMPLAINT
from calculators.practice.debrief import debrief
from calculators.practice.pictured import label_of
from calculators.practice.practice_call import PracticeCall
from calculators.practice.shown import line_in

Data = dict[str, Any]

#: A call that ends at once, so that its debrief tells what it was.
ENDED = [{"do": "give-up"}]


class PosedCall:
    """A call by its code.

    home, words, complaint: what the learner begins with; readings: of each check that can be made,
    its title, minutes, lines and result; debrief: the faults, what closes the call, and what the
    diagnosis did. Raises CodeProblem for a text that is no code.
    """

    def __init__(self, knowledge: Knowledge, code: str, units: str) -> None:
        call = PracticeCall(knowledge, code)
        picture = call.play([]).picture(units)
        self.code: str = picture["code"]
        self.home: Data = picture["home"]
        self.words: list[str] = picture["words"]
        self.complaint: str = picture["complaint"]
        self.debrief: Data = debrief(call, ENDED, units)
        self.readings = [
            _reading(call, check, units)
            for check in knowledge.checks
            if check != COMPLAINT and call.play([]).state_of(check)[0] != "impossible"
        ]


def _reading(call: PracticeCall, check: str, units: str) -> Data:
    hidden, knowledge = call.hidden, call.knowledge
    found = hidden.reading(check, hidden.faults)
    danger = hidden.danger
    return {
        "title": knowledge.checks[check]["title"],
        "minutes": knowledge.checks[check]["minutes"],
        "lines": [line_in(units, line) for line in found["lines"]],
        "result": label_of(knowledge, check, found["result"]),
        "danger": danger[1] if danger and danger[0] == check else "",
    }
