"""The pictures that calculators draw."""

import re
import xml.etree.ElementTree as ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import CALCULATORS, run
from calculators.declare import Curve
from calculators.figures import curve_picture
from calculators.figures.axes import HEIGHT, WIDTH, round_marks
from calculators.quantities import SYSTEMS
from tests.parity.cases import parity_cases

SVG = "{http://www.w3.org/2000/svg}"
WITH_CURVE = [one.name for one in CALCULATORS.values() if isinstance(one.picture, Curve)]


def example(name):
    return {one.name: text for one in CALCULATORS[name].inputs if (text := one.example_text("us"))}


def drawn(name, inputs, units="us"):
    return ElementTree.fromstring(curve_picture(name, inputs, units))


def points(path):
    """Return the places that a path goes through."""
    return [tuple(map(float, pair)) for pair in re.findall(r"[ML]([\d.-]+) ([\d.-]+)", path)]


def lines(picture):
    return [
        one.get("d") for one in picture.iter(f"{SVG}path") if one.get("class") == "figure-curve"
    ]


def marks(picture):
    return [(float(one.get("cx")), float(one.get("cy"))) for one in picture.iter(f"{SVG}circle")]


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("name", WITH_CURVE)
def test_every_example_is_marked_on_its_curve(name, units):
    picture = drawn(name, example(name), units)

    curves = [points(line) for line in lines(picture) if line.count("L") > 5]
    assert len(curves) == len(CALCULATORS[name].picture.outputs)
    for curve, (x, y) in zip(curves, marks(picture), strict=True):
        before = max((one for one in curve if one[0] <= x), key=lambda one: one[0])
        after = min((one for one in curve if one[0] >= x), key=lambda one: one[0])
        low, high = sorted((before[1], after[1]))
        assert low - 2 <= y <= high + 2


@pytest.mark.parametrize("name", WITH_CURVE)
def test_the_words_of_a_picture_say_the_answer(name):
    inputs = example(name)
    words = drawn(name, inputs).get("aria-label")

    values = run(name, inputs)["values"]
    for output in CALCULATORS[name].picture.outputs:
        assert f"{values[output]['label']} {values[output]['shown']}" in words


def test_whatever_is_typed_a_picture_stays_within_its_frame():
    for case in parity_cases(4000):
        picture = curve_picture(case["calculator"], case["inputs"], case["units"])
        if picture is None:
            continue
        tree = ElementTree.fromstring(picture)
        assert "nan" not in picture and "inf" not in picture
        for x, y in [*marks(tree), *(place for line in lines(tree) for place in points(line))]:
            assert 0 <= x <= WIDTH
            assert 0 <= y <= HEIGHT


def test_a_problem_has_no_picture():
    assert curve_picture("resin-capacity", {"salt": "9 gpg", "resin_volume": "1.5 ft³"}) is None


def test_a_calculator_without_a_curve_has_no_picture():
    assert curve_picture("hardness-units", {"hardness": "18 gpg"}) is None


def test_an_input_that_does_not_count_has_no_picture():
    inputs = {**example("weak-brine"), "known": CALCULATORS["weak-brine"].input("known").choices[1]}
    assert run("weak-brine", inputs)["problems"] == {}
    assert curve_picture("weak-brine", inputs) is None


def test_where_there_is_no_answer_the_line_has_a_gap():
    picture = drawn(
        "heater-history", {**example("heater-history"), "cold": "8 gpg", "hot": "12 gpg"}
    )

    assert all(len(points(line)) < 45 for line in lines(picture))


def test_a_number_outside_the_drawn_range_widens_it():
    picture = drawn("heater-washout", {**example("heater-washout"), "drawn": "400 gal"})

    assert marks(picture)[0][0] == max(x for x, _ in points(lines(picture)[0]))


@given(
    low=st.floats(-1e6, 1e6, allow_nan=False),
    width=st.floats(1e-3, 1e6, allow_nan=False),
)
def test_marks_are_few_round_and_within(low, width):
    found = round_marks(low, low + width)

    assert 1 <= len(found) <= 6
    assert found == sorted(found)
    assert all(low - 1e-6 <= one <= low + width + 1e-6 for one in found)


def test_marks_stand_at_ones_twos_and_fives():
    assert round_marks(0, 20) == [0, 5, 10, 15, 20]
    assert round_marks(1.5, 30) == [10, 20, 30]
    assert round_marks(0, 0.7) == [0, 0.2, 0.4, 0.6]


def test_a_count_is_drawn_at_whole_numbers():
    curve = points(lines(drawn("household-load", example("household-load")))[0])

    assert len(curve) == 10


@pytest.mark.parametrize("measured", CALCULATORS["small-leak"].input("measured").choices)
def test_of_several_curves_the_one_is_drawn_whose_input_counts(measured):
    curve = CALCULATORS["small-leak"].picture
    inputs = {**example("small-leak"), "measured": measured}
    drawn_over = curve.for_inputs(run("small-leak", inputs)["inputs"])

    label = CALCULATORS["small-leak"].input(drawn_over.input).label
    assert label in curve_picture("small-leak", inputs)
