"""Inputs at their limits, together: the corners, where numbers get largest and smallest."""

import itertools
import json
import random

import pytest

from calculators import CALCULATORS, run
from calculators.declare import Course
from calculators.quantities import SYSTEMS

MOST, MOST_THOROUGHLY = 800, 3000
MOST_OF_DAYS = 100  # of a calculator that lives through days, which takes a while


def places(one):
    """Return what an input is given at its corners: every choice, or both limits and the example."""
    if one.choices:
        return list(one.choices)
    numbers = [one.low, one.high, one.example]
    return [f"{number!r} {one.unit}".strip() for number in numbers if number is not None]


def corners(calculator, most):
    """Return the corners of a calculator, or at most so many, drawn by a fixed seed."""
    names = [one.name for one in calculator.inputs]
    each = [places(one) for one in calculator.inputs]
    total = 1
    for values in each:
        total *= len(values)
    if isinstance(calculator.picture, Course):
        most = MOST_OF_DAYS
    if total <= most:
        chosen = itertools.product(*each)
    else:
        draw = random.Random(calculator.name)
        chosen = ([draw.choice(values) for values in each] for _ in range(most))
    return [dict(zip(names, values, strict=True)) for values in chosen]


@pytest.mark.parametrize("calculator", CALCULATORS.values(), ids=list(CALCULATORS))
@pytest.mark.parametrize("units", SYSTEMS)
def test_a_corner_gives_an_answer_or_a_sentence(calculator, units, thorough):
    answered = 0
    for inputs in corners(calculator, MOST_THOROUGHLY if thorough else MOST):
        result = run(calculator.name, inputs, units)

        assert bool(result["values"]) != bool(result["problems"]), inputs
        json.dumps(result, allow_nan=False)
        answered += bool(result["values"])
    assert answered
