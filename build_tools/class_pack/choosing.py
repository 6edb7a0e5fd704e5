"""Which exercises and practice calls a pack has."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.practice_models import FAMILIES, Exercise
from build_tools.content.problems import expected
from build_tools.set_up.failure import Failure
from calculators.diagnosis import Knowledge
from calculators.practice.call_code import CodeProblem, read_code
from calculators.practice.calls import Calls
from calculators.practice.drawing import choice

#: Practice calls on each sheet of a pack for which nothing was chosen.
USUAL_CALLS = 1


def chosen_exercises(
    handbook: Handbook, seed: str, names: Sequence[str], families: Sequence[str]
) -> list[Entry[Exercise]]:
    """Return the named exercises, those of named families, or a mix where nothing is named.

    Raises Failure for a name of nothing.
    """
    entries = in_order(handbook)
    if not names and not families:
        return mixed(entries, seed)
    known = {entry.id: entry for entry in entries}
    for name in names:
        if name not in known:
            raise Failure(f'There is no exercise "{name}" {expected(name, list(known))}.')
    for family in families:
        if family not in FAMILIES:
            raise Failure(f'There is no family "{family}" {expected(family, list(FAMILIES))}.')
    found = [known[name] for name in dict.fromkeys(names)]
    for family in dict.fromkeys(families):
        of_family = [one for one in entries if one.content.family == family]
        if not of_family:
            raise Failure(f'The handbook has no exercise of the family "{family}".')
        found += [one for one in of_family if one not in found]
    return found


def in_order(handbook: Handbook) -> list[Entry[Exercise]]:
    """Return all exercises, family by family."""
    families = list(FAMILIES)
    return sorted(
        handbook.practice.values(),
        key=lambda one: (families.index(one.content.family), one.content.order, one.id),
    )


def mixed(entries: Sequence[Entry[Exercise]], seed: str) -> list[Entry[Exercise]]:
    """Return one exercise of each family, drawn on the seed, and one of each kind that is left."""
    random = Random(f"class pack {seed}")
    found = []
    for family in dict.fromkeys(one.content.family for one in entries):
        found.append(choice(random, [one for one in entries if one.content.family == family]))
    for kind in dict.fromkeys(one.content.kind for one in entries):
        if kind not in {one.content.kind for one in found}:
            found.append(choice(random, [one for one in entries if one.content.kind == kind]))
    return [one for one in entries if one in found]


def checked_codes(knowledge: Knowledge, codes: Sequence[str]) -> list[str]:
    """Return codes of calls as they are written. Raises Failure for what is none of this edition."""
    found = []
    for text in codes:
        try:
            found.append(read_code(text, knowledge).text)
        except CodeProblem as problem:
            raise Failure(f'The code "{text}": {problem.sentence}') from None
    return list(dict.fromkeys(found))


def drawn_codes(calls: Calls, seed: str) -> list[str]:
    """Return the codes of the calls on one sheet of a mixed pack."""
    return [
        calls.new("", "", f"class pack {seed} {number}")["code"]
        for number in range(1, USUAL_CALLS + 1)
    ]
