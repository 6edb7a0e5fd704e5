"""The record of an edition: its written pages with their numbers marked, and what the marks mean.

It is made from the loaded handbook, without MkDocs' rendering, and lies at the root of a built
site. See docs/compare.md for what it holds.
"""

from __future__ import annotations

import datetime
import hashlib
import json
import re
from pathlib import Path
from typing import Any

from build_tools.comparing.causes import file_named
from build_tools.comparing.formulas import digest_of_all
from build_tools.comparing.marks import FIRST
from build_tools.comparing.tracing import Tracing
from build_tools.content.handbook import Handbook
from build_tools.content.layers import DATA_FILES
from build_tools.content.unit_marks import own
from build_tools.content.values import Values
from build_tools.edition import CODE, Edition
from build_tools.language.languages import LANGUAGES
from build_tools.pages import guides
from build_tools.pages.site import write_site

NAME = "edition-record.json"
#: A record of another format is not read.
FORMAT = 1
#: What stands in for the folder of the browser's Python, which no number depends on.
RUNTIME = "runtime"
#: What is left out of the pages: the strokes of pictures, and what only scripts read.
_STROKES = re.compile(r'(<svg\b[^>]*?\s)(aria-label="[^"]*")[^>]*>.*?</svg>', re.DOTALL)
_HEADING = re.compile(r"^# ", re.MULTILINE)
_FOR_SCRIPTS = re.compile(r" data-exercise='[^']*'")


def record_of(handbook: Handbook, edition: Edition) -> dict[str, Any]:
    """Return the record of an edition of a handbook."""
    traced = Tracing(handbook)
    site = write_site(handbook, Values(handbook, traced), RUNTIME, None)
    files, digests = _files(handbook)
    titles = {
        page.address: f"# {page.content.title}\n\n"
        for page in (*handbook.pages.values(), *handbook.lessons.values())
        if page.content.title and not _HEADING.search(site.pages[page.address])
    }
    return {
        "format": FORMAT,
        "edition": {
            "date": edition.date.isoformat(),
            "revision": edition.revision,
            "in_git": edition.in_git,
            "changed": edition.changed,
        },
        "units": handbook.units,
        "causes": {name: cause.as_data() for name, cause in traced.causes.found.items()},
        "marks": {"first": FIRST, "sets": [sorted(one) for one in traced.marks.sets]},
        "files": digests,
        "calculators": digest_of_all(),
        "tool": _digest_of_tool(),
        "pages": {
            address: {"file": files.get(address), "text": titles.get(address, "") + shortened(text)}
            for address, text in site.pages.items()
        },
    }


def edition_of_record(record: dict[str, Any]) -> Edition:
    """Return the edition that a record is of."""
    edition = record["edition"]
    date = datetime.date.fromisoformat(edition["date"])
    return Edition(date, edition["revision"], edition["in_git"], edition["changed"])


def write(record: dict[str, Any], path: Path) -> None:
    """Write a record as one line of JSON."""
    text = json.dumps(record, ensure_ascii=False, separators=(",", ":"))
    path.write_text(f"{text}\n", encoding="utf-8", newline="\n")


def shortened(markdown: str) -> str:
    """Return a page without what is no text."""
    return own(_FOR_SCRIPTS.sub("", _STROKES.sub(r"<svg \2></svg>", markdown)))


def _files(handbook: Handbook) -> tuple[dict[str, str], dict[str, str]]:
    """Return the file that the text of each page stands in, and the digest of every source."""
    translated = [entry for code in LANGUAGES for entry in handbook.translation(code).page_entries]
    of_pages = (
        *handbook.procedures.values(),
        *handbook.faults.values(),
        *handbook.checks.values(),
        *handbook.equipment.values(),
        *handbook.practice.values(),
        *handbook.lessons.values(),
        *handbook.pages.values(),
        *translated,
    )
    files = {entry.address: file_named(handbook, entry.file) for entry in of_pages}
    read = {entry.file for entry in (*handbook.entries(), *translated)}
    read |= {handbook.file_name(handbook.source(name)) for name in DATA_FILES}
    paths = {file_named(handbook, name): handbook.root / name for name in read}
    for address in guides.addresses():
        document = guides.DOCUMENTS / Path(address).name
        files[address] = f"{guides.DOCUMENTS.name}/{document.name}"
        paths[files[address]] = document
    return files, {name: _digest(path) for name, path in sorted(paths.items()) if path.is_file()}


def _digest_of_tool() -> str:
    """Return what is another when the code that writes the pages is another."""
    digest = hashlib.sha256()
    folder = CODE[1]
    for path in sorted([*folder.rglob("*.py"), *folder.rglob("*.jinja")]):
        digest.update(f"{path.relative_to(folder).as_posix()} {_digest(path)}\n".encode())
    return digest.hexdigest()[:16]


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:16]
