"""Draws: inside their ranges, on their steps, the same for a seed, and shown in fair numbers."""

from __future__ import annotations

import pytest

from calculators import CALCULATORS
from calculators.practice.drawing import Draw, draws, fixed_text, random_for, shuffled

GIVEN = {
    "salt": {"kind": "mass", "unit": "lb", "from": 6, "to": 9, "step": 0.5},
    "tank": {"kind": "length", "unit": "in", "one_of": [18, 24]},
}
EXERCISE = {"id": "draw", "drawn": GIVEN}


def test_every_step_of_a_range_comes_up_and_nothing_else() -> None:
    found = {next(draws(EXERCISE, str(seed)))["salt"].value for seed in range(200)}
    assert found == {6, 6.5, 7, 7.5, 8, 8.5, 9}


def test_one_of_a_list_comes_up() -> None:
    found = {next(draws(EXERCISE, str(seed)))["tank"].value for seed in range(40)}
    assert found == {18, 24}


def test_a_seed_draws_what_it_always_drew() -> None:
    # Kept from the first edition: a class's link must go on giving the same question.
    first = [[one.value for one in draw.values()] for draw in draws(EXERCISE, "class 7")][:4]
    assert first == KEPT


KEPT = [[9.0, 24], [8.5, 18], [7.0, 24], [6.0, 24]]


def test_another_exercise_draws_otherwise_from_the_same_seed() -> None:
    other = {**EXERCISE, "id": "other"}
    alike = [
        next(draws(EXERCISE, str(seed)))["salt"].value
        == next(draws(other, str(seed)))["salt"].value
        for seed in range(60)
    ]
    assert 0 < sum(alike) < 30


@pytest.mark.parametrize(
    ("draw", "own", "units", "shown"),
    [
        (Draw("hardness", "gpg", 18.0), "gpg", "us", "18\u00a0gpg"),
        (Draw("hardness", "gpg", 18.0), "gpg", "metric", "308\u00a0mg/L"),
        (Draw("hardness", "mg/L", 310.0), "gpg", "us", "310\u00a0mg/L"),
        (Draw("count", "", 4.0), "", "metric", "4"),
        (Draw("choice", "", "twin tank"), "", "us", "twin tank"),
        (Draw("time of day", "12-hour clock", 14.5), "12-hour clock", "us", "2:30\u00a0pm"),
        (Draw("time of day", "12-hour clock", 14.5), "12-hour clock", "metric", "14:30"),
    ],
)
def test_a_draw_is_shown_as_its_reader_has_it(draw: Draw, own: str, units: str, shown: str) -> None:
    assert draw.shown(own, units) == shown


@pytest.mark.parametrize(
    ("calculator", "name", "text", "units", "shown"),
    [
        ("brine-refill", "time_step", "1 min", "us", "1\u00a0min"),
        ("regeneration-interval", "meter_step", "10 gal", "us", "10\u00a0gal"),
        ("regeneration-interval", "meter_step", "10 gal", "metric", "50\u00a0L"),
        ("regeneration-interval", "meter_step", "20 gal", "metric", "75.7\u00a0L"),
        ("regeneration-interval", "control", "time clock", "metric", "time clock"),
        ("hardness-setting", "hardness", "310 mg/L", "us", "310\u00a0mg/L"),
        ("household-load", "people", "4", "metric", "4"),
    ],
)
def test_what_is_fixed_is_shown_as_its_reader_has_it(
    calculator: str, name: str, text: str, units: str, shown: str
) -> None:
    assert fixed_text(text, CALCULATORS[calculator].input(name), units) == shown


def test_shuffling_keeps_everything() -> None:
    options = list("abcdefgh")
    orders = {"".join(shuffled(random_for(EXERCISE, str(seed)), options)) for seed in range(30)}
    assert len(orders) == 30
    assert {"".join(sorted(one)) for one in orders} == {"abcdefgh"}
