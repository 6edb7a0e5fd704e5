"""Hardness and the setting of the control."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.water import CLASSES, IRON, MANGANESE, charge_equivalent, hardness_class


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


HARDNESS = readings(0, 150)
METAL = readings(0, 5)
STEP = st.sampled_from([0.1, 0.5, 1, 2, 5, 17.1])
OUTPUTS = {
    "grains_per_gallon": "gpg",
    "mg_per_liter": "mg/L",
    "german_degrees": "°dH",
    "french_degrees": "°fH",
    "clark_degrees": "°Clark",
    "millimoles_per_liter": "mmol/L",
    "milliequivalents_per_liter": "meq/L",
}


@given(HARDNESS, METAL, METAL, STEP)
def test_setting_covers_the_compensated_hardness_by_less_than_a_step(
    answer, hardness, iron, manganese, step
):
    inputs = {"hardness": hardness, "iron": iron, "manganese": manganese, "setting_step": step}
    setting = answer("hardness-setting", "setting", **inputs)
    compensated = answer("hardness-setting", "compensated", **inputs)

    assert compensated - 1e-8 * step <= setting < compensated + step
    assert setting / step == pytest.approx(round(setting / step), abs=1e-6)


@given(HARDNESS)
def test_without_metals_the_compensated_hardness_is_the_hardness(answer, hardness):
    assert answer("hardness-setting", "compensated", hardness=hardness) == pytest.approx(hardness)
    assert answer("hardness-setting", "metals_by_charge", hardness=hardness) == 0


@given(HARDNESS, METAL, METAL, readings(0, 10), readings(0, 10))
def test_allowances_are_linear(answer, hardness, iron, manganese, for_iron, for_manganese):
    compensated = answer(
        "hardness-setting",
        "compensated",
        hardness=hardness,
        iron=iron,
        manganese=manganese,
        iron_allowance=for_iron,
        manganese_allowance=for_manganese,
    )

    assert compensated == pytest.approx(hardness + iron * for_iron + manganese * for_manganese)


@given(METAL, st.floats(0.01, 2))
def test_more_iron_never_lowers_the_setting(answer, iron, more):
    before = answer("hardness-setting", "setting", hardness=18, iron=iron)

    assert answer("hardness-setting", "setting", hardness=18, iron=iron + more) >= before


@given(readings(0, 100), readings(0, 10))
def test_charge_equivalent_is_proportional(concentration, times):
    once = charge_equivalent(concentration, IRON)

    assert charge_equivalent(concentration * times, IRON) == pytest.approx(once * times, abs=1e-12)
    assert charge_equivalent(concentration, MANGANESE) >= once


@given(readings(0, 200))
def test_a_hardness_comes_back_from_each_of_its_units(answer, grains):
    for output, unit in OUTPUTS.items():
        number = answer("hardness-units", output, hardness=grains)
        back = answer("hardness-units", "grains_per_gallon", hardness=f"{number:.15f} {unit}")
        assert back == pytest.approx(grains, rel=1e-9, abs=1e-9)


@given(readings(0, 3000), readings(0, 500))
def test_harder_water_never_gets_a_softer_word(hardness, more):
    words = [word for _, word in CLASSES] + ["very hard"]

    assert words.index(hardness_class(hardness)) <= words.index(hardness_class(hardness + more))


@pytest.mark.parametrize(("limit", "word"), CLASSES)
def test_the_end_of_a_class_belongs_to_it(limit, word):
    assert hardness_class(limit) == hardness_class(limit * (1 + 1e-15)) == word
    assert hardness_class(limit + 0.001) != word


@pytest.mark.parametrize(
    ("iron", "manganese", "told"),
    [
        (0.9, 0, ""),
        (1, 0, "reach the level"),
        (2.7, 0.3, "reach the level"),
        (3, 0.1, "treat it first"),
    ],
)
def test_metals_are_warned_about_once_and_by_their_sum(iron, manganese, told):
    result = run("hardness-setting", {"hardness": 18, "iron": iron, "manganese": manganese})
    about_both = [text for text in result["warnings"] if "Dissolved iron:" not in text]

    assert [told in text for text in about_both] == ([True] if told else [])


def test_a_setting_that_is_already_a_step_stays():
    for grains in range(1, 200):
        result = run("hardness-setting", {"hardness": grains / 10, "setting_step": 0.1})
        assert math.isclose(result["values"]["setting"]["number"], grains / 10)
