"""Several people's records side by side: a table, shares of right answers, and a CSV file."""

from calculators.practice.record import RecordProblem, identity, merged
from calculators.practice.sign_off import LEVELS, signed_off

#: The shares of right answers from which each step of the heat map begins.
STEPS = (0.0, 0.5, 0.65, 0.8, 0.9)
#: A share of fewer answers than this says little, and its cell stays plain.
FEWEST = 5
#: What a table program takes for a formula at the beginning of a cell, as wide signs, too.
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\uff1d", "\uff0b", "\uff0d", "\uff20")
_NAMELESS = "No name"

CSV_HEAD = (
    "Name",
    "Skill",
    "Level",
    "Level in words",
    "Stands",
    "Signed off on",
    "Check again by",
    "Right answers",
    "Answers",
    "Practice calls passed",
    "Missing",
)


def people_of(records):
    """Return the records of the crew, one a person, and sentences about what was put together.

    Records of the same name that share an answer or an observation are one person's, loaded twice;
    those that share nothing are two people, and the second is called so.
    """
    people, notes = [], []
    for record in records:
        for index, other in enumerate(people):
            if not (_same_name(record, other) and _share_something(record, other)):
                continue
            called = record["name"] or _NAMELESS
            try:
                people[index] = merged(other, record)[0]
            except RecordProblem:
                notes.append(f"Of two files of {called} only the first counts: they are too large.")
            else:
                notes.append(
                    f"Two files of {called} hold some of the same answers and count as one person."
                )
            break
        else:
            people.append(record)
    return people, notes


def crew(records, skills, today):
    """Return the crew's table on a day.

    Returns `people` (names, in order), `rows` (for each skill `title`, a `cell` for each person and
    one for `all` of them), `csv` (the text of a file) and `notes` (sentences). A cell has `level`,
    `state`, `right`, `answers`, `share` (from 0 to 1, None without answers) and `step` (which of
    STEPS the share reaches, None for too few answers to tell).
    """
    people, notes = people_of(records)
    names = _different([one["name"] or _NAMELESS for one in people])
    order = sorted(range(len(people)), key=lambda one: (names[one].casefold(), names[one]))
    people, names = [people[one] for one in order], [names[one] for one in order]
    standings = [signed_off(one, skills, today) for one in people]
    rows = []
    for index, skill in enumerate(skills):
        cells = [_cell(standing[index]) for standing in standings]
        right, answers = (sum(one[key] for one in cells) for key in ("right", "answers"))
        signed = sum(one["state"] == "signed off" for one in cells)
        rows.append(
            {
                "skill": skill["id"],
                "title": skill["title"],
                "cells": cells,
                "all": {"signed": signed, **_share(right, answers)},
            }
        )
    lines = [_csv_row(name, one) for name, standing in zip(names, standings) for one in standing]
    return {"people": names, "rows": rows, "csv": csv_text([CSV_HEAD, *lines]), "notes": notes}


def csv_text(rows):
    """Return rows as CSV (RFC 4180), in which no cell is a formula.

    A text that a table program would take for a formula gets an apostrophe before it.

    >>> print(csv_text([["=1+1", "Bee, Ana"]]).strip())
    '=1+1,"Bee, Ana"
    """
    return "".join(",".join(map(_csv_cell, row)) + "\r\n" for row in rows)


def _csv_cell(value):
    text = str(value)
    if text.lstrip(" ").startswith(_FORMULA):
        text = "'" + text
    if any(letter in text for letter in ',"\r\n'):
        text = '"' + text.replace('"', '""') + '"'
    return text


def _csv_row(name, one):
    return (
        name,
        one["title"],
        one["level"],
        LEVELS[one["level"]],
        one["state"],
        one["signed_on"],
        one["check_by"],
        one["right"],
        one["answers"],
        one["calls"],
        " ".join(one["missing"]),
    )


def _cell(one):
    kept = ("level", "state", "check_by", "missing")
    return {**{key: one[key] for key in kept}, **_share(one["right"], one["answers"])}


def _share(right, answers):
    share = right / answers if answers else None
    step = None
    if answers >= FEWEST:
        step = sum(share >= begins for begins in STEPS) - 1
    return {"right": right, "answers": answers, "share": share, "step": step}


def _same_name(one, other):
    return one["name"].casefold() == other["name"].casefold()


def _share_something(one, other):
    return any(
        {identity(part) for part in one[key]} & {identity(part) for part in other[key]}
        for key in ("attempts", "observed")
    )


def _different(names):
    """Return names of which each second one of the same spelling is numbered."""
    taken, found = set(), []
    for name in names:
        called, number = name, 1
        while called.casefold() in taken:
            number += 1
            called = f"{name} ({number})"
        taken.add(called.casefold())
        found.append(called)
    return found
