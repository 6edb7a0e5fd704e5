"""Scores that were worked out by hand, each part alone and all together."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.diagnosis import Knowledge
from calculators.practice.calls import Calls
from calculators.practice.debrief import debrief, replay
from calculators.practice.practice_call import PracticeCall
from calculators.practice.scoring import Score, score
from calculators.practice.to_customer import looked_over
from tests.calculators.practice.known_calls import (
    GOOD_WORDS,
    SAFE,
    call_with,
    check,
    named,
    played,
    proved,
    remedy,
    small,
    told,
)


def knowledge() -> Knowledge:
    """Return a tiny handbook in which a plugged injector may follow a bridge."""
    return small(
        no_power={"group": "Power"},
        bridge={
            "group": "Salt",
            "parts": ["Salt"],
            "likelihoods": {"complaint": {"hard": 1}, "rod": {"crust": 1}},
            "proved_by": [{"check": "rod", "result": "crust"}],
        },
        plugged={
            "group": "Salt",
            "parts": ["Screen"],
            "follows": ["bridge"],
            "repair_opens": True,
            "likelihoods": {"complaint": {"hard": 1}, "valve": {"worn": 1}},
        },
    )


@pytest.fixture(scope="module")
def bridge() -> PracticeCall:
    """Return a call with a bridge."""
    return call_with(knowledge(), "bridge")


@pytest.fixture(scope="module")
def plugged() -> PracticeCall:
    """Return a call with a plugged injector alone."""
    return call_with(knowledge(), "plugged")


@pytest.fixture(scope="module")
def both() -> PracticeCall:
    """Return a call in which a bridge has brought a plugged injector."""
    return call_with(knowledge(), "bridge", "plugged")


def scored(call: PracticeCall, *moves: dict[str, Any], best: float = 3) -> Score:
    """Return the score after moves that all can be made, beside so many minutes of the diagnosis."""
    return score(played(call, *moves), best)


def points(made: Score) -> dict[str, float]:
    """Return the points of each part."""
    return {name: round(one, 2) for name, (one, _) in made.points.items()}


END = [proved("rod"), told(GOOD_WORDS)]


def test_a_call_without_fault_has_all_points(bridge: PracticeCall) -> None:
    made = scored(bridge, check("level"), check("rod"), named("bridge"), remedy("bridge"), *END)
    assert points(made) == {
        "cause": 40, "remedy": 8, "closing test": 7, "economy": 15, "confidence": 10,
        "safety": 15, "words": 5,
    }  # fmt: skip
    assert (made.total, made.right, made.sure, made.taken, made.critical) == (
        100,
        True,
        100,
        [],
        [],
    )


def test_a_wrong_cause_keeps_what_was_honest_and_safe(bridge: PracticeCall) -> None:
    made = scored(bridge, check("level"), named("no-power", 60), remedy("no-power"), *END)
    # 10 x (1 - 0.6 squared) is 6.4; with 15 and 5, less 10 for the repair in vain: 16.4.
    assert points(made) == {
        "cause": 0, "remedy": 0, "closing test": 0, "economy": 0, "confidence": 6.4,
        "safety": 15, "words": 5,
    }  # fmt: skip
    assert made.taken == [("Repaired what was not at fault: No power.", 10)]
    assert (made.total, made.right) == (16, False)


def test_another_fault_of_the_right_group_has_half(plugged: PracticeCall) -> None:
    made = scored(plugged, check("level"), check("rod"), named("bridge"), {"do": "give-up"})
    assert points(made)["cause"] == 20
    assert points(made)["economy"] == 7.5  # as many minutes as the diagnosis, half the cause


def test_the_effect_in_the_place_of_its_cause_has_a_quarter(bridge: PracticeCall) -> None:
    assert points(scored(bridge, named("plugged"), {"do": "give-up"}))["cause"] == 10


def test_a_cause_and_its_effect_share_the_points(both: PracticeCall) -> None:
    def cause(*moves: dict[str, Any]) -> float:
        return points(scored(both, *moves, {"do": "give-up"}))["cause"]

    assert cause(named("bridge", second="plugged")) == 40
    assert cause(named("bridge")) == 30
    assert cause(named("plugged")) == 10
    one_after_the_other = [named("bridge"), remedy("bridge"), named("plugged")]
    assert cause(*one_after_the_other) == 40
    assert cause(named("plugged"), named("bridge")) == 30  # taken back before a repair


def test_a_wrong_cause_that_is_named_with_each_repair_is_taken_off_once(both: PracticeCall) -> None:
    moves = []
    for cause in ("bridge", "plugged"):
        moves += [named(cause, second="no-power"), remedy(cause)]
    made = scored(both, *moves, {"do": "give-up"})
    assert made.taken == [("Named what was not at fault: No power.", 10)]


def test_minutes_count_beside_those_of_the_diagnosis(bridge: PracticeCall) -> None:
    slow = [check("lamp"), check("start"), check("draw"), check("level"), check("rod")]
    made = scored(bridge, *slow, named("bridge"), remedy("bridge"), *END)
    assert made.minutes == 9
    assert points(made)["economy"] == 6  # 15 x (3 + 1) / (9 + 1)


def test_a_repair_in_vain_counts_its_minutes_and_a_right_one_does_not(bridge: PracticeCall) -> None:
    moves = [named("no-power", 50), remedy("no-power"), check("rod"), named("bridge", 90)]
    made = scored(bridge, *moves, remedy("bridge"), *END)
    assert made.minutes == 6  # five of the repair, one of the rod
    assert points(made)["confidence"] == 7.5  # of the first naming
    assert points(made)["economy"] == 8.57
    # The rod was pushed down before the level was read.
    assert [taken for _, taken in made.taken] == [10, 5]
    assert made.total == 40 + 8 + 7 + round(8.57 + 7.5) + 15 + 5 - 15


def test_good_parts_and_destroyed_evidence_are_taken_off(bridge: PracticeCall) -> None:
    made = scored(
        bridge, check("rod"), named("bridge"), remedy("bridge", "Salt", "Screen"), *END, best=1
    )
    assert made.taken == [
        ("“Rod through the salt” destroyed evidence that was not read: Water in the well.", 5),
        ("Replaced what was good: Screen.", 10),
    ]
    assert made.total == 85


def test_a_cause_that_was_named_beside_the_right_one_is_taken_off(bridge: PracticeCall) -> None:
    both = named("bridge", second="no-power")
    made = scored(bridge, check("level"), check("rod"), both, remedy("bridge"), *END)
    assert made.taken == [("Named what was not at fault: No power.", 10)]
    assert made.total == 90
    # Acted on, it is taken off once; taken back before a repair, not at all.
    made = scored(bridge, check("level"), both, remedy("no-power"), remedy("bridge"), *END)
    assert made.taken == [("Repaired what was not at fault: No power.", 10)]
    made = scored(bridge, check("level"), both, named("bridge"), remedy("bridge"), *END)
    assert made.taken == []
    made = scored(bridge, named("no-power"), {"do": "give-up"})
    assert made.taken == [("Named what was not at fault: No power.", 10)]


def test_opening_under_pressure_caps_the_call(plugged: PracticeCall) -> None:
    asked = [{"do": "consent"}, check("valve"), named("plugged"), remedy("plugged")]
    made = scored(plugged, *asked, proved("level"), told(GOOD_WORDS), best=99)
    assert made.critical == [
        "Something was opened before the unit was made safe: bypass, pressure off, unplugged."
    ]
    assert points(made)["safety"] == 0
    assert made.total == 50


def test_opening_without_consent_costs_a_third_of_safety(plugged: PracticeCall) -> None:
    moves = [{"do": "make-safe"}, check("valve"), named("plugged"), remedy("plugged")]
    made = scored(plugged, *moves, proved("valve"), told(GOOD_WORDS), best=99)
    assert points(made)["safety"] == 0  # the closing test opened it again, under pressure
    made = scored(plugged, *moves, *SAFE, proved("valve"), told(GOOD_WORDS), best=99)
    assert (made.critical, points(made)["safety"], made.total) == ([], 10, 95)


def test_a_closing_test_must_be_able_to_show_the_fault(bridge: PracticeCall) -> None:
    moves = [named("bridge"), remedy("bridge")]
    assert points(scored(bridge, *moves, proved("lamp"), told(GOOD_WORDS)))["closing test"] == 0
    assert points(scored(bridge, *moves, proved("rod"), told(GOOD_WORDS)))["closing test"] == 7


def test_a_call_given_up_at_once_has_no_points(bridge: PracticeCall) -> None:
    made = scored(bridge, {"do": "give-up"})
    assert (made.total, made.right) == (0, False)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (GOOD_WORDS, {"found", "done", "watch", "long"}),
        ("Done.", set()),
        ("I cleaned it.", {"done"}),
        (
            "It was the salt, which stood too high in the tank for many weeks now.",
            {"found", "long"},
        ),
    ],
)
def test_what_a_text_tells(text: str, found: set[str]) -> None:
    looked = looked_over(text, [])
    assert {name for name in ("found", "done", "watch", "long") if looked[name]} == found


def test_jargon_is_found_in_any_form_and_plain_words_are_not() -> None:
    text = "The Riser seal and the injectors, with their brine draw; the salt is not."
    jargon = ["riser", "injector", "injectors", "brine draw", "salt", "seat"]
    assert looked_over(text, jargon)["jargon"] == ["brine draw", "injectors", "riser"]


def test_the_debrief_waits_for_the_end(bridge: PracticeCall) -> None:
    goes_on = {"problem": "The call goes on: its debrief comes at its end."}
    assert debrief(bridge, [check("rod")]) == goes_on
    assert replay(bridge, [check("rod")]) == goes_on


def test_the_debrief_tells_what_it_was_and_what_each_reading_was_worth(
    bridge: PracticeCall,
) -> None:
    moves = [check("lamp"), check("rod"), named("bridge"), remedy("bridge"), *END]
    told_all = debrief(bridge, moves)
    assert told_all["faults"][0]["title"] == "Salt bridge"
    assert told_all["faults"][0]["tests"] == ["Rod through the salt"]
    assert told_all["score"] == score(bridge.play(moves), told_all["diagnosis"]["minutes"]).total
    lamp, rod = replay(bridge, moves)["steps"]
    assert (rod["label"], rod["words"], rod["for"]) == ("Crust", "strong", True)
    assert (lamp["words"], lamp["for"]) == ("a nudge", True)
    assert rod["leader"] == "Salt bridge"


def test_the_history_is_drawn_in_the_readers_units(shipped: Knowledge) -> None:
    code = Calls(shipped).new("", "salt-bridge", "seen")["code"]
    call = PracticeCall(shipped, code)
    drawn = replay(call, [{"do": "give-up"}], "metric")["history"]
    assert drawn["picture"].startswith("<svg")
    assert "Hardness, mg/L" in drawn["picture"]
    assert 6 <= drawn["visit"] - drawn["day"] <= 30
