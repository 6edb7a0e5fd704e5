"""The list of all files of a site with their hashes, in the format that `sha256sum --check` reads.

A build writes it last. It proves that a copy is complete and undamaged; who could change the copy
could change the list in it too, so a copy is compared with the list of one's own build.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

NAME = "SHA256SUMS"
_LINE = re.compile(r"(\\?)([0-9a-f]{64}) [ *](.+)")
_ESCAPES = {"\\": "\\\\", "\n": "\\n", "\r": "\\r"}
_ESCAPED = re.compile(r"\\([\\nr])")


class BrokenList(Exception):
    """Why a text is no list of hashes, as a sentence."""


def hash_of(path: Path) -> str:
    """Return the SHA-256 of a file; of a file that did not change it is worked out once."""
    found = path.stat()
    return _hash_of(path, found.st_size, found.st_mtime_ns)


@lru_cache(maxsize=100_000)
def _hash_of(path: Path, size: int, saved: int) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def files_of(site: Path) -> Iterator[tuple[str, Path]]:
    """Yield the address and the place of each file of a site but the list, by address."""
    found = ((path.relative_to(site).as_posix(), path) for path in site.rglob("*"))
    yield from sorted((name, path) for name, path in found if name != NAME and path.is_file())


def write_list(site: Path) -> None:
    """Write the list into a site that is otherwise whole."""
    lines = [_line(name, hash_of(path)) for name, path in files_of(site)]
    (site / NAME).write_text("".join(lines), encoding="utf-8", newline="\n")


def read_list(text: str) -> dict[str, str]:
    """Return the hash of each file by its address. Raises BrokenList for what is no list."""
    found: dict[str, str] = {}
    for number, line in enumerate(text.splitlines(), start=1):
        match = _LINE.fullmatch(line)
        if match is None:
            raise BrokenList(f"line {number} is no hash of 64 digits with a file after it")
        name = match[3]
        if match[1]:
            name = _ESCAPED.sub(lambda one: {"n": "\n", "r": "\r"}.get(one[1], one[1]), name)
        found[name] = match[2]
    if not found:
        raise BrokenList("it is empty")
    return found


def _line(name: str, its_hash: str) -> str:
    """Return a line; a name with a line end or a backslash is escaped as sha256sum does."""
    escaped = "".join(_ESCAPES.get(one, one) for one in name)
    return f"{'' if escaped == name else '\\'}{its_hash}  {escaped}\n"
