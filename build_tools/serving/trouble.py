"""What kept a build from its end, as a list for the page: problems of the sources, or sentences."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from mkdocs.exceptions import Abort, MkDocsException, PluginError

from build_tools.content.problems import Problem, parts, summary


class ContentProblems(PluginError):
    """Problems of the sources; MkDocs prints their lines, and ends the build."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__(summary(problems))
        self.problems = problems


@dataclass(frozen=True)
class Told:
    """One thing to tell on the page; without a file it is a sentence alone."""

    what: str
    file: str = ""
    line: int = 0
    expected: str = ""
    nearest: str = ""


class Said(logging.Handler):
    """Keeps what MkDocs warns of during a build."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.sentences: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Note one message."""
        self.sentences.append(record.getMessage())


@contextmanager
def listening() -> Iterator[Said]:
    """Keep what MkDocs warns of inside the block."""
    said, logger = Said(), logging.getLogger("mkdocs")
    logger.addHandler(said)
    try:
        yield said
    finally:
        logger.removeHandler(said)


def told(error: BaseException, said: list[str], root: Path) -> list[Told]:
    """Return what an error that ended a build means; `said` is what MkDocs warned of before."""
    cause = error.__context__ if isinstance(error, Abort) else error
    if isinstance(cause, ContentProblems):
        return [_problem(one) for one in cause.problems]
    sentences = [Told(one) for one in dict.fromkeys(said)]
    if cause is None:  # MkDocs ends with how many warnings or wrong settings there were
        return sentences or [Told(str(error))]
    if isinstance(cause, MkDocsException):
        return [Told(one) for one in dict.fromkeys([*said, str(cause)])]
    return [*sentences, python_error(cause, root)]


def python_error(error: BaseException, root: Path) -> Told:
    """Return a Python error as a sentence, with the last place of the tool's own code."""
    words = " ".join(str(error).split()) or "no more is known"
    what = f"Python stopped with {type(error).__name__}: {words} (expected code that runs)"
    for frame in reversed(traceback.extract_tb(error.__traceback__)):
        path = Path(frame.filename)
        if path.is_relative_to(root) and ".venv" not in path.relative_to(root).parts:
            return Told(what, path.relative_to(root).as_posix(), frame.lineno or 1)
    return Told(what)


def _problem(problem: Problem) -> Told:
    what, expected, nearest = parts(problem)
    return Told(what, problem.file, problem.line, expected, nearest)
