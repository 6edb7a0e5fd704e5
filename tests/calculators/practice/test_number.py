"""An exercise with numbers: its question, the marking of answers, and what is said to each."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.practice.drawing import CannotBePosed
from calculators.practice.exercises import asked, mark, pose, solve
from calculators.practice.mistakes import SENTENCES, mistakes_in
from calculators.practice.worked import accepted

ONE = {
    "id": "a-setting",
    "kind": "number",
    "title": "A setting",
    "skill": "settings",
    "family": "settings",
    "story": "A tap tests at {hardness} with {iron} of iron.",
    "drawn": {
        "hardness": {"kind": "hardness", "unit": "gpg", "one_of": [18]},
        "iron": {"kind": "concentration", "unit": "mg/L", "one_of": [0.6]},
    },
    "steps": [
        {
            "calculate": "hardness-setting",
            "inputs": {
                "hardness": {"drawn": "hardness"},
                "iron": {"drawn": "iron"},
                "iron_allowance": {"text": "4 gpg per mg/L"},
                "manganese_allowance": {"text": "4 gpg per mg/L"},
            },
        }
    ],
    "asides": {},
    "ask": [{"output": "setting", "step": 0, "choices": []}],
}
IRON = {"kind": "concentration", "unit": "mg/L", "one_of": [0.9]}
ROW: dict[str, Any] = {
    **ONE,
    "id": "a-row",
    "drawn": {**ONE["drawn"], "iron": IRON},
    "steps": [
        *ONE["steps"],
        {
            "calculate": "regeneration-interval",
            "inputs": {
                "capacity": {"text": "36000 grains"},
                "setting": {"answer": "setting", "step": 0},
                "water": {"text": "150 gal/day"},
                "control": {"text": "delayed meter"},
                "meter_step": {"text": "10 gal"},
            },
        },
    ],
    "ask": [{"output": "counter", "step": 1, "choices": []}],
    "mistakes": ["iron-left-out", "no-reserve"],
}


def said_to(text: str, exercise: dict[str, Any] = ONE, units: str = "us", **more: str) -> str:
    """Return what is said to an answer, beside its field."""
    name = exercise["ask"][0]["output"]
    result = mark(exercise, "1", units, {name: text, **more})
    return result["problems"].get(name) or result["fields"][name]["feedback"]


def test_a_question_names_what_is_given_and_asked_and_nothing_else() -> None:
    assert pose(ONE, "1", "us") == {
        "id": "a-setting",
        "kind": "number",
        "title": "A setting",
        "seed": "1",
        "story": "A tap tests at 18\u00a0gpg with 0.6\u00a0mg/L of iron.",
        "given": [{"label": "Allowance for iron", "shown": "4\u00a0gpg per mg/L"}],
        "asked": [
            {
                "name": "setting",
                "label": "Enter in the control",
                "help": "a hardness with its unit, such as gpg",
                "choices": [],
            }
        ],
    }


def test_a_metric_reader_gets_metric_numbers() -> None:
    question = pose(ONE, "1", "metric")
    assert question["story"] == "A tap tests at 308\u00a0mg/L with 0.6\u00a0mg/L of iron."
    assert question["asked"][0]["help"] == "a hardness with its unit, such as mg/L"


def test_a_unit_that_a_trainer_chose_is_kept() -> None:
    report = {
        **ONE,
        "drawn": {
            **ONE["drawn"],
            "hardness": {"kind": "hardness", "unit": "mg/L", "one_of": [310]},
        },
    }
    assert pose(report, "1", "us")["story"].startswith("A tap tests at 310\u00a0mg/L")


@pytest.mark.parametrize(
    "text",
    ["21 gpg", "21gpg", "21 grains per gallon", "360 mg/L", "20.8 gpg", "20.4 gpg", "20.25 gpg"],
)
def test_the_right_number_is_right_in_any_unit_within_a_hundredth(text: str) -> None:
    assert said_to(text) == "Right: 21\u00a0gpg."


def test_a_metric_reader_who_leaves_the_controls_steps_out_is_right_or_known_too() -> None:
    # 308 mg/L with 0.6 times 68.5 mg/L; the control takes it in steps of a grain.
    assert said_to("349 mg/L", units="metric").startswith("Right")
    assert said_to("308 mg/L", units="metric") == SENTENCES["iron-left-out"]


@pytest.mark.parametrize("text", ["20.7 gpg", "21.3 gpg", "20 gpg", "22 gpg", "21 mg/L"])
def test_a_number_beside_it_is_not(text: str) -> None:
    assert not said_to(text).startswith("Right")


def test_a_bare_number_is_refused_with_the_units_it_may_have() -> None:
    assert said_to("21") == (
        "“21” has no unit. Write 21\u00a0gpg, or the unit you mean: gpg, mg/L, °dH, °fH or °Clark."
    )
    result = mark(ONE, "1", "us", {"setting": "21"})
    assert (result["right"], result["score"], result["fields"], result["solution"]) == (
        False, 0.0, {}, [],
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "Write your answer here first."),
        (
            "21 gal",
            "“21 gal” is a volume. Write a hardness (gpg, mg/L, °dH, °fH, °Clark, mmol/L, meq/L).",
        ),
        ("about 21", "“about 21” does not start with a number. Write one, such as 12 or 3/4."),
        (
            "2,1 gpg",
            "“2,1” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
        ),
    ],
)
def test_what_cannot_be_read_gets_a_sentence(text: str, said: str) -> None:
    assert said_to(text) == said


@pytest.mark.parametrize(
    ("text", "mistake"), [("18 gpg", "iron-left-out"), ("311 gpg", "milligrams-for-grains")]
)
def test_a_listed_mistake_gets_its_sentence(text: str, mistake: str) -> None:
    assert said_to(text) == SENTENCES[mistake]
    assert mark(ONE, "1", "us", {"setting": text})["mistakes"] == [mistake]


def test_only_the_mistakes_that_an_exercise_names_are_told() -> None:
    named = {**ONE, "mistakes": ["iron-left-out"]}
    assert said_to("18 gpg", named) == SENTENCES["iron-left-out"]
    assert said_to("311 gpg", named) == (
        "No slip that is known here gives this number: go through the solution step by step."
    )


def test_two_mistakes_together_are_told_together() -> None:
    # 36,000 grains over 18 gpg: neither the iron nor a reserve.
    result = mark(ROW, "1", "us", {"counter": "2000 gal"})
    assert result["mistakes"] == ["iron-left-out", "no-reserve"]
    said = " ".join(SENTENCES[one] for one in result["mistakes"])
    assert result["fields"]["counter"] == {"right": False, "feedback": said}


def test_an_unknown_number_asks_for_the_first_step() -> None:
    result = mark(ROW, "1", "us", {"counter": "700 gal"})
    assert result["feedback"] == [
        "Not yet. What did you find first, for “Enter in the control”? Write it below, and look again."
    ]
    assert [(one["name"], one["label"]) for one in result["ask"]] == [
        ("first step", "Enter in the control")
    ]


@pytest.mark.parametrize(
    ("first", "said"),
    [
        ("22 gpg", "The first number, “Enter in the control”, is right: the slip lies after it."),
        ("21.6 gpg", "The first number, “Enter in the control”, is right: the slip lies after it."),
        ("18 gpg", f"The first number is off already. {SENTENCES['iron-left-out']}"),
        ("44 gpg", "The first number is off already: begin again with “Enter in the control”."),
    ],
)
def test_the_first_step_tells_where_the_slip_lies(first: str, said: str) -> None:
    assert said_to("700 gal", ROW, **{"first step": first}) == said


def test_a_first_step_that_cannot_be_read_is_told_beside_it() -> None:
    result = mark(ROW, "1", "us", {"counter": "700 gal", "first step": "21"})
    assert result["problems"]["first step"].startswith("“21” has no unit.")


def test_who_writes_rounded_answers_down_on_the_way_is_right_too() -> None:
    drawn = {"salt": {"kind": "mass", "unit": "lb", "one_of": [7]}}
    row = {
        **ROW,
        "drawn": drawn,
        "steps": [
            {
                "calculate": "resin-capacity",
                "inputs": {"salt": {"drawn": "salt"}, "resin_volume": {"text": "1.5 ft³"}},
            },
            {
                "calculate": "regeneration-interval",
                "inputs": {
                    "capacity": {"answer": "capacity", "step": 0},
                    "setting": {"text": "2 gpg"},
                    "water": {"text": "1,000 gal/day"},
                    "control": {"text": "time clock"},
                },
            },
        ],
        "ask": [{"output": "total_water", "step": 1, "choices": []}],
    }
    worked = accepted(row, "1", "us")
    exact, rounded = (worked.value(one, row["ask"][0]) for one in (worked.right, worked.rounded))
    assert exact["number"] != rounded["number"] == 12950
    assert said_to(rounded["shown"], row).startswith("Right")


def test_the_longest_interval_which_no_story_tells_never_decides() -> None:
    row = {
        **ROW,
        "drawn": {"water": {"kind": "flow", "unit": "gal/day", "one_of": [60, 120, 240]}},
        "mistakes": [],
        "steps": [
            {
                "calculate": "regeneration-interval",
                "inputs": {
                    "capacity": {"text": "30,000 grains"},
                    "setting": {"text": "20 gpg"},
                    "water": {"drawn": "water"},
                    "control": {"text": "time clock"},
                },
            },
        ],
        "ask": [{"output": "interval", "step": 0, "choices": []}],
    }
    # 1,500 gal last 25, 12.5 and 6.25 days; no bed waits longer than 14.
    drawn = {accepted(row, str(seed), "us").drawn["water"].value for seed in range(30)}
    assert drawn == {120, 240}


def test_a_rough_reading_is_right_anywhere_between_its_ends() -> None:
    pair = {
        **ONE,
        "kind": "pair",
        "drawn": {"hot": {"kind": "hardness", "unit": "gpg", "one_of": [10]}},
        "steps": [
            {
                "calculate": "heater-history",
                "inputs": {
                    "tank": {"text": "50 gal"},
                    "before": {"text": "0 gpg"},
                    "cold": {"text": "20 gpg"},
                    "hot": {"drawn": "hot"},
                    "drop": {"text": "1 gpg"},
                    "water": {"text": "240 gal/day"},
                    "hot_share": {"text": "35 %"},
                },
            }
        ],
        "ask": [
            {"output": "turned", "step": 0, "choices": ["softer", "harder"]},
            {"output": "hours", "step": 0, "choices": [], "between": ["least_hours", "most_hours"]},
        ],
        "mistakes": ["straight-line-dilution"],
    }
    # Half of the old water is left, more or less one drop of twenty: ln 2, ln(1/0.55), ln(1/0.45)
    # times 50 gal, over 3.5 gal of hot water an hour.
    for hours, right in (("9.9 h", True), ("8.6 h", True), ("11.4 h", True), ("8.4 h", False)):
        result = mark(pair, "1", "us", {"turned": "harder", "hours": hours})
        assert result["fields"]["hours"]["right"] is right, hours
    result = mark(pair, "1", "us", {"turned": "softer", "hours": "7.1 h"})
    assert result["mistakes"] == ["straight-line-dilution"]
    assert result["fields"]["turned"]["feedback"] == (
        "Look at the readings again: they say the other."
    )
    assert solve(pair, "1", "us")["answers"][1]["shown"] == (
        "10\u00a0h, anything from 9\u00a0h to 11\u00a0h being right"
    )


def test_the_solution_is_the_calculators_own() -> None:
    solved = solve(ONE, "1", "us")
    assert solved["answers"] == [{"label": "Enter in the control", "shown": "21\u00a0gpg"}]
    (part,) = solved["solution"]
    assert part["calculator"] == "hardness-setting"
    assert [step["result"] for step in part["workings"]][2:4] == ["20.4\u00a0gpg", "21\u00a0gpg"]


def test_a_draw_whose_mistake_comes_too_near_is_drawn_again() -> None:
    hardness = {"kind": "hardness", "unit": "gpg", "one_of": [28]}
    iron = {"kind": "concentration", "unit": "mg/L", "one_of": [0.1, 0.6]}
    near = {**ONE, "drawn": {"hardness": hardness, "iron": iron}}
    stories = {pose(near, str(seed), "us")["story"] for seed in range(20)}
    assert stories == {"A tap tests at 28\u00a0gpg with 0.6\u00a0mg/L of iron."}


def test_a_draw_must_be_clear_in_both_unit_systems() -> None:
    # 22 gpg is 377 mg/L to a metric reader: a hair beyond the 22nd step of a grain.
    drawn = {**ROW["drawn"], "iron": {**IRON, "one_of": [0.9, 1]}}
    stories = {pose({**ROW, "drawn": drawn}, str(seed), "us")["story"] for seed in range(20)}
    assert stories == {"A tap tests at 18\u00a0gpg with 0.9\u00a0mg/L of iron."}
    for seed in "abcdef":
        worked = [accepted({**ROW, "drawn": drawn}, seed, units) for units in ("us", "metric")]
        assert len({one.drawn["iron"].value for one in worked}) == 1


def test_what_only_the_conversion_changes_is_no_mistake() -> None:
    # One cubic foot is 28.3 L to a metric reader: the dose for each is the whole but for a hair.
    volume = {"resin_volume": {"kind": "volume", "unit": "ft³", "one_of": [1]}}
    dose = {
        **ONE,
        "drawn": volume,
        "story": "A bed of {resin_volume}.",
        "steps": [
            {
                "calculate": "resin-capacity",
                "inputs": {"salt": {"text": "8 lb"}, "resin_volume": {"drawn": "resin_volume"}},
            }
        ],
        "ask": [{"output": "capacity", "step": 0, "choices": []}],
        "mistakes": ["dose-for-total"],
    }
    worked = accepted(dose, "1", "metric")
    for way in mistakes_in(dose)["dose-for-total"]:
        assert worked.wrong_values((way,), dose["ask"][0]) == []


def test_an_exercise_without_a_usable_draw_says_so() -> None:
    hardness = {"kind": "hardness", "unit": "gpg", "one_of": [28]}
    iron = {"kind": "concentration", "unit": "mg/L", "one_of": [0.1]}
    useless = {**ONE, "drawn": {"hardness": hardness, "iron": iron}}
    with pytest.raises(CannotBePosed):
        pose(useless, "1", "us")
    request = {"exercise": useless, "seed": "1", "units": "us"}
    told = {"problem": "No clear question comes of this number. Take another one."}
    assert asked(request) == asked({**request, "answers": {}}) == told


def test_a_page_asks_by_what_it_sends() -> None:
    request = {"exercise": ONE, "seed": "1", "units": "us"}
    assert asked(request) == pose(ONE, "1", "us")
    answers = {"setting": "21 gpg"}
    assert asked({**request, "answers": answers}) == mark(ONE, "1", "us", answers)


def test_a_seed_is_short_and_units_are_known() -> None:
    with pytest.raises(ValueError, match="at most 40 letters"):
        pose(ONE, "x" * 41, "us")
    with pytest.raises(ValueError, match="no unit system 'imperial'"):
        pose(ONE, "1", "imperial")
