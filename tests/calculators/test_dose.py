"""The best salt dose for an interval."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.capacity import capacity_of_dose

LOAD = st.floats(500, 8000)
CONTROLS = ["time clock", "delayed meter", "immediate meter", "twin tank"]


def values(**inputs):
    """Return the numbers of an answer, or nothing where the calculator refuses."""
    result = run("best-salt-dose", {"resin_volume": 1.5, **inputs})
    return {name: value["number"] for name, value in result["values"].items()}


@given(LOAD, st.sampled_from(CONTROLS))
def test_the_set_salt_lasts_the_interval_and_the_reserve(load, control):
    found = values(load=load, control=control)
    assume(found)
    reserve = 1 if control == "delayed meter" else 0

    assert found["capacity"] >= (found["interval"] + reserve) * load * (1 - 1e-8)
    assert found["capacity"] == pytest.approx(1.5 * capacity_of_dose(found["salt"] / 1.5))
    assert found["salt"] >= 4.5
    assert found["efficiency"] * found["salt"] == pytest.approx(found["capacity"])


@given(LOAD, st.sampled_from([2850, 3350, 4000]))
def test_the_rule_takes_the_most_days_that_reach_the_mark(load, mark):
    found = values(load=load, control="twin tank", efficiency_mark=mark)
    assume(found and found["interval"] >= 2 and found["efficiency"] >= mark)
    longer = values(load=load, control="twin tank", wanted_interval=found["interval"] + 1)

    assert found["interval"] == 14 or not longer or longer["efficiency"] < mark


@given(LOAD, st.floats(1, 10), st.floats(0.1, 5))
def test_a_longer_interval_never_takes_less_salt(load, days, more):
    short, long = (values(load=load, wanted_interval=one) for one in (days, days + more))
    assume(short and long)

    assert short["salt"] <= long["salt"]


@given(LOAD, st.floats(1, 10), st.floats(1, 3))
def test_a_greater_load_never_takes_less_salt(load, days, times):
    light, heavy = (values(load=one, wanted_interval=days) for one in (load, load * times))
    assume(light and heavy)

    assert light["salt"] <= heavy["salt"]


@given(LOAD, st.integers(2, 10))
def test_the_month_of_a_neighbor_is_the_neighbors_own_month(load, days):
    here = values(load=load, wanted_interval=days)
    sooner = values(load=load, wanted_interval=days - 1)
    later = values(load=load, wanted_interval=days + 1)
    assume(here)

    assert here["month_sooner"] == pytest.approx(sooner["month"])
    assert here.get("month_later") == pytest.approx(later.get("month"))


@given(LOAD, st.sampled_from(CONTROLS))
def test_salt_of_a_month_counts_the_wait_for_night(load, control):
    found = values(load=load, control=control)
    assume(found)
    mean = found["interval"] + (0.5 if control == "delayed meter" else 0)

    assert found["month"] == pytest.approx(found["salt"] * 30.4 / mean)
    assert found["operating_efficiency"] == pytest.approx(mean * load / found["salt"])


@pytest.mark.parametrize(
    ("iron", "interval", "dose"), [(0, 14, 3), (0.29, 14, 3), (0.3, 7, 3), (1, 7, 3), (1.1, 4, 8)]
)
def test_iron_shortens_the_interval_and_raises_the_salt(iron, interval, dose):
    found = values(load=200, iron=iron, salt_step=0.05)

    assert found["interval"] == interval
    assert found["salt"] == pytest.approx(1.5 * dose)


@pytest.mark.parametrize(
    ("load", "interval", "warnings"),
    [
        (9000, 2, []),  # two days reach the mark
        (10850, 2, ["less well"]),  # two days reach only the mark of an old softener
        (14500, 1, ["very short"]),  # two days reach no mark, one day does
        (19000, 1, ["less well", "very short"]),  # no day reaches any mark
    ],
)
def test_a_small_bed_gives_way_to_two_days(load, interval, warnings):
    result = run("best-salt-dose", {"load": load, "resin_volume": 1.5})

    assert result["values"]["interval"]["number"] == interval
    assert len(result["warnings"]) == len(warnings)
    assert all(part in text for part, text in zip(warnings, result["warnings"], strict=True))


def test_worn_resin_takes_the_days_of_the_salt_that_does_most():
    result = run("best-salt-dose", {"load": 1000, "resin_volume": 1.5, "resin_condition": 60})

    assert result["values"]["salt"]["number"] == 4.5
    assert any("less well" in text for text in result["warnings"])


@pytest.mark.parametrize(
    ("inputs", "name", "part"),
    [
        ({"load": 30000}, "load", "does not last a day"),
        ({"load": 5000, "wanted_interval": 12}, "wanted_interval", "does not last so long"),
        (
            {"load": 5000, "wanted_interval": 2.5, "control": "time clock"},
            "wanted_interval",
            "whole days",
        ),
    ],
)
def test_what_no_salt_can_do_is_refused(inputs, name, part):
    result = run("best-salt-dose", {"resin_volume": 1.5, **inputs})

    assert part in result["problems"][name]


@pytest.mark.parametrize(("days", "warned"), [(14, False), (15, True)])
def test_a_wanted_interval_past_the_longest_is_warned_about(days, warned):
    result = run("best-salt-dose", {"load": 500, "resin_volume": 1.5, "wanted_interval": days})

    assert any("longest interval" in text for text in result["warnings"]) == warned


def test_a_mark_out_of_reach_does_not_shorten_the_interval():
    worn = values(load=1000, resin_condition=75)  # no salt reaches the usual mark
    strict = values(load=500, resin_condition=80, efficiency_mark=4000)

    assert (worn["salt"], worn["interval"]) == (4.5, 13)
    assert (strict["salt"], strict["interval"]) == (4.5, 14)


@pytest.mark.parametrize(("iron", "longest"), [(0, 14), (0.5, 7), (2, 4)])
def test_no_neighbor_lies_past_the_longest_interval(iron, longest):
    at_the_end = values(load=500, iron=iron, wanted_interval=longest)
    before = values(load=500, iron=iron, wanted_interval=longest - 1)

    assert "month_later" not in at_the_end
    assert "month_sooner" in at_the_end
    assert "month_later" in before


def test_a_delayed_control_regenerates_half_a_day_later_on_average():
    assert values(load=5000, wanted_interval=4)["mean_interval"] == 4.5
    assert values(load=5000, wanted_interval=4, control="twin tank")["mean_interval"] == 4


@pytest.mark.parametrize(("step", "warned"), [(0.5, False), (5, True)])
def test_a_coarse_step_past_the_fit_is_warned_about(step, warned):
    inputs = {"load": 2000, "resin_volume": 0.2, "control": "twin tank", "salt_step": step}
    warnings = run("best-salt-dose", inputs)["warnings"]

    assert any("outside the range" in text for text in warnings) == warned
