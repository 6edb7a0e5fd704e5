"""The one door: what it returns, and its sentences about inputs that make no sense."""

import json

import pytest

from calculators import CALCULATORS, run

SMALL = {"salt": "9 lb", "refill_flow": "0.5 gpm"}


def test_the_plain_structure_of_an_answer():
    result = run("brine-refill", SMALL)

    assert set(result) == {"calculator", "inputs", "values", "workings", "warnings", "problems"}
    assert result["calculator"] == "brine-refill"
    assert result["inputs"]["salt"] == {
        "label": "Salt wanted for one regeneration",
        "number": 9.0,
        "unit": "lb",
        "shown": "9\u00a0lb",
    }
    assert result["values"]["refill_time"] == {
        "label": "Set the refill to",
        "number": 6.0,
        "rounded": 6.0,
        "unit": "min",
        "shown": "6\u00a0min",
        "rounding": "as the control takes it",
    }
    assert set(result["workings"][0]) == {"sentence", "formula", "numbers", "result"}
    assert json.loads(json.dumps(result)) == result


def test_inputs_left_out_take_their_defaults():
    result = run("brine-refill", SMALL)

    assert result["inputs"]["salt_in_water"]["shown"] == "3\u00a0lb/gal"
    assert result["inputs"]["time_step"]["shown"] == "1\u00a0min"


def test_defaults_are_round_for_a_metric_reader():
    result = run("household-load", {"people": 4, "setting": "342 mg/L"}, "metric")

    assert result["inputs"]["water_per_person"]["shown"] == "227\u00a0L/day"


def test_a_choice_is_told_as_understood():
    result = run("small-leak", {"measured": " Drips ", "drips": 60})

    assert result["inputs"]["measured"] == {
        "label": "How it was measured",
        "choice": "drips",
        "shown": "drips",
    }


def test_inputs_of_another_choice_do_not_count():
    result = run("small-leak", {"measured": "drips", "drips": 60, "caught": "nonsense"})

    assert result["problems"] == {}
    assert "caught" not in result["inputs"]


def test_an_optional_input_may_be_blank():
    blank = run("heater-washout", {"tank": 50, "before": 20, "drawn": 100, "hot_use": " "})

    assert blank["problems"] == {}
    assert "wait" not in blank["values"]


def test_a_bare_number_is_in_the_units_of_the_reader():
    us = run("hardness-units", {"hardness": "18"})
    metric = run("hardness-units", {"hardness": "18"}, "metric")

    assert us["inputs"]["hardness"]["shown"] == "18\u00a0gpg"
    assert metric["inputs"]["hardness"]["shown"] == "18\u00a0mg/L"
    assert metric["values"]["grains_per_gallon"]["number"] == pytest.approx(18 / 17.118061)


def test_a_written_unit_wins_over_the_units_of_the_reader():
    us = run("hardness-units", {"hardness": "18 gpg"})
    metric = run("hardness-units", {"hardness": "18 gpg"}, "metric")

    assert metric["values"]["german_degrees"]["number"] == us["values"]["german_degrees"]["number"]


@pytest.mark.parametrize(
    ("calculator", "inputs", "units", "problems"),
    [
        (
            "hardnes-setting",
            {},
            "us",
            {
                "calculator": "There is no calculator “hardnes-setting”. "
                "The nearest is “hardness-setting”."
            },
        ),
        (
            "zzz",
            {},
            "us",
            {
                "calculator": f"There is no calculator “zzz”. There are {len(CALCULATORS)}, such as "
                "hardness-units, hardness-setting, hardness-from-ions."
            },
        ),
        (
            "brine-refill",
            SMALL,
            "metrc",
            {"units": "There is no unit system “metrc”. The nearest is “metric”."},
        ),
        ("brine-refill", ["salt"], "us", {"inputs": "Inputs are given by name."}),
        (
            "brine-refill",
            {**SMALL, "slat": 9},
            "us",
            {"slat": "There is no input “slat”. The nearest is “salt”."},
        ),
        (
            "brine-refill",
            {"salt": "9 lb"},
            "us",
            {"refill_flow": "Refill flow is missing. Write a flow, such as 0.5 gpm."},
        ),
        (
            "brine-refill",
            {"salt": "  ", "refill_flow": 0.5},
            "metric",
            {"salt": "Salt wanted for one regeneration is empty. Write a weight, such as 4.1 kg."},
        ),
        (
            "brine-refill",
            {**SMALL, "salt": True},
            "us",
            {"salt": "That is not a number. Write a weight, such as 9 lb."},
        ),
        (
            "brine-refill",
            {**SMALL, "salt": [9]},
            "us",
            {"salt": "That is not a number. Write a weight, such as 9 lb."},
        ),
        (
            "brine-refill",
            {**SMALL, "salt": float("nan")},
            "us",
            {"salt": "That is not a usable number. Write a weight, such as 9 lb."},
        ),
        (
            "brine-refill",
            {**SMALL, "salt": float("-inf")},
            "us",
            {"salt": "That is not a usable number. Write a weight, such as 9 lb."},
        ),
        (
            "brine-refill",
            {**SMALL, "salt": "9 gpm"},
            "us",
            {"salt": "“9 gpm” is a flow. Write a weight (lb, oz, kg, g)."},
        ),
        (
            "small-leak",
            {"measured": "drip"},
            "us",
            {
                "measured": "“drip” is not a choice. Choose one of: cup and watch, drips, "
                "toilet cistern, house meter. The nearest is “drips”."
            },
        ),
        (
            "small-leak",
            {"measured": ""},
            "us",
            {
                "measured": "How it was measured is empty. Choose one of: cup and watch, drips, "
                "toilet cistern, house meter."
            },
        ),
        (
            "household-load",
            {"people": 2.5, "setting": 20},
            "us",
            {"people": "2.5 is not a whole number. Write one."},
        ),
        (
            "household-load",
            {"people": "4 people", "setting": 20},
            "us",
            {"people": "“people” does not belong here. Write a number alone."},
        ),
        (
            "household-load",
            {"people": 0, "setting": 20},
            "us",
            {"people": "Nobody uses any water: write how many people live there."},
        ),
        (
            "resin-capacity",
            {"salt": 30, "resin_volume": 1},
            "us",
            {
                "salt": "That is 30 lb/ft³ of resin, more than the relation holds for "
                "(1 lb/ft³ to 25 lb/ft³). Write the salt of one whole regeneration."
            },
        ),
        (
            "regeneration-interval",
            {"capacity": 4000, "setting": 20, "water": 240},
            "us",
            {
                "capacity": "Nothing is left for the counter after the reserve: use more salt or "
                "resin, or an immediate control or twin tanks."
            },
        ),
        (
            "regeneration-interval",
            {"capacity": 4000, "setting": 20, "water": 240, "control": "time clock"},
            "us",
            {
                "capacity": "The bed does not last one day: use more salt or resin, or a control "
                "with a meter."
            },
        ),
        (
            "regeneration-interval",
            {"capacity": 4000, "setting": 20, "water": 24, "reserve": 195},
            "us",
            {
                "reserve": "Nothing is left for the counter after the reserve: use more salt or "
                "resin, or an immediate control or twin tanks."
            },
        ),
    ],
)
def test_problems_are_sentences_to_the_person_who_typed(calculator, inputs, units, problems):
    result = run(calculator, inputs, units)

    told = {name: sentence.replace("\u00a0", " ") for name, sentence in result["problems"].items()}
    assert told == problems
    assert result["values"] == {}


def test_every_wrong_input_is_told_at_once():
    result = run("brine-refill", {"salt": "much", "refill_flow": "", "time_step": "1 lb"})

    assert set(result["problems"]) == {"salt", "refill_flow", "time_step"}


def test_a_long_wrong_name_is_cut_in_the_sentence():
    result = run("x" * 1000, {})

    assert len(result["problems"]["calculator"]) < 400


@pytest.mark.parametrize("nothing", [None, 7, ["a"], {"a": 1}, b"brine-refill"])
def test_a_name_that_is_no_text_is_a_problem(nothing):
    assert set(run(nothing, {})["problems"]) == {"calculator"}
    assert set(run("brine-refill", SMALL, nothing)["problems"]) == {"units"}
