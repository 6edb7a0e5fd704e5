"""Several records side by side: who is who, shares by hand, and a file for table programs."""

from __future__ import annotations

import csv
import io
import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import as_text
from calculators.practice import record as records
from calculators.practice.crew import CSV_HEAD, crew, csv_text
from tests.calculators.practice.records import RECORDS, attempt, call, day, record, seen
from tests.calculators.practice.test_sign_off import ALL, SKILL

BRINE = {**SKILL, "id": "brine", "title": "Brine, refill", "faults": [], "families": {}}
SKILLS = [SKILL, BRINE]
WRONG = {"right": False}
ANA = record(*ALL)
JONAS = record(*(attempt(at, minute=1, **WRONG) for at in range(4)), attempt(9), name="Jonas Wick")
LI = record(seen(3, "2 Quay", 2), call(2, "QX", 0.9), name="=Li")


def read_back(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline=""), strict=True))


def test_a_crew_of_three_by_hand() -> None:
    got = crew([LI, JONAS, ANA], SKILLS, day(30))
    assert got["people"] == ["=Li", "Ana Bee", "Jonas Wick"]
    assert got["notes"] == []
    controls, brine = got["rows"]
    assert [one["state"] for one in controls["cells"]] == ["not yet", "signed off", "not yet"]
    assert [one["level"] for one in controls["cells"]] == [2, 3, 0]
    assert [(one["right"], one["answers"], one["step"]) for one in controls["cells"]] == [
        (1, 1, None),
        (6, 6, 4),
        (1, 5, 0),
    ]
    assert controls["all"] == {
        "signed": 1, "right": 8, "answers": 12, "share": pytest.approx(8 / 12), "step": 2,
    }  # fmt: skip
    assert brine["all"] == {"signed": 0, "right": 0, "answers": 0, "share": None, "step": None}


def test_the_table_file_is_read_back_by_another_program() -> None:
    rows = read_back(crew([ANA, JONAS, LI], SKILLS, day(30))["csv"])
    assert rows[0] == list(CSV_HEAD)
    assert len(rows) == 1 + 3 * 2
    assert rows[1][:5] == ["'=Li", "Controls", "2", "did it with help", "not yet"]
    assert rows[3] == [
        "Ana Bee", "Controls", "3", "did it alone, to standard", "signed off", "2026-03-16",
        "2028-03-16", "6", "6", "3", "",
    ]  # fmt: skip
    assert rows[6][1] == "Brine, refill"
    assert rows[5][-1] == (
        "Seen at level 3 or higher on 2 different systems: 0 of 2. Practice calls with a score of "
        "at least 80: 0 of 3. 3 right in a row over at least 14 days, in: Settings."
    )


@given(st.lists(st.lists(st.text(), min_size=2, max_size=4), max_size=4))
def test_any_cells_are_read_back_and_none_is_a_formula(rows: list[list[str]]) -> None:
    text = csv_text(rows)
    got = read_back(text)
    assert [len(row) for row in got] == [len(row) for row in rows]
    for row, cells in zip(rows, got, strict=True):
        for before, after in zip(row, cells, strict=True):
            assert after in (before, f"'{before}")
            assert not after.lstrip(" ").startswith(("=", "+", "-", "@", "\t", "\r"))


@pytest.mark.parametrize("begin", ["=", "+", "-", "@", "\t=", "\r=", "  =", "\uff1d"])
def test_a_cell_that_would_run_is_made_harmless(begin: str) -> None:
    formula = f"{begin}HYPERLINK(1)"
    assert read_back(csv_text([[formula, "x"]])) == [[f"'{formula}", "x"]]


def test_lines_end_as_the_standard_says() -> None:
    assert csv_text([["a", 'b "c"'], ["d,e", "f\ng"]]) == 'a,"b ""c"""\r\n"d,e","f\ng"\r\n'


def test_a_person_who_is_loaded_twice_counts_once() -> None:
    later = record(*ANA["attempts"], *ANA["observed"], attempt(29))
    got = crew([ANA, later], SKILLS, day(30))
    assert got["people"] == ["Ana Bee"]
    assert got["rows"][0]["cells"][0]["answers"] == 7
    assert got["notes"] == [
        "Two files of Ana Bee hold some of the same answers and count as one person."
    ]


def test_two_people_of_one_name_are_two() -> None:
    some = [record(attempt(1)), record(attempt(2)), record(name=""), record(name="")]
    got = crew(some, [], day(9))
    assert got["people"] == ["Ana Bee", "Ana Bee (2)", "No name", "No name (2)"]


def test_two_files_that_are_too_large_together_count_as_the_first(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(records, "MOST_ATTEMPTS", 2)
    one, other = record(attempt(1), attempt(2)), record(attempt(1), attempt(3))
    got = crew([one, other], SKILLS, day(30))
    assert got["people"] == ["Ana Bee"]
    assert got["rows"][0]["cells"][0]["answers"] == 2
    assert got["notes"] == ["Of two files of Ana Bee only the first counts: they are too large."]


@given(st.lists(RECORDS, max_size=4))
def test_shares_are_those_of_the_cells(some: list[dict[str, Any]]) -> None:
    got = crew(some, SKILLS, day(50))
    for row in got["rows"]:
        assert len(row["cells"]) == len(got["people"])
        for key in ("right", "answers"):
            assert row["all"][key] == sum(cell[key] for cell in row["cells"])
        for cell in (*row["cells"], row["all"]):
            assert cell["share"] is None or 0 <= cell["share"] <= 1
    assert len(read_back(got["csv"])) == 1 + len(got["people"]) * len(SKILLS)


def asked(**parts: Any) -> Any:
    """Ask as a page does."""
    return json.loads(as_text.answer(json.dumps({"skills": SKILLS, "today": day(30), **parts})))


def test_pages_get_the_crew_and_the_files_that_were_left_out() -> None:
    files = [
        {"name": "ana.json", "text": json.dumps(ANA)},
        {"name": "torn.json", "text": json.dumps(JONAS)[:-9]},
    ]
    got = asked(work="crew", files=files)
    assert got["people"] == ["Ana Bee"]
    assert got["problems"] == [
        {
            "file": "torn.json",
            "sentence": "The file is damaged, or it is no record: it cannot be read.",
        }
    ]


def test_pages_get_a_record_and_what_a_file_brings() -> None:
    empty = asked(work="record", text="")
    assert (empty["problem"], empty["record"]) == ("", {**record(), "name": ""})
    got = asked(work="record", text=json.dumps(record(attempt(0))), imported=json.dumps(ANA))
    in_order = sorted(ANA["attempts"], key=lambda one: one["at"])
    assert (got["problem"], got["new"]) == ("", 7)
    assert got["record"] == {**ANA, "attempts": in_order}
    assert [one["state"] for one in got["skills"]] == ["signed off", "not yet"]


def test_a_file_of_somebody_is_not_put_together_with_what_nobody_has_signed() -> None:
    file = json.dumps(record(attempt(1)))
    unsigned = asked(work="record", text=json.dumps(record(attempt(2), name="")), imported=file)
    assert unsigned["record"] is None
    assert unsigned["problem"].startswith(
        "The file is the record of “Ana Bee”, and the one here has no name yet."
    )
    for text in ("", json.dumps(record(name="")), json.dumps(record(attempt(2)))):
        got = asked(work="record", text=text, imported=file)
        assert got["record"]["name"] == "Ana Bee"


def test_pages_get_a_sentence_and_no_record_for_what_cannot_be_taken() -> None:
    newer = json.dumps({**ANA, "version": 2})
    said = (
        "The file is of a newer edition of the handbook: it is version 2 of the record, and this "
        "edition knows version 1. Open the newest edition first."
    )
    nothing = {"record": None, "new": 0, "skills": []}
    assert asked(work="record", text="", imported=newer) == {**nothing, "problem": said}
    assert asked(work="record", text=newer) == {
        **nothing, "problem": f"The record in this browser: {said}",
    }  # fmt: skip
    assert asked(work="remember", text=newer, items=[], seed="") == {
        "problem": f"The record in this browser: {said}"
    }


def test_pages_get_what_is_due() -> None:
    items = [{"id": "dose", "family": "settings", "share": 0}]
    got = asked(work="remember", text=json.dumps(record(attempt(0))), items=items, seed="today")
    assert got["problem"] == ""
    assert got["items"] == [{"id": "dose", "new": False, "unsafe": False, "over": 27}]


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"observer": " Ana  BEE"}, "Nobody signs off their own work. Write the name of the person "
         "who watched."),
        ({"observer": ""}, "The observer is empty."),
        ({"system": " "}, "The system is empty."),
        ({"day": ""}, "What was seen has no day that can be read, such as 2026-11-26."),
        ({"day": day(31)}, "The day lies in the future. Write the day it was seen."),
        ({"level": None}, "What was seen has a level that is not one of 0 to 4."),
        ({"system": "3 Gannet Lane", "day": day(4)}, "The record holds this observation already."),
    ],
)  # fmt: skip
def test_an_observation_that_cannot_be_added(change: dict[str, Any], sentence: str) -> None:
    observation = {**seen(20, "2 Quay"), **change}
    got = asked(work="observe", text=json.dumps(ANA), observation=observation)
    assert (got["problem"], got["record"]) == (sentence, None)


def test_an_observation_is_added() -> None:
    got = asked(work="observe", text="", observation=seen(20, " 2  Quay "))
    assert got["problem"] == ""
    assert got["record"]["observed"] == [seen(20, "2 Quay")]
    assert got["skills"][0]["level"] == 3
