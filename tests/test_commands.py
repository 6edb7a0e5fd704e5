"""The commands as they run inside the environment."""

from __future__ import annotations

import pytest

from build_tools.commands import run


def test_an_unknown_option_is_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["build", "--outptu", "x"]) == 1
    assert capsys.readouterr().err == "No such option '--outptu'. Did you mean '--output'?\n"


def test_check_finds_no_problem_in_the_handbook(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["check"]) == 0
    assert capsys.readouterr().out == "No problems found.\n"
