"""The key is what the handbook's own marking takes."""

from __future__ import annotations

from typing import Any

import pytest

from build_tools.class_pack.choosing import in_order
from build_tools.class_pack.pack import Pack, Wanted
from build_tools.class_pack.posed import Posed
from build_tools.content.handbook import Handbook

#: How far within or beyond the end of a range, as a share of it, an answer is right or wrong.
BEYOND = 1e-6


@pytest.fixture(scope="module")
def all_posed(handbook: Handbook) -> list[Posed]:
    names = [one.id for one in in_order(handbook)]
    return Pack(handbook, Wanted("edge", exercises=names)).sheets[0].exercises


def test_each_answer_in_the_key_is_right_for_the_exercise_s_own_marking(
    all_posed: list[Posed],
) -> None:
    for posed in all_posed:
        marked = posed.mark({field.name: field.right for field in posed.fields})
        assert (marked["right"], marked["score"], marked["problems"]) == (True, 1, {})
        assert posed.solution == marked["solution"] != []


def test_the_ranges_in_the_key_are_those_of_the_marking(all_posed: list[Posed]) -> None:
    numbers = 0
    for posed in all_posed:
        for field in posed.fields:
            for low, high in field.ranges:
                numbers += 1
                off = BEYOND * max(abs(low), abs(high), 1e-3)
                inside = off if high > low else 0.0
                assert right(posed, field, low + inside), (posed.exercise["id"], field.name, low)
                assert right(posed, field, high - inside), (posed.exercise["id"], field.name, high)
                assert not right(posed, field, low - off), (posed.exercise["id"], low)
                assert not right(posed, field, high + off), (posed.exercise["id"], high)
    assert numbers > len(all_posed) / 2


def right(posed: Posed, field: Any, number: float) -> bool:
    text = f"{number:.12f} {field.unit}".strip()
    return posed.mark({field.name: text})["fields"][field.name]["right"]


def test_each_slip_in_the_key_is_recognized_by_the_marking(all_posed: list[Posed]) -> None:
    slips = 0
    for posed in all_posed:
        for field in posed.fields:
            for slip in field.slips:
                for low, high in slip.ranges:
                    text = f"{(low + high) / 2:.9f} {field.unit}"
                    found = posed.mark({field.name: text})["mistakes"]
                    slips += found == [slip.name]
                    # Two slips of one field may lie where marking names another one first.
                    assert found in [[one.name] for one in field.slips], (slip.name, found)
    assert slips > 20


def test_each_sheet_has_numbers_of_its_own(pack: Pack) -> None:
    first, second = (
        [[field.shown for field in one.fields] for one in sheet.exercises] for sheet in pack.sheets
    )
    assert sum(one != other for one, other in zip(first, second, strict=True)) > len(first) / 2
    assert pack.sheets[0].calls[0].code != pack.sheets[1].calls[0].code


def test_a_call_tells_each_check_that_can_be_made_and_what_the_home_hides(pack: Pack) -> None:
    call = pack.sheets[0].calls[0]
    assert call.debrief["faults"]
    titles = [one["title"] for one in call.readings]
    assert len(titles) == len(set(titles)) > 15
    assert all(one["result"] and one["minutes"] >= 0 for one in call.readings)
    assert "Cold and hot at one tap" in titles
