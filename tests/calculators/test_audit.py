"""Capacity delivered beside capacity planned."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run


@given(st.floats(1, 50000), st.floats(1, 260), st.floats(500, 400000))
def test_delivered_and_missing_make_up_the_plan(answer, water, setting, planned):
    inputs = {"water": water, "setting": setting, "planned_capacity": planned}
    delivered = answer("capacity-audit", "delivered", **inputs)
    missing = answer("capacity-audit", "missing", **inputs)

    assert delivered == pytest.approx(water * setting)
    assert answer("capacity-audit", "share", **inputs) == pytest.approx(100 * delivered / planned)
    assert missing == pytest.approx(max(0, planned - delivered), abs=1e-6)


@pytest.mark.parametrize(
    ("water", "verdict", "look"),
    [
        (789.9, "act", "weak or short brine"),
        (800, "watch it", "weak or short brine"),
        (899.9, "watch it", "weak or short brine"),
        (900, "good", "nothing"),
        (1200, "good", "nothing"),
        (1201, "hard to believe", "water counted that was not softened"),
    ],
)
def test_the_judgement_turns_at_its_marks(water, verdict, look):
    inputs = {"water": water, "setting": 20, "planned_capacity": 20000}
    values = run("capacity-audit", inputs)["values"]

    assert values["verdict"]["words"] == verdict
    assert values["look_for"]["words"].startswith(look)


@pytest.mark.parametrize(("water", "warned"), [(1200, False), (1201, True)])
def test_far_more_than_planned_is_doubted(water, warned):
    inputs = {"water": water, "setting": 20, "planned_capacity": 20000}

    assert any("far more" in text for text in run("capacity-audit", inputs)["warnings"]) == warned


@pytest.mark.parametrize(("water", "shown"), [(899, "89\u00a0%"), (900, "90\u00a0%")])
def test_a_share_that_just_misses_its_mark_is_not_shown_as_the_mark(water, shown):
    inputs = {"water": water, "setting": 20, "planned_capacity": 20000}

    assert run("capacity-audit", inputs)["values"]["share"]["shown"] == shown
