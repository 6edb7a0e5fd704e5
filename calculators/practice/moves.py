"""A learner's moves as they come from a page or a file: read one by one, what is wrong told."""

from calculators.diagnosis.knowledge import COMPLAINT

#: Longest text to a customer, most moves of a call, most parts of a repair.
LONGEST_TEXT, MOST_MOVES, MOST_PARTS = 2000, 400, 20
#: Moves that take nothing more.
PLAIN = ("wait", "consent", "make-safe", "stop", "give-up")


class MoveProblem(Exception):
    """A move that is none; its text is a sentence for the learner."""


def read_moves(moves, knowledge):
    """Return the moves that can be read, and a sentence for each that cannot.

    moves: a list of {"do": …}: "check" and "prove" with "check"; "look-up" with "page"; "name" with
    "cause", "confidence" in per cent, and "second" where two are named; "remedy" with the fault
    whose "remedy" it is and "parts"; "tell" with "text"; and those of PLAIN.
    """
    if not isinstance(moves, list):
        return [], ["The moves of this call could not be read, so it begins anew."]
    taken, problems = [], []
    if len(moves) > MOST_MOVES:
        problems.append(f"A call has at most {MOST_MOVES} moves: those after them are left out.")
    for move in moves[:MOST_MOVES]:
        try:
            taken.append(_read(move, knowledge))
        except MoveProblem as problem:
            problems.append(str(problem))
    return taken, problems


def _read(move, knowledge):
    kind = move.get("do") if isinstance(move, dict) else None
    if not isinstance(kind, str) or kind not in (*PLAIN, *_READERS):
        raise MoveProblem("A move of this call is not known in this handbook, and is left out.")
    read = {"do": kind}
    if kind in _READERS:
        read.update(_READERS[kind](move, knowledge))
    return read


def _check(move, knowledge):
    check = move.get("check")
    if not check:
        raise MoveProblem("Choose a check of the list first.")
    if not isinstance(check, str) or check not in knowledge.checks or check == COMPLAINT:
        raise MoveProblem("There is no such check in this handbook. Choose one of the list.")
    return {"check": check}


def _fault(name, knowledge):
    if not name:
        raise MoveProblem("Choose one of the list first.")
    if not isinstance(name, str) or name not in knowledge.faults:
        raise MoveProblem("There is no such fault in this handbook. Choose one of the list.")
    return name


def _name(move, knowledge):
    causes = [_fault(move.get("cause"), knowledge)]
    if move.get("second") and move["second"] != move["cause"]:
        causes.append(_fault(move["second"], knowledge))
    sure = move.get("confidence")
    if isinstance(sure, bool) or not isinstance(sure, int | float) or not 0 <= sure <= 100:
        raise MoveProblem("Say how sure you are as a number from 0 to 100.")
    return {"causes": causes, "confidence": float(sure)}


def _remedy(move, knowledge):
    known = {part for fault in knowledge.faults.values() for part in fault.get("parts") or []}
    parts = move.get("parts") or []
    if not isinstance(parts, list) or len(parts) > MOST_PARTS:
        raise MoveProblem("The parts of this repair could not be read. Choose them from the list.")
    for part in parts:
        if not isinstance(part, str) or part not in known:
            raise MoveProblem("There is no such part in this handbook. Choose one of the list.")
    return {"remedy": _fault(move.get("remedy"), knowledge), "parts": sorted(set(parts))}


def _tell(move, knowledge):
    text = move.get("text")
    if not isinstance(text, str) or not text.strip():
        raise MoveProblem("Write what you tell the customer, in a sentence or two.")
    return {"text": text.strip()[:LONGEST_TEXT]}


def _look_up(move, knowledge):
    page = move.get("page")
    if not isinstance(page, str):
        raise MoveProblem("The page that was looked up could not be read.")
    return {"page": page[:200]}


_READERS = {
    "check": _check, "prove": _check, "name": _name, "remedy": _remedy, "tell": _tell,
    "look-up": _look_up,
}  # fmt: skip
