"""The check goes on while somebody writes."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

from build_tools.authoring.watching import saves
from build_tools.commands import ROOT
from tests.content.small_shop import FILES, write

_WATCH = """
import sys
from pathlib import Path
from build_tools.authoring.commands import check_and_watch
from build_tools.shops.place import Place
folder = Path(sys.argv[1])
check_and_watch(Place(folder / "mkdocs.yml", folder / "docs_src", folder), "lines")
"""


def test_each_save_is_told_once_and_reading_is_none(tmp_path: Path) -> None:
    docs = write(tmp_path, FILES)
    watched = saves(docs)
    next(watched)
    (docs / "facts.yaml").read_text("utf-8")
    (docs / "facts.yaml").write_text(FILES["facts.yaml"] + "\n", "utf-8")
    next(watched)
    (docs / "faults" / "new.yaml").write_text("title: A\n", "utf-8")
    next(watched)
    watched.close()


def test_the_list_follows_the_files(tmp_path: Path) -> None:
    docs = write(tmp_path, FILES)
    command = [sys.executable, "-u", "-c", _WATCH, str(tmp_path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=ROOT) as watching:
        assert watching.stdout.readline() == "No problems found.\n"
        (docs / "shop.yaml").write_text(FILES["shop.yaml"].replace("town:", "twon:"), "utf-8")
        told = [watching.stdout.readline() for _ in range(3)]
        assert told[0] == (
            'docs_src/shop.yaml:1: the key "town" is missing (expected the town it works in)\n'
        )
        assert told[2] == "2 problems.\n"
        (docs / "shop.yaml").write_text(FILES["shop.yaml"], "utf-8")
        assert watching.stdout.readline() == "No problems found.\n"
        os.kill(watching.pid, signal.SIGINT)
        watching.wait(20)
