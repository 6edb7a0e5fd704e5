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
