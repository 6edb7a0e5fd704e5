"""The simulation: its own relations against scipy, the standard library, and a classic."""

from math import exp
from random import Random
from statistics import NormalDist, mean, pvariance

import pytest
from scipy.integrate import solve_ivp

from calculators.capacity import CURVE_HALF, CURVE_TOP
from calculators.simulation.bed import left_after, regenerated
from calculators.simulation.brine_tank import BrineTank
from calculators.simulation.household import DRAWS, FACTORS, SPREAD, Household


@pytest.mark.parametrize("left", [500.0, 3000.0, 12_000.0])
@pytest.mark.parametrize("load", [10.0, 800.0, 9000.0])
def test_service_against_integration(left, load):
    front = 1000.0
    solution = solve_ivp(
        lambda _, now: [-(1 - exp(-now[0] / front))], (0, load), [left], rtol=1e-10, atol=1e-9
    )

    assert left_after(left, load, front) == pytest.approx(solution.y[0][-1], abs=1e-4)


@pytest.mark.parametrize("load", [1000.0, 20_000.0, 29_000.0, 31_000.0, 35_000.0])
def test_breakthrough_against_bohart_and_adams(load):
    """A bed whose exchange goes with what is left and with what comes passes e^t / (e^t + e^x - 1).

    G. S. Bohart and E. Q. Adams, Journal of the American Chemical Society 42, 1920 (from memory).
    """
    full, front = 30_000.0, 1000.0
    passing = exp(-left_after(full, load, front) / front)

    x, t = full / front, load / front
    assert passing == pytest.approx(exp(t) / (exp(t) + exp(x) - 1), rel=1e-6)


@pytest.mark.parametrize("dose", [2.0, 6.0, 15.0])
@pytest.mark.parametrize("left", [0.0, 3000.0, 15_000.0])
def test_regeneration_against_integration(left, dose):
    ceiling = CURVE_TOP / CURVE_HALF

    def gained(_, now):
        if now[0] < 3000:
            return [ceiling]
        return [ceiling * (1 - (now[0] - 3000) / CURVE_TOP) ** 2]

    solution = solve_ivp(gained, (0, dose), [left], rtol=1e-9, atol=1e-6, max_step=0.01)

    assert regenerated(left, dose, 1.0) == pytest.approx(solution.y[0][-1], rel=1e-4)


def test_dissolving_under_a_slow_refill_against_integration():
    tank = BrineTank(18.0, 4.0, 2.0, 30.0, 40.0, 55.0, 150.0)
    start, water, flow = tank.dissolved, tank.water, 0.05
    solution = solve_ivp(
        lambda time, now: [(tank.strongest * (water + flow * time) - now[0]) / tank.slowness],
        (0, 90), [start], rtol=1e-10, atol=1e-10,
    )  # fmt: skip

    tank.fill(flow, 90.0)

    assert tank.dissolved == pytest.approx(solution.y[0][-1], rel=1e-6)


def test_volumes_of_draws_are_log_normal():
    usual = NormalDist()
    parts = len(FACTORS)
    for part in (0, parts // 4, parts // 2, parts - 1):
        expected = exp(SPREAD * usual.inv_cdf((part + 0.5) / parts) - SPREAD**2 / 2)
        assert FACTORS[part] == pytest.approx(expected, rel=1e-3)


def test_counts_of_draws_spread_as_chance_events_do():
    """The variance of a count of independent events is its mean (Poisson)."""
    household = Household(3, 60.0, 0.0, 0, Random(4), guests=False)
    flows = {flow for _, _, _, flow, _ in DRAWS}
    days = [household.day(day) for day in range(1500)]
    for name, count, _, flow, _ in DRAWS:
        if [one[3] for one in DRAWS].count(flow) > 1:
            continue  # told apart by their flow
        counts = [sum(draw[2] == flow for draw in day) for day in days]
        assert mean(counts) == pytest.approx(3 * count, rel=0.12), name
        assert pvariance(counts) == pytest.approx(mean(counts), rel=0.15), name
    assert len(flows) == 5
