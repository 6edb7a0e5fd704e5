"""The recipes of the authoring guide, read as a trainer reads them."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

from markdown_it import MarkdownIt

_PATH = re.compile(r"^[\w./-]+/[\w.-]+\.\w+$")
PROMPT = "$ python3 -m build_tools "


@dataclass(frozen=True)
class Step:
    """One block of a recipe: its kind, what it holds, the file named last before it, its line."""

    kind: str
    text: str
    file: str
    line: int

    @property
    def commands(self) -> list[tuple[str, list[str]]]:
        """Return each command of a console block with the lines that it is said to print."""
        found: list[tuple[str, list[str]]] = []
        for line in self.text.splitlines():
            if line.startswith(PROMPT):
                found.append((line.removeprefix(PROMPT), []))
            else:
                found[-1][1].append(line)
        return found

    def done_to(self, folder: Path) -> None:
        """Make the change that a diff block or a whole file tells."""
        file = folder / self.file
        if self.kind != "diff":
            file.write_text(self.text, encoding="utf-8")
            return
        old, new = ("".join(f"{one[1:]}\n" for one in self._lines(sign)) for sign in "-+")
        text = file.read_text("utf-8")
        assert f"\n{text}".count(f"\n{old}") == 1, f"line {self.line}: not once in {self.file}"
        file.write_text(f"\n{text}".replace(f"\n{old}", f"\n{new}")[1:], encoding="utf-8")

    def _lines(self, sign: str) -> list[str]:
        return [one for one in self.text.splitlines() if one.startswith((sign, " "))]


@dataclass
class Recipe:
    """A section of the guide with at least one command to follow."""

    title: str
    steps: list[Step] = field(default_factory=list)


def recipes(guide: Path) -> list[Recipe]:
    """Return the recipes of a guide in their order."""
    found: list[Recipe] = []
    file = ""
    tokens = MarkdownIt().parse(guide.read_text("utf-8"))
    for before, token in zip([None, *tokens], tokens, strict=False):
        if token.type == "inline" and before.type == "heading_open":
            found.append(Recipe(token.content))
        for part in token.children or ():
            if part.type == "code_inline" and _PATH.match(part.content):
                file = part.content
        if token.type == "fence" and token.info:
            found[-1].steps.append(Step(token.info, token.content, file, token.map[0] + 1))
    return [one for one in found if any(step.kind == "console" for step in one.steps)]
