"""What holds for every calculator, whatever it works out and whatever it is given."""

import json
import random
import re
from types import SimpleNamespace

import pytest

from calculators import CALCULATORS, run
from calculators.declare import Course
from calculators.quantities import KINDS, SYSTEMS, convert
from calculators.working import Working

each_calculator = pytest.mark.parametrize("name", CALCULATORS)

JUNK = [
    "", "   ", "-", ".", ",", "½½", "1/0", "0/0", "1e999", "-1e999", "1e-999", "9" * 400, "1,5",
    "nan", "inf", "-inf", "NaN mg/L", "1_000", "0x10", "18 18", "18 gpg gpg", "gpg 18", "18 °",
    "٣ gpg", "5 lb oz", "\x00", "\ud800", "\u202e18", "18\n19", "18\u00a0gpg", "18\u200b",
    "<b>18</b>", "{0}", "%s", "${x}", "'; --", "18%", "−0", "-0", "+0", "1e-12", "1e-11", "1e15",
    "1e14 m³", "1e14 kg", "1e-12 mg/L", "twelve",
    None, True, False, [], {}, [18], {"number": 18}, b"18", object, 1j,
    0, -0.0, 1e-300, 5e-324, 1e15, 1e308, -1e308, 10**30, 10**5000, float("nan"), float("inf"),
]  # fmt: skip
ALPHABET = "0123456789.,/-+eE ½¼²³°%'\"gpmlLdayrinftbhosk"


def rounds(calculator, usual):
    """Return how often to ask a calculator: one that lives through days takes a while."""
    return usual // 10 if isinstance(calculator.picture, Course) else usual


def reading(chance, one):
    """Return a number inside the limits of an input, often near its example."""
    if chance.random() < 0.7 and one.example is not None:
        number = one.example * chance.uniform(0.5, 2)
    else:
        number = chance.uniform(one.low, one.high)
    number = min(max(number, one.low), one.high)
    return round(number) if one.kind == "count" else float(f"{number:.5g}")


def usable_inputs(chance, calculator):
    """Return a number or a choice for every input that counts, each within its own limits."""
    inputs = {}
    for one in calculator.inputs:
        if one.kind == "choice":
            inputs[one.name] = chance.choice((*one.choices, *[one.example] * len(one.choices)))
        elif one.only_when and inputs[one.only_when[0]] not in one.only_when[1]:
            continue
        elif not one.optional or chance.random() < 0.5:
            inputs[one.name] = reading(chance, one)
    return inputs


def hostile_input(chance, one):
    """Return something a person, or somebody with bad intentions, may put into an input."""
    kind = chance.randrange(5)
    if kind == 0:
        return chance.choice(JUNK)
    if kind == 1:
        return "".join(chance.choice(ALPHABET) for _ in range(chance.randrange(1, 12)))
    if kind == 2:
        unit = chance.choice(KINDS[chance.choice(list(KINDS))].units)
        return f"{10 ** chance.uniform(-12, 15):.6g} {unit}"
    if kind == 3 and one.kind != "choice":
        off = chance.choice([-1e-3, -1e-15, 0, 1e-15, 1e-3])
        return chance.choice([one.low, one.high]) * (1 + off)
    return chance.choice([-1, 1]) * 10 ** chance.uniform(-320, 308)


def check_that_it_is_an_answer(result):
    """Fail unless `result` is plain, finite, and holds either values or problems."""
    text = json.dumps(result, allow_nan=False)
    assert json.loads(text) == result
    assert bool(result["values"]) != bool(result["problems"])
    assert all(sentence.endswith((".", "?")) for sentence in result["problems"].values())
    for value in result["values"].values():
        assert value["shown"]
        assert not {"nan", "inf"} & set(value["shown"].lower().split("\u00a0"))


@each_calculator
def test_hostile_input_gives_values_or_sentences(name, thorough):
    chance = random.Random(f"hostile {name}")
    calculator = CALCULATORS[name]
    answered = 0
    asked = rounds(calculator, 10_000 if thorough else 2_500)
    for _ in range(asked):
        inputs = usable_inputs(chance, calculator)
        for one in chance.choices(calculator.inputs, k=chance.randrange(3)):
            inputs[one.name] = hostile_input(chance, one)
        result = run(name, inputs, chance.choice(SYSTEMS))
        check_that_it_is_an_answer(result)
        answered += bool(result["values"])

    assert 0.1 * asked < answered < 0.95 * asked


@each_calculator
def test_each_kind_of_junk_in_each_input(name):
    for one in CALCULATORS[name].inputs:
        for junk in JUNK:
            usable = usable_inputs(random.Random(1), CALCULATORS[name])
            check_that_it_is_an_answer(run(name, {**usable, one.name: junk}))


def test_junk_in_place_of_a_name_of_units_or_of_inputs():
    for junk in [*JUNK[: JUNK.index(None)], None, True, 7, [], {}, ["us"], {"us": 1}]:
        check_that_it_is_an_answer(run(junk, {}))
        check_that_it_is_an_answer(run("hardness-units", {"hardness": 18}, junk))
        check_that_it_is_an_answer(run("hardness-units", junk))


@each_calculator
def test_us_and_metric_readers_get_the_same_answer(name):
    """The same readings, each typed as a bare number in the reader's own units."""
    chance = random.Random(f"systems {name}")
    calculator = CALCULATORS[name]
    compared = 0
    for _ in range(rounds(calculator, 400)):
        us_inputs = usable_inputs(chance, calculator)
        metric_inputs = {
            one.name: one.displayed(us_inputs[one.name], "metric")[0]
            if one.kind != "choice"
            else us_inputs[one.name]
            for one in calculator.inputs
            if one.name in us_inputs
        }
        us, metric = run(name, us_inputs), run(name, metric_inputs, "metric")
        assert us["problems"].keys() == metric["problems"].keys()
        assert us["values"].keys() == metric["values"].keys()
        assert len(us["warnings"]) == len(metric["warnings"])
        for key, value in us["values"].items():
            other = metric["values"][key]
            if "words" in value:
                assert other["words"] == value["words"]
                continue
            kind = calculator.output(key).kind
            number = convert(other["number"], other["unit"], value["unit"], kind)
            assert number == pytest.approx(value["number"], rel=1e-9, abs=1e-9)
            compared += 1

    assert compared > 300


@each_calculator
def test_the_last_digit_of_an_input_never_shows(name):
    """Round inputs, off by one part in a thousand million million, show the same everywhere."""
    chance = random.Random(f"digits {name}")
    calculator = CALCULATORS[name]

    def off(value, factor):
        return value if isinstance(value, (str, int)) else value * factor

    def shown(inputs, units):
        result = run(name, inputs, units)
        values = {key: value["shown"] for key, value in result["values"].items()}
        return values, result["workings"], result["warnings"], result["problems"]

    for _ in range(rounds(calculator, 300)):
        inputs = {
            key: float(f"{value:.2g}") if isinstance(value, float) else value
            for key, value in usable_inputs(chance, calculator).items()
        }
        for units in SYSTEMS:
            exact = shown(inputs, units)
            for factor in (1 - 1e-15, 1 + 1e-15):
                moved = {key: off(value, factor) for key, value in inputs.items()}
                assert shown(moved, units) == exact


@each_calculator
def test_exactly_the_declared_outputs_are_worked_out(name):
    chance = random.Random(f"outputs {name}")
    calculator = CALCULATORS[name]
    produced = set()
    for _ in range(rounds(calculator, 300)):
        inputs = usable_inputs(chance, calculator)
        if not run(name, inputs)["values"]:
            continue
        work = Working("us")
        for one in calculator.inputs:
            if one.name in inputs and one.kind != "choice":
                work.put(one.name, inputs[one.name], one.unit)
        given = {one.name: inputs.get(one.name) for one in calculator.inputs}
        produced |= set(calculator.compute(SimpleNamespace(**given), work))

    assert produced == {one.name for one in calculator.outputs}


def is_a_sentence(text):
    """Return whether a text reads as sentences: begun by a capital, ended by a stop, not shouted."""
    starts = re.findall(r"(?:^|[.?] )(\S)", text)
    return (
        text.endswith((".", "?"))
        and not any(letter.islower() for letter in starts)
        and not re.search(r"\b[A-Z]{5,}\b", text)
    )


@each_calculator
def test_every_answer_shows_its_working_in_sentences(name):
    chance = random.Random(f"workings {name}")
    calculator = CALCULATORS[name]
    said = set()
    for _ in range(rounds(calculator, 500)):
        inputs = usable_inputs(chance, calculator)
        for one in chance.choices(calculator.inputs, k=2):
            if one.kind != "choice" and one.name in inputs:
                inputs[one.name] = chance.choice((one.low, one.high))
        result = run(name, inputs, chance.choice(SYSTEMS))
        said |= {*result["warnings"], *result["problems"].values()}
        assert bool(result["workings"]) == bool(result["values"])
        for step in result["workings"]:
            said.add(step["sentence"])
            assert step["formula"]
            assert "_" not in step["formula"]
            assert "{" not in step["formula"] + step["numbers"] + step["result"]

    assert [sentence for sentence in said if not is_a_sentence(sentence)] == []


@each_calculator
def test_the_same_question_gets_the_same_answer(name):
    inputs = usable_inputs(random.Random(3), CALCULATORS[name])

    assert json.dumps(run(name, inputs)) == json.dumps(run(name, dict(inputs)))
