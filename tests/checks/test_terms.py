"""A word that the glossary sets aside is told wherever we use it ourselves."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

GLOSSARY = """\
brine-tank:
  term: brine tank
  forms: [brine tanks]
  means: The tank with the salt.
  instead_of: [salt tank, tub]
  learn: [hardness]
"""
SAID = '(expected "brine tank", see the glossary)'


def shop(name: str, old: str, new: str) -> dict[str, str]:
    files = {**FILES, "glossary.yaml": GLOSSARY}
    assert old in files[name]
    files[name] = files[name].replace(old, new, 1)
    return files


@pytest.mark.parametrize(
    ("name", "old", "line"),
    [
        ("faults/no-salt.yaml", "An empty tank", 6),
        ("procedures/drain-flow.yaml", "Put the drain line back", 11),
        ("checks/salt-height.yaml", "Lift the lid", 7),
        ("learn/hardness.md", "Go on to", 31),
    ],
)
def test_another_word_is_told(tmp_path: Path, name: str, old: str, line: int) -> None:
    assert problems_of(tmp_path, shop(name, old, f"{old} of a Tub")) == [
        f'docs_src/{name}:{line}: "Tub" is no word of this handbook {SAID}'
    ]


def test_a_phrase_on_two_lines_is_told(tmp_path: Path) -> None:
    files = shop("learn/hardness.md", "Go on to", "The salt\ntank. Go on to")
    assert problems_of(tmp_path, files) == [
        f'docs_src/learn/hardness.md:31: "salt tank" is no word of this handbook {SAID}'
    ]


@pytest.mark.parametrize(
    ("name", "old"),
    [
        ("faults/no-salt.yaml", "The water is hard"),
        ("checks/rod.yaml", "I look for a hollow"),
        ("checks/complaint.yaml", "The salt never goes down"),
    ],
)
def test_what_is_said_aloud_may_have_any_word(tmp_path: Path, name: str, old: str) -> None:
    assert problems_of(tmp_path, shop(name, old, f"{old} in the tub")) == []


@pytest.mark.parametrize(
    "text", ["“My tub is dry.”", "`tub`", "A tubular thing.", "A tub-like thing."]
)
def test_quotes_code_and_other_words_are_free(tmp_path: Path, text: str) -> None:
    files = shop("learn/hardness.md", "Go on to", f"{text} Go on to")
    assert problems_of(tmp_path, files) == []


def test_a_lesson_that_is_not_there_is_told(tmp_path: Path) -> None:
    files = {**FILES, "glossary.yaml": GLOSSARY.replace("[hardness]", "[hardnes]")}
    assert problems_of(tmp_path, files) == [
        'docs_src/glossary.yaml:6: there is no lesson "hardnes" (expected "hardness")'
    ]


def test_the_plural_of_another_word_is_told(tmp_path: Path) -> None:
    files = shop("faults/no-salt.yaml", "An empty tank", "Salt tanks")
    assert problems_of(tmp_path, files) == [
        f'docs_src/faults/no-salt.yaml:6: "Salt tanks" is no word of this handbook {SAID}'
    ]
