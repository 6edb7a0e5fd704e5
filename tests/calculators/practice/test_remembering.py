"""Items come back after their days, in a session that mixes and ends."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.practice.record import day_number
from calculators.practice.remembering import (
    INTERVALS,
    interleaved,
    next_items,
    standings,
    weight,
)
from tests.calculators.practice.records import RECORDS, attempt, day, record

WRONG = {"right": False, "score": 0}
UNSURE = {"sure": False}
HURTS = {"right": False, "score": 0, "critical": True}


def item(name: str, family: str = "settings", share: float = 0) -> dict[str, Any]:
    return {"id": name, "family": family, "share": share}


ITEMS = [item("dose"), item("clock", "clock"), item("bucket", "flow", 0.1)]


def after(*answers: tuple[int, dict[str, Any]]) -> tuple[int, int]:
    """Return the interval of the item's box, and in how many days from the first it is due."""
    made = record(*(attempt(number, **other) for number, other in answers))
    standing = standings(made)["dose"]
    return INTERVALS[standing.box], standing.due - day_number(day(0))


@pytest.mark.parametrize(
    ("answers", "expected"),
    [
        ([(0, {})], (3, 3)),
        ([(0, UNSURE)], (1, 1)),
        ([(0, WRONG)], (1, 1)),
        ([(0, {}), (3, {})], (7, 10)),
        ([(0, {}), (3, {}), (10, {})], (16, 26)),
        ([(0, {}), (3, {}), (10, {}), (26, {}), (61, {})], (90, 151)),
        ([(0, {}), (3, {}), (10, {}), (26, {}), (61, {}), (151, {})], (90, 241)),
        # Late is as good as in time, and the next interval counts from then.
        ([(0, {}), (9, {})], (7, 16)),
        # Right but unsure stays, and comes back after the same days.
        ([(0, {}), (3, UNSURE)], (3, 6)),
        # Right before its day changes nothing, sure or not.
        ([(0, {}), (1, {})], (3, 3)),
        ([(0, {}), (0, {"minute": 1})], (3, 3)),
        # Wrong drops two boxes, not below the first, also before its day.
        ([(0, {}), (3, {}), (10, {}), (26, WRONG)], (3, 29)),
        ([(0, {}), (3, WRONG)], (1, 4)),
        ([(0, {}), (3, {}), (10, {}), (12, WRONG)], (3, 15)),
        # What hurts people goes to the first box and comes back on the next day.
        ([(0, {}), (3, {}), (10, {}), (26, HURTS)], (1, 27)),
        ([(0, {}), (3, {}), (10, {"critical": True})], (1, 11)),
    ],
)
def test_boxes_by_hand(
    answers: list[tuple[int, dict[str, Any]]], expected: tuple[int, int]
) -> None:
    assert after(*answers) == expected


@given(RECORDS)
def test_a_wrong_answer_never_comes_back_later_than_a_right_one(made: dict[str, Any]) -> None:
    last = 41
    right, wrong, hurts = (
        standings(record(*made["attempts"], attempt(last, **other)))["dose"]
        for other in ({}, WRONG, HURTS)
    )
    assert hurts.box == 0
    assert hurts.due == day_number(day(last)) + INTERVALS[0]
    assert hurts.box <= wrong.box <= right.box < len(INTERVALS)
    assert wrong.due <= max(right.due, day_number(day(last)) + 1)


@given(RECORDS, st.integers(0, 60), st.text(max_size=3))
def test_a_session_is_short_and_holds_only_what_is_new_or_due(
    made: dict[str, Any], number: int, seed: str
) -> None:
    session = next_items(made, ITEMS, day(number), seed)
    known = standings(made, day_number(day(number)))
    names = [one["id"] for one in session["items"]]
    assert len(set(names)) == len(names)
    assert sum(one["new"] for one in session["items"]) <= 2
    for one in session["items"]:
        assert one["new"] == (one["id"] not in known)
        if not one["new"]:
            assert known[one["id"]].due <= day_number(day(number))
            assert one["over"] >= 0
            assert one["unsafe"] == known[one["id"]].unsafe
    assert session == next_items(made, ITEMS, day(number), seed)
    assert session["next"] is None or session["next"] > 0


@given(st.lists(st.floats(0, 1), min_size=9, max_size=30), st.text(max_size=3))
def test_a_first_session_has_two_new_items(shares: list[float], seed: str) -> None:
    items = [item(f"item {at}", "ab"[at % 2], share) for at, share in enumerate(shares)]
    session = next_items(record(), items, day(0), seed)
    assert [one["new"] for one in session["items"]] == [True, True]
    assert session["unmet"] == len(items) - 2
    assert (session["waiting"], session["done"], session["next"]) == (0, 0, None)


def test_a_session_has_six_old_items_and_ends_when_they_are_done() -> None:
    items = [item(f"old {at}", f"family {at % 3}") for at in range(9)]
    items += [item(f"new {at}", "family 0") for at in range(4)]
    made = record(*(attempt(0, f"old {at}", **WRONG) for at in range(9)))
    session = next_items(made, items, day(1), "today")
    assert sum(one["new"] for one in session["items"]) == 2
    assert len(session["items"]) == 8
    assert (session["waiting"], session["unmet"], session["done"]) == (3, 2, 0)
    for place, one in enumerate(session["items"]):
        made["attempts"].append(attempt(1, one["id"], minute=place))
        left = next_items(made, items, day(1), "today")
        assert len(left["items"]) == 7 - place
        assert left["done"] == place + 1
        assert {entry["id"] for entry in left["items"]} == {
            entry["id"] for entry in session["items"][place + 1 :]
        }
    assert (left["waiting"], left["unmet"], left["next"]) == (3, 2, 3)
    assert len(next_items(made, items, day(2), "today")["items"]) == 3 + 2


def test_what_would_have_hurt_somebody_comes_first_the_next_day() -> None:
    items = [item(f"old {at}") for at in range(20)]
    made = record(*(attempt(0, f"old {at}", **WRONG) for at in range(20)))
    made["attempts"] += [attempt(0, "old 7", minute=1, **HURTS)]
    for seed in "abcdefgh":
        session = next_items(made, items, day(1), seed)
        assert session["items"][0] == {"id": "old 7", "new": False, "unsafe": True, "over": 0}
        assert len(session["items"]) == 6


def test_an_item_that_waits_errs_and_is_common_weighs_more() -> None:
    made = record(attempt(0, "dose"), attempt(0, "clock", **WRONG), attempt(0, "bucket", **WRONG))
    known = standings(made)
    on = day_number(day(3))
    assert weight(known["dose"], 0.1, on - 1) == 0
    # By hand, three days after the answer: the time due, in intervals and at most three, times
    # the root of 0.04, the likely error rate and the share of freshness.
    assert weight(known["dose"], 0.04, on) == pytest.approx(1 * 0.2 * (1 / 3) * 3 / 10)
    assert weight(known["clock"], 0.04, on) == pytest.approx(3 * 0.2 * (2 / 3) * 3 / 10)
    assert weight(known["clock"], 0.04, on + 7) == pytest.approx(3 * 0.2 * (2 / 3) * 10 / 17)
    assert weight(known["bucket"], 0.16, on) == pytest.approx(2 * weight(known["clock"], 0.04, on))
    assert weight(known["clock"], 0, on) > 0


def test_heavy_items_are_chosen_more_often() -> None:
    items = [item("common", share=0.09), *(item(f"rare {at}", share=0.01) for at in range(9))]
    chosen = [
        {one["id"] for one in next_items(record(), items, day(0), str(seed))["items"]}
        for seed in range(600)
    ]
    # Two of ten are drawn, one after the other, with weights of 3 and nine times 1.
    expected = 3 / 12 + 9 / 12 * 3 / 11
    assert sum("common" in one for one in chosen) / 600 == pytest.approx(expected, abs=0.06)


@given(st.lists(st.sampled_from("abcd"), max_size=12))
def test_a_family_follows_itself_only_where_nothing_else_is_left(families: list[str]) -> None:
    items = [item(str(at), family) for at, family in enumerate(families)]
    ordered = interleaved(items)
    assert sorted(one["id"] for one in ordered) == sorted(one["id"] for one in items)
    repeats = sum(
        one["family"] == other["family"] for one, other in zip(ordered, ordered[1:], strict=False)
    )
    most = max((families.count(family) for family in families), default=0)
    assert repeats == max(0, 2 * most - len(families) - 1)


def test_an_item_of_another_edition_is_left_alone() -> None:
    made = record(attempt(0, "gone", **HURTS))
    assert next_items(made, [], day(1), "a")["items"] == []


def test_a_clock_that_was_ahead_for_a_while_holds_nothing_back() -> None:
    made = record(attempt(3000), attempt(0, "clock", **WRONG))
    session = next_items(made, ITEMS, day(1), "a")
    assert {one["id"]: one["new"] for one in session["items"]} == {
        "dose": True, "bucket": True, "clock": False,
    }  # fmt: skip
    # What was answered since counts, and the day that the clock told when it comes.
    made["attempts"].append(attempt(1))
    assert next_items(made, [item("dose")], day(2), "a")["next"] == 2
    assert next_items(made, [item("dose")], day(3000), "a")["next"] == 7
