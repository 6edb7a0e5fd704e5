"""Make everything ready for a command, then run it inside the environment."""

from __future__ import annotations

import difflib
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from build_tools.set_up import browser, engines, environment, node, web_server
from build_tools.set_up.failure import Failure, sentence_for
from build_tools.set_up.log import Log

ROOT = Path(__file__).resolve().parents[2]

# Known here, so that a mistyped command is told before anything is installed.
COMMANDS = {
    "serve": "Show the handbook in a browser on this machine; it follows each saved file.",
    "build": "Write the handbook into the folder site, ready for any web host.",
    "check": "Tell every problem in the source files, and write nothing; --watch goes on.",
    "new": "Write a new procedure, fault, lesson, fact, … that explains itself; or a new shop.",
    "update-answers": "Rewrite answers of worked examples that are no longer right; tell each.",
    "schemas": "Make the schemas of the source files anew, in docs/schemas, for editors.",
    "translations": "List what is translated, stale and missing; --strict fails where any is.",
    "work-out": "Work out one calculator, with its working; alone, list them all.",
    "compare": "Tell what a change did: each printed number with its cause, and each text.",
    "class-pack": "Write question sheets with their key, and files for learning systems.",
    "print": "Print the handbook, one path or the sheets to carry, as a PDF file.",
    "check-copy": "Compare a published copy, by its address or folder, with the list of a build.",
    "container": "Write what a container that serves the built site is made from, into a folder.",
    "simulate-homes": "Make the simulated homes anew that are stale, or those of named faults.",
    "benchmark": "Measure on this machine; benchmark --help tells what.",
    "readme-pictures": "Take the pictures that the README shows anew, into docs/pictures.",
    "test": "Run the tests; what follows is passed on to pytest.",
}
#: Commands that need a browser, and what the tests need.
IN_BROWSERS = ("test", "readme-pictures")


class Step(NamedTuple):
    """A part of the set-up that knows whether it is done."""

    is_ready: Callable
    make: Callable


STEPS = (
    Step(environment.packages_ready, environment.install_packages),
    Step(environment.repository_ready, environment.install_repository),
    Step(node.is_ready, node.install),
)

STEPS_FOR_TESTS = STEPS + (Step(environment.tests_ready, environment.install_tests),)


def start(arguments) -> int:
    """Set up and run a command; the answer is the exit code of one that did not get to run."""
    try:
        words = behind_the_shop(arguments)
        if not words or words[0] in ("help", "--help", "-h"):
            print(overview())
            return 0
        if words[0] not in COMMANDS:
            raise Failure(unknown(words[0]))
        signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
        in_browsers = words[0] in IN_BROWSERS or words[:2] == ["benchmark", "first-answer"]
        set_up(ROOT, STEPS_FOR_TESTS if in_browsers else STEPS)
        os.environ.update(settings(ROOT))
        if in_browsers:
            os.environ["HANDBOOK_BROWSER"] = find_browser(ROOT)
            engines.bring(ROOT)
        if arguments[0] == "test":
            web_server.bring(ROOT)
        python = str(environment.interpreter(ROOT))
        return hand_over([python, "-I", "-m", "build_tools.commands"] + arguments)
    except Failure as failure:
        print(failure, file=sys.stderr)
    except OSError as error:
        print(sentence_for(error), file=sys.stderr)
    except KeyboardInterrupt:
        print("Stopped; the same command goes on from here.", file=sys.stderr)
        return 130
    return 1


def behind_the_shop(arguments):
    """Return the command and what follows it, without a `--shop FOLDER` before it."""
    rest = list(arguments)
    while rest and rest[0].split("=")[0] == "--shop":
        del rest[: 1 if "=" in rest[0] else 2]
    return rest


def overview() -> str:
    """The commands, for someone who asks."""
    lines = ["python3 -m build_tools COMMAND, where COMMAND is one of", ""]
    lines += [f"  {name:<17}{what}" for name, what in COMMANDS.items()]
    lines += ["", "The first run sets everything up; COMMAND --help tells a command's options."]
    lines += ["With --shop FOLDER a command works on another shop's handbook: see docs/shops.md."]
    return "\n".join(lines)


def unknown(name: str) -> str:
    """The sentence for a command that does not exist."""
    names = list(COMMANDS)
    near = difflib.get_close_matches(name, names, 1)
    return "There is no command {!r} (the commands are {} and {}{}).".format(
        name, ", ".join(names[:-1]), names[-1], "; nearest: " + near[0] if near else ""
    )


def set_up(root: Path, steps) -> None:
    """Do what is not done yet; on a machine that is set up, this only looks."""
    if all(step.is_ready(root) for step in steps):
        return
    with Log(root) as log:
        for step in steps:
            if not step.is_ready(root):
                step.make(root, log)


def find_browser(root: Path) -> str:
    """The path of a browser for the tests, installing one if there is none."""
    path = browser.find(root)
    if path is None:
        with Log(root) as log:
            path = browser.bring(root, log)
    return path


def settings(root: Path) -> dict:
    """What the environment adds to the settings of the programs that run in it."""
    return {
        "PATH": str(environment.programs(root)) + os.pathsep + os.environ.get("PATH", os.defpath),
        # The theme's advice about a MkDocs that this handbook does not use.
        "NO_MKDOCS_2_WARNING": "1",
    }


def hand_over(command) -> int:
    """Let a command take this process's place, so that it gets the person's Ctrl+C itself."""
    if os.name == "nt":  # There a replaced process would leave the terminal at once.
        return subprocess.call(command)
    sys.stdout.flush()
    os.execv(command[0], command)
    return 0
