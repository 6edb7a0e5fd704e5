"""The washout of a heater against scipy: the curve by integration, its inverse by root finding."""

from math import exp

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from calculators import run
from calculators.heater import draw_for_share, share_left


def integrated(before, cold, drawn, tank):
    """Integrate the balance of a well-mixed tank: each gallon drawn is replaced by a cold one."""
    solution = solve_ivp(
        lambda _, hardness: (cold - hardness) / tank, (0, drawn), [before], rtol=1e-10, atol=1e-12
    )
    return solution.y[0][-1]


@pytest.mark.parametrize("tank", [5, 40, 50, 200])
@pytest.mark.parametrize("drawn", [1, 20, 50, 75, 100, 150, 400])
def test_share_left_against_integration(tank, drawn):
    assert share_left(drawn, tank) == pytest.approx(integrated(1, 0, drawn, tank), abs=1e-8)


@pytest.mark.parametrize(("before", "cold"), [(20, 0), (20, 1.5), (3, 18), (10, 10)])
@pytest.mark.parametrize("drawn", [10, 50, 120])
def test_hot_water_against_integration(before, cold, drawn):
    inputs = {"tank": 50, "before": before, "cold": cold, "drawn": drawn, "target": 20}
    result = run("heater-washout", inputs)

    expected = integrated(before, cold, drawn, 50)
    assert result["values"]["hot_now"]["number"] == pytest.approx(expected, abs=1e-7)


@pytest.mark.parametrize(
    ("before", "cold", "target"), [(20, 0, 1), (10, 0, 1), (20, 0, 3), (25, 2, 4)]
)
@pytest.mark.parametrize("tank", [40, 50])
def test_water_needed_against_root_finding(before, cold, target, tank):
    inputs = {"tank": tank, "before": before, "cold": cold, "drawn": 0, "target": target}
    result = run("heater-washout", inputs)

    expected = brentq(lambda drawn: integrated(before, cold, drawn, tank) - target, 1, 10 * tank)
    assert result["values"]["water_needed"]["number"] == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("share", [0.9, 0.5, 0.1, 0.01])
def test_draw_for_share_against_root_finding(share):
    expected = brentq(lambda drawn: exp(-drawn / 50) - share, 0, 1000)

    assert draw_for_share(share, 50) == pytest.approx(expected, rel=1e-9)
