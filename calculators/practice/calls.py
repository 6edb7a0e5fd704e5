"""The practice calls of a handbook: new codes, and the call in hand kept for its next move."""

from random import Random

from calculators.practice.call_code import (
    NUMBERS,
    CallCode,
    CodeProblem,
    edition_of,
    groups_of,
)
from calculators.practice.debrief import debrief, replay
from calculators.practice.hidden_call import drawn_faults
from calculators.practice.practice_call import PracticeCall

#: Codes looked at for one of a wanted fault.
TRIES = 3000
NO_SUCH = "This handbook has no practice call of that kind."


class Calls:
    """All calls of one handbook's knowledge; the last one is kept, as drawing it takes longest."""

    def __init__(self, knowledge):
        self._knowledge = knowledge
        self._edition = edition_of(knowledge)
        self._kept = {}

    def new(self, family, fault, seed):
        """Return {"code", "problem"}: a code drawn on a seed, any text.

        family: a group of faults, or "" for all; fault: the one that shall be hidden, first where
        there are two, or "" for any.
        """
        groups = groups_of(self._knowledge)
        scope = groups.index(family) + 1 if family in groups else 0
        random = Random(f"new practice call {seed}")
        if family and not scope or fault and fault not in self._knowledge.faults:
            return {"code": "", "problem": NO_SUCH}
        for _ in range(TRIES):
            code = CallCode(scope, random.randrange(NUMBERS), self._edition)
            if not fault or self._drawn(code) == fault:
                return {"code": code.text, "problem": ""}
        return {"code": "", "problem": NO_SUCH}

    def answer(self, text, moves, units):
        """Return the picture of a call, or {"problem": …} for a text that is no code."""
        try:
            return self._call(text).play(moves).picture(units)
        except CodeProblem as problem:
            return {"problem": problem.sentence}

    def debrief(self, text, moves, units, jargon):
        """Return the debrief of a finished call, or {"problem": …}."""
        try:
            return debrief(self._call(text), moves, units, jargon)
        except CodeProblem as problem:
            return {"problem": problem.sentence}

    def replay(self, text, moves, units):
        """Return the replay of a finished call, or {"problem": …}."""
        try:
            return replay(self._call(text), moves, units)
        except CodeProblem as problem:
            return {"problem": problem.sentence}

    def _drawn(self, code):
        """Return the first fault that a code's first drawing hides; the home may draw another."""
        faults = drawn_faults(self._knowledge, code, Random(f"{code.seed} 0"))
        return faults[0] if faults else None

    def _call(self, text):
        if text not in self._kept:
            call = PracticeCall(self._knowledge, text)
            self._kept.clear()
            self._kept[text] = call
        return self._kept[text]
