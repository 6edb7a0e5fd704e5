"""When an environment counts as made."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from build_tools.set_up import environment
from build_tools.set_up.log import Log
from build_tools.set_up.start import ROOT


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A folder whose environment is the one that runs the tests, and is stamped as made there."""
    root = tmp_path / "handbook"
    lock = environment.requirements(root, "handbook")
    lock.parent.mkdir(parents=True)
    lock.write_text("attrs==26.1.0")
    environment.programs(root).mkdir(parents=True)
    used = environment.folder(ROOT)
    (environment.folder(root) / "pyvenv.cfg").write_bytes((used / "pyvenv.cfg").read_bytes())
    (environment.folder(root) / "lib").symlink_to(used / "lib")
    environment.interpreter(root).symlink_to(environment.interpreter(ROOT).resolve())
    environment.put_stamp(root, "handbook", lock)
    assert environment.packages_ready(root)
    return root


def test_an_install_that_was_cut_short_has_no_stamp(handbook: Path) -> None:
    (environment.folder(handbook) / "stamps" / "handbook").unlink()
    assert not environment.packages_ready(handbook)


def test_another_lock_file_means_making_it_anew(handbook: Path) -> None:
    environment.requirements(handbook, "handbook").write_text("attrs==26.2.0")
    assert not environment.packages_ready(handbook)


def test_a_moved_folder_means_making_it_anew(handbook: Path) -> None:
    moved = handbook.rename(handbook.with_name("moved"))
    assert environment.runs(moved)
    assert not environment.packages_ready(moved)


def test_a_removed_python_means_making_it_anew(handbook: Path) -> None:
    environment.interpreter(handbook).unlink()
    environment.interpreter(handbook).symlink_to(handbook / "removed")
    assert not environment.packages_ready(handbook)


def test_lost_packages_mean_making_it_anew(handbook: Path) -> None:
    (environment.folder(handbook) / "lib").unlink()
    assert not environment.packages_ready(handbook)


def test_each_step_has_its_own_stamp(handbook: Path) -> None:
    (handbook / "pyproject.toml").write_text("[project]")
    assert not environment.repository_ready(handbook)
    environment.put_stamp(handbook, "repository", handbook / "pyproject.toml")
    assert environment.repository_ready(handbook)
    assert not environment.is_stamped(
        handbook, "tests", environment.requirements(handbook, "handbook")
    )


def test_the_environment_of_another_folder_is_not_emptied_through_a_link(tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.mkdir()
    (other / "kept").touch()
    root = tmp_path / "handbook"
    root.mkdir()
    environment.folder(root).symlink_to(other)
    with Log(root) as log:
        environment.make_empty(root, sys.executable, log)
    assert (other / "kept").exists()
    assert environment.interpreter(root).exists()
