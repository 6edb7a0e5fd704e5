"""What a fault changes on the simulated home can be drawn, in homes that exist."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.problems import expected
from calculators.simulation.changes import CHANGES
from tests.content.small_shop import changed, problems_of

EMPTY = "faults/no-salt.yaml"
CLASSES = ["time clock", "delayed meter", "immediate meter", "twin tank", "town", "well"]
WRONG = [
    (
        "change: salt_left", "change: salt_lef",
        f'23: there is no change of the simulation "salt_lef" {expected("salt_lef", sorted(CHANGES))}',
    ),
    (
        "from: 0", "from: 6",
        '24: "from" is 6, more than "to", 5 lb (expected the lesser first)',
    ),
    ("to: 5 lb", "to: 5 gal", '25: "to": “5 gal” is a volume. Write a weight (lb, oz, kg, g).'),
    (
        "to: 5 lb", "to: 900",
        '25: "to" is 900, which "salt_left" cannot be (expected -1 to 500, in the unit lb)',
    ),
    (
        "to: 5 lb", "to: 5 lb\n    spread: ratio",
        '24: a spread by ratio begins at 0 (expected a "from" above 0)',
    ),
    (
        "to: 5 lb", "to: 2.5\n    spread: whole",
        "26: whole numbers lie between 0 and 2.5 (expected two of them)",
    ),
    (
        "well: 50 %", "wel: 50 %",
        f'17: there is no class of homes "wel" {expected("wel", CLASSES)}',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), WRONG)
def test_a_range_that_cannot_be_drawn_is_told(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(EMPTY, old, new)) == [f"docs_src/{EMPTY}:{said}"]


@pytest.mark.parametrize("high", ["5", "5 lb", "2.5 kg", "80 oz"])
def test_a_severity_may_be_a_number_or_a_quantity(tmp_path: Path, high: str) -> None:
    assert problems_of(tmp_path, changed(EMPTY, "to: 5 lb", f"to: {high}")) == []
