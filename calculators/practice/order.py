"""Exercises that put the steps of a procedure in order.

Beside its title and story the exercise has "items", a list of {"name", "text"} in the procedure's
own order, and "pairs", a list of {"first", "then", "why", "safety"}: what must come before what.
Every order that keeps all pairs is right.
"""

from calculators.practice.drawing import TRIES, random_for, shuffled
from calculators.practice.solution import part

#: The field that takes the order: the names of all items, as a list or in one text.
ORDER = "order"
#: A question is shuffled until no more than this share of its pairs is kept.
KEPT_AT_FIRST = 0.6


def items_shuffled(exercise, seed):
    """Return the items in the order in which the question shows them."""
    random = random_for(exercise, seed)
    best = None
    for _ in range(TRIES):
        items = shuffled(random, exercise["items"])
        kept = _share_kept(exercise, [one["name"] for one in items])
        if best is None or kept < best[0]:
            best = kept, items
        if kept <= KEPT_AT_FIRST:
            break
    return best[1]


def pose(exercise, seed, units, library=None):
    """Return the question for a seed; its "items" stand in the order that is to be mended."""
    return {
        "story": exercise["story"],
        "given": [],
        "items": items_shuffled(exercise, seed),
        "asked": [{"name": ORDER, "label": "Your order", "help": "", "choices": []}],
    }


def mark(exercise, seed, units, given, library=None):
    """Return how an order is: its score is the share of pairs kept, none with a danger in it."""
    order, problem = _read(exercise, given.get(ORDER))
    if problem:
        return {
            "problems": {ORDER: problem},
            "fields": {},
            "mistakes": [],
            "feedback": [],
            "ask": [],
            "right": False,
            "score": 0.0,
            "critical": False,
            "answers": [],
            "solution": [],
        }
    broken = _broken(exercise, order)
    critical = any(pair["safety"] for pair in broken)
    feedback = [_said(exercise, pair) for pair in broken]
    return {
        "problems": {},
        "fields": {
            ORDER: {
                "right": not broken,
                "feedback": "Right: every step stands where it can." if not broken else feedback[0],
                "wrong": sorted(
                    {name for pair in broken for name in (pair["first"], pair["then"])}
                ),
            }
        },
        "mistakes": [],
        "feedback": feedback,
        "ask": [],
        "right": not broken,
        "score": 0.0 if critical else _share_kept(exercise, order),
        "critical": critical,
        **solve(exercise, seed, units),
    }


def solve(exercise, seed, units, library=None):
    """Return one right order, that of the procedure, and why it is so; see `exercises.solve`."""
    why = [
        f"Safety: {pair['why']}" if pair["safety"] else pair["why"] for pair in exercise["pairs"]
    ]
    solution = [
        part("One right order", ordered=[one["text"] for one in exercise["items"]]),
        part("Why", sentences=why),
    ]
    return {"answers": [], "solution": solution}


def _read(exercise, answer):
    """Return the order that was given, and a sentence where it is none."""
    names = [one["name"] for one in exercise["items"]]
    order = answer.split() if isinstance(answer, str) else answer
    if not isinstance(order, list) or not all(isinstance(one, str) for one in order):
        return None, "Put the steps in an order first."
    if sorted(order) != sorted(names):
        return None, f"An order has each of the {len(names)} steps once. Begin again from the list."
    return order, None


def _broken(exercise, order):
    """Return the pairs that an order has the other way round, those of safety first."""
    place = {name: at for at, name in enumerate(order)}
    found = [pair for pair in exercise["pairs"] if place[pair["first"]] > place[pair["then"]]]
    return sorted(found, key=lambda pair: not pair["safety"])


def _share_kept(exercise, order):
    return 1 - len(_broken(exercise, order)) / len(exercise["pairs"])


def _said(exercise, pair):
    text = {one["name"]: one["text"].rstrip(".") for one in exercise["items"]}
    said = f"“{text[pair['first']]}” comes before “{text[pair['then']]}”. {pair['why']}"
    return f"This can hurt somebody: {said}" if pair["safety"] else said
