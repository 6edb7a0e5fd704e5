"""The record of a set-up: words for the person, full output for the file."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

from build_tools.set_up.failure import Failure, cause_of

try:
    import fcntl
except ImportError:  # Windows has none; there two set-ups at once are not kept apart.
    fcntl = None


class Log:
    """Says each step on stderr and keeps all output in .cache/set-up.log.

    The open file is also the lock that keeps a second set-up of the same folder waiting. Programs
    that a step starts write to the same open file, so the lock holds as long as any of them lives,
    even when this process was killed.
    """

    def __init__(self, root: Path):
        self.root = root
        self.path = root / ".cache" / "set-up.log"
        self.file = None

    def __enter__(self):
        """Take the lock, waiting for it if need be, and start an empty record."""
        self.path.parent.mkdir(exist_ok=True)
        self.file = open(str(self.path), "ab", buffering=0)
        if fcntl:
            try:
                fcntl.flock(self.file, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                print("Waiting for another set-up of this folder ...", file=sys.stderr)
                fcntl.flock(self.file, fcntl.LOCK_EX)
        self.file.truncate(0)
        self.started = time.monotonic()
        return self

    def __exit__(self, kind, *_) -> None:
        """Say how long a set-up took that came to its end, and let the next one in."""
        if kind is None:
            self.say(f"Set up in {time.monotonic() - self.started:.0f} seconds.")
        self.file.close()

    def say(self, words: str) -> None:
        """One line of progress."""
        print(words, file=sys.stderr, flush=True)
        self.file.write((words + "\n").encode("utf-8"))

    def run(self, command, doing: str, environ=None) -> None:
        """Run a program to its end, or fail with a sentence that begins with `doing`."""
        start = self.path.stat().st_size
        self.file.write("$ {}\n".format(" ".join(map(str, command))).encode("utf-8"))
        done = subprocess.run(
            [str(part) for part in command],
            cwd=str(self.root),
            env=environ,
            stdin=subprocess.DEVNULL,
            stdout=self.file,
            stderr=subprocess.STDOUT,
            check=False,
        )
        if done.returncode != 0:
            output = self.path.read_bytes()[start:].decode("utf-8", "replace")
            cause = cause_of(output, self.root)
            if cause is None:
                raise Failure(f"{doing} failed; the end of {self.path} tells why.")
            raise Failure(f"{doing} failed because {cause} (all output: {self.path}).", cause)
