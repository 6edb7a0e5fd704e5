"""A page that nothing leads to is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

#: A second lesson, with names of its own for what may stand once only.
SECOND = (
    FILES["learn/hardness.md"]
    .replace("gannet-lane", "other")
    .replace("capacity-by-salt", "another-picture")
)
SAID = (
    '1: no other page leads to this one (expected a link, a "go_to" or a list on another page that '
    "names it)"
)


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("procedures/alone.yaml", FILES["procedures/drain-flow.yaml"]),
        ("faults/alone.yaml", FILES["faults/no-salt.yaml"]),
        ("learn/alone.md", SECOND),
        ("alone.md", "# Alone\n\n[Myself](alone.md)\n"),
    ],
)
def test_a_page_that_nothing_leads_to_is_told(tmp_path: Path, name: str, text: str) -> None:
    assert problems_of(tmp_path, {**FILES, name: text}) == [f"docs_src/{name}:{SAID}"]


def test_the_index_of_a_section_is_no_other_page(tmp_path: Path) -> None:
    files = {
        **FILES,
        "alone.md": "# Alone\n",
        "learn/index.md": "# Learn\n\n[Alone](../alone.md)\n",
    }
    assert problems_of(tmp_path, files) == [f"docs_src/alone.md:{SAID}"]


def test_the_home_page_counts(tmp_path: Path) -> None:
    files = {**FILES, "alone.md": "# Not alone\n"}
    files["index.md"] += "\n[Not alone](alone.md)\n"
    assert problems_of(tmp_path, files) == []


def test_each_lesson_leads_to_the_next(tmp_path: Path) -> None:
    files = {**FILES, "learn/later.md": SECOND.replace("order: 1", "order: 2")}
    assert problems_of(tmp_path, files) == []


def test_a_page_that_a_broken_file_mentions_is_not_alone(tmp_path: Path) -> None:
    files = changed("index.md", "# Welcome", "---\ntitle: [x\n---\n# Welcome")
    assert len(problems_of(tmp_path, files)) == 1
