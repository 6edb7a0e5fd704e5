"""Results against figures from outside the project, one file of checks for each calculator."""

import math
from datetime import datetime, timedelta
from pathlib import Path

import fluids
import pytest
from molmass import Formula
from pint import UnitRegistry
from ruamel.yaml import YAML
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.stats import uniform

from calculators import CALCULATORS, run
from calculators.quantities import parse
from tests.outside.film import film_front
from tests.outside.hydraulics import (
    bed_loss,
    darcy_loss,
    epanet_loss,
    lifted,
    lifted_by_ergun,
)

FOLDER = Path(__file__).parent / "checks"
CHECKS = [
    (path.stem, check)
    for path in sorted(FOLDER.glob("*.yaml"))
    for check in YAML(typ="safe").load(path)
]
ALWAYS = {"id", "inputs", "output", "expected", "seen", "source"}
SOMETIMES = {"units", "tolerance", "call"}
OUTSIDE = {"read", "computed", "from memory"}
UNITS = UnitRegistry()

#: What the `call` of a check may use.
LIBRARIES = {
    "u": UNITS,
    "Formula": Formula,
    "brentq": brentq,
    "solve_ivp": solve_ivp,
    "uniform": uniform,
    "film_front": film_front,
    "fluids": fluids,
    "epanet_loss": epanet_loss,
    "darcy_loss": darcy_loss,
    "bed_loss": bed_loss,
    "lifted": lifted,
    "lifted_by_ergun": lifted_by_ergun,
    "exp": math.exp,
    "sqrt": math.sqrt,
    "pi": math.pi,
    "datetime": datetime,
    "timedelta": timedelta,
}


def each(checks):
    return pytest.mark.parametrize(
        ("calculator", "check"),
        checks,
        ids=[f"{calculator}: {check['id']}" for calculator, check in checks],
    )


def in_its_unit(text, output):
    """Return the number in a text such as "9 lb" in the output's unit, where it has one."""
    return parse(text, output.kind).to(output.unit).number if output.unit else float(text)


def allowed_difference(tolerance, expected, output):
    """Return the difference that `tolerance` ("1 %", "0.5 gpg") allows: 0 % is the last digits."""
    if tolerance.endswith("%"):
        return expected * max(parse(tolerance, "share").number / 100, 1e-12)
    return in_its_unit(tolerance, output)


@each(CHECKS)
def test_the_result_agrees_with_the_outside_figure(calculator, check):
    result = run(calculator, check["inputs"], check.get("units", "us"))

    assert result["problems"] == {}
    answer = result["values"][check["output"]]
    output = CALCULATORS[calculator].output(check["output"])
    if output.kind == "words":
        assert answer["words"] == check["expected"]
        return
    expected = in_its_unit(check["expected"], output)
    number = in_its_unit(f"{answer['number']!r} {answer['unit']}".strip(), output)
    allowed = allowed_difference(check["tolerance"], expected, output)
    assert number == pytest.approx(expected, rel=0, abs=allowed)


@each([(calculator, check) for calculator, check in CHECKS if "call" in check])
def test_the_outside_figure_is_what_the_library_gives(calculator, check):
    computed = eval(check["call"], dict(LIBRARIES))

    written = check["expected"].split()[0]
    decimals = len(written.partition(".")[2])
    assert float(written) == pytest.approx(computed, rel=0, abs=0.6 * 10**-decimals)


@each(CHECKS)
def test_a_check_says_where_its_figure_comes_from(calculator, check):
    assert set(check) >= ALWAYS
    assert set(check) <= ALWAYS | SOMETIMES
    assert check["seen"] in OUTSIDE | {"no source"}
    assert ("call" in check) or check["seen"] != "computed"
    assert (check["source"] == "common practice, no source") == (check["seen"] == "no source")


def test_every_calculator_has_two_checks_against_something_outside():
    outside = [calculator for calculator, check in CHECKS if check["seen"] in OUTSIDE]

    assert [name for name in CALCULATORS if outside.count(name) < 2] == []
    assert set(outside) == set(CALCULATORS)


def test_every_check_has_a_name_of_its_own():
    names = [check["id"] for _, check in CHECKS]

    assert sorted(names) == sorted(set(names))


def test_the_page_about_verification_names_every_calculator():
    page = Path(__file__).parents[2].joinpath("docs", "verification.md").read_text(encoding="utf-8")

    assert [name for name in CALCULATORS if f"| `{name}` |" not in page] == []
