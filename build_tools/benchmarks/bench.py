"""What the measurements of the first answer share: the measured site, and browsers to open it."""

from __future__ import annotations

import json
import os
import queue
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import quote

from build_tools.benchmarks.host import Host, Link, serve
from build_tools.benchmarks.table import PLAIN
from build_tools.browser.runtime import compressed_files, runtime_files
from build_tools.engines.chromium import QUIET_FLAGS
from build_tools.pages.assets import find_assets
from build_tools.set_up.browser import installed
from build_tools.set_up.failure import Failure

PAGE = Path(__file__).parent / "page"


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

# A page that tells nothing for so long never will.
SECONDS_TO_WAIT = 300


class Bench:
    """What every measurement needs: the measured site, Chromium, and how often to measure."""

    def __init__(self, root: Path, folder: Path, rounds: int) -> None:
        self.root = root
        self.rounds = range(rounds)
        self.program = os.environ.get("HANDBOOK_BROWSER") or installed()
        self._folder = folder
        self._cache = compressed_files(root)
        self._answer = ""
        runtime = runtime_files(root)
        self._runtime = f"{runtime.folder_name}/"
        self._site = self.new_folder()
        runtime.copy_to(self._site)
        shutil.copytree(PAGE, self._site, dirs_exist_ok=True)
        shutil.copy(find_assets().files["page/worker.js"], self._site)

    def new_folder(self) -> Path:
        """Return a folder that lasts as long as the measurements."""
        return Path(tempfile.mkdtemp(dir=self._folder))

    def host(
        self, encoding: str = "br", link: Link | None = None, site: Path | None = None
    ) -> AbstractContextManager[Host]:
        """Serve a site: the page that measures, or another."""
        return serve(site or self._site, self._cache, encoding=encoding, link=link)

    def given(self, name: str) -> dict[str, str]:
        """Return what a page is told that is to measure a start."""
        return {**STARTS[name]._asdict(), "runtime": self._runtime, "request": REQUEST}

    def address(self, host: Host, name: str, **more: Any) -> str:
        """Return the address of the page that measures a start and tells it."""
        return f"{host.address}#{quote(json.dumps({**self.given(name), **more}))}"

    def milliseconds(self, told: dict[str, Any], name: str) -> float:
        """Return what a page has measured, if its answer is the one that all others gave."""
        if told["answer"] != (self._answer or told["answer"]):
            raise Failure(f"The start {name!r} gives another answer: {told['answer']}")
        self._answer = told["answer"]
        return told["milliseconds"]

    def in_chromium(
        self,
        host: Host,
        address: str,
        *,
        profile: Path | None = None,
        program: Path | None = None,
        when_it_begins: Callable[[], None] = lambda: None,
        afterwards: Callable[[], None] = lambda: None,
    ) -> dict[str, Any]:
        """Open a page in a new process, with a new profile if none is given; return what it tells.

        when_it_begins: called right before the page measures, afterwards: while it still stands.
        """
        messages: queue.Queue[dict[str, Any]] = queue.Queue()

        def hear(message: dict[str, Any]) -> None:
            if message["type"] == "begins":
                when_it_begins()
            else:
                messages.put(message)

        host.hear = hear
        flags = ["--headless=new", f"--user-data-dir={profile or self.new_folder()}", *QUIET_FLAGS]
        process = subprocess.Popen(
            [program or self.program, *flags, address],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            told = messages.get(timeout=SECONDS_TO_WAIT)
            afterwards()
        except queue.Empty:
            raise Failure(f"Chromium told nothing for {SECONDS_TO_WAIT} seconds.") from None
        finally:
            process.terminate()  # which lets it put away what it keeps for the next visit
            process.wait()
        if told["type"] == "failed":
            raise Failure(f"The page that measures says: {told['reason']}")
        return told


def say(words: str) -> None:
    """Tell how far it is."""
    print(words, file=sys.stderr, flush=True)
