"""What weak brine costs in capacity."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.weak_brine import share_among_salt, strength_by_levels


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


DEPTH, SHARE = st.floats(0.5, 60), readings(0, 100)
BED = {"salt": 9, "resin_volume": 1.5}


@given(SHARE, SHARE)
def test_less_salt_leaves_less_but_more_than_its_share(answer, ratio, drawn):
    left = answer("weak-brine", "capacity_left", salt_ratio=ratio, drawn_share=drawn, **BED)

    assert ratio * drawn / 100 - 1e-9 <= left <= 100 + 1e-9
    assert left <= answer("weak-brine", "capacity_left", salt_ratio=ratio, **BED) + 1e-9


@given(SHARE, readings(0, 20))
def test_stronger_brine_never_leaves_less(answer, ratio, more):
    weak, strong = (
        answer("weak-brine", "capacity_left", salt_ratio=min(one, 100), **BED)
        for one in (ratio, ratio + more)
    )

    assert weak <= strong


@given(SHARE, SHARE)
def test_short_and_weak_brine_cost_the_same_salt(answer, one, other):
    first = answer("weak-brine", "delivered", salt_ratio=one, drawn_share=other, **BED)
    second = answer("weak-brine", "delivered", salt_ratio=other, drawn_share=one, **BED)

    assert first == pytest.approx(second, abs=1e-12)


def test_full_brine_leaves_everything(answer):
    assert answer("weak-brine", "capacity_left", salt_ratio=100, **BED) == pytest.approx(100)
    full = answer("weak-brine", "capacity", salt_ratio=100, **BED)
    assert full == pytest.approx(answer("resin-capacity", "capacity", **BED))


@given(st.floats(0.01, 60), DEPTH, st.floats(0.3, 0.6), st.floats(0, 1))
def test_the_strength_lies_between_the_share_and_full(salt, water, voids, pick_up):
    share = share_among_salt(salt, water, voids)
    strength = strength_by_levels(salt, water, voids, pick_up)

    assert 0 <= share <= strength + 1e-12
    assert strength <= 1 + 1e-12


@given(st.floats(0.01, 50), DEPTH, st.floats(0.01, 10))
def test_more_salt_in_the_same_water_is_stronger(salt, water, more):
    assume(salt + more < water)

    assert strength_by_levels(salt, water, 0.45, 0.3) < strength_by_levels(
        salt + more, water, 0.45, 0.3
    )


@pytest.mark.parametrize("salt", [8, 8.1, 30])
def test_salt_up_to_the_water_gives_full_brine(salt):
    assert strength_by_levels(salt, 8, 0.45, 0.3) == 1


@pytest.mark.parametrize(
    "inputs",
    [
        {"known": "salt and water levels", "salt_depth": 0, "water_depth": 8},
        {"salt_ratio": 0},
        {"salt_ratio": 100, "drawn_share": 0},
    ],
)
def test_without_salt_nothing_comes_back(inputs):
    result = run("weak-brine", {**BED, **inputs})

    assert result["values"]["capacity"]["number"] == 0
    assert any("No salt reaches the bed" in text for text in result["warnings"])


@pytest.mark.parametrize(("salt", "warned"), [(37.5, False), (38, True)])
def test_a_dose_past_the_curve_is_warned_about(salt, warned):
    result = run("weak-brine", {"salt": salt, "resin_volume": 1.5, "salt_ratio": 50})

    assert any("curve of capacity" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize(("salt", "covered"), [(4, 4), (8, 8), (30, 8)])
def test_only_salt_under_water_stands_in_the_working(salt, covered):
    inputs = {"known": "salt and water levels", "salt_depth": salt, "water_depth": 8, **BED}
    steps = run("weak-brine", inputs)["workings"]

    assert steps[0]["result"] == f"{covered}\u00a0in"
    assert "45\u00a0%" in steps[1]["numbers"]
    assert f"{covered}\u00a0in" in steps[1]["numbers"]
