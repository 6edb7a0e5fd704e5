"""When the machine's Node is good enough, and when the step counts as done."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.set_up import environment, node
from tests.set_up.programs import put_program


def put_node(folder: Path, version: str) -> Path:
    return put_program(folder / "node", f"echo {version} /opt/node {version}/bin/node")


def test_a_new_enough_node_with_npm_is_taken(tmp_path: Path) -> None:
    put_node(tmp_path, "20.1.0")
    npm = put_program(tmp_path / "npm", "echo 10.0.0")
    assert node.of_machine(str(tmp_path)) == node.Node("/opt/node 20.1.0/bin/node", [str(npm)])


@pytest.mark.parametrize("version", ["18.20.4", "8.17.0"])
def test_an_old_node_is_not(tmp_path: Path, version: str) -> None:
    put_node(tmp_path, version)
    put_program(tmp_path / "npm", "echo 10.0.0")
    assert node.of_machine(str(tmp_path)) is None


def test_a_node_without_npm_is_not(tmp_path: Path) -> None:
    put_node(tmp_path, "22.0.0")
    assert node.of_machine(str(tmp_path)) is None


def test_a_node_whose_npm_does_not_run_is_not(tmp_path: Path) -> None:
    put_node(tmp_path, "22.0.0")
    put_program(tmp_path / "npm", "exit 1")
    assert node.of_machine(str(tmp_path)) is None


def test_no_node_is_none(tmp_path: Path) -> None:
    assert node.of_machine(str(tmp_path)) is None


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A folder in which Node and the npm packages are in place."""
    (tmp_path / "package-lock.json").write_text("{}")
    (tmp_path / "node_modules").mkdir()
    environment.programs(tmp_path).mkdir(parents=True)
    node.put_link(node.link(tmp_path), str(put_node(tmp_path, "20.1.0")))
    node.pyodide_stamp(tmp_path).write_text(environment.stamp_of(tmp_path / "package-lock.json"))
    assert node.is_ready(tmp_path)
    return tmp_path


def test_another_lock_file_means_fetching_anew(handbook: Path) -> None:
    (handbook / "package-lock.json").write_text('{"lockfileVersion": 3}')
    assert not node.is_ready(handbook)


def test_a_node_that_was_removed_means_looking_anew(handbook: Path) -> None:
    (handbook / "node").unlink()
    assert not node.is_ready(handbook)


def test_a_link_to_a_removed_node_is_replaced(handbook: Path) -> None:
    (handbook / "node").unlink()
    other = put_node(handbook / "other", "22.0.0")
    node.put_link(node.link(handbook), str(other))
    assert node.is_ready(handbook)
