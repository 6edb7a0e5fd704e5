"""The page that tells how well the cause is found: from what was measured last, or how to measure."""

from __future__ import annotations

from pathlib import Path

from build_tools.benchmarks.diagnosis.measure import measure
from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.measured import keep, last_measured
from build_tools.pages.measured_page import measured_page
from tests.calculators.diagnosis.small_knowledge import DATA
from tests.content.small_shop import FILES, write


def test_a_handbook_that_was_not_measured_tells_how(tmp_path: Path) -> None:
    docs = write(tmp_path, FILES)
    page = measured_page(load_handbook(docs, tmp_path))

    assert "`python3 -m build_tools benchmark diagnosis --keep`" in page
    assert "|" not in page


def test_what_was_measured_is_shown(tmp_path: Path) -> None:
    docs = write(tmp_path, FILES)
    measured = measure(DATA, 20, 1)
    keep(docs, measured)
    kept = last_measured(docs)
    page = measured_page(load_handbook(docs, tmp_path))

    assert kept["policies"] == measured["policies"]
    assert "20 calls with a hidden fault" in page
    first = [f"{100 * one['first at 5 minutes']:.0f} %" for one in measured["policies"].values()]
    assert f"| True cause first after five minutes | {' | '.join(first)} |" in page
    assert "| Hard water |" in page  # the label of the small shop's complaint "hard"
    assert "| Any | 20 |" in page
