"""What a fault may change: names, ranges, growth, and values drawn from ranges."""

from random import Random

import pytest

from calculators.simulation.changes import CHANGES, Condition, draw, range_problem


def test_a_sound_home_has_every_sound_value():
    condition = Condition()

    assert {name: getattr(condition, name) for name in CHANGES} == {
        name: change.sound for name, change in CHANGES.items()
    }


@pytest.mark.parametrize("change", CHANGES.values(), ids=list(CHANGES))
def test_a_change_is_complete(change):
    assert change.low <= change.sound <= change.high
    assert change.low < change.high
    assert change.unit
    assert change.meaning


def test_a_change_grows_day_by_day_and_stays_in_its_range():
    condition = Condition()
    condition.take([("refill_factor", 0.8, -0.1)], 3)
    assert condition.refill_factor == pytest.approx(0.5)

    condition.take([("refill_factor", 0.8, -0.1)], 30)
    assert condition.refill_factor == 0


def test_values_are_drawn_between_the_two_ends():
    ranges = [
        {"change": "seal_leak_share", "from": 0.03, "to": 0.4},
        {"change": "leak_flow", "from": 0.05, "to": 1.0, "spread": "ratio", "grows_per_day": 0.01},
    ]
    random = Random(1)
    drawn = [draw(ranges, random) for _ in range(2000)]

    evenly = sorted(one[0][1] for one in drawn)
    by_ratio = sorted(one[1][1] for one in drawn)
    assert 0.03 <= evenly[0] and evenly[-1] <= 0.4
    assert evenly[1000] == pytest.approx(0.215, abs=0.02)
    assert by_ratio[1000] == pytest.approx((0.05 * 1.0) ** 0.5, rel=0.1)
    assert drawn[0][1][2] == 0.01


def test_a_wrong_range_is_told():
    assert range_problem("no_such", 0, 1) == 'There is no change "no_such".'
    assert range_problem("seal_leak_share", 0.1, 2) == (
        "seal_leak_share lies between 0 and 1, not at 2."
    )
    assert range_problem("leak_flow", 0, 1, "ratio") == (
        "leak_flow cannot spread by ratio from or to 0."
    )
    assert range_problem("leak_flow", 0.1, 1, "ratio") == ""
    with pytest.raises(ValueError, match="There is no change"):
        draw([{"change": "no_such", "from": 0, "to": 1}], Random(1))
