"""Which Python is chosen from those that a machine has."""

from __future__ import annotations

import sys
from pathlib import Path

from build_tools.set_up.python import Found, choose, examine, likely_paths, wanted
from tests.set_up.programs import put_program, put_python


def test_the_python_that_runs_the_tests_is_complete() -> None:
    found = examine(sys.executable)
    assert found.version == f"{sys.version_info.major}.{sys.version_info.minor}"
    assert found.lacks == ()


def test_an_environment_answers_with_the_python_it_was_made_from() -> None:
    found = examine(sys.executable)
    assert Path(found.path).resolve() == Path(sys.executable).resolve()
    assert not Path(found.path).is_relative_to(sys.prefix)


def test_a_launcher_that_fails_is_passed_over(tmp_path: Path) -> None:
    launcher = put_program(tmp_path / "shims/python3.13", "echo no such version >&2", "exit 127")
    right = put_python(tmp_path / "right/python3.13", "3.13")
    assert choose([str(launcher), str(right)]) == Found(str(right), "3.13", ())


def test_a_path_with_nothing_there_is_passed_over(tmp_path: Path) -> None:
    right = put_python(tmp_path / "python3.12", "3.12")
    assert choose([str(tmp_path / "absent"), str(right)]).path == str(right)


def test_a_python_that_is_too_old_or_not_locked_for_is_passed_over(tmp_path: Path) -> None:
    old = put_python(tmp_path / "python3.11", "3.11")
    future = put_python(tmp_path / "python3.99", "3.99")
    assert choose([str(old), str(future)]) is None


def test_a_complete_python_is_taken_before_one_without_venv(tmp_path: Path) -> None:
    bare = put_python(tmp_path / "bare/python3.13", "3.13", "ensurepip")
    right = put_python(tmp_path / "right/python3.12", "3.12")
    assert choose([str(bare), str(right)]).path == str(right)
    assert choose([str(bare)]) == Found(str(bare), "3.13", ("ensurepip",))


def test_the_places_looked_in(tmp_path: Path) -> None:
    """This Python, then PATH, then what pyenv and uv keep in the home folder."""
    home, root, on_path = tmp_path / "home", tmp_path / "handbook", tmp_path / "bin"
    pyenv = put_python(home / ".pyenv/versions/3.13.5/bin/python3.13", "3.13")
    managed = put_python(
        home / ".local/share/uv/python/cpython-3.13.5-linux/bin/python3.13", "3.13"
    )
    brought = put_python(root / ".cache/python/cpython-3.13.5-linux/bin/python3.13", "3.13")
    paths = list(likely_paths(root, {"PATH": str(on_path)}, home))
    expected = [sys.executable, str(on_path / "python3.13"), str(pyenv), str(managed), str(brought)]
    assert [path for path in paths if path in expected] == expected


def test_pyenv_is_found_where_its_own_setting_says(tmp_path: Path) -> None:
    program = put_python(tmp_path / "versions/3.14.0/bin/python3.14", "3.14")
    assert str(program) in likely_paths(tmp_path, {"PYENV_ROOT": str(tmp_path)}, tmp_path)


def test_what_to_install_is_told() -> None:
    assert wanted(None) == (
        "The handbook needs Python 3.12 or newer, this machine has none, and none could be "
        "fetched: install one from python.org or with your system's packages"
    )
    assert wanted(Found("/usr/bin/python3.13", "3.13", ("ensurepip",))) == (
        "Python 3.13 (/usr/bin/python3.13) lacks its module ensurepip: install it (on Debian and "
        "Ubuntu: sudo apt-get install python3.13-venv)"
    )
