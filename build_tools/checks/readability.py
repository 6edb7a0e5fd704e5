"""A lesson is read by new hires, some of whom learned English late: its sentences stay easy."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, shortened
from build_tools.content.reading_grade import reading_of

#: Guides to plain language for the public ask for grade 7 or 8; half of all adults read no better.
HIGHEST_GRADE = 8


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each lesson that is too hard to read."""
    for page in handbook.lessons.values():
        texts = [piece.text for one in page.passages() for piece in one.markdown.pieces]
        reading = reading_of(texts)
        if reading is None or round(reading.grade, 1) <= HIGHEST_GRADE:
            continue
        longest = shortened(reading.longest.replace("\ue000", "…"), 50)
        said = (
            f"the lesson has the reading grade {reading.grade:.1f} by Flesch and Kincaid (expected "
            f"at most {HIGHEST_GRADE}; its longest sentence has {reading.words} words: "
            f'"{longest}")'
        )
        yield Problem(page.file, 1, said)
