"""The shipped faults: what proves one makes it likely, and no answer is out of the ordinary."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.knowledge_data import knowledge_data, record_of
from calculators.diagnosis import Knowledge, picture

ROOT = Path(__file__).parents[2]
HANDBOOK = load_handbook(ROOT / "docs_src", ROOT)
DATA = knowledge_data(HANDBOOK)


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    """What the shipped handbook knows."""
    return Knowledge(DATA)


def usual_call(knowledge: Knowledge, name: str) -> dict[str, Any]:
    """Return a call with a fault's likeliest complaint and what proves it."""
    chances = knowledge.tables["complaint"][knowledge.hypotheses.index((name,))]
    return {
        "complaint": knowledge.results["complaint"][chances.index(max(chances))],
        "readings": {one["check"]: one["result"][0] for one in knowledge.faults[name]["proved_by"]},
    }


def proved_by_what_is_not_normal(name: str) -> bool:
    """Whether what proves a fault is a result that other faults do not give."""
    proof = DATA["faults"][name]["proved_by"][0]
    return proof["result"][0] != DATA["checks"][proof["check"]]["results"][0]["name"]


@pytest.mark.parametrize("name", [*filter(proved_by_what_is_not_normal, DATA["faults"])])
def test_what_proves_a_fault_puts_it_among_the_first_three(knowledge: Knowledge, name: str) -> None:
    found = picture(knowledge, usual_call(knowledge, name))

    assert name in [one["fault"] for one in found["causes"][:3]]
    assert found["problems"] == []
    assert found["explanation"]


def test_the_demo_record_counts() -> None:
    record = record_of(HANDBOOK)

    assert record.problems == []
    assert len(record.calls) == 20
    assert DATA["faults"]["out-of-salt"]["share_of_calls"] > 0.075  # three calls in twenty
