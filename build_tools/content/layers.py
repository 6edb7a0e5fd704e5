"""The folders that a handbook is read from: a shop's own, over the library that it draws on.

A file of the shop stands in the place of the library's file of the same path; in the files of many
entries it is each entry that does. What a shop leaves out is not read at all.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from build_tools.diagnosis import finished_calls, measured, simulated_homes
from build_tools.language.languages import LANGUAGES

#: Files that the diagnosis reads and no reader sees; they are no part of the site.
DATA_FILES = (simulated_homes.FILE, finished_calls.FILE, measured.FILE)
#: What of a library is about its own shop, and never about another.
_OF_ITS_SHOP = ("shop.yaml", finished_calls.FILE, measured.FILE)


@dataclass(frozen=True)
class Source:
    """A file to read: where it is, its path in its folder, and whether the library has it.

    instead_of: the library's file in whose place it stands.
    """

    path: Path
    place: str
    shipped: bool = False
    instead_of: Path | None = None


@dataclass(frozen=True)
class Replaced:
    """What a shop puts in the place of something shipped: where, and whether it says the same."""

    file: str
    line: int
    same: bool


def layered(docs_folder: Path, library: Path | None, whole: set[str]) -> list[Source]:
    """Return the files of a handbook in their order.

    whole: the files of many entries, of which both are read, the library's first.
    """
    own = _files(docs_folder)
    shipped = {} if library is None else _files(library)
    found = []
    for place in sorted({*own, *shipped}, key=lambda place: PurePosixPath(place).parts):
        theirs = None if place in _OF_ITS_SHOP else shipped.get(place)
        both = place in whole or place == simulated_homes.FILE
        if theirs and (place not in own or both):
            found.append(Source(theirs, place, shipped=True))
        if place in own:
            found.append(Source(own[place], place, instead_of=None if both else theirs))
    return found


def page_name(place: str) -> str:
    """Return how a shop names a file that it replaces: its path without the ending."""
    return place.rpartition(".")[0] if place.endswith((".md", ".yaml")) else place


def _files(folder: Path) -> dict[str, Path]:
    found = {}
    for path in folder.rglob("*"):
        place = path.relative_to(folder)
        if place.parts[0] in LANGUAGES:
            continue  # see `language.translation`
        if path.is_file() and not any(part.startswith(".") for part in place.parts):
            found[place.as_posix()] = path
    return found
