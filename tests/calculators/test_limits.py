"""Limits of every numeric input: the edge itself is accepted, one step past it is refused."""

import re

import pytest

from calculators import CALCULATORS, run
from calculators.declare import InputProblem
from calculators.quantities import SYSTEMS

EDGES = [
    (calculator.name, one.name, side, units)
    for calculator in CALCULATORS.values()
    for one in calculator.inputs
    if one.kind != "choice"
    for side in ("low", "high")
    for units in SYSTEMS
]
each_edge = pytest.mark.parametrize(("calculator", "name", "side", "units"), EDGES)


def edge(calculator, name, side, units):
    """Return the input, its limit as a reader of `units` writes it, and one step past it."""
    one = CALCULATORS[calculator].input(name)
    written, _ = one.displayed(getattr(one, side), units)
    step = 1 if one.kind == "count" else 1e-9 * abs(written) or 1e-9
    return one, written, written + (step if side == "high" else -step)


@each_edge
def test_the_edge_is_accepted(calculator, name, side, units):
    one, limit, _ = edge(calculator, name, side, units)

    assert one.read(repr(limit), units) == pytest.approx(getattr(one, side), rel=1e-12)
    assert one.read(limit, units) == pytest.approx(getattr(one, side), rel=1e-12)


@each_edge
def test_one_step_past_the_edge_is_refused(calculator, name, side, units):
    one, _, past = edge(calculator, name, side, units)

    with pytest.raises(
        InputProblem, match="above the limit" if side == "high" else "below the limit"
    ):
        one.read(past, units)


@each_edge
def test_a_refusal_leaves_no_values_and_names_its_input(calculator, name, side, units):
    one, _, past = edge(calculator, name, side, units)
    inputs = {name: past}
    if one.only_when:
        inputs[one.only_when[0]] = one.only_when[1][0]

    result = run(calculator, inputs, units)

    assert "the limit of" in result["problems"][name]
    assert result["values"] == {}


@each_edge
def test_the_limit_named_in_a_refusal_is_accepted(calculator, name, side, units):
    one, _, past = edge(calculator, name, side, units)
    with pytest.raises(InputProblem) as refusal:
        one.read(past * 2 if side == "high" else past, units)

    named = re.search(r"the limit of (.+?)\.(?: |$)", refusal.value.sentence).group(1)
    assert one.read(named, units) == pytest.approx(getattr(one, side), rel=2e-3)


@pytest.mark.parametrize(
    ("calculator", "name", "typed", "units", "sentence"),
    [
        ("hardness-units", "hardness", "-1", "us", "−1 gpg is below the limit of 0 gpg."),
        ("hardness-units", "hardness", "201 gpg", "us", "201 gpg is above the limit of 200 gpg."),
        (
            "hardness-units",
            "hardness",
            "3500",
            "metric",
            "3,500 mg/L is above the limit of 3,423 mg/L.",
        ),
        (
            "hardness-setting",
            "hardness",
            "342",
            "us",
            "342 gpg is above the limit of 200 gpg. "
            "If you meant 342 mg/L, write the unit: that is 20 gpg.",
        ),
        (
            "resin-capacity",
            "resin_volume",
            "42",
            "us",
            "42 ft³ is above the limit of 10 ft³. "
            "If you meant 42 qt, write the unit: that is 1.4 ft³.",
        ),
        ("household-load", "people", "31", "us", "31 is above the limit of 30."),
        (
            "heater-washout",
            "tank",
            "4 L",
            "metric",
            "4 L is below the limit of 18.93 L.",
        ),
    ],
)
def test_the_sentence_of_a_refusal(calculator, name, typed, units, sentence):
    result = run(calculator, {name: typed}, units)

    assert result["problems"][name].replace("\u00a0", " ") == sentence


@pytest.mark.parametrize(
    ("calculator", "inputs", "warning"),
    [
        (
            "hardness-setting",
            {"hardness": 61},
            "Hardness of the raw water: 61 gpg is above the usual 60 gpg. "
            "Check that a reading in mg/L was not entered as grains.",
        ),
        (
            "household-load",
            {"people": 4, "setting": 20, "water_per_person": 34},
            "Water for each person: 34 gal/day is below the usual 35 gal/day.",
        ),
        (
            "resin-capacity",
            {"salt": 3, "resin_volume": 0.4},
            "Resin in the tank: 0.4 ft³ is below the usual 0.5 ft³.",
        ),
    ],
)
def test_an_unusual_number_is_answered_with_a_warning(calculator, inputs, warning):
    result = run(calculator, inputs)

    assert result["values"]
    assert warning in [text.replace("\u00a0", " ") for text in result["warnings"]]


@pytest.mark.parametrize(
    ("calculator", "name", "side"),
    [
        (calculator.name, one.name, side)
        for calculator in CALCULATORS.values()
        for one in calculator.inputs
        for side in ("usual_low", "usual_high")
        if getattr(one, side) is not None
    ],
)
def test_the_end_of_the_usual_range_is_usual(calculator, name, side):
    one = CALCULATORS[calculator].input(name)
    end = getattr(one, side)
    past = end * (1 + 1e-6 if side == "usual_high" else 1 - 1e-6)

    assert one.unusual_warning(end, "us") is None
    assert one.unusual_warning(past, "us").startswith(one.label)
