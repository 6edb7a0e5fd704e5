"""The low-voltage supply and the loss in its cable."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import CALCULATORS, run
from calculators.electrical import DEAD, LIVE, UNTESTED, supply_verdict, wire_resistance

GAUGE = st.integers(10, 27)
READINGS = {"open": 26, "loaded": 23}


@given(GAUGE, st.floats(-40, 180))
def test_a_thinner_wire_resists_more_by_the_same_ratio(gauge, temperature):
    ratio = wire_resistance(gauge + 1, temperature) / wire_resistance(gauge, temperature)

    assert ratio == pytest.approx(92 ** (2 / 39))


@given(GAUGE, st.floats(-40, 170), st.floats(0.1, 10))
def test_warm_copper_resists_more(gauge, temperature, more):
    assert wire_resistance(gauge, temperature + more) > wire_resistance(gauge, temperature)


@given(st.floats(1, 100), GAUGE, st.floats(0.01, 1), st.floats(1.1, 4))
def test_the_loss_is_proportional_to_length_and_current(answer, length, gauge, current, times):
    asked = {**READINGS, "cable_length": length, "gauge": gauge, "current": current}
    loss = answer("supply-voltage", "cable_loss", **asked)

    for name in ("cable_length", "current"):
        more = {**asked, name: asked[name] * times}
        assert answer("supply-voltage", "cable_loss", **more) == pytest.approx(times * loss)


@given(st.floats(5, 30), st.floats(0.05, 1.5), st.floats(0.1, 500))
def test_the_voltage_at_the_adaptor_is_that_at_the_control_and_the_loss(rated, share, length):
    volts = rated * share
    values = run(
        "supply-voltage", {"rated": rated, "open": volts, "loaded": volts, "cable_length": length}
    )["values"]

    loss = values["cable_loss"]["number"]
    assert values["at_adaptor"]["number"] == pytest.approx(volts + loss)
    assert values["loaded_share"]["number"] == pytest.approx(100 * share)
    assert values["open_share"]["number"] == pytest.approx(100 * share)


@pytest.mark.parametrize(
    ("open_share", "loaded_share", "adaptor_share", "outlet", "verdict"),
    [
        (0, 0, 0, LIVE, "nothing: the adaptor has failed, if the meter is on the right range"),
        (4.9, 4.9, 4.9, DEAD, "nothing: the outlet is dead"),
        (0, 0, 0, UNTESTED, "nothing: try the outlet with a plug-in lamp"),
        (5, 5, 5, LIVE, "too low even without load: failing or wrong adaptor"),
        (94.9, 84.9, 95, LIVE, "too low even without load: failing or wrong adaptor"),
        (95, 84.9, 89.9, LIVE, "too low under load: weak adaptor, or the control draws too much"),
        (108, 84.9, 90, LIVE, "too low: the cable loses it"),
        (108, 85, 95, LIVE, "marginal"),
        (108, 85 * (1 - 1e-15), 95, LIVE, "marginal"),
        (108, 89.9, 95, LIVE, "marginal"),
        (108, 90, 90, LIVE, "in band"),
        (108, 115, 115, LIVE, "in band"),
        (120, 115.1, 116, LIVE, "too high"),
    ],
)
def test_the_verdict(open_share, loaded_share, adaptor_share, outlet, verdict):
    assert supply_verdict(open_share, loaded_share, adaptor_share, outlet) == verdict


def test_a_long_thin_cable_is_told_from_a_weak_adaptor():
    readings = {"open": 26, "loaded": 20, "current": 0.4}
    thin = run("supply-voltage", {**readings, "cable_length": 100, "gauge": 24})["values"]
    thick = run("supply-voltage", {**readings, "cable_length": 100, "gauge": 14})["values"]

    assert thin["verdict"]["words"] == "too low: the cable loses it"
    assert (
        thick["verdict"]["words"]
        == "too low under load: weak adaptor, or the control draws too much"
    )


@pytest.mark.parametrize(
    ("kind", "current"), [("ac", "alternating current."), ("dc", "direct current.")]
)
def test_a_reading_of_nothing_asks_about_the_range(kind, current):
    asked = {"open": 0, "loaded": 0, "current_kind": kind, "cable_length": 50}
    result = run("supply-voltage", asked)

    assert result["values"]["verdict"]["words"] == "nothing: try the outlet with a plug-in lamp"
    assert len(result["warnings"]) == 1
    assert result["warnings"][0].startswith("A meter on the wrong range shows about nothing")
    assert result["warnings"][0].endswith(current)


@pytest.mark.parametrize(
    ("volts", "warned"), [(22.7, True), (22.8, False), (30, False), (30.1, True)]
)
def test_an_unusual_voltage_without_load_is_warned_about(volts, warned):
    result = run("supply-voltage", {"open": volts, "loaded": 22})

    assert any("outside the usual range" in text for text in result["warnings"]) == warned


@pytest.mark.parametrize("name", ["open", "loaded", "rated"])
@pytest.mark.parametrize("volts", [100, 115, 120, 230, 240, "120 V"])
def test_a_mains_reading_is_not_accepted(name, volts):
    result = run("supply-voltage", {**READINGS, name: volts})

    assert result["values"] == {}
    assert result["problems"][name].endswith(
        "Only the low-voltage side of the adaptor is measured: the mains belong to a licensed "
        "electrician."
    )


def test_swapped_leads_are_not_taken_for_the_mains():
    result = run("supply-voltage", {**READINGS, "open": -24, "current_kind": "dc"})

    assert result["problems"] == {"open": "−24\u00a0V is below the limit of 0\u00a0V."}


@pytest.mark.parametrize(("current", "warned"), [(0.2, False), (4, True)])
def test_a_cable_that_loses_more_than_there_was_is_doubted(current, warned):
    asked = {"open": 26, "loaded": 20, "cable_length": 500, "current": current}
    warnings = run("supply-voltage", asked)["warnings"]

    assert any("cannot lose more" in text for text in warnings) == warned


@pytest.mark.parametrize(("loaded", "shown"), [(21.5, "89.6 %"), (20.3, "84.6 %")])
def test_a_share_below_a_line_is_not_shown_on_it(loaded, shown):
    values = run("supply-voltage", {"open": 26, "loaded": loaded})["values"]

    assert values["loaded_share"]["shown"].replace("\u00a0", " ") == shown


def test_nothing_asks_for_a_mains_reading():
    volts = [one for one in CALCULATORS["supply-voltage"].inputs if one.kind == "voltage"]

    assert [one.name for one in volts] == ["rated", "open", "loaded"]
    assert max(one.high for one in volts) < 100


@pytest.mark.parametrize(("loaded", "refused"), [(21, False), (21.1, True)])
def test_more_under_load_than_without_is_a_slip(loaded, refused):
    result = run("supply-voltage", {"open": 20, "loaded": loaded})

    assert (set(result["problems"]) == {"loaded"}) == refused
