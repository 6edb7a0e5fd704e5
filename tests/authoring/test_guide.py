"""Each recipe of the authoring guide works when it is followed to the letter."""

from __future__ import annotations

import os
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.authoring.recipes import Recipe, recipes
from tests.comparing.shops import ShopFolder

ROOT = Path(__file__).parents[2]
GUIDE = ROOT / "docs" / "authoring.md"
COPIED = ("build_tools", "calculators", "docs", "docs_src", "tests")


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the handbook to change, as a fresh clone would be."""
    for name in COPIED:
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    for file in ("mkdocs.yml", "pyproject.toml", "package.json"):
        shutil.copy(ROOT / file, tmp_path / file)
    (tmp_path / "node_modules").symlink_to(ROOT / "node_modules")
    return tmp_path


def said_by(folder: Path, command: str) -> str:
    """Run a command as the guide gives it, in the environment that the tests have."""
    words = shlex.split(command)
    module = ["-m", "build_tools.commands"]
    if words[0] == "test":
        module, words = ["-m", "pytest", "-q"], words[1:]
    environment = {**os.environ, "PYTHONPATH": str(folder)}
    ended = subprocess.run(
        [sys.executable, *module, *words],
        cwd=folder, env=environment, capture_output=True, text=True, timeout=300, check=False,
    )  # fmt: skip
    return ended.stdout + ended.stderr


@pytest.mark.parametrize("recipe", recipes(GUIDE), ids=lambda one: one.title.replace(" ", "-"))
def test_a_recipe_works_as_it_stands(recipe: Recipe, copy: Path) -> None:
    if any("compare" in step.text for step in recipe.steps):
        ShopFolder(copy).commit()
    for step in recipe.steps:
        if step.kind != "console":
            step.done_to(copy)
            continue
        for command, printed in step.commands:
            said = said_by(copy, command)
            assert [one for one in printed if one not in said.splitlines()] == [], said
