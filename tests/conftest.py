"""Sites that many tests look at: each is built once, for all workers that run tests."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock
from mkdocs.commands.build import build
from mkdocs.config import load_config


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add what a change of the arithmetic is tried with, and what takes too long for every day."""
    parser.addoption("--thorough", action="store_true", help="more hostile inputs and corners")


@pytest.fixture(scope="session")
def thorough(pytestconfig: pytest.Config) -> bool:
    """Whether the long run was asked for."""
    return pytestconfig.getoption("thorough")


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Path], Path]:
    """Build the site of a configuration, strictly as `mkdocs build --strict` does.

    The folder it returns is shared: no test changes it.
    """
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base

    def site(config_file: Path) -> Path:
        name = hashlib.sha256(str(config_file).encode()).hexdigest()[:8]
        folder, done = shared / f"site-{name}", shared / f"site-{name}.done"
        with FileLock(shared / f"site-{name}.lock"):
            if not done.is_file():
                config = load_config(str(config_file), site_dir=str(folder), strict=True)
                config.plugins.on_startup(command="build", dirty=False)
                build(config)
                done.touch()
        return folder

    return site
