"""Paths: their pages exist, each once, and Learn shows them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

PATHS = """\
first-visit:
  title: The first visit
  purpose: For a technician of {{ shop.name }} before the first call.
  pages:
    - learn/hardness
    - procedures/first-look
    - equipment/meter-unit
    - work-out/brine-refill
"""
WRONG = [
    (
        "learn/hardness", "learn/hardnes",
        'docs_src/paths.yaml:5: there is no page "learn/hardnes" (expected one of: ',
        'nearest: "learn/hardness")',
    ),
    (
        "procedures/first-look", "learn/hardness",
        'docs_src/paths.yaml:6: the page "learn/hardness" is listed twice (expected each once)', "",
    ),
    (
        "  purpose: For a technician of {{ shop.name }} before the first call.\n", "",
        'docs_src/paths.yaml:1: the key "purpose" is missing '
        "(expected who reads it and what for, in a sentence)", "",
    ),
    (
        "before the first call", "before the first 7 min",
        'docs_src/paths.yaml:3: nothing backs the typed quantity "7 min"', "",
    ),
]  # fmt: skip


def shop(paths: str) -> dict[str, str]:
    return {**FILES, "paths.yaml": paths}


def test_a_shop_with_paths_is_silent(tmp_path: Path) -> None:
    assert problems_of(tmp_path, shop(PATHS)) == []


@pytest.mark.parametrize(("old", "new", "begin", "end"), WRONG)
def test_what_is_wrong_with_paths(tmp_path: Path, old: str, new: str, begin: str, end: str) -> None:
    assert PATHS.count(old) == 1
    [found] = problems_of(tmp_path, shop(PATHS.replace(old, new)))
    assert found.startswith(begin)
    assert found.endswith(end)


def test_a_path_of_no_pages_is_told(tmp_path: Path) -> None:
    [found] = problems_of(tmp_path, shop(PATHS.partition("    - ")[0].rstrip() + " []\n"))
    assert found.startswith('docs_src/paths.yaml:4: "pages"')


def test_texts_link_to_a_path(tmp_path: Path) -> None:
    index = "# Learn\n\nTake [the first](#first-visit) of [the paths](index.md#short-paths).\n"
    files = {**shop(PATHS), "learn/index.md": index}
    assert problems_of(tmp_path / "with", files) == []
    del files["paths.yaml"]
    assert len(problems_of(tmp_path / "without", files)) == 2


def test_learn_shows_the_paths_before_its_lessons(built: Callable[[Path], Path]) -> None:
    page = built(Path(__file__).parents[1] / "second_shop" / "mkdocs.yml") / "learn" / "index.html"
    text = page.read_text("utf-8")
    path, lessons = text.index('id="first-visit"'), text.index('id="all-lessons"')
    assert path < text.index('href="../procedures/set-the-cabinet/"', path) < lessons
