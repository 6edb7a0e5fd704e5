"""A call: what is known of the home, what the customer said, and the readings so far."""

from calculators.diagnosis.knowledge import COMPLAINT
from calculators.diagnosis.likelihoods import UNSURE

#: Answers that are no result: the check is passed over until it is answered otherwise.
NOT_DONE, NOT_SURE = "not done", "not sure"


class Call:
    """One visit as it stands now; its parts may be given in any order and changed at any time.

    given: {"complaint": …, "home": {"control": …, "water": …}, "readings": {check: answer},
    "excluded": [faults that a repair has shown not to be the cause, or that are repaired]}, each
    part optional. An answer is a result, "not done", "not sure", or {"result": …, "sure": false}
    for a result that was not seen well.

    `problems` names what the knowledge does not hold; it is left out, so that what a phone kept
    from an older handbook never stops a call.
    """

    def __init__(self, knowledge, given):
        self.home = dict(given.get("home") or {})
        self.readings = {}  # check -> (place of the result, chance of a misreading)
        self.passed = []
        self.problems = []
        self.excluded = set()
        for fault in given.get("excluded") or []:
            if fault in knowledge.faults:
                self.excluded.add(fault)
            else:
                self.problems.append(f'There is no fault "{fault}" in this handbook.')
        answers = dict(given.get("readings") or {})
        if given.get("complaint"):
            answers[COMPLAINT] = given["complaint"]
        for check in answers:
            if check not in knowledge.checks:
                self.problems.append(f'There is no check "{check}" in this handbook.')
        for check in knowledge.checks:  # in running order: the answer never tells who came first
            if answers.get(check) is not None:
                self._take(knowledge, check, answers[check])

    def is_answered(self, check):
        """Tell whether a check has a result or was passed over."""
        return check in self.readings or check in self.passed

    def _take(self, knowledge, check, answer):
        sure = True
        if isinstance(answer, dict):
            answer, sure = answer.get("result"), answer.get("sure", True)
        if answer in (NOT_DONE, NOT_SURE):
            self.passed.append(check)
        elif answer in knowledge.results[check]:
            wrong = knowledge.misreading(check) if sure else UNSURE
            self.readings[check] = (knowledge.results[check].index(answer), wrong)
        else:
            self.problems.append(f'The check "{check}" has no result "{answer}" in this handbook.')
