"""The control's clock, and the pressure that the softener feels."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.injector import USUAL_PRESSURE, suction_at
from calculators.simulation.changes import Condition
from calculators.simulation.clock import DAY, Clock
from calculators.simulation.home import Home
from calculators.simulation.physics import USUAL_PHYSICS
from calculators.simulation.pressure import Pressure

SOUND = Condition()


def changed(**values):
    condition = Condition()
    for name, value in values.items():
        setattr(condition, name, value)
    return condition


def pressure(**figures):
    return Pressure(Home(**figures), USUAL_PHYSICS)


@given(st.floats(-720, 720), st.floats(0, 1439), st.floats(0, 1e5))
def test_the_next_time_is_when_it_shows_it(offset, shown, now):
    clock = Clock(offset)
    then = clock.next_time(shown, now)

    assert now < then <= now + DAY + 1e-6
    assert (clock.shown(then) - shown + 1e-3) % DAY < 2e-3


def test_a_mechanical_clock_loses_every_cut_in_full():
    clock = Clock()
    clock.stop(100.0)
    assert clock.shown(150.0) == 100.0
    clock.run(190.0)

    assert clock.offset == -90.0


def test_a_clock_with_hold_up_keeps_time_through_a_short_cut():
    clock = Clock(5.0, hold_up=480.0)
    clock.stop(100.0)
    clock.run(500.0)

    assert (clock.offset, clock.flashing) == (5.0, False)


def test_after_a_long_cut_it_begins_again_at_midnight_and_flashes():
    clock = Clock(5.0, hold_up=480.0)
    clock.stop(100.0)
    clock.run(1000.0)

    assert clock.shown(1000.0) == 0.0
    assert clock.flashing


def test_stopping_twice_or_running_twice_changes_nothing():
    clock = Clock()
    clock.run(5.0)
    clock.stop(10.0)
    clock.stop(20.0)
    clock.run(30.0)

    assert clock.offset == -20.0


@given(st.floats(0, 15), st.floats(0, 15))
def test_more_flow_leaves_less_pressure(flow, more):
    home = pressure()

    assert home.at_softener(flow + more, SOUND) <= home.at_softener(flow, SOUND) <= 55


def test_the_loss_in_service_is_that_of_the_calculator():
    told = run(
        "service-pressure",
        {"flow": "8 gpm", "tank_diameter": "10 in", "bed_depth": f"{1.5 / 0.54542 * 12} in",
         "temperature": "55 °F", "valve_coefficient": "4", "pipe_length": "0 ft"},
    )  # fmt: skip
    assert told["problems"] == {}

    softener = told["values"]["softener_loss"]["number"]
    assert pressure().loss_in_service(8.0, SOUND) == pytest.approx(softener, rel=1e-3)


def test_a_house_that_draws_takes_suction_and_drain_flow():
    home = pressure(pressure=32.0, supply_bore=0.75)
    still, drawing = home.injector_flows(0.0, SOUND), home.injector_flows(8.0, SOUND)

    assert 0 < drawing[0] < still[0]
    assert 0 < drawing[1] < still[1]
    weak = pressure(pressure=25.0, supply_bore=0.75)
    assert weak.drain_flow(8.0, SOUND) < weak.drain_flow(0.0, SOUND) <= weak.backwash


def test_at_good_pressure_the_drain_runs_at_its_rating():
    home = pressure()
    assert home.drain_flow(0.0, SOUND) == home.backwash


def test_suction_feels_the_supply_less_the_drain_line():
    home = pressure(supply_length=0.0, drain_length=0.0, drain_fittings=0, drain_rise=0.0)
    suction, _ = home.injector_flows(0.0, SOUND)

    assert suction == pytest.approx(suction_at(55.0, 0.24, USUAL_PRESSURE))
    lifted = pressure(supply_length=0.0, drain_length=0.0, drain_fittings=0, drain_rise=20.0)
    assert lifted.injector_flows(0.0, SOUND)[0] == pytest.approx(
        suction_at(55.0 - 20 * lifted.column, 0.24, USUAL_PRESSURE)
    )


def test_below_its_least_pressure_an_injector_draws_nothing():
    assert pressure(pressure=55.0).injector_flows(0.0, changed(supply_pressure_factor=0.25))[0] == 0


@pytest.mark.parametrize(("let_through", "sign"), [(1.0, 1), (0.35, 1), (0.2, 0), (0.1, -1)])
def test_a_drain_that_closes_starves_the_injector_then_turns_its_water(let_through, sign):
    suction, motive = pressure().injector_flows(0.0, changed(drain_flow_factor=let_through))

    assert (suction > 0) - (suction < 0) == sign
    assert motive >= 0
    assert suction >= -0.5


def test_a_flow_control_half_plugged_takes_from_backwash_and_not_from_suction():
    home, plugged = pressure(), changed(drain_control_factor=0.5)

    assert home.drain_flow(0.0, plugged) == pytest.approx(0.5 * home.backwash)
    assert home.injector_flows(0.0, plugged) == home.injector_flows(0.0, SOUND)
