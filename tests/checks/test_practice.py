"""Exercises name what exists, in ranges that a calculator takes, and can be posed."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

SKILLS = """\
testing:
  title: Testing
  procedures: [first-look, drain-flow]
  seen: [The vial is rinsed.]
  faults: [Brine]
"""
NUMBER = """\
title: A setting
kind: number
skill: testing
family: settings
story: A tap tests at {hardness} with {iron} of iron.
steps:
  - calculate: hardness-setting
    given:
      hardness: {from: 12 gpg, to: 30 gpg, step: 1 gpg}
      iron: {from: 0.5 mg/L, to: 1 mg/L, step: 0.1 mg/L}
  - calculate: household-load
    given:
      people: {one_of: [3, 4]}
      setting: {answer: setting}
asides:
  garden: {is: the garden, from: 50 gal/day, to: 90 gal/day, step: 10 gal/day}
ask:
  - answer: load
mistakes: [iron-left-out]
"""
ORDER = """\
title: Look first
kind: order
skill: testing
family: safe-work
story: Put them in order.
procedure: six-steps
take:
  - {name: a, begins: Write}
  - {name: b, begins: Turn the bypass}
  - {name: c, begins: Open the drain}
  - {name: d, begins: Unplug}
  - {name: e, begins: Open the cap}
  - {name: f, begins: Close}
pairs:
  - {first: a, then: b, why: The bypass changes it.}
  - {first: d, then: e, why: It may move., safety: true}
"""
SIX_STEPS = """\
title: Six steps
group: Testing water
goal: All done.
when: [Always.]
cautions: []
before: []
tools: []
steps:
  - do: Write it down.
  - do: Turn the bypass.
  - do: Open the drain.
  - do: Unplug the control.
  - do: Open the cap.
  - do: Close the cap.
close: [Look again.]
"""
EVIDENCE = """\
title: Weigh it
kind: evidence
skill: testing
family: finding-the-cause
story: Weigh these.
faults: [salt-bridge, no-salt]
"""
WRONG_NUMBERS = [
    ("kind: number", "kind: nmber", '2: "kind" is "nmber" (expected one of: number, pair, settings, order, evidence; nearest: "number")'),
    ("skill: testing", "skill: tasting", '3: there is no skill "tasting" (expected "testing")'),
    ("tests at {hardness}", "tests at {hardnes}", '5: nothing is drawn as "hardnes" (expected one of: hardness, iron, people, garden, setting, compensated, metals_by_charge; nearest: "hardness")'),
    ("tests at {hardness}", "tests at {load}", '5: the story tells "load", which is asked (expected it in one place)'),
    ("calculate: household-load", "calculate: household-lod", '11: there is no calculator "household-lod" (expected one of: '),
    ("hardness: {from: 12 gpg, to: 30", "hardnes: {from: 12 gpg, to: 30", '9: the calculator "hardness-setting" has no input "hardnes" (expected one of: '),
    ("from: 12 gpg", "from: 12", '9: "from": “12” has no unit. Write a hardness, such as 12 gpg.'),
    ("to: 30 gpg", "to: 90 gpg", "9: not usual: Hardness of the raw water: 90 gpg is above the usual 60 gpg. Check that a reading in mg/L was not entered as grains. (expected a range of usual numbers)"),
    ("to: 30 gpg", "to: 300 gpg", '9: "hardness": 300 gpg is above the limit of 200 gpg.'),
    ("to: 30 gpg", "to: 11 gpg", '9: the range is empty (expected "from" below "to", and a "step" above zero)'),
    ("to: 30 gpg", "to: 30.5 gpg", '9: the steps do not lead from "from" to "to"'),
    ("to: 30 gpg", "to: 520 mg/L", '9: "from", "to" and "step" have different units (expected gpg)'),
    (", step: 1 gpg", "", '9: what is given has either "from", "to" and "step", or "one_of", "answer" or "same"'),
    ("one_of: [3, 4]", "one_of: [3 gal, 4]", '13: "3 gal" has a unit (expected a number alone)'),
    ("hardness: {from: 12 gpg, to: 30 gpg, step: 1 gpg}", "hardness: {one_of: [12 gpg, 310 mg/L]}", '9: "310 mg/L" has another unit than the first (expected gpg)'),
    ("answer: setting", "answer: seting", '14: no earlier step answers "seting" (expected one of: setting, compensated, metals_by_charge; nearest: "setting")'),
    ("      setting: {answer: setting}\n", "", '12: "setting" is given nowhere (expected a range or a text for “hardness setting”)'),
    ("setting: {answer: setting}", "setting: {same: hardnes}", '14: nothing is drawn as "hardnes" before this step (expected one of: hardness, iron, people; nearest: "hardness")'),
    ("setting: {answer: setting}", "setting: {same: people}", '14: "people" is no hardness (expected one, as "setting" takes)'),
    ("setting: {answer: setting}", "setting: 20", "14: \"setting\": “20” has no unit. Write a hardness, such as 20 gpg."),
    ("garden: {is", "people: {is", '16: "people" is drawn for a calculator already (expected another name)'),
    ("- answer: load", "- answer: lod", '18: no step answers "lod" (expected one of: setting, compensated, metals_by_charge, water, load, busiest_day; nearest: "load")'),
    ("- answer: load", "- {answer: load, choices: [a, b]}", '18: "load" is a number (expected no "choices")'),
    ("[iron-left-out]", "[iron-left]", '19: item 1 of "mistakes" is "iron-left" (expected one of: '),
    ("[iron-left-out]", "[no-reserve]", '19: the mistake "no-reserve" cannot be made with these calculators (expected one of: '),
    ("mistakes: [iron-left-out]", "procedure: first-look", '1: "procedure" does not belong to the kind "number" (expected story, steps, ask, asides, mistakes)'),
    ("story: A tap tests at {hardness} with {iron} of iron.\n", "", '1: an exercise of the kind "number" has no "story" (expected the situation; '),
    ("story: A tap tests at", "story: A gallon is 3.785 L. A tap tests at", '5: nothing backs the typed quantity "3.785 L" (expected an expression: '),
]  # fmt: skip
WRONG_ORDERS = [
    ("begins: Write", "begins: Wrote", '8: no step of the procedure "six-steps" begins with "Wrote" (expected one of: Write it down., Turn the bypass., Open the drain., Unplug the control., Open the cap., Close the cap.)'),
    ("begins: Open the cap", "begins: Open", '12: 2 steps of the procedure "six-steps" begin with "Open" (expected one)'),
    ("  - {name: f, begins: Close}\n", "", "7: the exercise takes 5 steps (expected 6 to 10)"),
    ("{name: f,", "{name: e,", '13: two steps have the name "e" (expected each once)'),
    ("first: a, then: b", "first: a, then: x", '15: no step is taken as "x" (expected one of: a, b, c, d, e, f)'),
    ("first: a, then: b", "first: b, then: a", '15: "a" does not come after "b" in the procedure (expected a pair that the procedure keeps)'),
    ("procedure: six-steps", "procedure: six-stops", '6: there is no procedure "six-stops" (expected one of: '),
]  # fmt: skip


def problems_with(folder: Path, exercise: str) -> list[str]:
    skills = SKILLS.replace("drain-flow]", "drain-flow, six-steps]")
    learned = FILES["index.md"] + "\nSee [six steps](procedures/six-steps.md).\n"
    files = FILES | {
        "practice/one.yaml": exercise,
        "skills.yaml": skills,
        "procedures/six-steps.yaml": SIX_STEPS,
        "index.md": learned,
    }
    return problems_of(folder, files)


def problems_in_exercise(folder: Path, exercise: str) -> list[str]:
    """Return the problems of the exercise's own file; a skill may lack its exercise besides."""
    return [one for one in problems_with(folder, exercise) if "/practice/" in one]


@pytest.mark.parametrize("exercise", [NUMBER, ORDER])
def test_a_right_exercise_has_no_problem(tmp_path: Path, exercise: str) -> None:
    assert problems_with(tmp_path, exercise) == []


@pytest.mark.parametrize(
    ("exercise", "old", "new", "said"),
    [(NUMBER, *one) for one in WRONG_NUMBERS] + [(ORDER, *one) for one in WRONG_ORDERS],
)
def test_what_is_wrong_with_an_exercise_is_told(
    tmp_path: Path, exercise: str, old: str, new: str, said: str
) -> None:
    assert exercise.count(old) == 1
    (problem,) = problems_in_exercise(tmp_path, exercise.replace(old, new))
    assert problem.startswith(f"docs_src/practice/one.yaml:{said}")


def test_ranges_in_which_no_mistake_can_be_told_are_told(tmp_path: Path) -> None:
    narrow = NUMBER.replace("from: 12 gpg", "from: 29 gpg").replace(
        "0.5 mg/L, to: 1", "0.1 mg/L, to: 0.2"
    )
    assert problems_in_exercise(tmp_path, narrow) == [
        "docs_src/practice/one.yaml:6: no question can be posed in 200 draws: answers or mistakes "
        "come too close to each other, or lie outside the limits (expected wider or other ranges, "
        'or "mistakes" with fewer of them)'
    ]


def test_an_exercise_on_evidence_takes_simulated_faults(tmp_path: Path) -> None:
    old = "simulation:\n  - change: salt_left\n    from: 0\n    to: 5 lb\n"
    fault = FILES["faults/no-salt.yaml"]
    assert fault.count(old) == 1
    files = {
        "practice/one.yaml": EVIDENCE,
        "skills.yaml": SKILLS,
        "faults/no-salt.yaml": fault.replace(old, "simulation: []\n"),
    }
    assert problems_of(tmp_path, FILES | files) == [
        'docs_src/practice/one.yaml:6: the fault "no-salt" is not simulated (expected one with '
        '"simulation")'
    ]


def test_an_exercise_on_evidence_needs_homes_that_are_clear(tmp_path: Path) -> None:
    files = {"practice/one.yaml": EVIDENCE, "skills.yaml": SKILLS}
    assert problems_of(tmp_path, FILES | files) == [
        "docs_src/practice/one.yaml:6: no home in 40 shows one of these faults clearly and leaves "
        "something to find out (expected other faults, or another control)"
    ]
