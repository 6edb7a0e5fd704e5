"""The next check: what it tells, what it costs, what it needs and what it would destroy."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.diagnosis import Knowledge
from calculators.diagnosis.next_check import choose, is_open, minutes_of, options
from tests.calculators.diagnosis.small_knowledge import DATA, check, data, fault, standing


def option(given: dict[str, Any], name: str, of: dict[str, Any] = DATA):
    """Return what is known of one option, or None."""
    return next((one for one in options(standing(given, of)) if one.check == name), None)


def two_causes(**checks: dict[str, Any]) -> dict[str, Any]:
    """Return two equal causes; "sure" tells them apart but for misreadings."""
    sure = {"first": {"sure": {"no": 1.0}}, "second": {"sure": {"yes": 1.0}}}
    return {
        "checks": {"sure": check("Sure", "no", "yes"), **checks},
        "faults": {name: fault(name, 1, likelihoods=row) for name, row in sure.items()},
    }


def test_what_tells_two_equal_causes_apart_is_worth_a_bit() -> None:
    """1 - H(0.005): each result is noted wrongly in 1 of 200."""
    assert standing({}, two_causes()).information("sure") == pytest.approx(1 - 0.045415, abs=1e-6)


def test_what_every_cause_gives_alike_tells_nothing() -> None:
    of = two_causes(coin=check("Coin", "one", "other"))

    assert standing({}, of).information("coin") == pytest.approx(0)


def test_the_cost_is_the_minutes_and_a_moment_between() -> None:
    checks = Knowledge(DATA).checks

    assert minutes_of(checks["level"]) == pytest.approx(2.1)
    assert minutes_of(checks["valve"]) == pytest.approx(10 + 5 + 0.1)  # opened, with consent
    assert minutes_of({"minutes": 10, "overlaps_minutes": 2}) == pytest.approx(2.1)


def test_a_check_costs_what_it_needs_first() -> None:
    draw = option({}, "draw")

    assert draw.steps == ["lamp", "start", "draw"]
    assert draw.first == "lamp"
    assert draw.minutes == pytest.approx(1.1 + 1.1 + 4.1)


def test_what_is_met_is_not_paid_again() -> None:
    assert option({"readings": {"lamp": "lit", "start": "turns"}}, "draw").steps == ["draw"]


@pytest.mark.parametrize("start", ["still", "not done", "not sure"])
def test_a_check_whose_need_is_not_met_is_not_offered(start: str) -> None:
    assert option({"readings": {"lamp": "lit", "start": start}}, "draw") is None


def test_a_check_that_destroys_evidence_waits_for_it() -> None:
    rod = option({}, "rod")

    assert rod.locked_by == ["level"]
    assert rod.steps == ["level", "rod"]
    assert option({"readings": {"level": "low"}}, "rod").locked_by == []
    assert option({"readings": {"level": "not done"}}, "rod").locked_by == []


def test_evidence_that_was_destroyed_is_not_asked_for() -> None:
    assert not is_open(standing({"readings": {"rod": "loose"}}), "level")


def test_the_first_look_does_not_wait_for_a_deeper_check() -> None:
    """A jar of brine is taken, and its strength read later."""
    of = data()
    of["checks"]["rod"]["erases"] = ["draw"]

    assert option({}, "rod", of).locked_by == []
    assert is_open(
        standing({"readings": {"lamp": "lit", "start": "turns", "rod": "loose"}}, of), "draw"
    )


def test_a_check_for_other_controls_is_not_offered() -> None:
    of = data()
    of["checks"]["lamp"]["only_for"] = ["delayed meter"]

    assert option({"home": {"control": "time clock"}}, "lamp", of) is None
    assert option({"home": {"control": "delayed meter"}}, "lamp", of) is not None
    assert option({}, "lamp", of) is not None


@pytest.mark.parametrize(("minutes", "chosen"), [(1.3, "usual"), (2, "best")])
def test_the_order_of_the_first_look_is_broken_only_where_that_pays(
    minutes: float, chosen: str
) -> None:
    """Both tell the same; the later one is better by the minutes of the earlier one."""
    same = {"first": {"yes": 0.0}, "second": {"yes": 1.0}}
    of = two_causes(
        usual=check("Usual", "no", "yes", stage=1, order=1, minutes=minutes),
        best=check("Best", "no", "yes", stage=1, order=2, minutes=1),
    )
    for name, row in same.items():
        of["faults"][name]["likelihoods"] |= {"usual": row, "best": row}

    assert choose(standing({"readings": {"sure": "not done"}}, of)).check == chosen


def test_nothing_left_is_nothing_to_choose() -> None:
    done = dict.fromkeys(DATA["checks"], "not done")

    assert choose(standing({"readings": done})) is None
