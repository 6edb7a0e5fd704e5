"""Salty raw water: capacity taken off and hardness that passes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.capacity import capacity_of_dose
from calculators.dissolved_solids import capacity_factor, fresh_leakage

SOLIDS = st.floats(10, 10000)
DOSE = st.floats(1, 25)
HARDNESS = st.floats(0.5, 200)


@given(SOLIDS, st.floats(1, 1000))
def test_more_solids_never_leave_more_capacity(solids, more):
    assert 0.7 <= capacity_factor(solids + more) <= capacity_factor(solids) <= 1


@pytest.mark.parametrize(
    ("solids", "factor"), [(10, 1), (500, 1), (1000, 0.94), (3000, 0.7), (10000, 0.7)]
)
def test_what_the_trade_takes_off(solids, factor):
    assert capacity_factor(solids) == pytest.approx(factor)


@given(st.floats(10, 300), st.floats(1, 3), DOSE)
def test_leakage_grows_as_the_square_and_falls_with_the_dose(solids, times, dose):
    leakage = fresh_leakage(solids, dose, 1e6)

    assert fresh_leakage(solids * times, dose, 1e6) == pytest.approx(leakage * times**2)
    assert fresh_leakage(solids, dose * times, 1e6) == pytest.approx(leakage / times)


@given(SOLIDS, DOSE, HARDNESS)
def test_no_more_than_a_quarter_of_the_hardness_passes(answer, solids, dose, hardness):
    inputs = {"solids": solids, "dose": dose, "hardness": hardness}
    leakage = answer("dissolved-solids", "leakage", **inputs)

    assert 0 < leakage <= hardness / 4 * (1 + 1e-12)


@given(SOLIDS, DOSE)
def test_the_capacity_to_plan_with_is_the_dose_s_less_what_is_taken_off(answer, solids, dose):
    inputs = {"solids": solids, "dose": dose, "hardness": 20}
    factor = answer("dissolved-solids", "factor", **inputs)

    assert answer("dissolved-solids", "capacity", **inputs) == pytest.approx(
        capacity_of_dose(dose) * factor / 100
    )


@pytest.mark.parametrize(
    ("solids", "verdict"),
    [(450, "soft at the tap when all is sound"), (1500, "hard at the tap even when all is sound")],
)
def test_steady_hardness_may_be_the_water_s_own(solids, verdict):
    result = run("dissolved-solids", {"solids": solids, "dose": 6, "hardness": 20})

    assert result["values"]["verdict"]["words"] == verdict
    assert any("seals" in text for text in result["warnings"]) == verdict.startswith("hard")


def test_the_verdict_turns_where_water_stops_being_soft():
    # Capped at a quarter of the hardness, so that just 1 gpg passes.
    inputs = {"solids": 5000, "dose": 6}
    just = run("dissolved-solids", {**inputs, "hardness": 4})
    less = run("dissolved-solids", {**inputs, "hardness": 3.99})

    assert just["values"]["leakage"]["number"] == pytest.approx(1)
    assert just["values"]["verdict"]["words"].startswith("hard")
    assert less["values"]["verdict"]["words"].startswith("soft")


@pytest.mark.parametrize(
    ("solids", "hardness", "told"),
    [
        (2000, 20, False),
        (2001, 20, True),
    ],
)
def test_very_salty_water_wants_other_treatment(solids, hardness, told):
    result = run("dissolved-solids", {"solids": solids, "dose": 6, "hardness": hardness})

    assert any("other treatment" in text for text in result["warnings"]) == told


@pytest.mark.parametrize(("solids", "told"), [(3000, False), (3001, True)])
def test_beyond_what_the_relations_are_trusted_for_it_says_so(solids, told):
    result = run("dissolved-solids", {"solids": solids, "dose": 6, "hardness": 20})

    assert any("not trusted" in text for text in result["warnings"]) == told


@pytest.mark.parametrize(("hardness", "told"), [("119 mg/L", False), ("121 mg/L", True)])
def test_hardness_cannot_be_more_than_all_solids(hardness, told):
    result = run("dissolved-solids", {"solids": 100, "dose": 6, "hardness": hardness})

    assert any("all dissolved solids" in text for text in result["warnings"]) == told


@pytest.mark.parametrize(
    ("solids", "formulas"),
    [
        (400, ["100 %", "usual leakage × (solids ÷ harmless solids)² × usual dose ÷ dose"]),
        (
            1500,
            [
                "100 % − loss × (solids − harmless solids) ÷ harmless solids",
                "usual leakage × (solids ÷ harmless solids)² × usual dose ÷ dose",
            ],
        ),
        (9000, ["least factor", "hardness × most leakage"]),
    ],
)
def test_the_working_shows_the_branch_taken(solids, formulas):
    result = run("dissolved-solids", {"solids": solids, "dose": 6, "hardness": 20})

    assert [result["workings"][step]["formula"] for step in (0, -1)] == formulas
