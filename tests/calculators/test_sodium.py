"""Sodium and potassium of softened water, and potassium chloride as the salt."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import CALCULATORS, run
from calculators.sodium import POTASSIUM, SODIUM, added_by_exchange, label, taste
from calculators.water import charge_equivalent


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


RAW = readings(0, 200)


@given(RAW, st.floats(1, 5))
def test_what_is_added_is_proportional_to_the_hardness_removed(removed, times):
    sodium = added_by_exchange(removed, SODIUM)

    assert added_by_exchange(removed * times, SODIUM) == pytest.approx(sodium * times)
    assert added_by_exchange(removed, POTASSIUM) == pytest.approx(sodium * POTASSIUM / SODIUM)


@given(RAW)
def test_charges_balance(removed):
    """Each charge of hardness taken out comes back as a charge of sodium."""
    added = added_by_exchange(removed, SODIUM)

    assert charge_equivalent(added, 2 * SODIUM) == pytest.approx(removed)


@given(RAW, readings(0, 1), readings(0, 2000), readings(0, 6), st.floats(2, 40))
def test_a_glass_and_a_day_hold_their_part_of_the_sodium(answer, raw, part, sodium, drunk, glass):
    inputs = {
        "raw": raw,
        "outlet": raw * part,
        "raw_sodium": sodium,
        "water_drunk": drunk,
        "glass": glass,
    }
    total = answer("sodium-added", "total", **inputs)

    assert total == pytest.approx(answer("sodium-added", "added", **inputs) + sodium)
    assert answer("sodium-added", "in_a_day", **inputs) == pytest.approx(total * drunk)
    assert answer("sodium-added", "share_of_day", **inputs) == pytest.approx(total * drunk / 20)
    assert answer("sodium-added", "beside_guidance", **inputs) == pytest.approx(5 * total)
    assert answer("sodium-added", "in_a_glass", **inputs) == pytest.approx(
        total * glass * 3.785411784 / 128
    )


@given(st.floats(0.1, 200))
def test_water_that_is_not_softened_gains_nothing(answer, raw):
    assert answer("sodium-added", "added", raw=raw, outlet=raw) == 0
    assert answer("potassium-salt", "added", salt=9, raw=raw, outlet=raw) == 0


@pytest.mark.parametrize(
    ("milligrams", "word"),
    [
        (0, "sodium free"),
        (4.99, "sodium free"),
        (5, "very low sodium"),
        (35, "very low sodium"),
        (35.1, "low sodium"),
        (140, "low sodium"),
        (140.1, "none of the label's words"),
    ],
)
def test_the_words_of_a_label(milligrams, word):
    assert label(milligrams) == label(milligrams * (1 + 1e-15)) == word


@pytest.mark.parametrize(
    ("sodium", "where"),
    [(29.9, "below"), (30, "within"), (60, "within"), (60.1, "above")],
)
def test_the_range_for_taste(sodium, where):
    assert taste(sodium) == taste(sodium * (1 - 1e-15)) == f"{where} the range advised for taste"


@pytest.mark.parametrize(("sodium", "where"), [(0, "within"), (20, "within"), (20.1, "above")])
def test_the_federal_guidance(sodium, where):
    result = run("sodium-added", {"raw": 0, "raw_sodium": sodium})

    words = result["values"]["guidance"]["words"]
    assert words == f"{where} the federal guidance for a very low sodium diet"


@pytest.mark.parametrize(
    ("calculator", "ion"), [("sodium-added", "sodium"), ("potassium-salt", "potassium")]
)
def test_what_the_raw_water_has_is_not_taken_as_none_in_silence(calculator, ion):
    usual = {"raw": 2, **({"salt": 9} if ion == "potassium" else {})}

    assert any("only what softening adds" in text for text in run(calculator, usual)["warnings"])
    assert run(calculator, {**usual, f"raw_{ion}": 5})["warnings"] == []


def test_a_glass_holds_its_part_of_the_potassium(answer):
    inputs = {"salt": 9, "raw": 20, "glass": "16 fl oz"}

    assert answer("potassium-salt", "in_a_glass", **inputs) == pytest.approx(
        answer("potassium-salt", "total", **inputs) * 3.785411784 / 8
    )


def test_potassium_chloride_and_its_water_are_rounded_up():
    values = run("potassium-salt", {"salt": 8.1, "raw": 20})["values"]

    assert values["potassium_salt"]["shown"] == "10.4\u00a0lb"
    assert values["water"]["shown"] == "3.7\u00a0gal"


@pytest.mark.parametrize(
    ("calculator", "inputs"), [("sodium-added", {}), ("potassium-salt", {"salt": 9})]
)
def test_swapped_samples_are_refused(calculator, inputs):
    result = run(calculator, {"raw": 3, "outlet": 20, **inputs})

    assert "not swapped" in result["problems"]["outlet"]


@given(st.floats(0.5, 100), st.floats(1.5, 3.5))
def test_potassium_chloride_weighs_more_for_the_same_work(answer, salt, in_water):
    inputs = {"salt": salt, "raw": 20, "salt_in_water": in_water}
    wanted = answer("potassium-salt", "potassium_salt", **inputs)

    assert wanted == pytest.approx(salt / (answer("potassium-salt", "same_weight", **inputs) / 100))
    assert wanted > 1.27 * salt
    assert answer("potassium-salt", "water", **inputs) * in_water == pytest.approx(wanted)


def test_every_answer_carries_its_caution():
    assert any("kidney" in text for text in CALCULATORS["potassium-salt"].cautions)
    for name in ("sodium-added", "potassium-salt"):
        assert any("never medical advice" in text for text in CALCULATORS[name].cautions)


def test_what_is_above_the_guidance_never_shows_as_all_of_it_and_no_more():
    result = run("sodium-added", {"raw": "2.545 gpg"})

    assert result["values"]["guidance"]["words"].startswith("above")
    assert result["values"]["beside_guidance"]["shown"] == "101\u00a0%"
