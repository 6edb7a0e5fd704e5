"""A practice call: a simulated home with a hidden fault, worked through by a learner's moves.

What a call shows is a pure function of its code and the moves: the same on every device, and again
after the page is loaded anew.
"""

from calculators.diagnosis.knowledge import COMPLAINT
from calculators.diagnosis.next_check import OPENING, in_first_look
from calculators.practice.call_code import read_code
from calculators.practice.hidden_call import HiddenCall
from calculators.practice.moves import read_moves
from calculators.practice.pictured import pictured

#: Minutes of consent, of making safe, and of ending the work for a danger; the first two together
#: are what the diagnosis reckons for opening something (common practice, no source).
CONSENT = 1.0
MAKING_SAFE = OPENING - CONSENT
STOPPING = 5.0
OVER = "The call is over. Begin a new one, or read what it was."


class PracticeCall:
    """The call of one code; `hidden` is what a learner has to find out.

    Raises CodeProblem for a text that is no code of this handbook.
    """

    def __init__(self, knowledge, text):
        self.knowledge = knowledge
        self.code = read_code(text, knowledge)
        self.hidden = HiddenCall(knowledge, self.code)
        self.kept = {}  # what others made of the call, kept because it takes long

    def play(self, moves):
        """Return the `Played` call after these moves, which may be anything."""
        played = Played(self)
        taken, problems = read_moves(moves, self.knowledge)
        played.problems += problems
        for move in taken:
            played.take(move)
        return played


class Played:
    """A call after some moves.

    readings: {check: reading}, in the order of checking; minutes: on the clock; log: what happened,
    each {"at", "what", …}; faults: those still at work; problems: sentences on moves that could not
    be made.
    """

    def __init__(self, call):
        self.of, self.knowledge, self.hidden = call, call.knowledge, call.hidden
        self.home = {"control": self.hidden.control, "water": self.hidden.water}
        self.faults = list(self.hidden.faults)
        self.minutes = 0.0
        self.readings, self.log, self.problems = {}, [], []
        self.consent = self.safe = self.over = False
        self.stopped = False
        self.told = ""

    # What a learner does

    def take(self, move):
        """Let a move happen; one that cannot be made leaves a sentence and changes nothing."""
        problem = OVER if self.over else getattr(self, "_" + move["do"].replace("-", "_"))(move)
        if problem:
            self.problems.append(problem)

    def _check(self, move):
        check = move["check"]
        state, why = self.state_of(check)
        if state != "open":
            return why
        erased = self.knowledge.checks[check].get("erases") or []
        destroyed = [
            one for one in erased if self.is_open(one) and _spoils(self.knowledge, check, one)
        ]
        reading = self._read(check)
        spent = self._spend(check, reading)
        self.readings[check] = reading
        self._note("check", check=check, destroyed=destroyed, **spent)
        return ""

    def _wait(self, move):
        ready = [one["ready"] for one in self.readings.values() if one["ready"] > self.minutes]
        ready += [
            one["reading"]["ready"]
            for one in self.proofs
            if one["reading"]["ready"] > self.minutes
        ]
        if not ready:
            return "There is nothing to wait for."
        waited = min(ready) - self.minutes
        self.minutes = min(ready)
        self._note("wait", minutes=waited)
        return ""

    def _consent(self, move):
        if self.consent:
            return "The customer has agreed already."
        self.consent = True
        self.minutes += CONSENT
        self._note("consent", minutes=CONSENT)
        return ""

    def _make_safe(self, move):
        if self.safe:
            return "The unit is safe already."
        self.safe = True
        self.minutes += MAKING_SAFE
        self._note("make-safe", minutes=MAKING_SAFE)
        return ""

    def _stop(self, move):
        self.minutes += STOPPING
        right = self.danger_seen and not self.stopped
        self.stopped = self.stopped or right
        self._note("stop", minutes=STOPPING, right=right)
        return ""

    def _look_up(self, move):
        self._note("look-up", page=move["page"], minutes=0.0)
        return ""

    def _name(self, move):
        self._note("name", causes=move["causes"], confidence=move["confidence"], minutes=0.0)
        return ""

    def _remedy(self, move):
        if not self.named:
            return "Name a cause before you repair."
        fault = move["remedy"]
        of_fault = self.knowledge.faults[fault]
        minutes = of_fault.get("minutes", 0.0)
        self.minutes += minutes
        opens = bool(of_fault.get("repair_opens"))
        right = fault in self.faults
        self._note(
            "remedy", remedy=fault, parts=move["parts"], minutes=minutes, right=right,
            missed=self._missed(opens),
        )  # fmt: skip
        if right:
            self.faults.remove(fault)
        self.safe = False
        return ""

    def _prove(self, move):
        if not self.remedies:
            return "A closing test comes after the repair."
        check = move["check"]
        if not self.knowledge.applies(check, self.home) or check == COMPLAINT:
            return "This home has nothing that this test could show."
        reading = self._read(check)
        self._note("prove", check=check, reading=reading, **self._spend(check, reading))
        return ""

    def _tell(self, move):
        if not self.remedies:
            return "Repair first, and prove it; then tell the customer."
        self.told = move["text"]
        self._end("tell")
        return ""

    def _give_up(self, move):
        self._end("give-up")
        return ""

    # What follows

    def _spend(self, check, reading):
        """Let a check's minutes pass, and tell when its reading is ready: what waits, later.

        Returns what the log keeps of it: the minutes, and what went against safety.
        """
        of_check = self.knowledge.checks[check]
        waits = of_check.get("overlaps_minutes")
        minutes = of_check["minutes"] if waits is None else waits
        opens = bool(of_check.get("opens"))
        reading["ready"] = self.minutes + of_check["minutes"]
        missed = self._missed(opens)
        self.minutes += minutes
        if not opens:
            self.safe = False  # the unit goes back into service for it
        return {"minutes": minutes, "missed": missed}

    def _missed(self, opens):
        """Return what goes against safety: "pressure", "consent" or "danger", each once."""
        missed = ["pressure"] if opens and not self.safe else []
        if opens and not self.consent:
            missed.append("consent")
        if self.danger_seen and not self.stopped:
            missed.append("danger")
        return missed

    def _read(self, check):
        return dict(self.hidden.reading(check, self.faults))

    def _end(self, how):
        self.over = True
        self._note(how, minutes=0.0)

    def _note(self, what, **more):
        self.log.append({"what": what, "at": self.minutes, **more})

    # What stands now

    @property
    def named(self):
        """The namings, in order."""
        return [one for one in self.log if one["what"] == "name"]

    @property
    def remedies(self):
        """The repairs, in order."""
        return [one for one in self.log if one["what"] == "remedy"]

    @property
    def proofs(self):
        """The closing tests, in order."""
        return [one for one in self.log if one["what"] == "prove"]

    @property
    def danger_seen(self):
        """Whether the danger of this call, if it has one, was met."""
        return bool(self.hidden.danger) and self.hidden.danger[0] in self.readings

    def is_open(self, check):
        """Tell whether a check can be made at some time in this call."""
        return self.state_of(check)[0] in ("open", "needs")

    def state_of(self, check):
        """Return how a check stands, and a sentence where it cannot be made now.

        "open", "read", "waiting" for its result, "needs" another finding first, "impossible" here,
        or "spoiled": its evidence is gone.
        """
        checks = self.knowledge.checks
        if check == COMPLAINT or not self.knowledge.applies(check, self.home):
            return "impossible", "This home has nothing that this check could show."
        if check in self.readings:
            if self.readings[check]["ready"] > self.minutes:
                return "waiting", "It is on its way."
            return "read", "It was made already."
        spoilers = [one for one in self.readings if _spoils(self.knowledge, one, check)]
        if spoilers:
            return "spoiled", f"Its evidence is gone since “{checks[spoilers[0]]['title']}”."
        for need in checks[check].get("needs") or []:
            needed = need["check"]
            results = [need["result"]] if isinstance(need["result"], str) else need["result"]
            told = self._finding(needed, results)
            found = self.readings.get(needed)
            if found is None:
                return "needs", f"It needs this finding first: {told}."
            if found["ready"] > self.minutes:
                return "needs", f"It has to wait for this finding: {told}."
            if found["result"] not in results:
                return "impossible", f"It cannot be made here, as it needs this finding: {told}."
        return "open", ""

    def _finding(self, check, results):
        labels = {one["name"]: one["label"] for one in self.knowledge.checks[check]["results"]}
        told = " or ".join(labels[one] for one in results)
        return f"{self.knowledge.checks[check]['title']}, “{told}”"

    # The picture

    def picture(self, units="us"):
        """Return what the page shows, as plain data; nothing in it tells the fault."""
        return pictured(self, units)


def _spoils(knowledge, check, other):
    """Tell whether a check destroys what another would show.

    As the diagnosis has it: what a deeper check reads is kept for it while the first look goes on.
    """
    return other in (knowledge.checks[check].get("erases") or []) and (
        in_first_look(knowledge, other) or not in_first_look(knowledge, check)
    )
