"""Stated answers of worked examples, rewritten to what the calculators say now."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from build_tools.authoring.template import scalar
from build_tools.checks.examples import right_answer
from build_tools.content.entries import Example
from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.set_up.failure import Failure
from calculators import CALCULATORS
from calculators.quantities import QuantityError


@dataclass(frozen=True)
class Renewed:
    """A stated answer that is no longer right: where it is, what it states, what is right."""

    file: str
    line: int
    example: str
    answer: str
    stated: str
    right: str

    def __str__(self) -> str:
        where = f"{self.file}:{self.line}"
        said = f'{where}: "{self.answer}" of "{self.example}": {self.stated} -> {self.right}'
        return said.replace("\u00a0", " ")


def renew(handbook: Handbook, root: Path) -> list[Renewed]:
    """Rewrite every stated answer that is another one now; nothing is written if one cannot be."""
    if handbook.problems:
        raise Failure("Some sources could not be read: the command check tells which.")
    found = sorted(stale(handbook), key=lambda one: (one.file, one.line))
    texts: dict[str, list[str]] = {}
    for one in found:
        lines = texts.setdefault(one.file, _lines(root / one.file))
        lines[one.line - 1] = _written(lines[one.line - 1], one)
    for file, lines in texts.items():
        (root / file).write_text("".join(lines), encoding="utf-8", newline="")
    return found


def stale(handbook: Handbook) -> Iterator[Renewed]:
    """Yield each stated answer that is not the computed one; what cannot be answered is left."""
    values = Values(handbook)
    for example in handbook.examples.values():
        calculator = CALCULATORS.get(example.content.calculate)
        if handbook.is_shipped(example) or calculator is None:
            continue
        if not {*example.content.given} <= {*_names(calculator.inputs)}:
            continue
        computed = values.calculators.answers(example)["values"]
        for output in calculator.outputs:
            stated = example.content.answers.get(output.name)
            if stated is None or output.name not in computed:
                continue
            try:
                right = right_answer(stated, output, computed[output.name])
            except QuantityError:
                right = computed[output.name]["shown"]
            if right:
                yield _renewed(example, output.name, stated, right)


def _renewed(example: Example, name: str, stated: str, right: str) -> Renewed:
    line = example.line("answers", name)
    return Renewed(example.file, line, example.id, name, stated, right.replace("\u00a0", " "))


def _names(declared) -> Iterator[str]:
    return (one.name for one in declared)


def _lines(file: Path) -> list[str]:
    with file.open(encoding="utf-8", newline="") as opened:  # line ends stay as they are
        return opened.read().splitlines(keepends=True)


def _written(line: str, one: Renewed) -> str:
    """Return the line of an answer with the right one; what stands behind it on the line stays."""
    value = r"""("[^"]*"|'[^']*'|[^#\r\n]*?)([ \t]*(?:#.*)?[\r\n]*)$"""
    pattern = rf"^(\s*{re.escape(one.answer)}:[ \t]+){value}"
    new, count = re.subn(pattern, lambda found: f"{found[1]}{scalar(one.right)}{found[3]}", line)
    if not count:
        raise Failure(
            f'{one.file}:{one.line}: "{one.answer}" of "{one.example}" does not stand on a line of '
            f"its own, so it is left: write {one.right} there yourself. No file was changed."
        )
    return new
