"""When an item comes back, and what to do today.

Every item stands in a box; the box tells after how many days it comes back. The rules are common
practice of spaced repetition, and the numbers are the handbook's own choice.
"""

from math import log
from random import Random

from calculators.practice.record import day_number

#: Days after which an item of each box comes back.
INTERVALS = (1, 3, 7, 16, 35, 90)
DROP = 2  # boxes down after a wrong answer
NEW, OLD = 2, 6  # items of a session
LONGEST_DUE = 3.0  # intervals: an item that waits for longer gains no more weight
HALF_FRESH = 7.0  # days after which an item is half as fresh as one that was never met
USUAL_SHARE = 0.02  # of calls, for an item that belongs to no fault


class Standing:
    """Where one item stands.

    box: place in INTERVALS. due: number of the day on which it comes back. first, last: numbers of
    the days of its first and last answer. answers, wrong: how many. unsafe: its last answer was
    one that hurts people, and no right one followed.
    """

    __slots__ = ("box", "due", "first", "last", "answers", "wrong", "unsafe")

    def __init__(self, day):
        self.box, self.due = 0, day
        self.first = self.last = day
        self.answers = self.wrong = 0
        self.unsafe = False

    def answer(self, attempt, day):
        """Take in one answer.

        Right and sure moves the item a box up, right but unsure leaves it, wrong drops it, and what
        hurts people puts it in the first box. A right answer before the item is due changes
        nothing, so that nobody learns ahead of the days.
        """
        self.answers += 1
        self.last = max(self.last, day)
        good = attempt["right"] and not attempt["critical"]
        self.wrong += not good
        if attempt["critical"]:
            self.box, self.unsafe = 0, True
        elif not attempt["right"]:
            self.box = max(self.box - DROP, 0)
        else:
            self.unsafe = False
            if day < self.due:
                return
            if attempt["sure"]:
                self.box = min(self.box + 1, len(INTERVALS) - 1)
        self.due = day + INTERVALS[self.box]

    @property
    def error_rate(self):
        """The share of wrong answers that is likely, after few answers near one half."""
        return (self.wrong + 1) / (self.answers + 2)


def standings(record, last=None):
    """Return where each item of a record stands, by its name.

    last: the number of a day; what lies after it is left out, as a clock that was ahead for a while
    must not hold items back until then.
    """
    found = {}
    for attempt in sorted(record["attempts"], key=lambda one: one["at"]):
        day = day_number(attempt["day"])
        if last is not None and day > last:
            continue
        if attempt["item"] not in found:
            found[attempt["item"]] = Standing(day)
        found[attempt["item"]].answer(attempt, day)
    return found


def weight(standing, share, day):
    """Return how much speaks for an item on a day: 0 while it is not due.

    share: of calls, of the item's fault, from 0 to 1; 0 where it has none. The weight grows with
    the time that the item is due, with the root of the share, with its errors, and with the days
    since it was last met.
    """
    if day < standing.due:
        return 0.0
    since = max(day - standing.last, 1)  # a clock that was set back counts as a day
    due = min(max(since / INTERVALS[standing.box], 1.0), LONGEST_DUE)
    fresh = since / (since + HALF_FRESH)
    return due * _root(share) * standing.error_rate * fresh


def next_items(record, items, today, seed):
    """Return what to do on a day: at most two new items and six that are due, families mixed.

    items: a list of dicts with `id`, `family` and `share`, the share of calls of the item's fault
    (0 for none). What was done today counts, so that a session ends. The same seed chooses the
    same. An item whose last answer would have hurt people comes before all others.

    Returns `items` (each `id`, `new`, `unsafe`, `over`: days over its due day), `waiting` (how many
    more are due), `unmet` (how many more are new), `done` (items answered today) and `next` (days
    until the next item is due, None where none waits).
    """
    day = day_number(today)
    known = standings(record, day)
    new, due, coming = [], [], []
    done_new = done_old = 0
    for item in items:
        standing = known.get(item["id"])
        if standing is None:
            new.append((_lot(seed, item["id"], _root(item["share"])), item))
            continue
        if standing.last == day:
            done_new += standing.first == day
            done_old += standing.first < day
        heavy = weight(standing, item["share"], day)
        if heavy:
            lot = _lot(seed, item["id"], heavy)
            due.append(((not standing.unsafe, lot), item))
        else:
            coming.append(standing.due - day)
    chosen_new = _first(new, NEW - done_new)
    chosen_due = _first(due, OLD - done_old)
    unsafe = [item for item in chosen_due if known[item["id"]].unsafe]
    others = [item for item in chosen_due if not known[item["id"]].unsafe]
    ordered = interleaved(unsafe) + interleaved(others + chosen_new, after=unsafe)
    return {
        "items": [_shown(item, known.get(item["id"]), day) for item in ordered],
        "waiting": len(due) - len(chosen_due),
        "unmet": len(new) - len(chosen_new),
        "done": done_new + done_old,
        "next": min(coming, default=None),
    }


def interleaved(items, after=()):
    """Return items in an order in which the same family follows itself as seldom as can be.

    after: items that come before them.
    """
    left = list(items)
    ordered = []
    last = after[-1]["family"] if after else None
    while left:
        counts = {}
        for item in left:
            counts[item["family"]] = counts.get(item["family"], 0) + 1
        # The family with most items left has the most to lose by waiting.
        best = max(left, key=lambda item: (item["family"] != last, counts[item["family"]]))
        left.remove(best)
        ordered.append(best)
        last = best["family"]
    return ordered


def _root(share):
    return (share if share > 0 else USUAL_SHARE) ** 0.5


def _lot(seed, name, heavy):
    """Return an item's lot: the smallest ones win, a heavy item's more often."""
    chance = Random(f"{seed} {name}").random()
    return -log(1.0 - chance) / heavy


def _first(lots, most):
    return [item for _, item in sorted(lots, key=lambda one: one[0])[: max(most, 0)]]


def _shown(item, standing, day):
    return {
        "id": item["id"],
        "new": standing is None,
        "unsafe": standing is not None and standing.unsafe,
        "over": 0 if standing is None else day - standing.due,
    }
