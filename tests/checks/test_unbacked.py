"""A quantity in prose needs a fact, a computed value, or a given of its own worked example."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

HOW = (
    "expected an expression: put the value in facts.yaml and write {{ fact.its_name }}, or compute "
    "it with {{ work_out(…) }} or a worked example"
)
PLACES = [
    ("shop.yaml", "Two wells", 3),
    ("shop.yaml", "Drop kit", 14),
    ("facts.yaml", "The bucket in the van", 2),
    ("cautions.yaml", "Hot water burns", 2),
    ("equipment/meter-unit.yaml", "Meter softener", 1),
    ("equipment/meter-unit.yaml", "the sheet in the van", 4),
    ("procedures/first-look.yaml", "First look", 1),
    ("procedures/first-look.yaml", "is not the well's", 15),
    ("procedures/first-look.yaml", "Flow at the drain", 17),
    ("procedures/first-look.yaml", "The flow is low.", 29),
    ("procedures/first-look.yaml", "Write down", 37),
    ("faults/salt-bridge.yaml", "The salt never", 4),
    ("faults/salt-bridge.yaml", "A bridge of salt", 6),
    ("faults/salt-bridge.yaml", "Push a broom", 9),
    ("learn/hardness.md", "Set a control.", 5),
    ("learn/hardness.md", "A setting of", 10),
    ("learn/hardness.md", "# Hardness", 12),
    ("learn/hardness.md", "the bridge", 31),
    ("index.md", "Start with", 3),
]


@pytest.mark.parametrize(("name", "text", "line"), PLACES)
def test_a_typed_quantity_is_told_wherever_it_stands(
    tmp_path: Path, name: str, text: str, line: int
) -> None:
    assert problems_of(tmp_path, changed(name, text, f"{text} 77 psi")) == [
        f'docs_src/{name}:{line}: nothing backs the typed quantity "77 psi" ({HOW})'
    ]


@pytest.mark.parametrize(
    ("typed", "expression"),
    [
        ("5 gal", "fact.bucket"),
        ("five-gallon", "fact.bucket"),
        ("20 quarts", "fact.bucket"),
        ("18.9 L", "fact.bucket"),
        ("60 °C", "fact.scald_limit"),
        ("2 to 3 minutes", "fact.flush_time"),
        ("35 percent", "shop.hot_share"),
        ("17 gpg", "home.hardness"),
    ],
)
def test_the_expression_of_the_same_value_is_named(
    tmp_path: Path, typed: str, expression: str
) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", f"{typed}. Start")) == [
        f'docs_src/index.md:3: nothing backs the typed quantity "{typed}" (expected '
        f"{{{{ {expression} }}}}, which has this value)"
    ]


@pytest.mark.parametrize(
    "typed", ["```text\n77 psi\n```\n", "Not <!-- 77 psi -->", "[x](https://host.example/77psi)"]
)
def test_code_comments_and_targets_of_links_are_no_prose(tmp_path: Path, typed: str) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", f"{typed} Start")) == []


@pytest.mark.parametrize(
    "typed",
    [
        "`77 psi`",
        '[x](https://host.example "77 psi")',
        '<abbr title="77 psi">x</abbr>',
        "<p>77 <b>psi</b></p>\n\n",
        "| Tank | Pressure, psi |\n| :-- | --: |\n| small | 77 |\n\n",
        "| Tank | Pressure (psi) |\n| :-- | --: |\n| small | **77** |\n\n",
        "| Tank | In psi |\n| :-- | --: |\n| small | 77 |\n\n",
    ],
)
def test_what_is_said_beside_the_prose_counts_too(tmp_path: Path, typed: str) -> None:
    problems = problems_of(tmp_path, changed("index.md", "Start", f"{typed} Start"))
    assert [problem.partition(": ")[2] for problem in problems] == [
        f'nothing backs the typed quantity "77 psi" ({HOW})'
    ]


def test_numbers_under_a_head_without_a_unit_are_no_quantities(tmp_path: Path) -> None:
    table = "| Tank | Number | In words |\n| --- | --- | --- |\n| 1 | 77 | 5 |\n\n"
    assert problems_of(tmp_path, changed("index.md", "Start", f"{table}Start")) == []


def test_indented_prose_is_prose(tmp_path: Path) -> None:
    files = changed("index.md", "Start", '!!! note "Note"\n\n    At 77 psi.\n\nStart')
    assert problems_of(tmp_path, files) == [
        f'docs_src/index.md:5: nothing backs the typed quantity "77 psi" ({HOW})'
    ]


def test_bold_numbers_are_typed_too(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", "**77** psi. Start")) == [
        f'docs_src/index.md:3: nothing backs the typed quantity "77 psi" ({HOW})'
    ]


OWN_HOW = f"expected one of the block's own givens or answers; otherwise {HOW[9:]}"


@pytest.mark.parametrize("typed", ["18 gpg", "20 gpg", "308 mg/L", "0.5 mg/L", "18 to 20 gpg"])
def test_a_story_may_tell_its_givens_and_answers_in_any_unit(tmp_path: Path, typed: str) -> None:
    files = changed("learn/hardness.md", "story: A test reads", f"story: {typed}. A test reads")
    assert problems_of(tmp_path, files) == []


@pytest.mark.parametrize("typed", ["19 gpg", "309 mg/L", "18 to 21 gpg", "18 lb", "ten minutes"])
def test_a_story_may_tell_nothing_else(tmp_path: Path, typed: str) -> None:
    files = changed("learn/hardness.md", "story: A test reads", f"story: {typed}. A test reads")
    assert problems_of(tmp_path, files) == [
        f'docs_src/learn/hardness.md:21: nothing backs the typed quantity "{typed}" ({OWN_HOW})'
    ]


def test_the_titles_of_sources_are_quoted_as_they_are(tmp_path: Path) -> None:
    files = {**FILES, "sources.yaml": FILES["sources.yaml"].replace("at the tap", "above 140 °F")}
    assert problems_of(tmp_path, files) == []


@pytest.mark.parametrize(
    ("head", "cell", "typed"),
    [
        ("Minutes", "18", "18 Minutes"),
        ("Tank (gal)", "20–30", "20–30 gal"),
        ("In grains per gallon", "**5**", "5 grains per gallon"),
    ],
)
def test_a_bare_number_has_the_unit_above_it(
    tmp_path: Path, head: str, cell: str, typed: str
) -> None:
    table = f"| Name | {head} |\n| --- | --- |\n| 3 | {cell} |\n| small | no |\n\n"
    [said] = problems_of(tmp_path, changed("index.md", "Start with", f"{table}Start with"))
    assert said.startswith(f'docs_src/index.md:5: nothing backs the typed quantity "{typed}"')


@pytest.mark.parametrize("head", ["People", "In words", "Share", ""])
def test_a_bare_number_under_another_head_is_a_count(tmp_path: Path, head: str) -> None:
    table = f"| {head} | What |\n| --- | --- |\n| 3 | small |\n\n"
    assert problems_of(tmp_path, changed("index.md", "Start with", f"{table}Start with")) == []
