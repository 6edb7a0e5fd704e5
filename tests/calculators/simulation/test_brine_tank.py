"""The brine tank: geometry, dissolving, refill and draw."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.brine import ROOM_OF_SALT
from calculators.brine_strength import dissolving_time
from calculators.simulation.brine_tank import BrineTank

TEMPERATURE = 55.0
salts = st.floats(5, 300)


def tank(salt=100.0, float_height=14.0, rim=34.0, temperature=TEMPERATURE):
    return BrineTank(18.0, 4.0, 2.0, float_height, rim, temperature, salt)


def filled(salt=100.0, gallons=3.0, **more):
    made = tank(salt, **more)
    made.fill(0.5, 2 * gallons)
    made.settle(10_000)
    return made


def test_a_new_tank_holds_strong_brine_up_to_its_heel():
    made = tank()

    assert made.level() == pytest.approx(2.0)
    assert made.strength() == pytest.approx(1.0)
    assert made.above_heel() == pytest.approx(0, abs=1e-9)


def test_its_level_is_that_of_the_calculator():
    made = filled()
    planned = run(
        "brine-level",
        {
            "brine": f"{made.above_heel()!r} gal",
            "tank_diameter": "18 in",
            "well_diameter": "4 in",
            "grid_height": "0 in",
            "salt_depth": f"{made.salt_height()!r} in",
            "voids": f"{100 * made.voids!r} %",
            "water_left": "2 in",
        },
    )

    assert planned["problems"] == {}
    assert made.level() == pytest.approx(planned["values"]["height"]["number"], abs=0.05)


def test_three_gallons_dissolve_nine_pounds():
    made = tank()
    before = made.salt
    made.fill(0.5, 6.0)
    made.settle(10_000)

    assert before - made.salt == pytest.approx(9.0, rel=0.01)
    assert made.brine() == pytest.approx(made.water + ROOM_OF_SALT * made.dissolved)


@given(salts, st.floats(0.5, 8))
def test_the_gap_to_its_goal_shrinks_by_the_dissolving_time(salt, gallons):
    made = tank(salt)
    made.fill(0.5, gallons / 0.5)
    goal, there = made.goal(), made.dissolved
    assume(goal - there > 1e-3)
    celsius = (TEMPERATURE - 32) / 1.8

    made.settle(made.time + dissolving_time(celsius))

    assert goal - made.dissolved == pytest.approx((goal - there) / 2.718281828, rel=1e-6)


def test_cold_brine_is_hardly_weaker_but_slower():
    cold, warm = tank(temperature=41.0), tank(temperature=68.0)
    assert cold.strongest == pytest.approx(warm.strongest, rel=0.01)
    assert cold.slowness == pytest.approx(2 * warm.slowness, rel=0.05)


@given(salts, st.floats(0, 60), st.floats(0, 3000))
def test_filling_stops_at_the_float(salt, minutes, wait):
    made = tank(salt)
    came = made.fill(1.0, minutes)
    made.settle(made.time + wait)

    assert made.level() <= 16  # what dissolves later swells the brine
    assert came <= minutes + 1e-9


def test_without_a_float_it_spills_over_the_rim():
    made = tank(float_height=40.0, rim=20.0)
    made.fill(1.0, 120.0)

    assert made.spilled > 0
    assert made.level() == pytest.approx(20.0, abs=1e-6)


@given(salts, st.floats(0.1, 5))
def test_a_draw_takes_brine_of_the_strength_there(salt, gallons):
    made = filled(salt)
    strength, there = made.strength(), made.brine()
    assume(gallons < there)

    water, pounds = made.draw(gallons)

    assert water + ROOM_OF_SALT * pounds == pytest.approx(gallons)
    assert made.strength() == pytest.approx(strength)


def test_water_above_the_salt_stays_weak():
    assert filled(20.0).strength() < filled(100.0).strength()


def test_salt_under_water_half_covered_gives_about_half_strength():
    made = tank(5.0)
    made.dissolved = 0.0
    assert made.goal() / (made.strongest * made.water) < 0.9


def test_a_bridge_hangs_and_brine_takes_its_room():
    made = filled()
    level = made.level()

    made.bridge(1.0)

    assert made.salt == 0
    assert made.hanging == pytest.approx(91, abs=1)
    assert made.level() < level
    assert made.goal() == made.dissolved


def test_a_bag_on_a_bridge_hangs_with_it():
    made = filled()
    made.bridge(1.0)
    hanging = made.hanging

    made.add_salt(40.0)

    assert (made.salt, made.hanging) == (0.0, hanging + 40)


def test_a_slow_leak_is_the_same_in_one_piece_or_many():
    one, many = filled(), filled()
    one.fill(0.004, 600.0)
    for _ in range(60):
        many.fill(0.004, 10.0)

    assert many.dissolved == pytest.approx(one.dissolved, rel=1e-2)
    assert many.water == pytest.approx(one.water, rel=1e-9)
