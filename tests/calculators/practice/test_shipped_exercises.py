"""What holds for every shipped exercise, whatever it is drawn from and whatever is answered."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.practice import evidence, number
from calculators.practice.answers import ALIKE_WITHIN, numbers_of
from calculators.practice.exercises import mark, pose, solve
from calculators.practice.mistakes import SENTENCES, mistakes_in
from calculators.practice.worked import Worked, accepted
from calculators.quantities import SYSTEMS, snap
from tests.calculators.practice.shipped import exercises, handbook, knowledge, of_kinds
from tests.calculators.test_every_calculator import JUNK

NUMBERS = of_kinds("number", "pair", "settings")
a_number_exercise = st.sampled_from(NUMBERS)
a_system = st.sampled_from(SYSTEMS)
a_seed = st.integers(0, 9999).map(str)


def library_for(exercise: dict[str, Any]) -> Any:
    return knowledge() if exercise["kind"] == "evidence" else None


def right_answers(exercise: dict[str, Any], seed: str, units: str) -> dict[str, Any]:
    """Return what somebody answers who knows: numbers as the trade rounds them."""
    if exercise["kind"] == "order":
        return {"order": [one["name"] for one in exercise["items"]]}
    library = library_for(exercise)
    asked = pose(exercise, seed, units, library)["asked"]
    told = solve(exercise, seed, units, library)["answers"]
    pairs = zip(asked, told, strict=True)
    return {one["name"]: row["shown"].split(", anything from")[0] for one, row in pairs}


@settings(max_examples=70)
@given(a_number_exercise, a_seed, a_system)
def test_the_right_answer_with_trade_rounding_is_right(
    exercise: dict[str, Any], seed: str, units: str
) -> None:
    result = mark(exercise, seed, units, right_answers(exercise, seed, units))
    assert (result["right"], result["score"], result["problems"]) == (True, 1.0, {})
    assert result["mistakes"] == result["feedback"] == result["ask"] == []


def wrong_ones(worked: Worked, field: dict[str, Any]) -> list[tuple[str, dict[str, Any]]]:
    """Return every listed mistake that changes a field's answer, with its wrong number."""
    return [
        (mistake, value)
        for mistake, ways in mistakes_in(worked.exercise).items()
        for way in ways
        if not way.reach
        for value in worked.wrong_values((way,), field)
    ]


@settings(max_examples=90)
@given(a_number_exercise, a_seed, a_system)
def test_no_mistake_is_near_the_right_answer_and_each_is_told_as_itself(
    exercise: dict[str, Any], seed: str, units: str
) -> None:
    worked = accepted(exercise, seed, units)
    for field in exercise["ask"]:
        right = worked.value(worked.right, field)
        for mistake, wrong in wrong_ones(worked, field):
            if right["unit"] not in ("12-hour clock", "24-hour clock"):
                off = abs(wrong["number"] - right["number"])
                assert off > ALIKE_WITHIN * abs(right["number"]), mistake
            for answer in numbers_of(wrong):
                assert not worked.is_right(answer, field), mistake
                assert number.recognized(worked, field, answer) == [mistake]


def test_every_listed_mistake_is_told_by_a_shipped_exercise() -> None:
    told = set()
    for exercise in NUMBERS:
        worked = accepted(exercise, "1", "us")
        told |= {name for field in exercise["ask"] for name, _ in wrong_ones(worked, field)}
        told |= {
            way.mistake for ways in mistakes_in(exercise).values() for way in ways if way.reach
        }
    assert told == set(SENTENCES)


def test_a_mistake_is_told_in_its_sentence_and_the_first_of_two_too() -> None:
    exercise = exercises()["counter-from-a-test"]
    worked = accepted(exercise, "1", "us")
    (field,) = exercise["ask"]
    ways = {name: ways[0] for name, ways in mistakes_in(exercise).items()}
    for names in (["no-reserve"], ["iron-left-out", "no-reserve"]):
        (wrong, *_) = worked.wrong_values([ways[one] for one in names], field)
        result = mark(exercise, "1", "us", {"counter": wrong["shown"]})
        assert result["mistakes"] == names
        assert result["feedback"] == [SENTENCES[one] for one in names]


@pytest.mark.parametrize("name", exercises())
def test_hostile_answers_get_sentences(name: str) -> None:
    exercise = exercises()[name]
    library = library_for(exercise)
    asked = [one["name"] for one in pose(exercise, "1", "us", library)["asked"]]
    for junk in [*JUNK[:60:6], "5 parsecs", ["a"], {"a": 1}, 1e400]:
        result = mark(
            exercise, "1", "us", {**dict.fromkeys(asked, junk), "first step": junk}, library
        )
        assert not result["right"]
        assert result["problems"] or result["feedback"]
        for sentence in (*result["problems"].values(), *result["feedback"]):
            assert isinstance(sentence, str)
            assert sentence[0].isupper() or sentence[0] == "“"
            assert sentence[-1] in ".?"
        json.dumps(result, allow_nan=False)
    for nothing in (None, [], "900 gal", {"no such field": "900 gal"}):
        result = mark(exercise, "1", "us", nothing, library)
        assert set(result["problems"]) == set(asked)
        assert result["answers"] == result["solution"] == []


@pytest.mark.parametrize("name", exercises())
def test_a_seed_gives_the_same_question_and_another_seed_another(name: str) -> None:
    exercise = exercises()[name]
    library = library_for(exercise)
    first, again = (pose(exercise, "class 7", "us", library) for _ in range(2))
    assert json.dumps(first) == json.dumps(again)
    others = (pose(exercise, str(seed), "us", library) for seed in range(4))
    assert any({**one, "seed": ""} != {**first, "seed": ""} for one in others)
    assert "{" not in first["story"]


@pytest.mark.parametrize("name", [one["id"] for one in of_kinds("order", "evidence")])
def test_the_solved_answers_are_marked_right(name: str) -> None:
    exercise = exercises()[name]
    for seed in ("1", "2"):
        answers = right_answers(exercise, seed, "us")
        result = mark(exercise, seed, "us", answers, library_for(exercise))
        assert (result["right"], result["score"], result["critical"]) == (True, 1.0, False)
        assert result["solution"]


@pytest.mark.parametrize("name", [one["id"] for one in of_kinds("evidence")])
def test_what_speaks_against_the_runner_up_and_what_to_do_next_follow_from_the_rules(
    name: str,
) -> None:
    exercise, known = exercises()[name], knowledge()
    scene = evidence.accepted(exercise, "3", known)
    first, second = scene.standing.ranking[:2]
    assert first in exercise["faults"]
    rows = {fault: known.hypotheses.index((fault,)) for fault in (first, second)}
    shares = {}
    for check, result in scene.readings.items():
        chances = known.rows(check, known.misreading(check))
        place = known.results[check].index(result)
        shares[check] = chances[rows[first]][place] / chances[rows[second]][place]
    loudest, *others = sorted(shares, key=lambda check: -shares[check])
    assert scene.against[0][1] == loudest
    assert shares[loudest] > 1.5 * shares[others[0]]
    assert 5 <= len(scene.readings) <= 8
    offered = {one.check: one.rate for one in scene.found if one.check in scene.checks}
    best = scene.option.first
    assert best in scene.checks
    assert all(rate < 0.65 * scene.option.rate for one, rate in offered.items() if one != best)


def test_the_exercises_cover_the_curriculum() -> None:
    book = handbook()
    assert {one.content.kind for one in book.practice.values()} == {
        "number", "pair", "settings", "order", "evidence",
    }  # fmt: skip
    assert {one.content.skill for one in book.practice.values()} == set(book.skills)
    assert snap(len(book.practice)) >= 30
