"""The two doors of an exercise: the question for a seed, and the marking of its answers.

An exercise is plain data: "id", "kind", "title", "skill", "family" and what its kind needs. See the
module of each kind.
"""

from calculators.practice import evidence, number, order
from calculators.practice.drawing import CannotBePosed
from calculators.quantities import SYSTEMS

#: The module of each kind: its `pose`, `mark` and `solve`.
KINDS = {
    "number": number,
    "pair": number,
    "settings": number,
    "order": order,
    "evidence": evidence,
}
#: A longer seed than this is no seed.
LONGEST_SEED = 40


def pose(exercise, seed, units="us", library=None):
    """Return the question of an exercise for a seed, as plain data without its answer.

    seed: any short text. units: "us" or "metric". library: what the kind needs from the handbook,
    as plain data. Returns "id", "kind", "title", "seed", "story", "given" (rows of "label" and
    "shown") and "asked" (fields with "name", "label", "help" and "choices"); some kinds add to it.
    """
    _check(seed, units)
    question = KINDS[exercise["kind"]].pose(exercise, str(seed), units, library)
    named = {name: exercise[name] for name in ("id", "kind", "title")}
    return {**named, "seed": str(seed), **question}


def mark(exercise, seed, units, answers, library=None):
    """Return how the answers to a question are, by working it out again from its seed.

    answers: the text of each field by its name. Returns "right", "score" (0 to 1), "critical"
    (whether a rule of safety was broken), "fields" (by name: "right" and "feedback"), "feedback"
    (sentences), "mistakes" (those recognized), "problems" (by name: a sentence for an answer that
    cannot be marked; then nothing counts yet), "ask" (further fields that would help to find the
    slip), and "answers" and "solution" as `solve` returns them (empty while there are problems).
    """
    _check(seed, units)
    given = answers if isinstance(answers, dict) else {}
    return KINDS[exercise["kind"]].mark(exercise, str(seed), units, given, library)


def solve(exercise, seed, units="us", library=None):
    """Return the answers to a question, as rows of "label" and "shown", and its "solution".

    A solution is a list of parts, each with "title", the name of a "calculator", "inputs" and
    "values" (rows), "workings" (as `calculators.run` returns them), "ordered" (steps in order) and
    "sentences"; what it has not is empty.
    """
    _check(seed, units)
    return KINDS[exercise["kind"]].solve(exercise, str(seed), units, library)


def _check(seed, units):
    if units not in SYSTEMS:
        raise ValueError(f"There is no unit system {units!r}.")
    if len(str(seed)) > LONGEST_SEED:
        raise ValueError(f"A seed has at most {LONGEST_SEED} letters.")


def asked(request, library=None):
    """Return what a page's request asks for: a question, or with "answers" how they are.

    request: "exercise", "seed", "units" and perhaps "answers". Where no question can be posed,
    "problem" says so in a sentence.
    """
    exercise, seed, units = request["exercise"], request["seed"], request["units"]
    try:
        if "answers" in request:
            return mark(exercise, seed, units, request["answers"], library)
        return pose(exercise, seed, units, library)
    except CannotBePosed:
        return {"problem": "No clear question comes of this number. Take another one."}
