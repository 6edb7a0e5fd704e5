"""From what customers say, in their words, to complaints."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.handbook import load_handbook
from calculators.diagnosis import Knowledge
from calculators.diagnosis.heard import TOLD, Heard

ROOT = Path(__file__).parents[3]


@pytest.fixture(scope="module")
def shipped() -> Knowledge:
    """Return what the shipped handbook knows, without simulated homes."""
    return Knowledge(diagnosis_data(load_handbook(ROOT / "docs_src", ROOT)))


@pytest.fixture(scope="module")
def heard(shipped: Knowledge) -> Heard:
    """Return what the customers of the shipped handbook say."""
    return Heard(shipped)


@pytest.mark.parametrize(
    ("words", "complaint"),
    [
        ("the salt level never drops any more", "salt-unused"),
        ("only the hot water is hard", "hard-hot-only"),
        ("My water tastes salty", "salty"),
        ("we are buying twice as much salt", "salt-heavy"),
        ("the brine tank is full of water", "tank-overfull"),
        ("water is running to the drain all the time", "drain-runs"),
        ("hardly any pressure in the shower", "low-pressure"),
        ("orange stains in the toilet", "stain"),
        ("little beads in the faucet strainer", "beads"),
        ("the display is dark", "dead-display"),
        ("smells of rotten eggs", "smell"),
    ],
)
def test_words_find_their_complaint(heard: Heard, words: str, complaint: str) -> None:
    assert complaint in [one["complaint"] for one in heard.complaints_for(words)]


@pytest.mark.parametrize("words", ["", "   ", "xyzzy", "and the was"])
def test_words_that_nobody_says_find_nothing(heard: Heard, words: str) -> None:
    assert heard.complaints_for(words) == []


def test_what_customers_of_a_fault_say_brings_a_complaint_that_it_makes(
    shipped: Knowledge, heard: Heard
) -> None:
    said = [(one, fault) for fault in shipped.faults.values() for one in fault["customer_says"]]
    right = 0
    for words, fault in said:
        found = heard.complaints_for(words)
        assert len(found) <= TOLD
        made = {one for one, chance in fault["likelihoods"]["complaint"].items() if chance > 0}
        right += bool(made & {one["complaint"] for one in found})
    assert right > 0.9 * len(said)
