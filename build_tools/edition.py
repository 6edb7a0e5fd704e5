"""Which edition the handbook is: the day it was made, and the revision of its sources."""

from __future__ import annotations

import datetime
import hashlib
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from babel.dates import format_date
from mkdocs.utils import get_build_datetime

from build_tools.language.speaking import say, spoken

TOOL = Path(__file__).parents[1]
#: The code that the pages are made with, in the tool's folder.
CODE = (TOOL / "calculators", TOOL / "build_tools")
#: So many characters of a hash stand for it.
LENGTH = 8


@dataclass(frozen=True)
class Edition:
    """An edition: `words` is for people.

    revision: the commit in short, or a digest of the sources where there is no git. changed:
    whether there were changes that no commit has.
    """

    date: datetime.date
    revision: str
    in_git: bool = True
    changed: bool = False

    @property
    def day(self) -> str:
        """The day in words, such as "November 25, 2026"."""
        return format_date(self.date, "long", locale=spoken())

    @property
    def source(self) -> str:
        """What it was made from, such as "revision 2b637838 with uncommitted changes"."""
        if not self.in_git:
            return say("sources {revision}", revision=self.revision)
        if self.changed:
            return say("revision {revision} with uncommitted changes", revision=self.revision)
        return say("revision {revision}", revision=self.revision)

    @property
    def words(self) -> str:
        """The whole of it, such as "November 25, 2026, revision 2b637838"."""
        return f"{self.day}, {self.source}"


def edition_of(config: Path, docs: Path, library: Path | None = None) -> Edition:
    """Return the edition that a build now makes.

    config: the shop's mkdocs.yml. docs: the folder of its sources. library: the sources that it
    draws on; their revision then stands behind its own. The day is that of SOURCE_DATE_EPOCH where
    it is set.
    """
    if library is not None:
        own, drawn = edition_of(config, docs), edition_of(library.parent / config.name, library)
        revision = f"{own.revision}+{drawn.revision}"
        in_git, changed = own.in_git and drawn.in_git, own.changed or drawn.changed
        return Edition(own.date, revision, in_git, changed)
    date = get_build_datetime().date()
    commit = git(config.parent, "rev-parse", "--verify", "--quiet", "HEAD")
    if not commit or not git(config.parent, "ls-files", "--", str(config)):
        digest = digest_of_sources(config, docs)
        return Edition(date, digest, in_git=False)
    repository = Path(git(config.parent, "rev-parse", "--show-toplevel").strip())
    made_from = (config, docs, *(one for one in CODE if one.is_relative_to(repository)))
    changed = git(config.parent, "status", "--porcelain", "--", *map(str, made_from))
    return Edition(date, commit[:LENGTH], changed=bool(changed))


def digest_of_sources(config: Path, docs: Path) -> str:
    """Return what is another for any change of the sources or the calculators."""
    digest = hashlib.sha256(config.read_bytes())
    for name, path in _sources(docs):
        digest.update(f"{name} {hashlib.sha256(path.read_bytes()).hexdigest()}\n".encode())
    return digest.hexdigest()[:LENGTH]


def _sources(docs: Path) -> Iterator[tuple[str, Path]]:
    """Yield the name and the path of each file, in an order that no machine changes."""
    code = CODE[0]
    found = {f"code/{path.relative_to(code).as_posix()}": path for path in code.rglob("*.py")}
    found |= {
        f"docs/{path.relative_to(docs).as_posix()}": path
        for path in docs.rglob("*")
        if path.is_file() and not path.name.startswith(".")
    }
    yield from sorted(found.items())


def git(folder: Path, *arguments: str) -> str:
    """Return what git says; nothing where there is no git, or it refuses."""
    command = ["git", "-C", str(folder), "-c", "core.quotePath=false", *arguments]
    try:
        done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8")
    except OSError:
        return ""
    return done.stdout if done.returncode == 0 else ""
