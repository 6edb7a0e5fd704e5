"""The line to the drain."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run

USUAL = {"flow": "2.4 gpm", "bore": "0.5 in", "length": "20 ft", "pressure": "55 psi"}


def readings(low, high):
    """Numbers as people read them off: two decimals."""
    return st.decimals(low, high, places=2).map(float)


def result(**changed):
    return run("drain-line", {**USUAL, **changed})


def numbers(**changed):
    found = result(**changed)
    assert found["problems"] == {}
    return {name: value["number"] for name, value in found["values"].items()}


@given(st.floats(0.2, 10), st.floats(0.25, 1.5), readings(0, 200), readings(-10, 20))
def test_the_pressure_is_shared_out(flow, bore, length, rise):
    found = numbers(flow=flow, bore=bore, length=length, rise=rise)

    assert found["line_loss"] == pytest.approx(found["friction"] + found["lift"])
    assert found["line_loss"] + found["spare"] + 5 + 15 == pytest.approx(55)
    assert found["lift"] == pytest.approx(rise * 0.4333, abs=0.002)


@given(st.floats(0.2, 10), st.floats(0.3, 1.4), st.floats(1, 190))
def test_friction_rises_with_flow_and_length_and_falls_with_bore(flow, bore, length):
    for name in ("friction", "friction_by_darcy"):
        loss = numbers(flow=flow, bore=bore, length=length)[name]
        assert numbers(flow=flow * 1.1, bore=bore, length=length)[name] > loss
        assert numbers(flow=flow, bore=bore * 1.05, length=length)[name] < loss
        assert numbers(flow=flow, bore=bore, length=length * 1.05)[name] == pytest.approx(
            loss * 1.05
        )


@given(st.integers(0, 10))
def test_each_fitting_counts_as_two_feet(fittings):
    assert numbers(fittings=fittings)["friction"] == pytest.approx(
        numbers(length=20 + 2 * fittings)["friction"]
    )


@given(st.floats(1, 6), st.floats(0.4, 1), st.integers(0, 3))
def test_a_line_of_the_longest_length_has_nothing_to_spare(flow, bore, fittings):
    inputs = {"flow": flow, "bore": bore, "fittings": fittings}
    longest = numbers(**inputs)["longest"]
    if longest <= 200:
        assert numbers(**inputs, length=longest)["spare"] == pytest.approx(0, abs=1e-6)


def test_too_little_pressure_is_told():
    assert result(pressure="25 psi")["warnings"] == []
    found = result(pressure="21 psi")
    assert found["values"]["spare"]["number"] < 0
    assert "The pressure does not suffice" in found["warnings"][-1]
    assert "longest" in found["values"]
    assert "longest" not in result(pressure="19 psi")["values"]


def test_where_the_two_laws_part_it_is_told():
    assert result()["warnings"] == []
    [said] = result(flow="0.1 gpm")["warnings"]
    assert result(flow="0.1 gpm")["values"]["friction"]["number"] > 0
    assert "law" in said
    assert any("usual" in one for one in result(length="40 ft")["warnings"])


def test_rough_pipe_costs_more():
    assert numbers(smoothness=100)["friction"] > numbers()["friction"]
