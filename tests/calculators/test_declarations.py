"""Every calculator declares itself completely and consistently."""

import doctest
import importlib
import pkgutil

import pytest

import calculators
from calculators import CALCULATORS, run
from calculators.declare import Curve
from calculators.quantities import KINDS, SYSTEMS
from calculators.sources import SOURCES

MODULES = [
    "calculators",
    *(module.name for module in pkgutil.walk_packages(calculators.__path__, "calculators.")),
]
HOW_SEEN = {"read", "from memory", "no source"}


def declared(what):
    """Return every (calculator, input or output) for parametrize, with readable names."""
    return [
        pytest.param(calculator, one, id=f"{calculator.name}: {one.name}")
        for calculator in CALCULATORS.values()
        for one in getattr(calculator, what)
    ]


each_calculator = pytest.mark.parametrize("calculator", CALCULATORS.values(), ids=CALCULATORS)
each_input = pytest.mark.parametrize(("calculator", "one"), declared("inputs"))
each_output = pytest.mark.parametrize(("calculator", "one"), declared("outputs"))


@each_calculator
def test_a_calculator_says_what_it_is_for(calculator):
    assert calculator.title
    assert calculator.question.endswith("?")
    assert calculator.name == calculator.name.lower().replace(" ", "-")
    assert all(caution.endswith(".") for caution in calculator.cautions)


@each_calculator
def test_names_are_unique(calculator):
    for names in (
        [one.name for one in calculator.inputs],
        [one.name for one in calculator.outputs],
        [one.label for one in calculator.inputs],
        [one.label for one in calculator.outputs],
    ):
        assert sorted(names) == sorted(set(names))


@each_calculator
def test_its_sources_exist(calculator):
    assert calculator.sources
    assert set(calculator.sources) <= set(SOURCES)


@each_input
def test_an_input_is_complete(calculator, one):
    assert one.label[0].isupper()
    assert one.help == "" or one.help.endswith(".")
    assert one.unusual == "" or one.unusual.endswith(".")
    if one.kind == "choice":
        assert one.default in one.choices
        assert [
            choice for choice in one.choices if choice != " ".join(choice.lower().split())
        ] == []
        return
    assert one.help
    assert one.kind in KINDS or one.kind in {"count", "number"}
    assert one.kind not in KINDS or one.unit in KINDS[one.kind].units
    assert one.example is not None or one.optional


@each_input
def test_limits_enclose_the_usual_range_and_the_default(calculator, one):
    if one.kind == "choice":
        return
    inside = [one.low, one.usual_low, one.default, one.usual_high, one.high]
    numbers = [number for number in inside if number is not None]
    assert numbers == sorted(numbers)
    assert one.example is None or one.low <= one.example <= one.high
    assert one.low < one.high


@each_input
def test_a_default_is_accepted_in_both_systems(calculator, one):
    if one.default is None:
        return
    for units in SYSTEMS:
        value = one.read(None, units)
        if one.kind == "choice":
            assert value == one.default
            continue
        assert one.low <= value <= one.high
        assert one.unusual_warning(value, units) is None
        assert one.read(one.shown(value, units), units) == pytest.approx(value, rel=1e-3)


@each_input
def test_an_input_depends_on_a_choice_read_before_it(calculator, one):
    if one.only_when is None:
        return
    name, choices = one.only_when
    before = [other.name for other in calculator.inputs[: calculator.inputs.index(one)]]
    assert name in before
    assert set(choices) <= set(calculator.input(name).choices)


@each_input
def test_a_slider_writes_texts_that_are_read_as_its_places(calculator, one):
    for units in SYSTEMS if one.slider else ():
        least, most, step = one.slider
        texts = one.slider_texts(units)
        places = [one.read(text, units) for text in texts]

        assert 2 <= len(texts) == len(set(texts)) <= 80
        assert places == pytest.approx(
            [least + index * step for index in range(len(texts))], rel=6e-3
        )
        assert places[-1] == pytest.approx(most, rel=6e-3)


@each_output
def test_an_output_is_complete(calculator, one):
    assert one.label[0].isupper()
    if one.kind in KINDS:
        assert one.unit in KINDS[one.kind].units
    else:
        assert one.kind in {"words", "number", "count"}
        assert one.unit == ""
    assert one.direction in {"nearest", "up", "down"}


@each_calculator
def test_a_curve_draws_outputs_of_one_unit_over_a_numeric_input(calculator):
    curve = calculator.picture
    if not isinstance(curve, Curve):
        return
    for one in (curve, *curve.instead):
        across = calculator.input(one.input)
        assert across.low <= one.low < one.high <= across.high
        assert 1 <= len(one.outputs) <= 3
        assert len({calculator.output(name).unit for name in one.outputs}) == 1


@each_calculator
def test_parts_are_found_by_name(calculator):
    assert [calculator.input(one.name) for one in calculator.inputs] == list(calculator.inputs)
    assert [calculator.output(one.name) for one in calculator.outputs] == list(calculator.outputs)
    assert calculator.input("no such input") is None
    assert calculator.output("no such output") is None


@each_calculator
def test_the_examples_of_its_form_give_an_answer(calculator):
    for units in SYSTEMS:
        inputs = {one.name: one.example_text(units) for one in calculator.inputs}
        result = run(calculator.name, inputs, units)
        assert result["problems"] == {}
        assert result["values"]


def test_calculators_have_unique_titles():
    titles = [calculator.title for calculator in CALCULATORS.values()]

    assert sorted(titles) == sorted(set(titles))
    assert [name for name, calculator in CALCULATORS.items() if calculator.name != name] == []


@pytest.mark.parametrize("key", SOURCES)
def test_a_source_is_complete(key):
    title, publisher, where, seen = SOURCES[key]

    assert title
    assert publisher
    assert seen in HOW_SEEN
    assert (seen == "no source") == (key == "common-practice")
    assert where == where.strip()


def test_every_source_is_used():
    used = {key for calculator in CALCULATORS.values() for key in calculator.sources}

    assert set(SOURCES) == used


@pytest.mark.parametrize("name", MODULES)
def test_a_module_and_its_public_functions_are_documented(name):
    module = importlib.import_module(name)
    here = [part for part in vars(module).values() if getattr(part, "__module__", None) == name]
    public = [part for part in here if callable(part) and not part.__name__.startswith("_")]

    assert module.__doc__
    assert [part.__name__ for part in public if not part.__doc__] == []


def test_the_examples_in_docstrings_hold():
    results = [doctest.testmod(importlib.import_module(name)) for name in MODULES]

    assert sum(result.failed for result in results) == 0
    assert sum(result.attempted for result in results) >= 4
