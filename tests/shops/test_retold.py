"""The library's examples are told with the shop's values, in its units."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.checks import find_problems
from build_tools.content.readings import expected_reading
from build_tools.content.tables import worked_out
from build_tools.content.values import Values
from build_tools.shops.retold import load
from tests.content.small_shop import FILES, changed
from tests.shops.small_library import SHOP, place

US = {**SHOP, "shop.yaml": SHOP["shop.yaml"].replace("units: metric", "units: us")}
STORY = "A test reads 18 gpg, which is 308 mg/L, and 0.5 mg/L of iron."


def story(folder: Path, shop: dict[str, str], told: str, old: str = STORY) -> str:
    """Return the story of the library's example, written with other words, as the shop has it."""
    handbook = place(folder, shop, changed("learn/hardness.md", old, told)).load()
    page = handbook.lessons["hardness"]
    assert page.blocks[0][2] is handbook.examples["gannet-lane"]
    return handbook.examples["gannet-lane"].content.story.replace("\u00a0", " ")


def test_an_answer_is_the_shops_and_a_text_that_repeats_it_follows(tmp_path: Path) -> None:
    told = "Raw water of 18 gpg with 0.5 mg/L of iron comes to 20 gpg, that is 342 mg/L before."
    assert story(tmp_path, US, told) == (
        "Raw water of 18 gpg with 0.5 mg/L of iron comes to 21 gpg, that is 20.5 gpg before."
    )


def test_a_metric_shop_has_the_whole_story_in_metric_units(tmp_path: Path) -> None:
    assert story(tmp_path, SHOP, "From 18 gpg and 0.5 mg/L of iron to 20 gpg.") == (
        "From 308 mg/L and 0.5 mg/L of iron to 359.1 mg/L."
    )
    given = place(tmp_path, SHOP).load().examples["gannet-lane"].content.given
    assert given == {"hardness": "308 mg/L", "iron": "0.5 mg/L"}


def test_what_the_page_prints_is_worked_out_from_what_it_says(tmp_path: Path) -> None:
    handbook = place(tmp_path, SHOP).load()
    values = Values(handbook)
    example = handbook.examples["gannet-lane"]
    computed = values.calculators.answers(example)["values"]
    assert example.content.answers == {
        name: computed[name]["shown"] for name in example.content.answers
    }


@pytest.mark.parametrize(
    ("told", "seen"),
    [
        ("Between 18 gpg and 20 gpg.", "Between 308 mg/L and 359.1 mg/L."),
        ("It has [18 gpg](../index.md) now.", "It has [308 mg/L](../index.md) now."),
        ("Some 18\n  gpg stand **here**.", "Some 308 mg/L stand **here**."),
        ("Nothing is repeated.", "Nothing is repeated."),
    ],
)
def test_only_what_is_repeated_changes(tmp_path: Path, told: str, seen: str) -> None:
    assert " ".join(story(tmp_path, SHOP, told).split()) == seen


def test_of_two_that_round_alike_the_nearest_is_meant(tmp_path: Path) -> None:
    block = """\
calculate: air-gap
given:
  bore: 0.75 in
  measured: 1 in
answers:
  gap: 1.50 in
"""
    old = FILES["learn/hardness.md"].partition("calculate: hardness-setting")[2].partition("```")[0]
    lesson = FILES["learn/hardness.md"].replace(f"calculate: hardness-setting{old}", block)
    lesson = lesson.replace(STORY, "A bore of 0.75 in ends 1 in above, and 1.5 in are wanted.")
    lesson = lesson.replace('{{ example("gannet-lane").setting }}', "None")
    handbook = place(tmp_path, SHOP, {**FILES, "learn/hardness.md": lesson}).load()
    assert handbook.examples["gannet-lane"].content.story.replace("\u00a0", " ") == (
        "A bore of 19.1 mm ends 25.4 mm above, and 39 mm are wanted."
    )


def test_a_picture_and_a_table_are_in_the_shops_units(tmp_path: Path) -> None:
    table = """\
setting:
  title: Settings
  note: Down the hardness.
  calculate: hardness-setting
  down: {input: hardness, values: [10 gpg, 20 gpg]}
  across: {input: iron, values: [0 mg/L, 1 mg/L]}
  show: setting
"""
    handbook = place(tmp_path, SHOP, {**FILES, "tables.yaml": table}).load()
    assert handbook.tables["setting"].content.down.values == ["171 mg/L", "342 mg/L"]
    picture = handbook.pictures["capacity-by-salt"].content
    assert picture.given == {"salt": "4.08 kg", "resin_volume": "42.5 L"}


def test_what_a_shop_wrote_itself_stays_as_it_wrote_it(tmp_path: Path) -> None:
    shop = {**SHOP, "learn/hardness.md": FILES["learn/hardness.md"]}
    handbook = place(tmp_path, shop).load()
    assert handbook.examples["gannet-lane"].content.story == STORY


def test_without_a_library_nothing_is_told_anew(tmp_path: Path) -> None:
    shipped = place(tmp_path, SHOP).library
    handbook = load(shipped, tmp_path, None)
    assert handbook.examples["gannet-lane"].content.answers["setting"] == "20 gpg"


def test_what_the_shops_home_is_too_much_for_is_left_out_of_shipped_pages(tmp_path: Path) -> None:
    table = """\
days:
  title: Days
  note: Down the load.
  calculate: regeneration-interval
  down: {input: capacity, values: [900 grains, 40000 grains]}
  given: {setting: 20 gpg, water: 200 gal/day, control: time clock}
  show: interval
"""
    look = FILES["procedures/first-look.yaml"].replace(
        "      - reading: Counter step\n        value: unit.meter_step\n",
        "      - reading: Days\n        value: unit.interval\n",
    )
    library = {**FILES, "tables.yaml": table, "procedures/first-look.yaml": look}
    crowd = SHOP["shop.yaml"].replace("people: 3", "people: 90")
    at = place(tmp_path, {**SHOP, "shop.yaml": crowd}, library)
    handbook = at.load()
    values = Values(handbook)
    grid = worked_out(values, handbook.tables["days"])
    assert grid.rows[0][1] == "none"
    assert grid.rows[1][1].endswith("days")
    step = handbook.procedures["first-look"]
    unit = handbook.carried[0]
    assert expected_reading(values, step, 0, 0, unit).answers
    assert expected_reading(values, step, 0, 2, unit) is None
    assert values.problems == []
    assert find_problems(at.docs_folder, at.root, at.library) == []
