"""Steps in an order: what is kept of it, what is dangerous in it, and what is said."""

from __future__ import annotations

from itertools import permutations

import pytest

from calculators.practice.exercises import mark, pose

EXERCISE = {
    "id": "open-a-cap",
    "kind": "order",
    "title": "Open a cap",
    "skill": "safe",
    "family": "safe-work",
    "story": "Put them in order.",
    "items": [
        {"name": "note", "text": "Write the counter down."},
        {"name": "bypass", "text": "Turn the bypass."},
        {"name": "bleed", "text": "Let the pressure out."},
        {"name": "open", "text": "Open the cap."},
    ],
    "pairs": [
        {"first": "note", "then": "bleed", "why": "Bleeding moves it.", "safety": False},
        {"first": "bypass", "then": "bleed", "why": "Else it never ends.", "safety": False},
        {"first": "bleed", "then": "open", "why": "Pressure throws parts.", "safety": True},
    ],
}


def marked(*order: str) -> dict:
    return mark(EXERCISE, "1", "us", {"order": list(order)})


def test_every_order_that_keeps_all_pairs_is_right() -> None:
    for order in (("note", "bypass", "bleed", "open"), ("bypass", "note", "bleed", "open")):
        result = marked(*order)
        assert (result["right"], result["score"], result["critical"]) == (True, 1.0, False)
        assert result["fields"]["order"]["feedback"] == "Right: every step stands where it can."


def test_the_score_is_the_share_of_pairs_kept() -> None:
    result = marked("bypass", "bleed", "note", "open")
    assert (result["right"], result["critical"]) == (False, False)
    assert result["score"] == pytest.approx(2 / 3)
    assert result["feedback"] == [
        "“Write the counter down” comes before “Let the pressure out”. Bleeding moves it."
    ]
    assert result["fields"]["order"]["wrong"] == ["bleed", "note"]


def test_a_broken_pair_of_safety_fails_it_and_is_said_first() -> None:
    result = marked("bypass", "open", "bleed", "note")
    assert (result["right"], result["score"], result["critical"]) == (False, 0.0, True)
    assert result["feedback"][0] == (
        "This can hurt somebody: “Let the pressure out” comes before “Open the cap”. "
        "Pressure throws parts."
    )


def test_each_order_is_right_exactly_when_its_pairs_are_kept() -> None:
    names = [one["name"] for one in EXERCISE["items"]]
    for order in permutations(names):
        kept = [order.index(one["first"]) < order.index(one["then"]) for one in EXERCISE["pairs"]]
        result = marked(*order)
        assert result["right"] is all(kept)
        assert result["critical"] is not kept[2]


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (None, "Put the steps in an order first."),
        (7, "Put the steps in an order first."),
        ([1, 2], "Put the steps in an order first."),
        (["note"], "An order has each of the 4 steps once. Begin again from the list."),
        (
            "note note bleed open",
            "An order has each of the 4 steps once. Begin again from the list.",
        ),
    ],
)
def test_what_is_no_order_gets_a_sentence(answer: object, said: str) -> None:
    result = mark(EXERCISE, "1", "us", {"order": answer})
    assert result["problems"] == {"order": said}
    assert not result["right"]


def test_an_order_may_come_as_one_text() -> None:
    assert mark(EXERCISE, "1", "us", {"order": "note bypass bleed open"})["right"]


def test_a_question_is_never_in_order_already() -> None:
    for seed in range(30):
        question = pose(EXERCISE, str(seed), "us")
        order = [one["name"] for one in question["items"]]
        assert sorted(order) == sorted(one["name"] for one in EXERCISE["items"])
        assert not marked(*order)["right"]
        assert "pairs" not in question


def test_the_solution_is_the_procedures_order_with_its_reasons() -> None:
    order, why = marked("bypass", "note", "bleed", "open")["solution"]
    assert order["ordered"] == [one["text"] for one in EXERCISE["items"]]
    assert why["sentences"][2] == "Safety: Pressure throws parts."
