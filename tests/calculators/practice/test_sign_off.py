"""Sign-off by hand: what it needs, from when it counts, and what takes it away."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given

from calculators.practice.sign_off import months_later, signed_off
from tests.calculators.practice.records import RECORDS, attempt, call, day, record, seen

SKILL = {
    "id": "controls",
    "title": "Controls",
    "families": {"settings": "Settings"},
    "items": {"dose": "The dose", "call: Power and clock": "A practice call: power and clock"},
    "safety": [],
    "faults": ["Power and clock", "Meter and settings"],
    "heavy": False,
}
HEAVY = {**SKILL, "heavy": True}
SAFE = {**SKILL, "items": {"plug": "Plug out first"}, "safety": ["plug"]}

RUN = [attempt(0), attempt(5), attempt(14)]
CALLS = [call(1, "QA", 0.8), call(2, "QB", 0.93), call(3, "QC", 1)]
SEEN = [seen(4, "3 Gannet Lane"), seen(6, "8 Herring Street")]
ALL = [*RUN, *CALLS, *SEEN]

NOT_RUN = "3 right in a row over at least 14 days, in: Settings."
HURTS = {"right": False, "critical": True}


def not_called(number: int) -> str:
    return f"Practice calls with a score of at least 80: {number} of 3."


def not_seen(number: int) -> str:
    return f"Seen at level 3 or higher on 2 different systems: {number} of 2."


def standing(
    *entries: dict[str, Any], skill: dict[str, Any] = SKILL, today: int = 30, name: str = "Ana Bee"
) -> dict[str, Any]:
    return signed_off(record(*entries, name=name), [skill], day(today))[0]


def test_all_together_sign_a_skill_off_on_the_day_of_the_last_of_them() -> None:
    got = standing(*ALL)
    assert got == {
        "skill": "controls",
        "title": "Controls",
        "level": 3,
        "level_day": day(4),
        "state": "signed off",
        "signed_on": day(14),
        "check_by": "2028-03-16",
        "missing": [],
        "right": 6,
        "answers": 6,
        "calls": 3,
        "observed": SEEN,
    }
    assert day(14) == "2026-03-16"


def test_nothing_at_all_misses_everything() -> None:
    got = standing()
    assert got["missing"] == [not_seen(0), not_called(0), NOT_RUN]
    assert (got["state"], got["level"], got["answers"]) == ("not yet", 0, 0)


@pytest.mark.parametrize(
    ("entries", "missing"),
    [
        # Seen twice on the same system, whatever the case of its letters; or once at level 2.
        ([*RUN, *CALLS, SEEN[0], seen(6, "3 GANNET LANE")], [not_seen(1)]),
        ([*RUN, *CALLS, SEEN[0], seen(6, "8 Herring Street", 2)], [not_seen(1)]),
        # Seen by the learner alone.
        ([*RUN, *CALLS, SEEN[0], seen(6, "8 Herring Street", observer="ana bee")], [not_seen(1)]),
        # Seen in another skill.
        ([*RUN, *CALLS, SEEN[0], seen(6, "8 Herring Street", skill="brine")], [not_seen(1)]),
        # A call just below the score, a call that was done twice, a call of another group.
        ([*RUN, *SEEN, *CALLS[:2], call(3, "QC", 0.79)], [not_called(2)]),
        ([*RUN, *SEEN, *CALLS[:2], call(3, "QB", 1)], [not_called(2)]),
        ([*RUN, *SEEN, *CALLS[:2], call(3, "QC", 1, family="Resin")], [not_called(2)]),
        # A call that was done again after its debrief.
        ([*RUN, *SEEN, *CALLS[:2], call(3, "QC", 0.4), call(4, "QC", 1)], [not_called(2)]),
        # Three right in a row in 13 days; two over months; a wrong one between.
        ([*SEEN, *CALLS, attempt(0), attempt(5), attempt(13)], [NOT_RUN]),
        ([*SEEN, *CALLS, attempt(0), attempt(29)], [NOT_RUN]),
        ([*ALL[:2], attempt(7, right=False), *ALL[2:]], [NOT_RUN]),
        # Right answers of another skill, or of another family.
        ([*SEEN, *CALLS, *(attempt(at, skill="brine") for at in (0, 5, 14))], [NOT_RUN]),
        ([*SEEN, *CALLS, *(attempt(at, family="clock") for at in (0, 5, 14))], [NOT_RUN]),
    ],
)
def test_what_is_not_enough(entries: list[dict[str, Any]], missing: list[str]) -> None:
    got = standing(*entries)
    assert (got["state"], got["missing"]) == ("not yet", missing)


def test_teaching_counts_as_doing_alone_and_is_the_level() -> None:
    got = standing(*RUN, *CALLS, SEEN[0], seen(6, "8 Herring Street", 4))
    assert (got["state"], got["level"], got["level_day"]) == ("signed off", 4, day(6))


def test_heavy_work_is_seen_once() -> None:
    assert standing(*RUN, *CALLS, SEEN[0], skill=HEAVY)["state"] == "signed off"
    assert standing(*RUN, *CALLS, skill=HEAVY)["missing"] == [
        "Seen at level 3 or higher on 1 system: 0 of 1."
    ]


def test_a_run_that_was_broken_begins_anew() -> None:
    entries = [*SEEN, *CALLS, *RUN[:2], attempt(6, right=False), attempt(7), attempt(14)]
    assert standing(*entries, today=20)["missing"] == [NOT_RUN]
    got = standing(*entries, attempt(21))
    assert (got["state"], got["signed_on"]) == ("signed off", day(21))


def test_every_family_of_the_skill_needs_its_run() -> None:
    skill = {**SKILL, "families": {"settings": "Settings", "clock": "Clock", "use": "Use"}}
    got = standing(*ALL, *(attempt(at, "c", family="clock") for at in (1, 2)), skill=skill)
    assert got["missing"] == ["3 right in a row over at least 14 days, in: Clock, Use."]


def test_a_safety_miss_stays_open_until_the_same_is_done_right() -> None:
    miss = call(8, "QD", 0.5, **HURTS)
    before = standing(miss, *ALL[1:], attempt(20), attempt(26), attempt(28))
    open_miss = "A safety miss is open. Do again, and do right: A practice call: power and clock."
    assert before["missing"] == [open_miss]
    other = attempt(9, item="clock")
    assert standing(*ALL, miss, other, today=13)["missing"][-1] == open_miss
    righted = standing(*ALL, miss, call(17, "QE", 0.6))
    assert (righted["state"], righted["signed_on"]) == ("signed off", day(17))


def test_a_safety_miss_suspends_what_was_signed_off() -> None:
    got = standing(*ALL, attempt(20, **HURTS))
    assert got["state"] == "safety first"
    assert got["signed_on"] == day(14)
    assert got["missing"] == ["A safety miss is open. Do again, and do right: The dose."]
    assert standing(*ALL, attempt(20, **HURTS), attempt(21))["state"] == "signed off"


def test_safety_exercises_must_all_be_right() -> None:
    missing = ["Safety exercises that are not right yet: Plug out first."]
    assert standing(*ALL, skill=SAFE)["missing"] == missing
    right = attempt(15, item="plug")
    assert standing(*ALL, right, skill=SAFE)["signed_on"] == day(15)
    wrong = attempt(16, item="plug", right=False)
    assert standing(*ALL, right, wrong, skill=SAFE)["state"] == "safety first"


def test_it_is_checked_again_after_two_years_and_an_observation_renews_it() -> None:
    last, over = 14 + 731, 14 + 732  # days: one of the two years is a leap year
    assert day(last) == "2028-03-16"
    assert standing(*ALL, today=last)["state"] == "signed off"
    got = standing(*ALL, today=over)
    assert got["state"] == "check again"
    assert got["missing"] == ["It was to be seen again at level 3 or higher by 2028-03-16."]
    low = standing(*ALL, seen(over, "1 Quay", 2), today=over)
    assert low["state"] == "check again"
    renewed = standing(*ALL, seen(over, "1 Quay"), today=over)
    assert (renewed["state"], renewed["check_by"]) == ("signed off", "2030-03-17")


def test_what_lies_after_the_day_is_left_out() -> None:
    assert standing(*ALL, today=13)["missing"] == [NOT_RUN]


def test_the_share_is_of_the_last_twenty_answers() -> None:
    wrong = [attempt(at, right=False) for at in range(10)]
    right = [attempt(at) for at in range(10, 25)]
    got = standing(*wrong, *right)
    assert (got["right"], got["answers"]) == (15, 20)


@given(RECORDS)
def test_the_order_in_the_file_changes_nothing(made: dict[str, Any]) -> None:
    turned = {**made, "attempts": made["attempts"][::-1], "observed": made["observed"][::-1]}
    distinct = len({one["at"] for one in made["attempts"]}) == len(made["attempts"])
    one, other = (signed_off(some, [SKILL], day(50))[0] for some in (made, turned))
    if distinct:
        assert {**one, "observed": 0} == {**other, "observed": 0}
    assert one["state"] in ("not yet", "signed off", "safety first")
    assert (one["state"] == "signed off") == (not one["missing"])


@pytest.mark.parametrize(
    ("begin", "months", "end"),
    [
        ("2026-11-26", 24, "2028-11-26"),
        ("2024-02-29", 24, "2026-02-28"),
        ("2026-08-31", 1, "2026-09-30"),
        ("2026-12-31", 2, "2027-02-28"),
        ("2026-01-01", 11, "2026-12-01"),
    ],
)
def test_months_by_the_calendar(begin: str, months: int, end: str) -> None:
    assert months_later(begin, months) == end
