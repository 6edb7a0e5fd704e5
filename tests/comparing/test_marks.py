"""Marks stand after numbers, and come off again without a trace."""

from __future__ import annotations

import pytest

from build_tools.comparing.marks import NUMBER, Marks, unmarked


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("1,200 grains at 0.45\u00a0gpm", ["1,200", "0.45"]),
        ("from 3 to 4", ["3", "4"]),
        ("3-4 days", ["3", "4"]),
        ("at -3 °C or −4 °C", ["-3", "−4"]),
        ("1 1/2 in, 3/4 in, 1½ in, ¾ in", ["1 1/2", "3/4", "1½", "¾"]),
        ("at 2:00, then 14:30.", ["2:00", "14:30"]),
        ("1.5 ft3 of H2O, step-3", ["1.5", "3"]),
        ("$9.25 for 40 lb.", ["9.25", "40"]),
        ("no number", []),
    ],
)
def test_what_a_number_is(text: str, numbers: list[str]) -> None:
    assert NUMBER.findall(text) == numbers
    marked = Marks().on(text, ["a cause"])
    assert unmarked(marked) == text
    assert len(marked) == len(text) + len(numbers)


def test_a_mark_tells_its_causes_and_a_set_has_one_mark() -> None:
    marks = Marks()
    one, both = marks.on("4 gpg", ["iron"]), marks.on("20 gpg", ["iron", "hardness"])
    assert marks.on("9", ["hardness", "iron"])[-1] == both[2]
    assert (marks.of(one), marks.of([{"a": both}, "7"])) == ({"iron"}, {"iron", "hardness"})
    assert marks.on(one, ["other"]) == marks.on("4 gpg", ["other"])
    assert marks.of(marks.for_calculator("time clock", ["control"])) == {"control"}
    assert unmarked({"a": [one, 3, None]}) == {"a": ["4 gpg", 3, None]}
