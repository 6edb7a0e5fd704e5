"""What tests of many folders share: built sites, each built once for all workers; a browser."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from filelock import FileLock
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Browser, sync_playwright

from build_tools.engines.chromium import QUIET_FLAGS
from build_tools.set_up.browser import find

ROOT = Path(__file__).parents[1]


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


@pytest.fixture(scope="session")
def browser_program() -> str:
    """Return the path of the browser that the test command found, or else one that is there."""
    path = os.environ.get("HANDBOOK_BROWSER") or find(ROOT)
    assert path, "The test command brings a browser."
    return path


@pytest.fixture(scope="session")
def browser(browser_program: str) -> Iterator[Browser]:
    """Return the one browser of this worker, which runs until its tests end.

    A test never calls `sync_playwright` itself: a process can run it only once at a time.
    """
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=browser_program, args=list(QUIET_FLAGS)
        )
        yield browser
        browser.close()
