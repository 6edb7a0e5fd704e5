"""The command as a person types it, on a machine that is set up."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

from build_tools import commands
from build_tools.set_up.start import COMMANDS, ROOT, unknown

BUILD_TOOLS = ROOT / "build_tools"
ENTRY_FILES = [
    BUILD_TOOLS / "__init__.py",
    BUILD_TOOLS / "__main__.py",
    *sorted((BUILD_TOOLS / "set_up").glob("*.py")),
]


def run(*command: str | Path, folder: Path, **settings: str) -> subprocess.CompletedProcess[str]:
    """Run a command from a folder, to its end."""
    environ = {**os.environ, **settings}
    return subprocess.run(
        [sys.executable, *command],
        cwd=folder,
        env=environ,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("path", ENTRY_FILES, ids=lambda path: path.name)
def test_the_entry_is_standard_library_in_the_syntax_of_old_pythons(path: Path) -> None:
    tree = ast.parse(path.read_text(), feature_version=(3, 7))
    for node in ast.walk(tree):
        modules = []
        if isinstance(node, ast.Import):
            modules = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            modules = [node.module]
        for module in modules:
            first = module.split(".")[0]
            assert first in sys.stdlib_module_names or module.startswith("build_tools.set_up")


def test_without_a_command_the_commands_are_listed(tmp_path: Path) -> None:
    answer = run(BUILD_TOOLS, folder=tmp_path)
    assert answer.returncode == 0
    for name, what in COMMANDS.items():
        assert f"  {name:<17}{what}\n" in answer.stdout


def test_help_lists_the_same() -> None:
    assert run("-m", "build_tools", "--help", folder=ROOT).stdout == (
        run("-m", "build_tools", folder=ROOT).stdout
    )


def test_an_unknown_command_is_told_with_the_nearest_one(tmp_path: Path) -> None:
    answer = run(BUILD_TOOLS, "chekc", folder=tmp_path)
    assert (answer.returncode, answer.stdout) == (1, "")
    names = list(COMMANDS)
    commands_are = f"the commands are {', '.join(names[:-1])} and {names[-1]}"
    assert answer.stderr == f"There is no command 'chekc' ({commands_are}; nearest: check).\n"
    assert unknown("xyz") == f"There is no command 'xyz' ({commands_are})."


def test_the_listed_commands_are_those_there_are() -> None:
    assert set(COMMANDS) == set(commands.main.commands)


@pytest.mark.parametrize(
    ("command", "settings"),
    [((BUILD_TOOLS,), {}), (("-m", "build_tools"), {"PYTHONPATH": str(ROOT)})],
    ids=["by its path", "by PYTHONPATH"],
)
def test_it_works_from_any_folder_and_does_nothing_twice(
    tmp_path: Path, command: tuple, settings: dict[str, str]
) -> None:
    """A folder with modules named as ours or our packages' does not lead the command astray."""
    for name in ("click", "mkdocs", "calculators"):
        (tmp_path / f"{name}.py").write_text("raise SystemExit('the wrong module')")
    log = ROOT / ".cache" / "set-up.log"
    before = log.stat().st_mtime_ns if log.exists() else None
    answer = run(*command, "serve", "--help", folder=tmp_path, **settings)
    assert (answer.returncode, answer.stderr) == (0, "")
    assert answer.stdout.startswith("Usage: python3 -m build_tools serve")
    assert (log.stat().st_mtime_ns if log.exists() else None) == before
