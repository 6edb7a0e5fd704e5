"""Two texts that differ in their quantities made one, with a mark around each difference."""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import SequenceMatcher

from build_tools.content.unit_marks import ABSENT, pair

_TAG = re.compile(r"(<svg\b.*?</svg>|<[a-zA-Z/][^<>]*>)", re.DOTALL)
_ATTRIBUTE = re.compile(r"""([^\s"'<>/=]+)(?:=("[^"]*"|'[^']*'))?""")
_WORDS = re.compile(r"\]\([^)\s]*\)|&#?\w+;|[^\S\u00a0]+|[|()\[\]&]|(?:[^\s|()\[\]&]|\u00a0)+")
#: What stands between two changed words of one quantity, or of both ends of a range.
_INSIDE = re.compile(r"\s+|\s+to\s+")
_NUMBER = re.compile(r"[−-]?[\d.,/½⅓⅔¼¾⅛⅜⅝⅞]*\d[\d.,/½⅓⅔¼¾⅛⅜⅝⅞]*|[½⅓⅔¼¾⅛⅜⅝⅞]")
_EDGE = re.compile(r"[^\w°√µΩ−%½⅓⅔¼¾⅛⅜⅝⅞]*")


class Unlike(Exception):
    """Two texts that differ in more than their quantities."""


def paired(own: str, other: str) -> str:
    """Return two texts of Markdown and HTML as one; Unlike where their lines do not match."""
    if own == other:
        return own
    lines, others = own.split("\n"), other.split("\n")
    if len(lines) != len(others):
        raise Unlike(_first_difference(lines, others))
    made = []
    for one, another in zip(lines, others, strict=True):
        made.append(one if one == another else _line(one, another))
    return "\n".join(made)


def _first_difference(lines: list[str], others: list[str]) -> str:
    for tag, start, end, low, high in SequenceMatcher(None, lines, others, False).get_opcodes():
        if tag != "equal" and end - start != high - low:
            return (" ".join(lines[start:end]) or " ".join(others[low:high]))[:200]
    return ""


def _line(own: str, other: str) -> str:
    ours, theirs = _TAG.split(own), _TAG.split(other)
    if len(ours) != len(theirs):
        raise Unlike(own[:200])
    made = []
    for place, (one, another) in enumerate(zip(ours, theirs, strict=True)):
        if one == another:
            made.append(one)
        elif place % 2 == 0:
            made.append(_text(one, another))
        elif one.startswith("<svg"):
            made.append(pair(one, another))
        else:
            made.append(_tag(one, another))
    return "".join(made)


def _tag(own: str, other: str) -> str:
    """Return a tag of HTML whose attributes are pairs."""
    name, _, rest = own[1:-1].partition(" ")
    other_name, _, other_rest = other[1:-1].partition(" ")
    if name != other_name:
        raise Unlike(own[:200])
    ours, theirs = dict(_ATTRIBUTE.findall(rest)), dict(_ATTRIBUTE.findall(other_rest))
    made = []
    for key in [*ours, *(key for key in theirs if key not in ours)]:
        one, another = ours.get(key), theirs.get(key)
        if one == another:
            made.append(f"{key}={one}" if one else key)
        else:
            quote = (one or another)[0]
            texts = (text[1:-1] if text else ABSENT for text in (one, another))
            made.append(f"{key}={quote}{pair(*texts)}{quote}")
    end = "/" if own.endswith("/>") else ""
    return f"<{' '.join([name, *made])}{end}>"


def _text(own: str, other: str) -> str:
    ours, theirs = _WORDS.findall(own), _WORDS.findall(other)
    made = []
    for same, one, another in _runs(ours, theirs):
        if same:
            made.append("".join(one))
        else:
            made.append(_trimmed("".join(one), "".join(another)))
    return "".join(made)


def _runs(ours: list[str], theirs: list[str]) -> Iterator[tuple[bool, list[str], list[str]]]:
    """Yield what is the same and what differs, as words of both sides, each quantity as a whole."""
    runs: list[tuple[bool, list[str], list[str]]] = []
    for tag, start, end, low, high in SequenceMatcher(None, ours, theirs, False).get_opcodes():
        run = tag == "equal", ours[start:end], theirs[low:high]
        if not run[0] and len(runs) > 1 and runs[-1][0] and _INSIDE.fullmatch("".join(runs[-1][1])):
            (_, between, same), (_, before, other) = runs.pop(), runs.pop()
            run = False, before + between + run[1], other + same + run[2]
        runs.append(run)
    for place, (same, one, another) in enumerate(runs):
        if same or place == 0 or _NUMBER.search("".join(one)):
            continue
        _, before, other = runs[place - 1]
        if len(before) > 1 and _NUMBER.fullmatch(before[-2].lstrip("*(")) and before[-1].isspace():
            # only the unit differs: its number belongs to it
            runs[place] = False, before[-2:] + one, other[-2:] + another
            runs[place - 1] = True, before[:-2], other[:-2]
    yield from runs


def _trimmed(own: str, other: str) -> str:
    """Return a pair without the punctuation and Markdown that both begin and end with."""
    start = 0
    limit = min(_EDGE.match(own).end(), _EDGE.match(other).end())
    while start < limit and own[start] == other[start]:
        start += 1
    before, own, other = own[:start], own[start:], other[start:]
    end = 0
    limit = min(_EDGE.match(own[::-1]).end(), _EDGE.match(other[::-1]).end())
    while end < limit and own[-1 - end] == other[-1 - end]:
        end += 1
    after = own[len(own) - end :]
    own, other = own[: len(own) - end], other[: len(other) - end]
    return f"{before}{pair(own, other)}{after}"
