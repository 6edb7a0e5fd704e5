"""A practice call shows the same after the same moves, obeys its rules, and never tells the fault."""

from __future__ import annotations

import json
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.diagnosis import Knowledge, numbers
from calculators.practice.call_code import read_code
from calculators.practice.calls import Calls
from calculators.practice.hidden_call import NO_FAULT, drawn_faults
from calculators.practice.practice_call import PracticeCall
from tests.calculators.practice.known_calls import (
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


@pytest.fixture(scope="module")
def calls_by_fault(shipped: Knowledge) -> dict[str, PracticeCall]:
    """Return a call of the shipped handbook for every fault, which it hides first."""
    calls = Calls(shipped)
    codes = {fault: calls.new("", fault, "a seed")["code"] for fault in shipped.faults}
    return {fault: PracticeCall(shipped, code) for fault, code in codes.items()}


def everything(knowledge: Knowledge) -> list[dict[str, Any]]:
    """Return the moves that make every check and wait for what waits."""
    return [*SAFE, *(check(name) for name in knowledge.checks), {"do": "wait"}, {"do": "wait"}]


def test_every_fault_can_be_the_hidden_one(calls_by_fault: dict[str, PracticeCall]) -> None:
    assert {fault: call.hidden.faults[0] for fault, call in calls_by_fault.items()} == {
        fault: fault for fault in calls_by_fault
    }


def test_no_picture_tells_the_fault(calls_by_fault: dict[str, PracticeCall]) -> None:
    for fault, call in calls_by_fault.items():
        title = call.knowledge.faults[fault]["title"]
        for moves in ([], everything(call.knowledge)):
            text = json.dumps(call.play(moves).picture(), ensure_ascii=False)
            assert f'"{fault}"' not in text, call.code.text
            assert title.lower() not in text.lower(), call.code.text


def test_the_same_code_and_moves_show_the_same(calls_by_fault: dict[str, PracticeCall]) -> None:
    for call in list(calls_by_fault.values())[::8]:
        again = PracticeCall(call.knowledge, call.code.text.lower())
        moves = everything(call.knowledge)
        first = call.play(moves).picture("metric")
        assert again.play(moves).picture("metric") == first
        readings = {one["check"]: one["lines"] for one in first["readings"]}
        backward = again.play([check("cold-and-hot-pair"), check("raw-hardness")]).picture("metric")
        for one in backward["readings"]:
            assert one["lines"] == readings[one["check"]]  # whatever was checked before


def test_what_is_shown_gives_the_same_result_on_the_live_page(
    calls_by_fault: dict[str, PracticeCall],
) -> None:
    compared = 0
    for call in calls_by_fault.values():
        for one in call.play(everything(call.knowledge)).picture()["readings"]:
            if one["check"] not in numbers.NUMBERS or len(one["lines"]) < 2:
                continue
            inputs = [each.name for each in numbers.NUMBERS[one["check"]].inputs]
            if one["check"] == "supply-pressure" or len(inputs) != len(one["lines"]):
                continue
            texts = dict(zip(inputs, (line["shown"] for line in one["lines"]), strict=True))
            read = numbers.read(one["check"], texts, "us")
            if not read["problems"]:
                assert read["result"] == one["result"], (call.code.text, one)
                compared += 1
    assert compared > 200


def test_a_share_of_calls_has_two_faults_and_some_none(shipped: Knowledge) -> None:
    calls = Calls(shipped)
    drawn = [calls.new("", "", number)["code"] for number in range(600)]
    found = [
        drawn_faults(shipped, code, Random(f"{code.seed} 0"))
        for code in (read_code(text, shipped) for text in drawn)
    ]
    assert 0.02 < sum(one == [NO_FAULT] for one in found) / 600 < 0.08
    assert 0.07 < sum(len(one) == 2 for one in found) / 600 < 0.13


def test_a_call_of_a_group_hides_a_fault_of_it(shipped: Knowledge) -> None:
    calls = Calls(shipped)
    for seed in range(6):
        code = calls.new("Salt and brine", "", seed)["code"]
        faults = PracticeCall(shipped, code).hidden.faults
        groups = {shipped.faults[fault]["group"] for fault in faults}
        assert "Salt and brine" in groups or faults == [NO_FAULT]


def test_two_faults_change_one_home(shipped: Knowledge) -> None:
    calls = Calls(shipped)
    pair = None
    for seed in range(200):
        call = PracticeCall(shipped, calls.new("Salt and brine", "", seed)["code"])
        if len(call.hidden.faults) == 2:
            pair = call.hidden
            break
    assert pair is not None
    both = {name for fault in pair.faults for name, _, _ in pair.changes[fault]}
    assert {name for name, _, _ in pair.story.changes} == both


# The rules, in a tiny handbook


def test_minutes_pass_and_a_check_is_made_once() -> None:
    call = call_with(small(), "bridge")
    picture = played(call, check("level"), check("rod")).picture()
    assert picture["minutes"] == 3
    assert [one["at"] for one in picture["readings"]] == [2, 3]
    assert call.play([check("rod"), check("rod")]).problems == ["It was made already."]


def test_a_check_needs_its_finding() -> None:
    call = call_with(small(), "bridge")
    result = call.play([check("draw")])
    assert result.problems == ["It needs this finding first: Start by hand, “Turns”."]
    assert result.minutes == 0
    assert played(call, check("lamp"), check("start"), check("draw")).minutes == 6


def test_a_finding_that_is_another_makes_a_check_impossible() -> None:
    always = {"complaint": {"hard": 1}, "lamp": {"dark": 1}}
    call = call_with(small(no_power={"likelihoods": always}), "no-power")
    result = call.play([check("lamp"), check("start")])
    assert result.problems == [
        "It cannot be made here, as it needs this finding: Lamp at the outlet, “Lit”."
    ]


def test_destroyed_evidence_cannot_be_read() -> None:
    call = call_with(small(), "bridge")
    result = call.play([check("rod"), check("level")])
    assert result.problems == ["Its evidence is gone since “Rod through the salt”."]
    assert result.log[0]["destroyed"] == ["level"]
    assert played(call, check("level"), check("rod")).log[1]["destroyed"] == []


def test_a_result_that_waits_comes_later_while_others_go_on() -> None:
    knowledge = small()
    knowledge.checks["draw"]["overlaps_minutes"] = 1
    call = call_with(knowledge, "bridge")
    begun = played(call, check("lamp"), check("start"), check("draw"))
    assert begun.minutes == 3
    picture = begun.picture()
    assert picture["waiting"]
    assert picture["readings"][-1]["result"] is None
    assert picture["readings"][-1]["label"] == ""
    later = played(call, check("lamp"), check("start"), check("draw"), {"do": "wait"})
    assert later.minutes == 6
    assert later.picture()["readings"][-1]["label"] in ("Draws", "Stands")
    assert call.play([{"do": "wait"}]).problems == ["There is nothing to wait for."]


def test_safety_ends_when_the_unit_goes_back_into_service() -> None:
    call = call_with(small(), "bridge")
    assert played(call, *SAFE, check("valve")).log[-1]["missed"] == []
    assert played(call, *SAFE, check("level"), check("valve")).log[-1]["missed"] == ["pressure"]
    assert played(call, check("valve")).log[-1]["missed"] == ["pressure", "consent"]
    assert played(call, check("valve")).picture()["sprayed"]


def test_a_danger_that_was_seen_has_to_stop_the_work() -> None:
    knowledge = small()
    knowledge.checks["lamp"]["stop_if"] = ["The outlet is wet. Leave it alone."]
    call = call_with(knowledge, "bridge", danger=True)
    seen = played(call, check("lamp")).picture()
    assert seen["danger"] == {"seen": "The outlet is wet.", "stopped": False}
    assert seen["readings"][0]["danger"] == "The outlet is wet."
    assert played(call, check("lamp"), check("level")).log[-1]["missed"] == ["danger"]
    stopped = played(call, check("lamp"), {"do": "stop"}, check("level"))
    assert stopped.log[-1]["missed"] == []
    assert stopped.picture()["danger"]["stopped"]
    assert played(call, {"do": "stop"}).picture()["danger"] is None


def test_the_order_of_the_end_is_kept() -> None:
    call = call_with(small(), "bridge")
    assert call.play([remedy("bridge")]).problems == ["Name a cause before you repair."]
    assert call.play([named("bridge"), proved("rod")]).problems == [
        "A closing test comes after the repair."
    ]
    assert call.play([named("bridge"), told("Done.")]).problems == [
        "Repair first, and prove it; then tell the customer."
    ]
    ended = call.play([named("bridge"), remedy("bridge"), told("Done."), check("rod")])
    assert ended.over
    assert ended.problems == ["The call is over. Begin a new one, or read what it was."]


def test_after_the_right_repair_the_home_is_sound() -> None:
    always = {"complaint": {"hard": 1}, "rod": {"crust": 1}}
    call = call_with(small(bridge={"likelihoods": always}), "bridge")
    before = [named("bridge"), remedy("bridge"), proved("rod")]
    assert played(call, *before).proofs[0]["reading"]["result"] == "loose"
    wrong = [named("plugged"), remedy("plugged"), proved("rod")]
    assert played(call, *wrong).proofs[0]["reading"]["result"] == "crust"


JUNK = some.recursive(
    some.none() | some.booleans() | some.floats() | some.text(max_size=5) | some.integers(),
    lambda inner: some.lists(inner, max_size=3) | some.dictionaries(some.text(max_size=5), inner),
    max_leaves=5,
)
KINDS = some.sampled_from(
    ["check", "prove", "name", "remedy", "tell", "look-up", "wait", "consent", "stop", "end"]
)
NAMES = some.sampled_from(["level", "bridge", "valve", "no-power", "complaint"])
MOVES = some.fixed_dictionaries(
    {"do": KINDS},
    optional={
        key: NAMES | JUNK
        for key in ("check", "cause", "second", "confidence", "remedy", "parts", "text", "page")
    },
)


@settings(max_examples=120)
@given(moves=some.lists(MOVES | JUNK, max_size=8) | JUNK)
def test_hostile_moves_are_told_and_change_nothing_else(moves: object) -> None:
    result = TINY.play(moves)
    picture = result.picture()
    assert json.loads(json.dumps(picture, allow_nan=False)) == picture
    assert all(sentence.endswith(".") for sentence in result.problems)
    if isinstance(moves, list):
        assert len(result.log) + len(result.problems) == len(moves)
    else:
        assert result.log == []
        assert result.problems == [
            "The moves of this call could not be read, so it begins anew."
        ]


TINY = call_with(small(), "bridge")


def test_the_door_of_pages_tells_what_cannot_be_done() -> None:
    calls = Calls(small())
    no_code = {"problem": "A code has 8 letters and digits, and this has 2."}
    assert calls.answer("22", [], "us") == no_code
    assert calls.debrief("22", [], "us", []) == no_code
    assert calls.replay("22", [], "us") == no_code
    nothing = {"code": "", "problem": "This handbook has no practice call of that kind."}
    assert calls.new("no such group", "", 1) == nothing
    assert calls.new("", "no such fault", 1) == nothing
    code = calls.new("Any", "bridge", 1)["code"]
    assert PracticeCall(small(), code).hidden.faults[0] == "bridge"
    assert calls.answer(code, [], "us")["code"] == code
