"""The two sides of a comparison: a git revision, the folder of a built edition, or the files now.

A record is made by a process of its own with the calculators of that revision, and with its tool
where that tool can make one.
"""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
import tarfile
import tempfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from itertools import repeat
from pathlib import Path
from typing import Any

from build_tools.comparing.make_record import CONFIG, docs_of, library_of
from build_tools.comparing.record import FORMAT, NAME, edition_of_record
from build_tools.edition import LENGTH, TOOL, edition_of, git
from build_tools.set_up.failure import Failure

#: The module that a revision's own tool must have to make its record.
MAKER = "build_tools/comparing/make_record.py"


@dataclass(frozen=True)
class Side:
    """One side. folder: that of a built edition. commit: the whole hash; neither: the files now."""

    folder: Path | None = None
    commit: str = ""


NOW = Side()


def side(name: str, root: Path) -> Side:
    """Return what a name on the command line stands for; `root` is the folder of mkdocs.yml."""
    folder = Path(name)
    is_plain = not name.startswith((".", "/", "~")) and not folder.is_absolute()
    commit = git(root, "rev-parse", "--verify", "--quiet", f"{name}^{{commit}}").strip()
    if folder.is_dir() and (commit and is_plain):
        raise Failure(
            f"“{name}” is both a folder and a revision: write ./{name} for the folder, or {name}^0 "
            "for the revision."
        )
    if folder.is_dir():
        return Side(folder=folder)
    if commit:
        return Side(commit=commit)
    raise Failure(
        f"There is no revision and no folder “{name}” (expected a revision of git, such as HEAD, "
        "or the folder of a built handbook)."
    )


def records(sides: list[Side], root: Path) -> list[tuple[dict[str, Any], str]]:
    """Return the record of each side and what it is called; they are made side by side."""
    with (
        tempfile.TemporaryDirectory(prefix="handbook-compare-") as name,
        ThreadPoolExecutor() as pool,
    ):
        works = [Path(name, str(place)) for place in range(len(sides))]
        return [*pool.map(_record, sides, repeat(root), works)]


def _record(one: Side, root: Path, work: Path) -> tuple[dict[str, Any], str]:
    """Return a side's record and what the side is called; `work` is a folder to be made."""
    work.mkdir()
    if one.folder is not None:
        path = one.folder / NAME
        if not path.is_file():
            raise Failure(
                f"The folder {one.folder} holds no {NAME}: it is no built handbook, or one from "
                "before editions had a record. Build it anew, or name its revision."
            )
        record = _read(path)
        return record, f"{one.folder}, {edition_of_record(record).words}"
    output = work / NAME
    if one.commit:
        tree = work / "tree"
        _take_out(root, one.commit, tree)
        date = git(root, "show", "--no-patch", "--format=%cs", one.commit).strip()
        words = f"revision {one.commit[:LENGTH]}, {date}"
        said = _make(tree, work, [str(output), date, one.commit[:LENGTH], "committed"])
    else:
        config = root / CONFIG
        edition = edition_of(config, docs_of(config), library_of(config))
        word = "changed" if edition.changed else "committed" if edition.in_git else "sources"
        words = "the files as they are now"
        date = edition.date.isoformat()
        said = _make(root, work, [str(output), date, edition.revision, word])
    if not output.is_file():
        raise Failure(_refused(words, said.strip()))
    return _read(output), words


def _take_out(root: Path, commit: str, tree: Path) -> None:
    """Write the files of a commit, those in and below `root`, into a folder."""
    if not git(root, "ls-tree", "--name-only", commit, CONFIG):
        raise Failure(
            f"The revision {commit[:LENGTH]} has no {CONFIG} in this folder: it is older than this "
            "handbook."
        )
    command = ["git", "-C", str(root), "archive", "--format=tar", commit]
    packed = subprocess.run(command, capture_output=True, check=True).stdout
    with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
        archive.extractall(tree, filter=_within)


def _within(member: tarfile.TarInfo, folder: str) -> tarfile.TarInfo | None:
    """Return a file of a commit as it may be written; a link that leads elsewhere is left out."""
    try:
        return tarfile.data_filter(member, folder)
    except tarfile.FilterError:
        return None


def _make(folder: Path, work: Path, arguments: list[str]) -> str:
    """Make the record of the handbook in a folder, in a process; return what it says of failure."""
    code = [str(TOOL)]
    if (folder / MAKER).is_file() and (folder / "calculators").is_dir():
        code = [str(folder)]
    elif (folder / "calculators").is_dir():
        shutil.copytree(folder / "calculators", work / "code" / "calculators")
        code.insert(0, str(work / "code"))
    done = subprocess.run(
        [sys.executable, "-P", "-m", "build_tools.comparing.make_record", str(folder), *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=work,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(code), "PYTHONIOENCODING": "utf-8"},
    )
    return done.stderr


def _refused(words: str, said: str) -> str:
    """Return the sentence for a handbook whose record cannot be made."""
    if said.startswith("Traceback"):
        said = f"It is too old for this tool, or too new ({said.splitlines()[-1]})."
    return f"The numbers of {words} cannot be told. {said}"


def _read(path: Path) -> dict[str, Any]:
    try:
        record = json.loads(path.read_text("utf-8"))
    except ValueError:
        raise Failure(f"{path} is no record of an edition: build that edition anew.") from None
    if not isinstance(record, dict) or record.get("format") != FORMAT:
        raise Failure(
            f"{path} is a record of another format (expected {FORMAT}): build that edition anew "
            "with this tool, or name its revision."
        )
    return record
