"""Bleach and iron cleaner: the amounts, and all that is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import CALCULATORS, run
from calculators.care import LAST_CYCLE, bleach_dose

BED = st.floats(0.25, 5)
PLAIN = "plain bleach, nothing added"
READY = {"product": PLAIN, "last_cycle": "salt only", "resin_volume": 1.5, "brine": 3}


@given(BED, st.floats(0.1, 2), st.floats(3, 12.5), st.floats(1.01, 2))
def test_the_dose_grows_with_the_bed_and_shrinks_with_the_strength(bed, dose, strength, times):
    ounces = bleach_dose(bed, dose, strength)

    assert bleach_dose(bed * times, dose, strength) == pytest.approx(times * ounces)
    assert bleach_dose(bed, dose, strength * times) == pytest.approx(ounces / times)


@given(st.floats(3, 12.5))
def test_the_chlorine_is_the_same_at_any_strength(answer, strength):
    chlorine = answer("sanitizing-dose", "chlorine", **READY)

    assert answer("sanitizing-dose", "chlorine", strength=strength, **READY) == pytest.approx(
        chlorine
    )


@given(BED, st.floats(0.5, 30))
def test_the_chlorine_in_the_brine_is_the_chlorine_put_in(answer, bed, brine):
    asked = {**READY, "resin_volume": bed, "brine": brine}
    in_brine = answer("sanitizing-dose", "in_brine", **asked) / 1000  # g/L

    assert in_brine * brine * 3.785411784 == pytest.approx(
        answer("sanitizing-dose", "chlorine", **asked)
    )


@given(BED, st.floats(0.5, 32))
def test_the_cleaner_is_the_label_for_all_the_resin(answer, bed, label):
    asked = {"resin_volume": bed, "last_cycle": "salt only"}

    powder = answer("resin-cleaner-dose", "powder", powder_dose=label, **asked)
    liquid = answer("resin-cleaner-dose", "liquid", form="liquid", liquid_dose=label, **asked)
    assert powder == pytest.approx(bed * label)
    assert liquid == pytest.approx(bed * label)


@pytest.mark.parametrize(
    ("calculator", "last_cycle", "sentence"),
    [
        (
            "sanitizing-dose",
            "iron cleaner",
            "Never bleach after iron cleaner: poisonous gas. Run one full regeneration with salt "
            "alone to its end, then ask again.",
        ),
        (
            "sanitizing-dose",
            "something else, or not known",
            "No bleach unless it is known that only salt or bleach went through the unit last. Run "
            "one full regeneration with salt alone to its end, then ask again.",
        ),
        (
            "resin-cleaner-dose",
            "bleach",
            "Never iron cleaner after bleach: poisonous gas. Run one full regeneration with salt "
            "alone to its end, then ask again.",
        ),
        (
            "resin-cleaner-dose",
            "something else, or not known",
            "No iron cleaner unless it is known that only salt or iron cleaner went through the "
            "unit last. Run one full regeneration with salt alone to its end, then ask again.",
        ),
    ],
)
def test_no_chemical_on_another_or_on_an_unknown_one(calculator, last_cycle, sentence):
    result = run(calculator, {**usable(calculator), "last_cycle": last_cycle})

    assert result["problems"] == {"last_cycle": sentence}
    assert result["values"] == {}


def usable(calculator):
    return READY if calculator == "sanitizing-dose" else {"resin_volume": 1.5}


@pytest.mark.parametrize("calculator", ["sanitizing-dose", "resin-cleaner-dose"])
def test_nothing_is_dosed_while_nobody_said_what_went_through_last(calculator):
    asked = {name: text for name, text in usable(calculator).items() if name != "last_cycle"}

    assert set(run(calculator, asked)["problems"]) == {"last_cycle"}


@pytest.mark.parametrize(
    ("calculator", "allowed"),
    [
        ("sanitizing-dose", {"salt only", "bleach"}),
        ("resin-cleaner-dose", {"salt only", "iron cleaner"}),
    ],
)
def test_what_may_have_gone_before(calculator, allowed):
    answered = {
        last
        for last in LAST_CYCLE
        if run(calculator, {**usable(calculator), "last_cycle": last})["values"]
    }

    assert answered == allowed


@pytest.mark.parametrize("product", [None, "scented, thickened or not known"])
def test_only_plain_bleach_is_dosed(product):
    result = run("sanitizing-dose", {**READY, "product": product})

    assert result["problems"] == {
        "product": "Use plain bleach only, with nothing added: perfume and thickener stay in the "
        "resin and may not go into drinking water."
    }


@pytest.mark.parametrize(
    ("inputs", "said"),
    [
        ({"strength": 12.5}, "This is not household bleach: it burns skin and eyes at once."),
        (
            {"dose": 1.3},
            "Chlorine oxidizes resin: go above the usual dose only where the maker's sheet says "
            "so.",
        ),
    ],
)
def test_strong_bleach_and_a_high_dose_are_warned_about(inputs, said):
    (warning,) = run("sanitizing-dose", {**READY, **inputs})["warnings"]

    assert warning.endswith(said)


@pytest.mark.parametrize("calculator", ["sanitizing-dose", "resin-cleaner-dose"])
@pytest.mark.parametrize(
    "words",
    [
        "acid, iron cleaner or ammonia",
        "win",
        "gloves and eye protection",
        "nobody draws water",
        "septic",
    ],
)
def test_the_cautions_are_all_there(calculator, words):
    assert any(words in caution for caution in CALCULATORS[calculator].cautions)


@pytest.mark.parametrize(("form", "amount"), [("powder", {"powder"}), ("liquid", {"liquid"})])
def test_a_powder_is_weighed_and_a_liquid_measured(form, amount):
    asked = {"resin_volume": 1.5, "last_cycle": "salt only", "form": form}

    assert set(run("resin-cleaner-dose", asked)["values"]) == amount | {
        "hold", "order", "done_when",
    }  # fmt: skip


@given(
    BED,
    st.floats(0.5, 32),
    st.sampled_from(["powder", "liquid"]),
    st.sampled_from(["us", "metric"]),
)
def test_the_cleaner_is_shown_rounded_down(bed, label, form, units):
    asked = {"resin_volume": f"{bed} ft³", "last_cycle": "salt only", "form": form}
    asked[f"{form}_dose"] = f"{label} {'oz/ft³' if form == 'powder' else 'fl oz/ft³'}"
    amount = run("resin-cleaner-dose", asked, units)["values"][form]

    assert amount["rounded"] <= amount["number"] + 1e-9
    assert amount["rounding"].startswith("down")


@pytest.mark.parametrize("calculator", ["sanitizing-dose", "resin-cleaner-dose"])
def test_salt_with_a_rust_remover_is_no_salt_alone(calculator):
    words = CALCULATORS[calculator].input("last_cycle").help

    assert "rust remover in it and a feeder of cleaner count as iron cleaner" in words


def test_a_metric_reader_measures_bleach_in_milliliters():
    asked = {**READY, "resin_volume": "42 L", "brine": "11 L"}
    result = run("sanitizing-dose", asked, "metric")

    assert result["inputs"]["dose"]["shown"] == "1.25\u00a0mL/L"
    assert result["values"]["bleach"]["unit"] == "mL"
    assert result["values"]["bleach"]["number"] == pytest.approx(42 * 1.25)
