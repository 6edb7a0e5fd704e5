"""How high the water stands in the brine tank."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.brine_level import water_below, water_height

AREA = st.floats(1, 2500)
LAYERS = st.tuples(st.floats(0, 24), st.floats(0, 60), AREA, AREA, AREA).map(
    lambda one: [(one[0], one[2]), (one[0] + one[1], one[3]), (math.inf, one[4])]
)


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


TANK = {"tank_diameter": 18, "salt_depth": 24}


@given(LAYERS, st.floats(0, 100))
def test_the_height_of_the_water_below_a_height_is_that_height(layers, height):
    assert water_height(water_below(height, layers), layers) == pytest.approx(height, abs=1e-9)


@given(LAYERS, st.floats(0, 1e5))
def test_the_water_below_the_height_of_a_volume_is_that_volume(layers, volume):
    assert water_below(water_height(volume, layers), layers) == pytest.approx(volume, abs=1e-6)


@given(LAYERS, st.floats(0, 1e5), st.floats(0, 1e5))
def test_more_water_never_stands_lower(layers, volume, more):
    assert water_height(volume, layers) <= water_height(volume + more, layers)


@given(readings(0, 60), readings(0, 60), readings(0, 24), readings(30, 60), readings(0, 24))
def test_no_water_is_lost(answer, brine, salt_depth, grid, voids, left):
    inputs = {
        "brine": brine,
        "tank_diameter": 18,
        "well_diameter": 4,
        "grid_height": grid,
        "salt_depth": salt_depth,
        "voids": voids,
        "water_left": left,
    }
    height = answer("brine-level", "height", **inputs)
    tank, well = math.pi * 81, math.pi * 4
    layers = [
        (grid, tank),
        (grid + salt_depth, (tank - well) * voids / 100 + well),
        (math.inf, tank),
    ]

    assert water_below(height, layers) - water_below(left, layers) == pytest.approx(
        231 * brine, abs=1e-6
    )
    assert answer("brine-level", "rise", **inputs) == pytest.approx(height - left, abs=1e-9)
    assert 0 <= answer("brine-level", "dry_salt", **inputs) <= salt_depth


@given(readings(0, 30), readings(0, 10))
def test_salt_raises_the_water(answer, salt_depth, more):
    little = answer("brine-level", "height", brine=5, tank_diameter=18, salt_depth=salt_depth)
    much = answer("brine-level", "height", brine=5, tank_diameter=18, salt_depth=salt_depth + more)

    assert little <= much + 1e-9


def test_a_rectangular_tank_of_the_same_area_fills_alike(answer):
    area = math.pi * 81
    round_tank = answer("brine-level", "height", brine=5, **TANK)
    other = answer(
        "brine-level", "height", brine=5, shape="rectangular", tank_area=area, salt_depth=24
    )

    assert other == pytest.approx(round_tank)


@pytest.mark.parametrize(
    ("inputs", "part"),
    [
        ({"salt_depth": 0}, "There is no salt"),
        ({"grid_height": 10, "brine": 1}, "never reaches the salt"),
        ({"salt_depth": 3, "brine": 5}, "stands above the salt"),
        ({"brine": 3}, None),
    ],
)
def test_where_water_and_salt_miss_each_other(inputs, part):
    warnings = run("brine-level", {"brine": 3, **TANK, **inputs})["warnings"]

    assert [part in text for text in warnings] == [True] if part else warnings == []


@pytest.mark.parametrize(
    ("above", "part"),
    [(-1, "cut short"), (0, "cut short"), (0.9, "very near"), (1, None), (2, None)],
)
def test_the_float_needs_room(answer, above, part):
    height = answer("brine-level", "height", brine=3, **TANK)
    result = run("brine-level", {"brine": 3, "float_height": height + above, **TANK})

    assert result["values"]["room_to_float"]["number"] == pytest.approx(above, abs=1e-9)
    warnings = result["warnings"]
    assert [part in text for text in warnings] == [True] if part else warnings == []


@pytest.mark.parametrize("above", [-2, -0.5, 0, 3])
def test_what_runs_over_is_what_finds_no_room(answer, above):
    height = answer("brine-level", "height", brine=3, **TANK)
    result = run("brine-level", {"brine": 3, "overflow_height": height + above, **TANK})
    among_salt = (math.pi * 81 - math.pi * 4) * 0.45 + math.pi * 4

    over = result["values"]["overflow"]["number"]
    assert over == pytest.approx(max(0, -above) * among_salt / 231, abs=1e-9)
    assert any("runs over" in text for text in result["warnings"]) == (above < 0)


def test_a_well_wider_than_its_tank_is_refused():
    result = run("brine-level", {"brine": 3, "tank_diameter": 8, "well_diameter": 8})

    assert "wider than the tank" in result["problems"]["well_diameter"]


@pytest.mark.parametrize(
    ("float_height", "parts"),
    [
        (12, ["cut short", "Only the float keeps"]),
        (13, ["cut short", "too high to act", "The brine tank runs over"]),
        (30, ["too high to act", "The brine tank runs over"]),
    ],
)
def test_a_float_guards_the_floor_only_below_the_overflow(float_height, parts):
    inputs = {"brine": 8, "float_height": float_height, "overflow_height": 13, **TANK}
    warnings = run("brine-level", inputs)["warnings"]

    assert [part in text for part, text in zip(parts, warnings, strict=True)] == [True] * len(parts)


def test_an_overflow_below_the_water_left_is_refused():
    result = run("brine-level", {"brine": 3, "overflow_height": 1, **TANK})

    assert "below the water that is left" in result["problems"]["overflow_height"]
