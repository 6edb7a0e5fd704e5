"""Guides out of the tool's own documents (docs/) as pages for trainers."""

from __future__ import annotations

import re
from pathlib import Path

from build_tools.pages.render import Library

FOLDER = "trainers"
DOCUMENTS = Path(__file__).parents[2] / "docs"
#: Document -> what the section's page says of it.
NOTES = {
    "authoring": "From a changed salt price to a new calculator, step by step.",
    "shops": "Your own name, water and units over the shipped pages.",
    "print": "The handbook, a short path, and the sheets to carry and to sign.",
    "class-pack": "Question sheets with their key, and questions for learning systems.",
}
_HEADING = re.compile(r"^# (.+)$", re.MULTILINE)
_LINK = re.compile(r"\[([^\]]+)\]\(([^)\s]+?\.md)(#[^)\s]*)?\)")
_FENCE = re.compile(r"^\s*(`{3,})")


def addresses() -> dict[str, str]:
    """Return what is to be said of each guide by the address of its page."""
    return {f"{FOLDER}/{name}.md": note for name, note in NOTES.items()}


def pages(library: Library) -> dict[str, str]:
    """Return the Markdown of each guide by its address, and name their titles."""
    found = {}
    for name in NOTES:
        text = (DOCUMENTS / f"{name}.md").read_text("utf-8")
        address = f"{FOLDER}/{name}.md"
        library.name(address, _HEADING.search(text)[1])
        found[address] = linked(text)
    return found


def linked(text: str) -> str:
    """Return a document whose links lead to guides; those to other documents become their names.

    What stands between fences is left as it is.
    """
    lines, fence = [], ""
    for line in text.split("\n"):
        marks = _FENCE.match(line)
        if marks and (not fence or marks[1] == fence):
            fence = "" if fence else marks[1]
        lines.append(line if fence else _LINK.sub(_link, line))
    return "\n".join(lines)


def _link(match: re.Match[str]) -> str:
    words, target, _ = match.groups()
    if target.removesuffix(".md") in NOTES:
        return match[0]
    file = f"docs/{target}" if not target.startswith("../") else target.removeprefix("../")
    return f"`{file}`" if words.strip("`") in (target, file) else f"{words} (`{file}`)"
