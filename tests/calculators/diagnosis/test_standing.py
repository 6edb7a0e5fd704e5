"""Bayes' rule over causes: worked by hand, from a textbook, and as properties."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.diagnosis import Knowledge
from calculators.diagnosis.call import Call
from calculators.diagnosis.home_codes import pack
from calculators.diagnosis.standing import Standing
from tests.calculators.diagnosis.small_knowledge import DATA, check, data, fault, standing

ANSWERS = {
    name: [*(one["name"] for one in of_check["results"]), "not done", "not sure"]
    for name, of_check in DATA["checks"].items()
}
READINGS = st.fixed_dictionaries(
    {}, optional={name: st.sampled_from(answers) for name, answers in ANSWERS.items()}
)


def test_a_rare_disease_and_a_good_test() -> None:
    """Eddy's problem (1982), as most textbooks tell it, from memory.

    One woman in a hundred has the disease; the test finds 80 % of them, and 9.6 % of the others
    test positive too. After a positive test 7.8 % have it.
    """
    knowledge = Knowledge(
        {
            "checks": {"test": check("Test", "negative", "positive")},
            "faults": {
                "disease": fault("Disease", 1, likelihoods={"test": {"positive": 0.8}}),
                "none": fault("None", 99, likelihoods={"test": {"positive": 0.096}}),
            },
        }
    )
    call = Call(knowledge, {})
    call.readings = {"test": (1, 0.0)}  # a test that is never misread
    causes = Standing(knowledge, call).causes

    assert causes["disease"] / sum(causes.values()) == pytest.approx(0.0776, abs=0.00005)


def test_one_reading_by_hand() -> None:
    """A dark lamp: misread in 1 of 100, and a cause that nobody thought of gives it half the time.

    no power: 0.98 × 0.2 × (0.99 × 0.9 + 0.005) = 0.175616
    bridge:   0.98 × 0.5 × (0.99 × 0.015 + 0.005) = 0.0097265
    plugged:  0.98 × 0.3 × (0.99 × 0.015 + 0.005) = 0.0058359
    unknown:  0.02 × 0.5 = 0.01
    """
    found = standing({"readings": {"lamp": "dark"}})

    total = 0.175616 + 0.0097265 + 0.0058359 + 0.01
    assert found.causes["no-power"] == pytest.approx(0.175616 / total)
    assert found.causes["bridge"] == pytest.approx(0.0097265 / total)
    assert found.causes["plugged"] == pytest.approx(0.0058359 / total)
    assert found.unknown == pytest.approx(0.01 / total)
    assert found.leader == "no-power"


def test_before_any_reading_the_shares_stand() -> None:
    found = standing({})

    assert found.ranking == ["bridge", "plugged", "no-power"]
    assert found.causes["bridge"] == pytest.approx(0.98 * 0.5)
    assert found.unknown == pytest.approx(0.02)


def test_a_result_not_seen_well_counts_for_less() -> None:
    seen = standing({"readings": {"rod": "crust"}})
    unsure = standing({"readings": {"rod": {"result": "crust", "sure": False}}})

    assert standing({}).causes["bridge"] < unsure.causes["bridge"] < seen.causes["bridge"]


@pytest.mark.parametrize("answer", ["not done", "not sure", None])
def test_an_answer_without_a_result_changes_no_chance(answer: str | None) -> None:
    assert standing({"readings": {"rod": answer}}).causes == standing({}).causes


def test_the_class_of_the_home_is_a_factor() -> None:
    of = data(no_power={"homes": {"time clock": 0.5}}, bridge={"homes": {"town": 0.0}})

    assert standing({"home": {"water": "town"}}, of).causes["bridge"] == 0
    clock = standing({"home": {"control": "time clock", "water": "well"}}, of).causes
    assert clock["no-power"] / clock["bridge"] == pytest.approx(0.5 * 2 / 5)


def test_a_fault_that_was_repaired_is_out_of_the_question() -> None:
    found = standing({"readings": {"rod": "crust"}, "excluded": ["bridge"]})

    assert found.causes["bridge"] == 0
    assert sum(found.causes.values()) + found.unknown == pytest.approx(1)


def test_two_causes_at_once_count_for_the_one_that_brought_the_other() -> None:
    """Prior of the pair: 5 × 0.5 × 0.3; both results are abnormal if either cause makes them so."""
    of = data(plugged={"follows": ["bridge"]})
    found = standing({"readings": {"rod": "crust", "draw": "stands"}}, of)
    knowledge = found.knowledge
    pair = found.hypotheses[knowledge.hypotheses.index(("bridge", "plugged"))]
    alone = found.hypotheses[knowledge.hypotheses.index(("bridge",))]

    assert found.causes["bridge"] == pytest.approx(pair + alone)
    assert pair > alone
    assert knowledge.priors[knowledge.hypotheses.index(("bridge", "plugged"))] == pytest.approx(
        0.98 * 5 * 0.5 * 0.3 / (1 + 5 * 0.5 * 0.3)
    )


@given(READINGS)
def test_all_chances_make_one(readings: dict[str, str]) -> None:
    found = standing({"readings": readings})

    assert sum(found.causes.values()) + found.unknown == pytest.approx(1)
    assert all(0 <= chance <= 1 for chance in found.causes.values())


@given(READINGS, st.randoms(use_true_random=False))
def test_the_order_of_readings_does_not_matter(readings: dict[str, str], random: Any) -> None:
    shuffled = list(readings.items())
    random.shuffle(shuffled)

    assert standing({"readings": dict(shuffled)}).causes == standing({"readings": readings}).causes


@given(READINGS, st.sampled_from(["one", "other"]))
def test_a_reading_that_every_cause_gives_alike_changes_nothing(
    readings: dict[str, str], result: str
) -> None:
    of = data()
    of["checks"]["coin"] = check("Coin", "one", "other")
    for one in of["faults"].values():
        one["likelihoods"]["coin"] = {"one": 0.5, "other": 0.5}
    without = standing({"readings": readings}, of).causes

    assert standing({"readings": {**readings, "coin": result}}, of).causes == pytest.approx(without)


@given(READINGS, st.permutations(list(DATA["faults"])))
def test_other_names_and_another_order_of_causes_change_nothing(
    readings: dict[str, str], order: list[str]
) -> None:
    of = {**DATA, "faults": {f"cause-{name}": DATA["faults"][name] for name in order}}
    renamed = standing({"readings": readings}, of).causes

    expected = {f"cause-{n}": c for n, c in standing({"readings": readings}).causes.items()}
    assert renamed == pytest.approx(expected)


def simulated(rows: list[tuple[str, str]]) -> dict[str, Any]:
    """Return the data with homes of the bridge, each with what rod and level show in it."""
    of = data()
    results = {
        name: [one["name"] for one in of["checks"][name]["results"]] for name in ("rod", "level")
    }
    readings = {
        name: pack([[int(row[place] == one) for one in results[name]] for row in rows])
        for place, name in enumerate(results)
    }
    homes = {"control": "d" * len(rows), "water": "t" * len(rows), "readings": readings}
    of["homes"] = {"results": results, "faults": {"bridge": homes}}
    return of


INDEPENDENT = [
    (rod, level)
    for rod, often in (("crust", 8), ("loose", 2))
    for level, also in (("low", 6), ("planned", 3), ("high", 1))
    for _ in range(often * also)
]


@given(
    st.sampled_from(["crust", "loose", "not done"]),
    st.sampled_from(["low", "planned", "high", "not done"]),
)
def test_homes_whose_readings_are_independent_agree_with_a_table(rod: str, level: str) -> None:
    judged = {"rod": {"crust": 0.8}, "level": {"low": 0.6, "high": 0.1}}
    table = data(bridge={"likelihoods": {**DATA["faults"]["bridge"]["likelihoods"], **judged}})
    call = {"readings": {"rod": rod, "level": level}}

    causes = standing(call, simulated(INDEPENDENT)).causes
    assert causes == pytest.approx(standing(call, table).causes, abs=0.005)


def test_homes_keep_what_goes_together() -> None:
    """Every home has a crust or a low level, none both: together they speak against the bridge."""
    of = simulated([("crust", "planned")] * 50 + [("loose", "low")] * 50)
    both = standing({"readings": {"rod": "crust", "level": "low"}}, of)
    one = standing({"readings": {"rod": "crust"}}, of)

    assert both.predicted("lamp")  # the call goes on
    assert one.causes["bridge"] > 0.9
    knowledge = one.knowledge
    bridge = knowledge.hypotheses.index(("bridge",))
    assert one.predicted("level")[bridge][2] < 0.1 < knowledge.tables["level"][bridge][2]
    assert both.hypotheses[bridge] < one.hypotheses[bridge]


def test_homes_of_another_control_count_less() -> None:
    of = simulated([("crust", "low")] * 50 + [("crust", "planned")] * 50)
    of["homes"]["faults"]["bridge"]["control"] = "c" * 50 + "d" * 50
    call = {"readings": {"rod": "crust"}, "home": {"control": "time clock"}}

    clock = standing(call, of)
    bridge = clock.knowledge.hypotheses.index(("bridge",))
    any_home = standing({"readings": {"rod": "crust"}}, of)
    assert clock.predicted("level")[bridge][2] > 0.7
    assert any_home.predicted("level")[bridge][2] == pytest.approx(0.5, abs=0.02)
    assert clock.causes["bridge"] == pytest.approx(any_home.causes["bridge"], abs=0.01)
