"""A lesson without a part that lessons need, or with too much of it, is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import changed, problems_of

LESSON = "learn/hardness.md"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "minutes: 10",
            "minutes: 13",
            "4: the lesson takes 13 minutes (expected 5 to 12; divide it, or add to it)",
        ),
        (
            "minutes: 10",
            "minutes: 4",
            "4: the lesson takes 4 minutes (expected 5 to 12; divide it, or add to it)",
        ),
        (
            ", name the units]",
            "]",
            "6: the lesson names 2 of what can be done now (expected at least 3)",
        ),
        (
            ", {ask: How?, answer: So.}]",
            "]",
            "8: the lesson has 2 questions (expected 3)",
        ),
        (
            "{ask: How?, answer: So.}]",
            "{ask: How?, answer: So.}, {ask: And?, answer: So.}]",
            "8: the lesson has 4 questions (expected 3)",
        ),
        (
            "```picture\n",
            "```text\n",
            '1: the lesson has no picture (expected at least one block "picture")',
        ),
    ],
)
def test_what_a_lesson_lacks_is_told(tmp_path: Path, old: str, new: str, said: str) -> None:
    assert problems_of(tmp_path, changed(LESSON, old, new)) == [f"docs_src/{LESSON}:{said}"]


@pytest.mark.parametrize("minutes", [5, 12])
def test_the_shortest_and_the_longest_lesson_may_stand(tmp_path: Path, minutes: int) -> None:
    assert problems_of(tmp_path, changed(LESSON, "minutes: 10", f"minutes: {minutes}")) == []


def test_a_lesson_without_a_worked_example_is_told(tmp_path: Path) -> None:
    files = changed(LESSON, 'A setting of {{ example("gannet-lane").setting }}.', "A setting.")
    start, end = files[LESSON].index("```worked-example"), files[LESSON].index("Go on to")
    files[LESSON] = files[LESSON][:start] + files[LESSON][end:]
    assert problems_of(tmp_path, files) == [
        f"docs_src/{LESSON}:1: the lesson has no worked example (expected at least one block "
        '"worked-example")'
    ]
