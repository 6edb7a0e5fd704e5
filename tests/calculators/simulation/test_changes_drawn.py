"""Severities are drawn from a fault's ranges as these say."""

from __future__ import annotations

from random import Random

import pytest

from calculators.simulation.changes import draw


def drawn(spread: str, low: float, high: float) -> list[float]:
    random = Random(5)
    ranges = [{"change": "extra_people", "from": low, "to": high, "spread": spread}]
    return [draw(ranges, random)[0][1] for _ in range(400)]


def test_whole_numbers_are_drawn_with_both_ends_and_evenly() -> None:
    found = drawn("whole", 1, 4)
    assert set(found) == {1, 2, 3, 4}
    assert all(60 < found.count(one) < 140 for one in (1, 2, 3, 4))


def test_an_even_spread_fills_the_range_and_a_ratio_prefers_small_ones() -> None:
    even, ratio = drawn("even", 0.1, 10), drawn("ratio", 0.1, 10)
    assert all(0.1 <= one <= 10 for one in (*even, *ratio))
    assert sum(one < 1 for one in even) / 400 == pytest.approx(0.09, abs=0.05)
    assert sum(one < 1 for one in ratio) / 400 == pytest.approx(0.5, abs=0.08)


def test_an_unknown_spread_is_refused() -> None:
    with pytest.raises(ValueError, match='There is no spread "odd", only even, ratio, whole.'):
        drawn("odd", 1, 4)
