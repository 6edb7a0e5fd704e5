"""Worked examples are worked out again; what they state must be what the calculator says."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import changed, problems_of

LESSON = "learn/hardness.md"
INPUTS = (
    "hardness of the raw water 18 gpg, dissolved iron 0.5 mg/L, manganese 0 mg/L, allowance for "
    "iron 4 gpg per mg/L, allowance for manganese 4 gpg per mg/L, step of the control 1 gpg"
)
WRONG = [
    (
        "setting: 20 gpg", "setting: 19 gpg",
        '27: worked example "gannet-lane" states "setting" as "19 gpg", but it is 20 gpg for '
        f'{INPUTS} (expected "20 gpg")',
    ),
    (
        "setting: 20 gpg", "setting: 21",
        '27: worked example "gannet-lane" states "setting" as "21", but it is 20 gpg for '
        f'{INPUTS} (expected "20 gpg")',
    ),
    (
        "compensated: 342 mg/L", "compensated: 343 mg/L",
        '28: worked example "gannet-lane" states "compensated" as "343 mg/L", but it is 20.0 gpg '
        f'for {INPUTS} (expected "342 mg/L")',
    ),
    (
        "compensated: 342 mg/L", "compensated: 3 mmol/L",
        '28: worked example "gannet-lane" states "compensated" as "3 mmol/L", but it is 20.0 gpg '
        f'for {INPUTS} (expected "3.4 mmol/L")',
    ),
    (
        "setting: 20 gpg", "setting: 20 lb",
        '27: worked example "gannet-lane", "setting": “20 lb” is a weight. Write a hardness (gpg, '
        "mg/L, °dH, °fH, °Clark, mmol/L, meq/L).",
    ),
    (
        "setting: 20 gpg", "setting: 20 gpgs",
        '27: worked example "gannet-lane", "setting": “gpgs” is no unit for a hardness. Use gpg, '
        "mg/L, °dH, °fH, °Clark, mmol/L, meq/L. The nearest is gpg.",
    ),
    (
        "setting: 20 gpg", "setting: about twenty",
        '27: worked example "gannet-lane", "setting": “about twenty” does not start with a number. '
        "Write one, such as 12 or 3/4.",
    ),
    (
        "  iron: 0.5 mg/L", "  iron: 0.5 mg/L\n  manganese: 50 mg/L",
        '26: worked example "gannet-lane", "manganese": 50 mg/L is above the limit of 5 mg/L.',
    ),
    (
        "  iron: 0.5 mg/L", "  iron: 0.5 mg/L\n  setting_step: 1 lb",
        '26: worked example "gannet-lane", "setting_step": “1 lb” is a weight. Write a hardness '
        "(gpg, mg/L, °dH, °fH, °Clark, mmol/L, meq/L).",
    ),
    (
        "  hardness: 18 gpg", "  hardnes: 18 gpg",
        '24: the calculator "hardness-setting" has no input "hardnes" (expected one of: hardness, '
        'iron, manganese, iron_allowance, manganese_allowance, setting_step; nearest: "hardness")',
    ),
    (
        "  compensated: 342", "  compensatd: 342",
        '28: the calculator "hardness-setting" has no answer "compensatd" (expected one of: '
        'setting, compensated, metals_by_charge; nearest: "compensated")',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), WRONG)
def test_a_worked_example_that_is_wrong_is_told(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(LESSON, old, new)) == [f"docs_src/{LESSON}:{said}"]


@pytest.mark.parametrize(
    "stated",
    ["20 gpg", "20", "20.0 gpg", "20 grains per gallon", "342 mg/L", "342.4 mg/L", "3.42 mmol/L"],
)
def test_an_answer_may_be_stated_in_any_unit_to_any_number_of_places(
    tmp_path: Path, stated: str
) -> None:
    assert problems_of(tmp_path, changed(LESSON, "setting: 20 gpg", f"setting: {stated}")) == []


@pytest.mark.parametrize("stated", ["341 mg/L", "342.3 mg/L", "3.43 mmol/L", "20.1 gpg"])
def test_an_answer_that_is_off_in_its_last_place_is_told(tmp_path: Path, stated: str) -> None:
    files = changed(LESSON, "setting: 20 gpg", f"setting: {stated}")
    (line,) = problems_of(tmp_path, files)
    assert line.startswith(
        f'docs_src/{LESSON}:27: worked example "gannet-lane" states "setting" as "{stated}", but it '
        "is 20 gpg for "
    )


LEAK = """\
```worked-example
id: leak
title: A dripping tap
story: A tap drips.
calculate: small-leak
given:
  measured: drips
  drips: 60 /min
answers:
  counted: {stated}
```

Go on to"""
NOT_COUNTED = '"no: too slow to turn the meter, so the bed runs out unseen"'


def test_an_answer_in_words_is_compared_as_words(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed(LESSON, "Go on to", LEAK.format(stated=NOT_COUNTED))) == []
    files = changed(LESSON, "Go on to", LEAK.format(stated="no leak"))
    (line,) = problems_of(tmp_path, files)
    assert line.startswith(
        f'docs_src/{LESSON}:40: worked example "leak" states "counted" as "no leak", but it is no: '
        "too slow to turn the meter, so the bed runs out unseen for how it was measured drips, "
        "drips 60 drips/min, "
    )
    assert line.endswith(f"(expected {NOT_COUNTED})")


def test_an_answer_that_the_inputs_do_not_give_is_told(tmp_path: Path) -> None:
    leak = LEAK.format(stated=f"{NOT_COUNTED}\n  extra: 2 %")
    assert problems_of(tmp_path, changed(LESSON, "Go on to", leak)) == [
        f'docs_src/{LESSON}:41: worked example "leak" states "extra", which these inputs do not '
        "give (expected one of: water_lost, flow, counted)"
    ]


def test_a_choice_that_is_none_of_the_choices_is_told(tmp_path: Path) -> None:
    leak = LEAK.format(stated=NOT_COUNTED).replace("measured: drips", "measured: drip")
    assert problems_of(tmp_path, changed(LESSON, "Go on to", leak)) == [
        f'docs_src/{LESSON}:37: worked example "leak", "measured": “drip” is not a choice. Choose '
        "one of: cup and watch, drips, toilet cistern, house meter. The nearest is “drips”."
    ]


def test_answers_follow_the_shop(tmp_path: Path) -> None:
    files = changed("shop.yaml", "iron_allowance: 4 gpg", "iron_allowance: 6 gpg")
    lines = problems_of(tmp_path, files)
    assert [line.partition(", but it is ")[2].partition(" for ")[0] for line in lines] == [
        "21 gpg",
        "21.0 gpg",
    ]


def test_answers_are_not_doubted_when_the_shop_cannot_be_read(tmp_path: Path) -> None:
    files = changed("shop.yaml", "iron_allowance: 4 gpg", "iron_allowance: 6 lb")
    assert problems_of(tmp_path, files) == [
        'docs_src/shop.yaml:9: "iron_allowance": “lb per mg/L” is no unit for an allowance for iron '
        "or manganese. Use gpg per mg/L, mg/L per mg/L. The nearest is mg/L per mg/L."
    ]
