"""The code of a practice call: a few letters and digits that bring the same call back anywhere."""

from zlib import crc32

#: Letters and digits that are not taken for another: no 0, 1, I, L or O. A prime number of them, so
#: that one wrong character, or two that changed places, never give another code.
ALPHABET = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
#: Places of a code: whose faults are drawn, the number of the draw, the edition, and the check.
_SCOPE, _NUMBER, _EDITION = 1, 3, 3
LENGTH = _SCOPE + _NUMBER + _EDITION + 1
#: How many calls there are of each scope.
NUMBERS = len(ALPHABET) ** _NUMBER
#: To be raised when the same code would draw another call although the handbook is the same.
DRAWN_BY = 1


class CodeProblem(Exception):
    """A text is no code, or no code of this handbook; `sentence` says so."""

    def __init__(self, sentence):
        super().__init__(sentence)
        self.sentence = sentence


class CallCode:
    """scope: the place of a group of faults among the handbook's groups, from 1, or 0 for all of
    them; number: of the draw, from 0 up to NUMBERS; edition: as `edition_of` returns it."""

    __slots__ = ("scope", "number", "edition")

    def __init__(self, scope, number, edition):
        self.scope, self.number, self.edition = scope, number, edition

    @property
    def text(self):
        """The code as it is shown and typed."""
        signs = _signs(self.scope, _SCOPE) + _signs(self.number, _NUMBER)
        signs += _signs(self.edition, _EDITION)
        code = signs + ALPHABET[_check(signs)]
        return f"{code[: LENGTH // 2]}-{code[LENGTH // 2 :]}"

    @property
    def seed(self):
        """What all that is drawn for the call is drawn on."""
        return f"practice call {DRAWN_BY} {self.scope} {self.number}"


def read_code(text, knowledge):
    """Return the code of a text, in any case, with spaces and hyphens or without.

    Raises CodeProblem for a text that is no code, and for a code of another edition.
    """
    signs = "".join(str(text).upper().split()).replace("-", "")
    strange = [one for one in signs if one not in ALPHABET]
    if strange:
        raise CodeProblem(
            f"No code has the character “{strange[0]}”. Codes leave out 0, 1, I, L and O."
        )
    if len(signs) != LENGTH:
        raise CodeProblem(f"A code has {LENGTH} letters and digits, and this has {len(signs)}.")
    if ALPHABET[_check(signs[:-1])] != signs[-1]:
        raise CodeProblem("This is no code: a character is wrong, or two have changed places.")
    scope, rest = _number(signs[:_SCOPE]), signs[_SCOPE:-1]
    number, edition = _number(rest[:_NUMBER]), _number(rest[_NUMBER:])
    if edition != edition_of(knowledge):
        raise CodeProblem(
            "This code belongs to another edition of the handbook, where it stands for another "
            "call. Take a code of this edition."
        )
    if scope > len(groups_of(knowledge)):
        raise CodeProblem("This code names a group of faults that this handbook does not have.")
    return CallCode(scope, number, edition)


def groups_of(knowledge):
    """Return the groups of faults, which are the families of calls, in the order of their names."""
    return sorted({fault["group"] for fault in knowledge.faults.values()})


def edition_of(knowledge):
    """Return a short digest of all that decides what a code draws and how it is scored.

    Texts are no part of it, so that a better word does not end a class's codes.
    """
    faults = [
        (name, [fault.get(key) for key in _OF_FAULT], len(fault.get("customer_says") or []))
        for name, fault in knowledge.faults.items()
    ]
    checks = [
        (
            name,
            [check.get(key) for key in _OF_CHECK],
            len(check.get("stop_if") or []),
            knowledge.results[name],
        )
        for name, check in knowledge.checks.items()
    ]
    text = repr((DRAWN_BY, faults, checks, knowledge.made_from))
    return crc32(text.encode()) % len(ALPHABET) ** _EDITION


_OF_FAULT = (
    "group", "share_of_calls", "minutes", "homes", "proved_by", "follows", "simulation",
    "likelihoods", "repair_opens",
)  # fmt: skip
_OF_CHECK = (
    "stage", "order", "minutes", "overlaps_minutes", "kind", "only_for", "needs", "erases",
    "opens",
)  # fmt: skip


def _signs(number, places):
    text = ""
    for _ in range(places):
        number, place = divmod(number, len(ALPHABET))
        text = ALPHABET[place] + text
    return text


def _number(signs):
    number = 0
    for sign in signs:
        number = number * len(ALPHABET) + ALPHABET.index(sign)
    return number


def _check(signs):
    return sum(place * ALPHABET.index(sign) for place, sign in enumerate(signs, 1)) % len(ALPHABET)
