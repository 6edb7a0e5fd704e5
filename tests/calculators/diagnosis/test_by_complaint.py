"""Likely causes of a complaint, and what would show them."""

from __future__ import annotations

from typing import Any

import pytest
from calculators.diagnosis.by_complaint import likely_causes, telling_results


def fault(share: float, **likelihoods: dict[str, float]) -> dict[str, Any]:
    return {"share_of_calls": share, "likelihoods": {"complaint": {}, **likelihoods}}


FAULTS = {
    "bridge": fault(0.2, complaint={"hard": 0.5, "salt": 0.5}, rod={"hollow": 0.9, "loose": 0.1}),
    "empty": fault(0.6, complaint={"hard": 1.0}, pair={"raw": 0.6}, lid={"empty": 0.9}),
    "bypass": fault(0.1, complaint={"hard": 0.5}, pair={"raw": 0.9}, lid={"empty": 0.05}),
}


def test_shares_are_prior_times_chance_and_make_one() -> None:
    causes = likely_causes(FAULTS, "hard")
    assert causes == [
        ("empty", pytest.approx(0.6 / 0.75)),
        ("bridge", pytest.approx(0.1 / 0.75)),
        ("bypass", pytest.approx(0.05 / 0.75)),
    ]
    assert sum(share for _, share in causes) == pytest.approx(1)


def test_only_causes_that_make_the_complaint_are_named() -> None:
    assert likely_causes(FAULTS, "salt") == [("bridge", 1.0)]
    assert likely_causes(FAULTS, "smell") == likely_causes({}, "hard") == []


def test_shares_do_not_depend_on_what_the_priors_sum_to() -> None:
    tenfold = {
        name: {**one, "share_of_calls": one["share_of_calls"] * 10} for name, one in FAULTS.items()
    }
    assert [name for name, _ in likely_causes(tenfold, "hard")] == ["empty", "bridge", "bypass"]
    assert telling_results(tenfold, "empty") == telling_results(FAULTS, "empty")


def test_what_many_faults_show_tells_less_than_what_one_shows() -> None:
    assert telling_results(FAULTS, "empty") == [("lid", "empty"), ("pair", "raw")]


def test_what_speaks_against_a_fault_is_not_told() -> None:
    assert telling_results(FAULTS, "bypass") == [("pair", "raw")]
    assert ("rod", "hollow") in telling_results(FAULTS, "bridge")
