"""The door that takes and gives JSON text."""

from __future__ import annotations

import json

import pytest

from calculators import as_text, run
from calculators.diagnosis import Knowledge, numbers, picture
from calculators.diagnosis.heard import Heard
from tests.calculators.diagnosis.small_knowledge import DATA


def answer(**asked: object) -> object:
    """Ask through the door."""
    return json.loads(as_text.answer(json.dumps(asked)))


def test_a_calculation() -> None:
    inputs = {"salt": "9 lb", "refill_flow": "0.5 gpm"}
    got = answer(work="calculate", calculator="brine-refill", inputs=inputs, units="us")
    assert got == run("brine-refill", inputs)


def test_a_diagnosis_needs_its_knowledge_first(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(as_text, "_learned", {})
    with pytest.raises(LookupError):
        answer(work="diagnose", call={})
    assert answer(work="learn", knowledge=json.dumps(DATA)) is None
    call = {"complaint": "hard", "readings": {"rod": "crust"}}
    assert answer(work="diagnose", call=call) == picture(Knowledge(DATA), call)
    expected = Heard(Knowledge(DATA)).complaints_for("so salty")
    assert answer(work="complaints", words="so salty") == expected


def test_a_check_s_numbers() -> None:
    texts = {"height": "14 in", "expected": "8 in"}
    got = answer(work="read", check="brine-level", numbers=texts, units="us")
    assert got == numbers.read("brine-level", texts, "us")
