"""The command benchmark."""

from __future__ import annotations

import json

import pytest

from build_tools.commands import run
from calculators import CALCULATORS


def test_benchmark_measures_every_calculator_in_both_pythons(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["benchmark", "calculators", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)
    assert [row["calculator"] for row in rows] == list(CALCULATORS)
    assert all(row["python_ms"] > 0 and row["browser_ms"] > 0 for row in rows)
