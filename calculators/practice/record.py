"""A learner's record: what was answered and what was seen, as plain data with a version.

A record is a dict of `version`, `name`, `attempts` and `observed`. Where every item stands in its
repetition and which skills are signed off is not in it: that is worked out from the attempts and
observations, so that two records can be merged without losing or counting anything twice.

An attempt is a dict:

- `at`: the moment, in world time, such as "2026-11-26T14:30:05.123Z"; `day`: the learner's own day
- `item`, `family`, `skill`: names; `skill` is "" where only the family tells it, as with a call
- `right`, `sure`, `critical`: true or false; critical: something was done that hurts people
- `score`: a share from 0 to 1
- `seed`, or `code` for a practice call: what draws the same one again

An observation is a dict of `skill`, `day`, `level` (0 to 4), `observer` and `system`.
"""

import re
from datetime import date

VERSION = 1
#: A record with more than this is no record of a person any more: 20 answers a day for two years.
MOST_ATTEMPTS = 15_000
MOST_OBSERVED = 2_000
#: Browsers keep about this many characters for a site.
MOST_CHARACTERS = 5_000_000
LONGEST_TEXT = 100
LEVELS = range(5)
_YEARS = range(2000, 2200)

_KEYS = ("version", "name", "attempts", "observed")
_MOMENT = re.compile(r"(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3])(:[0-5]\d){2}\.\d{3}Z", re.ASCII)
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
#: Control characters, halves of characters, and what turns the order of the letters after it.
_NOT_SHOWN = re.compile("[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
#: A text with its quotes; one that does not end takes the rest, so that reading stays quick.
_STRING = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+(?:"|\\?\Z)', re.DOTALL)
_INNERMOST = re.compile(r"[\[{][^\[\]{}]*[\]}]")
_DEEPEST = 3  # a record, its list, an attempt


class RecordProblem(ValueError):
    """A text or a record that cannot be taken; the message is a sentence for its owner."""


def new_record(name=""):
    """Return the record of a person who has not begun yet."""
    return {"version": VERSION, "name": name, "attempts": [], "observed": []}


def read_record(text):
    """Return the record that a text holds; the text may be anything.

    Raises RecordProblem with a sentence for a text that is no record, is damaged, is of a newer
    edition, or is larger than any record.
    """
    import json  # only who reads texts needs it

    if not isinstance(text, str) or not text.strip():
        raise RecordProblem("The file is empty.")
    if len(text) > MOST_CHARACTERS:
        raise RecordProblem(
            f"The file is too large for a record: it has {len(text):,} characters, and a record "
            f"has at most {MOST_CHARACTERS:,}."
        )
    text = text.removeprefix("\ufeff")
    _refuse_depth(text)
    try:
        data = json.loads(text, parse_constant=_no_number)
    except (ValueError, RecursionError):
        raise RecordProblem("The file is damaged, or it is no record: it cannot be read.") from None
    return checked(data)


def checked(data):
    """Return plain data as a record of its own, when it is one; what stands in it twice, once.

    Raises RecordProblem with a sentence about the first thing that is wrong.
    """
    if not isinstance(data, dict) or "version" not in data:
        raise RecordProblem("The file is no record: it does not say which version of one it is.")
    version = data["version"]
    if not _is_whole(version) or version < 1:
        raise RecordProblem("The file is no record: its version is no whole number.")
    if version > VERSION:
        raise RecordProblem(
            f"The file is of a newer edition of the handbook: it is version {_short(version)} of "
            f"the record, and this edition knows version {VERSION}. Open the newest edition first."
        )
    _expect_keys(data, _KEYS, "The file")
    name = _text(data["name"], "The name in the file", may_be_empty=True)
    attempts = _list(data["attempts"], "attempts", MOST_ATTEMPTS)
    observed = _list(data["observed"], "observed", MOST_OBSERVED)
    return {
        "version": VERSION,
        "name": name,
        "attempts": _union(
            [_attempt(one, f"Answer {at}") for at, one in enumerate(attempts, 1)], []
        ),
        "observed": _union(
            [_observation(one, f"Observation {at}") for at, one in enumerate(observed, 1)], []
        ),
    }


def merged(present, imported):
    """Return (record, how many attempts and observations are new in it).

    Neither record is changed. What both hold stands in the result once; attempts are in the order
    in which they were made. Merging is the same in either order, and the second time changes
    nothing.

    Raises RecordProblem where the records are of two people, or together hold too much.
    """
    ours, theirs = present["name"], imported["name"]
    if ours and theirs and ours.casefold() != theirs.casefold():
        raise RecordProblem(
            f"The file is the record of “{theirs}”, and the one here is of “{ours}”. Nothing was "
            "changed. If both are one person, write the same name here and load the file again."
        )
    attempts = _union(present["attempts"], imported["attempts"])
    observed = _union(present["observed"], imported["observed"])
    result = {
        "version": VERSION,
        "name": ours or theirs,
        "attempts": sorted(attempts, key=lambda one: (one["at"], identity(one))),
        "observed": sorted(observed, key=lambda one: (one["day"], identity(one))),
    }
    for key, most in (("attempts", MOST_ATTEMPTS), ("observed", MOST_OBSERVED)):
        if len(result[key]) > most:
            raise RecordProblem(
                f"Together the records hold more than {most:,} {_CALLED[key]}. Nothing was changed."
            )
    new = sum(len(result[key]) - len(_union(present[key], [])) for key in _CALLED)
    return result, new


def identity(one):
    """Return all of an attempt or observation, as something that can be compared and ordered."""
    return tuple(sorted((key, type(value).__name__, value) for key, value in _plain(one)))


def day_number(day):
    """Return the number of a day written as in "2026-11-26", to count days between two.

    >>> day_number("2026-12-01") - day_number("2026-11-26")
    5
    """
    return date.fromisoformat(day).toordinal()


_CALLED = {"attempts": "answers", "observed": "observations"}


def _union(some, others):
    return list({identity(one): one for one in (*others, *some)}.values())


def _plain(one):
    for key, value in one.items():
        yield key, float(value) if key == "score" else value


def _refuse_depth(text):
    """Refuse what is nested deeper than a record, before anything recurses into it."""
    left = _STRING.sub("", text)
    for _ in range(_DEEPEST):
        left = _INNERMOST.sub("", left)
    if "[" in left or "{" in left:
        raise RecordProblem("The file is damaged, or it is no record: it cannot be read.")


def _no_number(word):
    raise ValueError(f"{word} is no number")


def _is_whole(value):
    return isinstance(value, int) and not isinstance(value, bool)


def _short(value):
    text = str(value) if -(10**12) < value < 10**12 else "a huge number"
    return text


def _shown(key):
    """Return a strange key in a form that is harmless in a sentence."""
    clean = "".join(letter if letter.isprintable() else "?" for letter in key)
    return clean if len(clean) <= 30 else clean[:29] + "…"


def _expect_keys(data, keys, what, *, either=()):
    if not isinstance(data, dict):
        raise RecordProblem(f"{what} is damaged: it has no names and values.")
    for key in keys:
        if key not in data:
            raise RecordProblem(f"{what} lacks “{key}”, which every record has.")
    for key in data:
        if key not in keys and key not in either:
            raise RecordProblem(
                f"{what} holds “{_shown(key)}”, which no record of this version has."
            )


def _text(value, what, *, may_be_empty=False):
    if not isinstance(value, str):
        raise RecordProblem(f"{what} is no text.")
    value = " ".join(value.split())
    if len(value) > LONGEST_TEXT:
        raise RecordProblem(f"{what} is longer than {LONGEST_TEXT} characters.")
    if not value and not may_be_empty:
        raise RecordProblem(f"{what} is empty.")
    if _NOT_SHOWN.search(value):
        raise RecordProblem(f"{what} holds characters that cannot be shown.")
    return value


def _list(value, key, most):
    if not isinstance(value, list):
        raise RecordProblem(f"The file is damaged: its “{key}” are no list.")
    if len(value) > most:
        raise RecordProblem(f"The file holds more than {most:,} {_CALLED[key]}.")
    return value


def _day(value, what):
    if isinstance(value, str) and _DAY.fullmatch(value):
        try:
            if date.fromisoformat(value).year in _YEARS:
                return value
        except ValueError:
            pass
    raise RecordProblem(f"{what} has no day that can be read, such as 2026-11-26.")


def _moment(value, what):
    found = _MOMENT.fullmatch(value) if isinstance(value, str) else None
    if not found:
        raise RecordProblem(f"{what} does not say when it was given.")
    _day(found[1], what)
    return value


def _attempt(data, what):
    keys = ("at", "day", "item", "family", "skill", "right", "sure", "score", "critical")
    _expect_keys(data, keys, what, either=("seed", "code"))
    draws = [key for key in ("seed", "code") if key in data]
    if len(draws) != 1:
        raise RecordProblem(f"{what} needs either a “seed” or a “code”.")
    score = data["score"]
    is_number = isinstance(score, (int, float)) and not isinstance(score, bool)
    if not is_number or not 0 <= score <= 1:
        raise RecordProblem(f"{what} has a score that is no share from 0 to 1.")
    for key in ("right", "sure", "critical"):
        if not isinstance(data[key], bool):
            raise RecordProblem(f"{what} does not say with yes or no whether it was “{key}”.")
    return {
        "at": _moment(data["at"], what),
        "day": _day(data["day"], what),
        "item": _text(data["item"], f"The item of {_small(what)}"),
        "family": _text(data["family"], f"The family of {_small(what)}"),
        "skill": _text(data["skill"], f"The skill of {_small(what)}", may_be_empty=True),
        "right": data["right"],
        "sure": data["sure"],
        "score": score,
        "critical": data["critical"],
        draws[0]: _text(data[draws[0]], f"The {draws[0]} of {_small(what)}"),
    }


def _observation(data, what):
    _expect_keys(data, ("skill", "day", "level", "observer", "system"), what)
    if not _is_whole(data["level"]) or data["level"] not in LEVELS:
        raise RecordProblem(f"{what} has a level that is not one of {LEVELS[0]} to {LEVELS[-1]}.")
    return {
        "skill": _text(data["skill"], f"The skill of {_small(what)}"),
        "day": _day(data["day"], what),
        "level": data["level"],
        "observer": _text(data["observer"], f"The observer of {_small(what)}"),
        "system": _text(data["system"], f"The system of {_small(what)}"),
    }


def _small(what):
    return what[0].lower() + what[1:]
