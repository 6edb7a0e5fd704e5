"""The models are the one definition of the formats, also for tools that read a JSON Schema."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.content.fields import Format, keys
from build_tools.content.loading import LISTS, SECTIONS
from build_tools.content.models import Shop
from build_tools.content.page_models import LessonFront, PlainFront, WorkedExample
from calculators import CALCULATORS
from tests.content.small_shop import FILES, changed, problems_of

FORMATS = [
    *SECTIONS.values(), *(shape for shape, _ in LISTS.values()), Shop, LessonFront, PlainFront,
    WorkedExample,
]  # fmt: skip


@pytest.mark.parametrize("shape", FORMATS, ids=lambda shape: shape.__name__)
def test_every_key_is_described_and_has_a_schema(shape: type[Format]) -> None:
    schema = json.loads(json.dumps(shape.model_json_schema()))
    for part in [schema, *schema.get("$defs", {}).values()]:
        assert part["additionalProperties"] is False
        for name, one in part["properties"].items():
            assert one.get("description"), name


def test_a_value_the_shop_decides_is_a_key_of_the_shop() -> None:
    for calculator in CALCULATORS.values():
        for one in calculator.inputs:
            assert one.shop is None or one.shop in keys(Shop), (calculator.name, one.name)


@pytest.mark.parametrize(
    ("name", "old", "new", "said"),
    [
        (
            "facts.yaml", "value: 5 gal", "value: -5 gal",
            '3: "value": “-5 gal” is below zero. Write it without the sign.',
        ),
        (
            "shop.yaml", "town: Hollow Weir", "town: <b>Hollow</b> Weir",
            '2: "town": "<" does not belong in a name. Write letters and signs alone.',
        ),
    ],
)  # fmt: skip
def test_values_that_would_spoil_a_page_are_told(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new))[0] == f"docs_src/{name}:{said}"


def test_what_is_drawn_with_the_brine_is_more_than_the_slow_rinse(tmp_path: Path) -> None:
    name = "equipment/meter-unit.yaml"
    (line,) = [one for one in FILES[name].splitlines() if one.startswith("brine_draw_flow")]
    (problem, *_) = problems_of(tmp_path, changed(name, line, "brine_draw_flow: 0.1 gpm"))
    assert problem == (
        f'docs_src/{name}:1: "brine_draw_flow" must be above "slow_rinse_flow": it is the same '
        "water with the brine that it draws"
    )
