"""Expressions are evaluated in every text of every file."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.checks import check_handbook
from build_tools.content.handbook import load_handbook
from build_tools.content.values import Values
from tests.content.small_shop import FILES, changed, problems_of, write

SAID = (
    'there is no fact "buckt" (expected one of: bucket, flush_time, scald_limit; nearest: "bucket")'
)


@pytest.mark.parametrize(
    ("name", "text", "line"),
    [
        ("shop.yaml", "Two wells", 3),
        ("facts.yaml", "The bucket in the van", 2),
        ("cautions.yaml", "Hot water burns", 2),
        ("equipment/meter-unit.yaml", "A tank", 2),
        ("procedures/first-look.yaml", "is not the well's", 15),
        ("procedures/first-look.yaml", "Break it", 34),
        ("faults/salt-bridge.yaml", "Push a broom", 9),
        ("learn/hardness.md", "work out a setting", 7),
        ("learn/hardness.md", "Water of", 14),
        ("learn/hardness.md", "A test reads", 21),
        ("index.md", "Start with", 3),
    ],
)
def test_an_expression_that_fails_is_told_wherever_it_stands(
    tmp_path: Path, name: str, text: str, line: int
) -> None:
    files = changed(name, text, f"{text} {{{{ fact.buckt }}}}")
    assert problems_of(tmp_path, files) == [f"docs_src/{name}:{line}: {SAID}"]


def test_a_unit_is_only_known_on_its_own_page(tmp_path: Path) -> None:
    files = changed("index.md", "Start", "With {{ unit.tank_height }} start")
    assert problems_of(tmp_path, files) == [
        'docs_src/index.md:3: "unit" means nothing here (expected only on a page in equipment/ and '
        "in expected readings; elsewhere name one of the equipment, as in "
        '{{ unit("its-id").capacity }})'
    ]


def test_the_checks_find_every_use_of_a_fact(tmp_path: Path) -> None:
    handbook = load_handbook(write(tmp_path, FILES), tmp_path)
    values = Values(handbook)
    assert check_handbook(handbook, values) == []
    assert values.uses == {
        "bucket": {("docs_src/procedures/first-look.yaml", 10, "procedures/first-look.md")},
        "flush_time": {("docs_src/procedures/first-look.yaml", 12, "procedures/first-look.md")},
        "scald_limit": {("docs_src/cautions.yaml", 3, "reference/cautions.md")},
    }


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2{{ fact.bucket }}", '"2" before "{{ fact.bucket }}" would change its number'),
        ("-{{ fact.bucket }}", '"-" before "{{ fact.bucket }}" would change its number'),
        ("{{ fact.bucket }}5", '"5" after "{{ fact.bucket }}" would change its number'),
    ],
)
def test_no_digit_or_sign_touches_an_expression(tmp_path: Path, text: str, said: str) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", f"Pour {text} and start")) == [
        f"docs_src/index.md:3: {said} (expected a space or a word between them)"
    ]


@pytest.mark.parametrize("text", ["{{ home.people }} psi", "**{{ fact.bucket }}** gallons"])
def test_no_unit_is_typed_after_an_expression(tmp_path: Path, text: str) -> None:
    expression, unit = text.strip("*").rsplit(" ", 1)
    expression = expression.strip("*")
    assert problems_of(tmp_path, changed("index.md", "Start", f"With {text} start")) == [
        f'docs_src/index.md:3: the unit "{unit}" is typed after "{expression}" (expected no unit: '
        "the value brings its own)"
    ]


@pytest.mark.parametrize(
    "text",
    [
        "{{ fact.bucket }}-{{ fact.bucket }}",
        "{{ fact.bucket }} a day",
        "{{ fact.bucket }} in the tank",
        "{{ fact.bucket }} a second time",
        "the {{ home.people }} second cups",
        "(−) {{ fact.bucket }}. 5 of them",
    ],
)
def test_words_and_ranges_around_an_expression_are_no_matter(tmp_path: Path, text: str) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", f"With {text} start")) == []


def test_a_unit_of_another_number_is_not_that_of_the_expression(tmp_path: Path) -> None:
    files = changed("index.md", "Start", "With {{ fact.bucket }} or 5 gal start")
    assert not [said for said in problems_of(tmp_path, files) if "is typed after" in said]
