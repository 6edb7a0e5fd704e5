"""What the measurements of the first answer share: the measured site, and browsers to open it."""

from __future__ import annotations

import json
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from typing import Any, NamedTuple

from playwright.sync_api import Page, Playwright

from build_tools.benchmarks.host import Host, Link, serve
from build_tools.benchmarks.table import PLAIN
from build_tools.browser.runtime import compressed_files, runtime_files
from build_tools.engines.chromium import QUIET_FLAGS

SCRIPTS = (Path(__file__).parent / "page", Path(__file__).parents[1] / "browser" / "page")


class Start(NamedTuple):
    """A way to start Python: the worker's script, and which way the worker is asked to take."""

    script: str
    way: str


STARTS = {
    PLAIN: Start("plain_worker.js", ""),
    "compiled": Start("worker.js", "compiled"),
    "image": Start("worker.js", "image"),
}

REQUEST = json.dumps(
    {
        "work": "calculate",
        "calculator": "hardness-setting",
        "inputs": {"hardness": "18 gpg", "iron": "0.3 mg/L"},
        "units": "us",
    }
)

SLOW_LINKS = {"1.6 Mbit/s, 150 ms": Link(1.6, 150), "9 Mbit/s, 60 ms": Link(9, 60)}


class Bench:
    """What every measurement needs: the measured site, Chromium, and how often to measure."""

    def __init__(self, root: Path, folder: Path, rounds: int, playwright: Playwright) -> None:
        self.root = root
        self.rounds = range(rounds)
        self._folder = folder
        self._chromium = playwright.chromium
        self._cache = compressed_files(root)
        self._answer = ""
        runtime = runtime_files(root)
        self._runtime = f"{runtime.folder_name}/"
        self._site = self.new_folder()
        runtime.copy_to(self._site)
        for scripts in SCRIPTS:
            shutil.copytree(scripts, self._site, dirs_exist_ok=True)

    def new_folder(self) -> Path:
        """Return a folder that lasts as long as the measurements."""
        return Path(tempfile.mkdtemp(dir=self._folder))

    def host(
        self, encoding: str = "br", link: Link | None = None, site: Path | None = None
    ) -> AbstractContextManager[Host]:
        """Serve a site: the page that measures, or another."""
        return serve(site or self._site, self._cache, encoding=encoding, link=link)

    @property
    def program(self) -> str:
        """The Chromium to start."""
        return os.environ.get("HANDBOOK_BROWSER") or self._chromium.executable_path

    @contextmanager
    def chromium(self, profile: Path | None = None, program: Path | None = None) -> Iterator[Page]:
        """Start Chromium, with a new profile if none is given."""
        profile = profile or self.new_folder()
        context = self._chromium.launch_persistent_context(
            profile, executable_path=program or self.program, args=list(QUIET_FLAGS)
        )
        try:
            yield context.pages[0]
        finally:
            context.close()

    def first_answer(self, evaluate: Callable[[str, list], Any], name: str) -> float:
        """Start Python in a page that measures; return the milliseconds to its first answer."""
        start = STARTS[name]
        given = [start.script, {"runtime": self._runtime, "way": start.way}, REQUEST]
        told = evaluate("(given) => globalThis.firstAnswer(...given)", given)
        if told["answer"] != (self._answer or told["answer"]):
            raise ValueError(f"The start {name!r} gives another answer: {told['answer']}")
        self._answer = told["answer"]
        return told["milliseconds"]


def say(words: str) -> None:
    """Tell how far it is."""
    print(words, file=sys.stderr, flush=True)
