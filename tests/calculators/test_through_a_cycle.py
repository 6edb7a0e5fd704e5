"""The outlet through a cycle agrees with what a capacity means, and with what sets a counter."""

import pytest

from calculators import run


def water(**given):
    """Return the water to the end point [gal]."""
    result = run("outlet-through-a-cycle", {"used": "0 gal", **given})
    return result["values"]["water_to_the_end"]["number"]


@pytest.mark.parametrize(("capacity", "volume"), [(30000, 1.5), (17300, 1), (60000, 3)])
def test_the_end_comes_where_the_capacity_is_used_up(capacity, volume):
    # At 20 gpg, to 1 gpg and at the usual flow, as the capacity of a dose is counted.
    given = {"capacity": capacity, "resin_volume": volume, "flow": 3 * volume, "raw": 20}
    assert water(**given) == pytest.approx(capacity / 20, rel=0.01)


def test_it_agrees_with_the_water_that_a_counter_is_set_by():
    bed = {"capacity": "30000 grains"}
    interval = run(
        "regeneration-interval",
        {**bed, "setting": "19 gpg", "water": "240 gal/day", "control": "immediate meter"},
    )
    until_hard = water(**bed, resin_volume="1.5 ft³", raw="19 gpg")
    assert interval["values"]["counter"]["number"] < until_hard
    assert until_hard == pytest.approx(interval["values"]["total_water"]["number"], rel=0.05)


def test_without_the_rest_the_end_comes_sooner():
    bed = {"capacity": "30000 grains", "resin_volume": "1.5 ft³", "raw": "20 gpg"}
    assert water(**bed, left_at_plan="0 grains/ft³") < 0.9 * water(**bed)
