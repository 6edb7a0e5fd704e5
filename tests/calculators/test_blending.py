"""Blends of raw and softened water, and tanks exchanged for fresh ones."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.capacity import capacity_of_dose


def readings(low, high):
    """Numbers as people read them off: three decimals."""
    return st.decimals(low, high, places=3).map(float)


@given(st.floats(5, 200), readings(0, 2), st.floats(0.01, 0.99), st.floats(10, 100000))
def test_a_blend_keeps_water_and_hardness(answer, raw, soft, part, softened):
    target = min(100, soft + (raw - soft) * part)
    inputs = {"raw": raw, "target": target, "soft": soft, "softened_water": softened}
    share = answer("blending", "raw_share", **inputs)
    blended = answer("blending", "blended_water", **inputs)

    assert share + answer("blending", "softened_share", **inputs) == pytest.approx(100)
    assert blended >= softened * (1 - 1e-12)
    hardness = softened * soft + (blended - softened) * raw
    assert hardness == pytest.approx(blended * target, rel=1e-9, abs=1e-6)


@given(st.floats(5, 100), readings(0, 2))
def test_a_blend_as_soft_as_the_bed_takes_no_raw_water(answer, raw, soft):
    assert answer("blending", "raw_share", raw=raw, target=soft, soft=soft) == 0


@given(st.floats(20, 200), st.floats(1, 18), st.floats(0.01, 1))
def test_harder_blends_take_more_raw_water(answer, raw, target, more):
    share = answer("blending", "raw_share", raw=raw, target=target)

    assert answer("blending", "raw_share", raw=raw, target=target + more) > share


@pytest.mark.parametrize(
    ("inputs", "told"),
    [
        ({"raw": 20, "target": 0.2}, "only makes water harder"),
        ({"raw": 20, "target": 20}, "nothing to soften"),
        ({"raw": 20, "target": 25}, "nothing to soften"),
        ({"raw": 2, "target": 3, "soft": 3}, "nothing to soften"),
    ],
)
def test_a_blend_that_cannot_be_is_refused(inputs, told):
    result = run("blending", inputs)

    assert told in result["problems"]["target"]
    assert result["values"] == {}


@pytest.mark.parametrize(("units", "shown"), [("us", "1,570\u00a0gal"), ("metric", "5,970\u00a0L")])
def test_blended_water_is_rounded_down_so_that_the_bed_is_not_spent_early(units, shown):
    inputs = {"raw": "20 gpg", "target": "3 gpg", "soft": "0.3 gpg", "softened_water": "1363 gal"}

    assert run("blending", inputs, units)["values"]["blended_water"]["shown"] == shown


def test_what_a_tank_softens_is_rounded_down():
    values = run("exchange-tank", {"resin_volume": 1, "setting": 20, "use": 120})["values"]

    assert values["water"]["shown"] == "1,490\u00a0gal"
    assert values["exact_days"]["shown"] == "12.4\u00a0days"


def test_without_water_softened_a_meter_is_not_spoken_of():
    assert "blended_water" not in run("blending", {"raw": 20, "target": 3})["values"]


@given(st.floats(0.5, 10), st.floats(6, 25), st.floats(1, 100), st.floats(1, 150))
def test_a_tank_is_exchanged_less_than_a_day_before_it_is_spent(resin, dose, setting, use):
    inputs = {"resin_volume": resin, "dose": dose, "setting": setting, "use": use}
    result = run("exchange-tank", inputs)
    exact = capacity_of_dose(dose) * resin / setting / use
    if exact < 1 - 1e-9:
        assert "one day" in result["problems"]["resin_volume"]
        return
    days = result["values"]["days"]["number"]

    assert days == int(days) >= 1
    assert result["values"]["exact_days"]["number"] == pytest.approx(exact)
    assert days - 1e-8 <= exact < days + 1 + 1e-8


@given(st.floats(0.5, 5), st.floats(6, 25), st.floats(1.1, 2))
def test_more_resin_or_softer_water_lasts_in_proportion(answer, resin, dose, times):
    def days(**inputs):
        return answer("exchange-tank", "exact_days", dose=dose, **inputs)

    usual = {"resin_volume": resin, "setting": 20, "use": 50}
    assert days(**{**usual, "resin_volume": resin * times}) == pytest.approx(times * days(**usual))
    assert days(**{**usual, "setting": 20 * times}) == pytest.approx(days(**usual) / times)
    assert days(**{**usual, "use": 50 * times}) == pytest.approx(days(**usual) / times)


def test_a_tank_that_just_lasts_a_day_is_taken(answer):
    use = capacity_of_dose(15) / 20
    inputs = {"resin_volume": 1, "setting": 20}

    assert answer("exchange-tank", "days", use=use, **inputs) == 1
    assert run("exchange-tank", {"use": math.ceil(use), **inputs})["values"] == {}
