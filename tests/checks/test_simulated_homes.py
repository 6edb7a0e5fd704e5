"""Stale homes are refused, with the command that makes them anew."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

RUN = "python3 -m build_tools simulate-homes"


def test_a_shop_without_homes_is_sound(tmp_path: Path) -> None:
    assert problems_of(tmp_path, FILES) == []


def test_missing_homes_are_told_with_the_command(tmp_path: Path) -> None:
    files = {**FILES, "simulated_homes.json": '{"results": {}, "faults": {}}'}

    assert problems_of(tmp_path, files) == [
        (
            "docs_src/simulated_homes.json:1: the homes of 3 faults are missing, or older than the "
            f"simulation or the fault: no-salt, salt-bridge, salt-bridge+no-salt (expected: run {RUN})"
        )
    ]


@pytest.mark.parametrize("text", ["{", "[]", '{"faults": {"salt-bridge": 1}}'])
def test_a_file_of_something_else_is_told(tmp_path: Path, text: str) -> None:
    assert problems_of(tmp_path, {**FILES, "simulated_homes.json": text}) == [
        f"docs_src/simulated_homes.json:1: this is no file of simulated homes (expected: run {RUN})"
    ]


def test_other_problems_come_first(tmp_path: Path) -> None:
    files = {**FILES, "simulated_homes.json": "{", "faults/no-salt.yaml": "title: x\n"}

    assert all("simulated_homes" not in one for one in problems_of(tmp_path, files))
