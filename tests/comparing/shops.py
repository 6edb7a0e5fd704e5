"""The small second shop in a folder of its own, to be changed and compared."""

from __future__ import annotations

import datetime
import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from build_tools.comparing.compared import Comparison, Found, compare
from build_tools.comparing.record import record_of
from build_tools.content.handbook import load_handbook
from build_tools.edition import Edition
from tests.pages.conftest import MAIN, SECOND

DAY = datetime.date(2026, 11, 25)


@dataclass(frozen=True)
class ShopFolder:
    """A folder with the sources of a shop."""

    root: Path

    @property
    def config(self) -> Path:
        """The shop's mkdocs.yml."""
        return self.root / "mkdocs.yml"

    def path(self, name: str) -> Path:
        """Return a source by its name in docs_src."""
        return self.root / "docs_src" / name

    def change(self, name: str, old: str, new: str) -> None:
        """Put one text in the place of another, which must be there once."""
        text = self.path(name).read_text("utf-8")
        assert text.count(old) == 1, (name, old)
        self.path(name).write_text(text.replace(old, new), "utf-8", newline="\n")

    def record(self) -> dict[str, Any]:
        """Return the record of the sources as they are, with this process's calculators."""
        handbook = load_handbook(self.root / "docs_src", self.root)
        assert handbook.problems == []
        return record_of(handbook, Edition(DAY, "2b637838"))

    def git(self, *arguments: str) -> str:
        """Run git as somebody; return what it says."""
        somebody = ["-c", "user.name=Somebody", "-c", "user.email=somebody@handbook.example"]
        command = ["git", "-C", str(self.root), *somebody, *arguments]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout.strip()

    def commit(self) -> str:
        """Commit everything; return the hash."""
        if not (self.root / ".git").exists():
            self.git("init", "--quiet", "--initial-branch=trunk")
        self.git("add", "--all")
        self.git("commit", "--quiet", "--message", "Change")
        return self.git("rev-parse", "HEAD")


def copy_of_second_shop(folder: Path) -> ShopFolder:
    """Return a copy of the second shop."""
    folder.mkdir(parents=True)
    shutil.copytree(SECOND.parent / "docs_src", folder / "docs_src")
    text = SECOND.read_text("utf-8").replace("../../mkdocs.yml", MAIN.as_posix())
    (folder / "mkdocs.yml").write_text(text, "utf-8")
    return ShopFolder(folder)


def compared(old: dict[str, Any], new: dict[str, Any]) -> Comparison:
    """Return what changed between two records."""
    return compare(old, new, "the old one", "the new one")


def told(found: list[Found]) -> set[tuple[str, str | None, str | None]]:
    """Return (page, old, new) of changed numbers."""
    return {
        (one.page, *(side and side[1].text for side in (one.change.old, one.change.new)))
        for one in found
    }


def causes(found: list[Found]) -> set[tuple[str, ...]]:
    """Return the names of the reasons of changes."""
    return {tuple(reason.name for reason in one.reasons) for one in found}
