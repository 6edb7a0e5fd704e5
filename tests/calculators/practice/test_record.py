"""A record is read from any text without harm, and merged without counting anything twice."""

from __future__ import annotations

import json
from copy import deepcopy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.practice import record as records
from calculators.practice.record import RecordProblem, checked, merged, new_record, read_record
from tests.calculators.practice.records import RECORDS, attempt, day, record, seen

DAMAGED = "The file is damaged, or it is no record: it cannot be read."
TEXTS = [
    ("", "The file is empty."),
    (" \n", "The file is empty."),
    ("{", DAMAGED),
    ("salt", DAMAGED),
    ('{"version": NaN}', DAMAGED),
    ('{"version": 1' + "0" * 5000 + "}", DAMAGED),
    ("[" * 200_000, DAMAGED),
    ("[" * 200_000 + "]" * 200_000, DAMAGED),
    ('{"a":' * 50_000 + "1" + "}" * 50_000, DAMAGED),
    ('"' + '\\"' * 1_000_000, DAMAGED),
    ("[]", "The file is no record: it does not say which version of one it is."),
    ('{"name": "Ana"}', "The file is no record: it does not say which version of one it is."),
    ('{"version": "1"}', "The file is no record: its version is no whole number."),
    ('{"version": true}', "The file is no record: its version is no whole number."),
    ('{"version": 0}', "The file is no record: its version is no whole number."),
    ('{"version": 1e400}', "The file is no record: its version is no whole number."),
    (
        '{"version": 2, "answers": {}}',
        "The file is of a newer edition of the handbook: it is version 2 of the record, and this "
        "edition knows version 1. Open the newest edition first.",
    ),
    (
        '{"version": 9000000000000000000000}',
        "The file is of a newer edition of the handbook: it is version a huge number of the "
        "record, and this edition knows version 1. Open the newest edition first.",
    ),
    ('{"version": 1, "name": ""}', "The file lacks “attempts”, which every record has."),
    (
        '{"version": 1, "name": "", "attempts": [], "observed": [], "__proto__": {"x": 1}}',
        "The file holds “__proto__”, which no record of this version has.",
    ),
    (
        json.dumps({**new_record(), "\u202e" + "x" * 40: 1}),
        f"The file holds “?{'x' * 28}…”, which no record of this version has.",
    ),
    (
        '{"version": 1, "name": "", "attempts": {}, "observed": []}',
        "The file is damaged: its “attempts” are no list.",
    ),
    (
        '{"version": 1, "name": 7, "attempts": [], "observed": []}',
        "The name in the file is no text.",
    ),
    (
        '{"version": 1, "name": "\\u0000", "attempts": [], "observed": []}',
        "The name in the file holds characters that cannot be shown.",
    ),
    (
        '{"version": 1, "name": "\\ud800", "attempts": [], "observed": []}',
        "The name in the file holds characters that cannot be shown.",
    ),
    (
        '{"version": 1, "name": "Ana \\u202eeeB", "attempts": [], "observed": []}',
        "The name in the file holds characters that cannot be shown.",
    ),
    (
        '{"version": 1, "name": "", "attempts": [1], "observed": []}',
        "Answer 1 is damaged: it has no names and values.",
    ),
]
#: A change of an answer, and what is said of it.
ATTEMPTS = [
    ({"score": 1.01}, "Answer 1 has a score that is no share from 0 to 1."),
    ({"score": True}, "Answer 1 has a score that is no share from 0 to 1."),
    ({"score": "1"}, "Answer 1 has a score that is no share from 0 to 1."),
    ({"right": 1}, "Answer 1 does not say with yes or no whether it was “right”."),
    ({"sure": None}, "Answer 1 does not say with yes or no whether it was “sure”."),
    ({"day": "2026-02-30"}, "Answer 1 has no day that can be read, such as 2026-11-26."),
    ({"day": "20260302"}, "Answer 1 has no day that can be read, such as 2026-11-26."),
    ({"day": "0001-01-01"}, "Answer 1 has no day that can be read, such as 2026-11-26."),
    ({"day": "٢٠٢٦-٠٣-٠٢"}, "Answer 1 has no day that can be read, such as 2026-11-26."),
    ({"at": "2026-03-02"}, "Answer 1 does not say when it was given."),
    ({"at": "2026-03-02T25:00:00.000Z"}, "Answer 1 does not say when it was given."),
    ({"at": 5}, "Answer 1 does not say when it was given."),
    ({"item": " "}, "The item of answer 1 is empty."),
    ({"item": "x" * 101}, "The item of answer 1 is longer than 100 characters."),
    ({"family": 7}, "The family of answer 1 is no text."),
    ({"code": "Q7"}, "Answer 1 needs either a “seed” or a “code”."),
    ({"constructor": "x"}, "Answer 1 holds “constructor”, which no record of this version has."),
]
SEEN = [
    ({"level": 5}, "Observation 1 has a level that is not one of 0 to 4."),
    ({"level": 3.0}, "Observation 1 has a level that is not one of 0 to 4."),
    ({"level": True}, "Observation 1 has a level that is not one of 0 to 4."),
    ({"observer": ""}, "The observer of observation 1 is empty."),
    ({"system": None}, "The system of observation 1 is no text."),
    ({"day": 7}, "Observation 1 has no day that can be read, such as 2026-11-26."),
]


def refusal(text: Any) -> str:
    with pytest.raises(RecordProblem) as refused:
        read_record(text)
    return str(refused.value)


@pytest.mark.parametrize(("text", "sentence"), TEXTS, ids=range(len(TEXTS)))
def test_a_text_that_is_no_record_is_refused_in_a_sentence(text: str, sentence: str) -> None:
    assert refusal(text) == sentence


@pytest.mark.parametrize(("change", "sentence"), ATTEMPTS)
def test_an_answer_that_is_wrong_is_named(change: dict[str, Any], sentence: str) -> None:
    one = attempt(0)
    if "code" in change:
        one["seed"] = "a"
    assert refusal(json.dumps(record({**one, **change}))) == sentence


@pytest.mark.parametrize(("change", "sentence"), SEEN)
def test_an_observation_that_is_wrong_is_named(change: dict[str, Any], sentence: str) -> None:
    made = new_record()
    made["observed"] = [{**seen(0, "a street"), **change}]
    assert refusal(json.dumps(made)) == sentence


def test_what_is_larger_than_any_record_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    assert refusal(" " * 4_999_999 + "x\n\n") == (
        "The file is too large for a record: it has 5,000,002 characters, and a record has at most "
        "5,000,000."
    )
    monkeypatch.setattr(records, "MOST_ATTEMPTS", 2)
    made = record(*(attempt(0, minute=one) for one in range(3)))
    assert refusal(json.dumps(made)) == "The file holds more than 2 answers."


@given(RECORDS)
def test_a_record_that_was_written_is_read_as_it_was(made: dict[str, Any]) -> None:
    assert read_record(json.dumps(made)) == made
    assert read_record("\ufeff" + json.dumps(made, indent=1)) == made


@settings(max_examples=60)
@given(st.text() | st.binary().map(lambda some: some.decode("utf-8", "replace")))
def test_any_text_gives_a_record_or_a_sentence(text: str) -> None:
    assert refusal(text).endswith(".")


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from(["at", "day", "item", "level", "x"]), inner, max_size=3)
    ),
    max_leaves=6,
)


@given(RECORDS, st.sampled_from(["name", "attempts", "observed", "version", "boxes"]), JSON)
def test_any_part_that_is_put_wrong_is_refused_or_harmless(
    made: dict[str, Any], key: str, value: Any
) -> None:
    data = {**made, key: value}
    before = deepcopy(data)
    try:
        got = checked(data)
    except RecordProblem as problem:
        assert str(problem).endswith(".")
    else:
        assert checked(got) == got
    assert repr(data) == repr(before)


@given(RECORDS, RECORDS)
def test_merging_is_the_same_either_way_and_the_second_time_changes_nothing(
    one: dict[str, Any], other: dict[str, Any]
) -> None:
    copies = deepcopy((one, other))
    both, new = merged(one, other)
    assert (one, other) == copies
    assert merged(other, one)[0] == both
    assert merged(both, other) == (both, 0)
    assert merged(both, one) == (both, 0)
    once = merged(one, one)[0]
    assert new == sum(len(both[key]) - len(once[key]) for key in ("attempts", "observed"))


@given(RECORDS, RECORDS, RECORDS)
def test_merging_three_gives_the_same_in_any_order(
    one: dict[str, Any], two: dict[str, Any], three: dict[str, Any]
) -> None:
    left = merged(merged(one, two)[0], three)[0]
    assert left == merged(one, merged(two, three)[0])[0]
    assert left["attempts"] == sorted(left["attempts"], key=lambda entry: entry["at"])


@given(RECORDS, RECORDS)
def test_what_is_merged_holds_all_of_both_and_each_once(
    one: dict[str, Any], other: dict[str, Any]
) -> None:
    both = merged(one, other)[0]
    for key in ("attempts", "observed"):
        assert all(entry in both[key] for entry in (*one[key], *other[key]))
        assert all(both[key].count(entry) == 1 for entry in both[key])


def test_records_of_two_people_are_not_merged() -> None:
    with pytest.raises(RecordProblem) as refused:
        merged(record(name="Ana Bee"), record(name="Jonas Wick"))
    assert str(refused.value) == (
        "The file is the record of “Jonas Wick”, and the one here is of “Ana Bee”. Nothing was "
        "changed. If both are one person, write the same name here and load the file again."
    )
    assert merged(record(name="Ana Bee"), record(name="ANA BEE"))[0]["name"] == "Ana Bee"
    assert merged(record(name=""), record(name="Ana Bee"))[0]["name"] == "Ana Bee"


def test_records_that_are_too_large_together_are_not_merged(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(records, "MOST_OBSERVED", 1)
    with pytest.raises(RecordProblem) as refused:
        merged(record(seen(0, "a street")), record(seen(1, "a street")))
    assert str(refused.value) == (
        "Together the records hold more than 1 observations. Nothing was changed."
    )


def test_a_name_is_kept_with_the_joiners_of_its_script_and_one_space() -> None:
    made = checked({**new_record(), "name": " می\u200cنا \u00a0Rad 🧑\u200d🔧 "})
    assert made["name"] == "می\u200cنا Rad 🧑\u200d🔧"


def test_what_stands_in_a_file_twice_counts_once() -> None:
    made = record(*[attempt(0)] * 3, attempt(1), *[seen(2, "a street")] * 2)
    assert read_record(json.dumps(made)) == record(attempt(0), attempt(1), seen(2, "a street"))


def test_days_are_counted_over_months() -> None:
    assert records.day_number(day(31)) - records.day_number(day(0)) == 31
