"""Which exercises and calls a pack has."""

from __future__ import annotations

import pytest

from build_tools.class_pack.choosing import chosen_exercises, in_order
from build_tools.class_pack.pack import Pack, Wanted
from build_tools.content.handbook import Handbook


@pytest.mark.parametrize("seed", ["1", "2", "seven"])
def test_the_usual_pack_goes_over_the_whole_curriculum(handbook: Handbook, seed: str) -> None:
    chosen = chosen_exercises(handbook, seed, (), ())
    assert {one.content.family for one in chosen} == {
        one.content.family for one in handbook.practice.values()
    }
    assert {one.content.kind for one in chosen} == {
        one.content.kind for one in handbook.practice.values()
    }
    assert chosen == [one for one in in_order(handbook) if one in chosen]


def test_another_seed_draws_other_exercises(handbook: Handbook) -> None:
    drawn = {
        tuple(one.id for one in chosen_exercises(handbook, str(seed), (), ())) for seed in range(5)
    }
    assert len(drawn) == 5


def test_named_exercises_and_families_come_in_their_order_and_once(handbook: Handbook) -> None:
    names = ["what-the-meter-counts", "bucket-and-watch", "what-the-meter-counts"]
    chosen = [one.id for one in chosen_exercises(handbook, "7", names, ["clock-and-meter"])]
    assert chosen[:2] == names[:2]
    assert sorted(chosen[2:]) == sorted(
        one.id
        for one in handbook.practice.values()
        if one.content.family == "clock-and-meter" and one.id not in names
    )


def test_calls_alone_make_a_pack_without_files_for_learning_systems(
    handbook: Handbook, pack: Pack
) -> None:
    code = pack.sheets[0].calls[0].code
    alone = Pack(handbook, Wanted("7", calls=[code.lower().replace("-", " ")], people=2))
    assert [[call.code for call in sheet.calls] for sheet in alone.sheets] == [[code], [code]]
    assert [sheet.exercises for sheet in alone.sheets] == [[], []]
    assert alone.packages() == {}
