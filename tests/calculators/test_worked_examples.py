"""Whole answers worked by hand: every figure shown and every line of the working."""

from pathlib import Path

import pytest
from ruamel.yaml import YAML

from calculators import CALCULATORS, run
from calculators.declare import Course

EXAMPLES = YAML(typ="safe").load(Path(__file__).with_name("worked_examples.yaml"))


def as_written(text):
    """Return a text of an answer with ordinary spaces, as the examples have it."""
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize("example", EXAMPLES, ids=[example["calculator"] for example in EXAMPLES])
def test_worked_by_hand(example):
    result = run(example["calculator"], example["inputs"], example.get("units", "us"))

    assert result["problems"] == {}
    shown = {name: as_written(value["shown"]) for name, value in result["values"].items()}
    assert shown == example["answers"]
    assert [
        [as_written(step[part]) for part in ("sentence", "formula", "numbers", "result")]
        for step in result["workings"]
    ] == example["workings"]


def test_every_calculator_is_worked_by_hand_once():
    # Nobody works the draws of many days by hand: see test_step_by_step.py for a second reckoning.
    by_hand = {
        name
        for name, calculator in CALCULATORS.items()
        if not isinstance(calculator.picture, Course)
    }
    assert {example["calculator"] for example in EXAMPLES} == by_hand
