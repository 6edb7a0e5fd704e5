"""New sources: a file, or an entry of one, that explains itself and loads as it is."""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from build_tools.authoring import parts
from build_tools.authoring.schemas import FOLDER, file_name
from build_tools.authoring.template import Known, lines
from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS, SECTIONS
from build_tools.content.page_models import WorkedExample
from build_tools.content.problems import expected
from build_tools.set_up.failure import Failure

#: What can be made -> the folder, or the file of many, that it goes to.
KINDS = {
    "procedure": "procedures",
    "fault": "faults",
    "check": "checks",
    "lesson": "learn",
    "equipment": "equipment",
    "example": "a page",
    "table": "tables",
    "fact": "facts",
    "term": "glossary",
    "exercise": "practice",
}
#: What is still to be done when the lines are filled in.
_NEXT = {
    "procedure": 'Name it where it is needed: under "procedures" of a fault or a check, or under '
    '"go_to" of a decision.',
    "fault": 'Name it under "mistaken_for" of the faults that look like it. Under "simulation" '
    "tell what it changes; then simulate-homes makes its homes.",
    "check": 'Tell under "likelihoods" of each fault that it touches how likely its results are.',
    "lesson": 'Name it under "learn" of the procedures and faults that it helps with.',
    "equipment": 'List it in shop.yaml under "equipment".',
    "example": 'A text uses its answers as {{ example("its-id").its_answer }}.',
    "table": 'List it in shop.yaml under "pocket_sheet", if technicians are to carry it.',
    "fact": "Put it where it belongs in the file, and use it in a text: {{ fact.its_name }}.",
    "term": "Put it where it belongs in the file. Pages link their first use of it by themselves.",
    "exercise": "Its skill lists it; nothing else needs to.",
}
_LONGEST = 80


@dataclass(frozen=True)
class Written:
    """What was written: the file as messages call it, the first line of it, and what is next."""

    file: str
    line: int
    next: str


@dataclass(frozen=True)
class Wanted:
    """What is to be made. name: in the place of the one that the title gives."""

    kind: str
    title: str
    name: str = ""
    calculate: str = ""
    page: str = ""


def make(handbook: Handbook, wanted: Wanted) -> Written:
    """Write a new source. Raises Failure, and writes nothing, where it cannot."""
    title = " ".join(wanted.title.split())
    if not title:
        raise Failure("The title is empty (expected a few words).")
    name = _name(wanted.name or title, "_" if wanted.kind == "fact" else "-")
    kept_in = KINDS[wanted.kind]
    if wanted.kind == "lesson":
        text = "\n".join(parts.lesson(handbook, title, name, _known(handbook))) + "\n"
        return _file(handbook, wanted.kind, f"learn/{name}.md", text)
    if wanted.kind == "example":
        return _example(handbook, wanted, title, name)
    shape = SECTIONS.get(kept_in) or LISTS.get(kept_in, (None,))[0]
    if shape is None:
        raise Failure(f"This handbook takes no {wanted.kind}s yet: nothing was written.")
    given = parts.GIVEN[wanted.kind](handbook, title, wanted.calculate)
    body = lines(shape, given, _known(handbook))
    if kept_in in SECTIONS:
        place = f"{kept_in}/{name}.yaml"
        text = "\n".join([_schema_line(handbook, place, kept_in), *parts.HEAD, *body]) + "\n"
        return _file(handbook, wanted.kind, place, text)
    return _entry(handbook, wanted.kind, kept_in, name, body)


def _name(text: str, between: str) -> str:
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    name = between.join(re.findall(r"[a-z0-9]+", plain.replace("'", "")))
    if not name or (between == "_" and name[0].isdigit()):
        raise Failure(
            f'"{text}" gives no name (expected a title that begins with a letter, or --name with '
            "letters from a to z)."
        )
    if len(name) > _LONGEST:
        raise Failure(
            f"The title gives a name of {len(name)} characters (expected at most {_LONGEST}: add "
            "--name with a shorter one)."
        )
    return name


def _known(handbook: Handbook) -> Known:
    def known(group: str) -> str | None:
        names = sorted(handbook.names(group))
        first = {"pages": "procedures/", "calculators": parts.CALCULATOR}.get(group, "")
        return next((one for one in names if one.startswith(first)), next(iter(names), None))

    return known


def _schema_line(handbook: Handbook, place: str, what: str) -> str:
    schema = handbook.root / FOLDER / file_name(what)
    beside = (handbook.docs_folder / place).parent
    return f"# yaml-language-server: $schema={Path(os.path.relpath(schema, beside)).as_posix()}"


def _file(handbook: Handbook, kind: str, place: str, text: str) -> Written:
    path = handbook.docs_folder / place
    file = handbook.file_name(path)
    beside = str(Path(place).with_suffix(".md" if path.suffix == ".yaml" else ".yaml"))
    for one in map(handbook.source, (place, beside)):  # what the shop draws on is there too
        if one.exists():
            there = handbook.file_name(one)
            raise Failure(
                f"{there}:1: the file is there already, and nothing was written (expected another "
                "title, or --name with another name)."
            )
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as opened:
        opened.write(text)
    return Written(file, 1, _NEXT[kind])


def _entry(handbook: Handbook, kind: str, stem: str, name: str, body: list[str]) -> Written:
    path = handbook.docs_folder / f"{stem}.yaml"
    file = handbook.file_name(path)
    if name in handbook.names(stem):
        known = getattr(handbook, stem).get(name)
        there, line = (known.file, known.line()) if known else (file, 1)
        raise Failure(
            f'{there}:{line}: the {kind} "{name}" is there already, and nothing was written '
            "(expected another title, or --name with another name)."
        )
    entry = [*parts.HEAD, f"{name}:", *(f"  {line}" for line in body)]
    head = [] if path.exists() else [_schema_line(handbook, path.name, stem)]
    return Written(file, _append(path, [*head, *entry]), _NEXT[kind])


def _example(handbook: Handbook, wanted: Wanted, title: str, name: str) -> Written:
    pages = {page.address.removesuffix(".md"): page for page in _pages(handbook)}
    asked = wanted.page.removesuffix(".md")
    asked = asked.removeprefix(f"{handbook.file_name(handbook.docs_folder)}/")
    if asked not in pages:
        said = f'There is no page "{wanted.page}"' if asked else "An example stands in a page"
        raise Failure(f"{said}: add --page with its name {expected(asked, sorted(pages))}.")
    if name in handbook.names("examples") | handbook.names("pictures"):
        raise Failure(
            f'A block with the id "{name}" is there already, and nothing was written (expected '
            "another title, or --name with another name)."
        )
    given = parts.example(handbook, title, name, wanted.calculate)
    block = ["", "```worked-example", *lines(WorkedExample, given, _known(handbook)), "```"]
    path = handbook.docs_folder / pages[asked].address
    if handbook.is_shipped(pages[asked]):
        raise Failure(
            f"{pages[asked].file}:1: the page is a shipped one, and nothing was written (expected a "
            f'page of the shop: copy the file to {handbook.file_name(path)}, and name "{asked}" '
            'under "replaces" in shop.yaml).'
        )
    return Written(handbook.file_name(path), _append(path, block), _NEXT[wanted.kind])


def _pages(handbook: Handbook) -> Iterator[Any]:
    yield from handbook.lessons.values()
    yield from handbook.pages.values()


def _append(path: Path, more: list[str]) -> int:
    """Add lines to a file and return the number of the first that is not empty."""
    old = path.read_text("utf-8") if path.exists() else ""
    old += "" if old.endswith("\n") or not old else "\n"
    with path.open("w", encoding="utf-8", newline="\n") as opened:
        opened.write(old + "\n".join(more) + "\n")
    return old.count("\n") + 1 + (more[0] == "")
