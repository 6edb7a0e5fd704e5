"""A lesson is short, is tried with numbers, shows something, and ends with three questions."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Page
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import read_markdown
from build_tools.content.page_models import LessonFront
from build_tools.content.problems import Problem, asking

#: Less teaches nothing, and more is not read between two calls.
MINUTES = range(5, 13)
QUESTIONS = 3
LEAST_CAN_NOW = 3


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each part that a lesson lacks, or has too much of."""
    for page in handbook.lessons.values():
        if isinstance(page.content, LessonFront):
            yield from _front(page, page.content)
            yield from _blocks(page, handbook.unread)


def _front(page: Page, front: LessonFront) -> Iterator[Problem]:
    if front.minutes not in MINUTES:
        said = f"the lesson takes {front.minutes} minutes"
        wanted = f"{MINUTES[0]} to {MINUTES[-1]}; divide it, or add to it"
        yield page.problem(("minutes",), asking(said, wanted))
    if (count := len(front.can_now)) < LEAST_CAN_NOW:
        said = f"the lesson names {count} of what can be done now"
        yield page.problem(("can_now",), asking(said, f"at least {LEAST_CAN_NOW}"))
    if (count := len(front.questions)) != QUESTIONS:
        said = f"the lesson has {count} {'question' if count == 1 else 'questions'}"
        yield page.problem(("questions",), asking(said, f"{QUESTIONS}"))


def _blocks(page: Page, unread: set[str]) -> Iterator[Problem]:
    words = {fence.word for fence in read_markdown(page.body).fences}
    blocks = (("worked-example", "worked example", "examples"), ("picture", "picture", "pictures"))
    for word, what, group in blocks:
        if word not in words and group not in unread:  # a misspelled block is told as such
            said = asking(f"the lesson has no {what}", f'at least one block "{word}"')
            yield Problem(page.file, 1, said)
