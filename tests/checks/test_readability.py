"""A lesson that is too hard to read is told with its grade and its longest sentence."""

from __future__ import annotations

from pathlib import Path

from tests.content.small_shop import changed, problems_of

HARD = (
    "Regenerated installations unavoidably necessitate considerable additional investigation "
    "regarding simultaneous administrative responsibilities and organizational particularities."
)


def test_a_hard_lesson_is_told(tmp_path: Path) -> None:
    files = changed("learn/hardness.md", "Go on to", f"{HARD}\n\nGo on to")
    assert problems_of(tmp_path, files) == [
        "docs_src/learn/hardness.md:1: the lesson has the reading grade 12.6 by Flesch and "
        "Kincaid (expected at most 8; its longest sentence has 14 words: "
        '"Regenerated installations unavoidably necessitate…")'
    ]


def test_headings_and_tables_do_not_count(tmp_path: Path) -> None:
    table = f"| {HARD[:-1]} | b |\n| --- | --- |\n| {HARD[:-1]} | b |\n"
    files = changed("learn/hardness.md", "Go on to", f"## {HARD[:-1]}\n\n{table}\nGo on to")
    assert problems_of(tmp_path, files) == []
