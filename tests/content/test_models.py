"""The models are the one definition of the formats, also for tools that read a JSON Schema."""

from __future__ import annotations

import json

import pytest

from build_tools.content.fields import Format, keys
from build_tools.content.loading import LISTS, SECTIONS
from build_tools.content.models import Shop
from build_tools.content.page_models import LessonFront, PlainFront, WorkedExample
from calculators import CALCULATORS

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
