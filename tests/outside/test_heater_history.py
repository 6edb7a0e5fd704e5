"""The hot sample read backwards against the differential equations of tanks in a row."""

import pytest
from scipy.integrate import solve_ivp
from scipy.stats import gamma

from calculators import run
from calculators.heater_history import share_left_in_series

TANK = 50.0


def hot_after(drawn, before, cold, tanks):
    """Return the hardness that leaves the last of equal stirred tanks, by integration."""

    def change(_, hardness):
        flowing_in = [cold, *hardness[:-1]]
        return [tanks / TANK * (new - own) for new, own in zip(flowing_in, hardness, strict=True)]

    solved = solve_ivp(change, (0, drawn), [before] * tanks, rtol=1e-10, atol=1e-10)
    return float(solved.y[-1, -1])


@pytest.mark.parametrize("tanks", [1, 2, 3])
@pytest.mark.parametrize("drawn", [20.0, 50.0, 100.0])
@pytest.mark.parametrize(("before", "cold"), [(20.0, 0.5), (0.5, 20.0)])
def test_the_draw_that_was_integrated_is_found_again(tanks, drawn, before, cold):
    hot = hot_after(drawn, before, cold, tanks)
    asked = {"tank": TANK, "before": before, "cold": cold, "hot": hot, "water": 240}
    result = run("heater-history", {**asked, "tanks": tanks, "drop": 0.05})

    assert result["values"]["drawn"]["number"] == pytest.approx(drawn, rel=1e-6)


@pytest.mark.parametrize("tanks", [1, 2, 3])
@pytest.mark.parametrize("drawn", [0.0, 10.0, 50.0, 75.0, 150.0])
def test_the_share_left_is_the_tail_of_a_gamma_distribution(tanks, drawn):
    assert share_left_in_series(drawn, TANK, tanks) == pytest.approx(
        gamma.sf(drawn, tanks, scale=TANK / tanks), rel=1e-9
    )
