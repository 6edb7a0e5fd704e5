"""Values of the shop that no calculator could use are told at their lines."""

from __future__ import annotations

from pathlib import Path

from tests.content.small_shop import changed, problems_of


def test_a_value_that_a_calculator_refuses_is_told_once(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("shop.yaml", "35 %", "350 %")) == [
        'docs_src/shop.yaml:12: the calculator "heater-history" cannot use "hot_share": 350 % is '
        "above the limit of 100 %."
    ]
