"""The record of a set-up, and the lock that it is."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from build_tools.set_up.failure import Failure
from build_tools.set_up.log import Log

WAITING = "Waiting for another set-up of this folder ...\n"

OPEN = """
import sys
from pathlib import Path
from build_tools.set_up.log import Log
log = Log(Path(sys.argv[1])).__enter__()
print("open", flush=True)
"""


def start(program: str, root: Path) -> subprocess.Popen[str]:
    """Run a small program in the way a set-up runs, apart from this process."""
    return subprocess.Popen(
        [sys.executable, "-c", program, str(root)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def test_output_of_a_program_goes_to_the_file_only(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    with Log(tmp_path) as log:
        log.say("Trying ...")
        log.run(["sh", "-c", "echo much; echo more >&2"], "Trying")
        assert log.path.read_text() == "Trying ...\n$ sh -c echo much; echo more >&2\nmuch\nmore\n"
        assert capfd.readouterr() == ("", "Trying ...\n")


def test_a_failure_with_a_known_cause_tells_what_to_do(tmp_path: Path) -> None:
    with Log(tmp_path) as log:
        with pytest.raises(Failure) as caught:
            log.run(["sh", "-c", "echo npm error code ENOTFOUND; exit 1"], "Fetching it")
        assert str(caught.value) == (
            "Fetching it failed because the package registry cannot be reached: connect to the "
            f"network, then run the same command again (all output: {log.path})."
        )


def test_a_failure_is_not_blamed_on_what_an_earlier_program_printed(tmp_path: Path) -> None:
    with Log(tmp_path) as log:
        log.run(["sh", "-c", "echo ENOTFOUND"], "Trying")
        with pytest.raises(Failure) as caught:
            log.run(["sh", "-c", "exit 3"], "Trying again")
        assert str(caught.value) == f"Trying again failed; the end of {log.path} tells why."


def test_a_second_set_up_waits_for_the_first(tmp_path: Path) -> None:
    with start(OPEN + "sys.stdin.read()", tmp_path) as first:
        assert first.stdout.readline() == "open\n"
        with start(OPEN, tmp_path) as second:
            assert second.stderr.readline() == WAITING
            assert second.poll() is None
            first.stdin.close()
            assert second.stdout.readline() == "open\n"


def test_a_program_that_outlives_its_set_up_is_waited_for(tmp_path: Path) -> None:
    """An installer whose set-up was killed may still be writing into the environment."""
    gate = tmp_path / "gate"
    os.mkfifo(gate)
    installing = OPEN + f'log.run(["sh", "-c", "echo > {gate}; cat {gate}"], "Installing")'
    with start(installing, tmp_path) as first:
        gate.read_text()  # the installer is at work
        first.kill()
        first.wait()
        with start(OPEN, tmp_path) as second:
            assert second.stderr.readline() == WAITING
            assert second.poll() is None
            gate.write_text("go on")
            assert second.stdout.readline() == "open\n"
