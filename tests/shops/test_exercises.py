"""Shipped exercises can be posed in every shop."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.values import Values
from build_tools.practice.exercise_data import exercise_data
from build_tools.practice.printed import printed
from build_tools.shops.new_shop import texts, write
from build_tools.shops.place import LIBRARY
from build_tools.shops.questions import QUESTIONS
from build_tools.shops.retold import load


def shop_of(folder: Path, **answered: str) -> Path:
    """Write a shop with some answers, and the defaults for the rest."""
    answers = {"name": "A", "town": "B", **{"units": answered.pop("units", "us")}}
    for one in QUESTIONS[2:]:
        text = answered.get(one.name.replace("-", "_"), one.default_for(answers))
        answers[one.name] = one.read(answers.get(one.name, text), answers)
    write(folder, texts(load(LIBRARY, LIBRARY.parent, None), answers, ["twin-tank-softener"], {}))
    return folder


@pytest.mark.parametrize(
    ("answered", "fewer"),
    [
        ({}, set()),
        ({"water_per_person": "30 gal/day", "iron_allowance": "5 gpg per mg/L"}, set()),
        (
            {
                "units": "metric",
                "water_per_person": "80 L/day",
                "iron_allowance": "34 mg/L per mg/L",
            },
            {"counter-from-a-test", "sheet-for-a-meter"},
        ),
    ],
)
def test_each_is_posed_without_the_mistakes_that_come_too_close(
    tmp_path: Path, answered: dict[str, str], fewer: set[str]
) -> None:
    shop = shop_of(tmp_path / "shop", **answered)
    handbook = load(shop / "docs_src", shop, LIBRARY)
    values = Values(handbook)
    with_fewer = set()
    for entry in handbook.practice.values():
        data, report = exercise_data(entry, values)
        assert report == []
        if data.get("steps"):
            assert printed(data, handbook.units), entry.id
            if data.get("mistakes") != entry.content.mistakes:
                with_fewer.add(entry.id)
                assert data["mistakes"]
    assert with_fewer == fewer
