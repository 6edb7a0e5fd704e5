"""Numbers read at a check, and the result that follows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.diagnosis.numbers import NUMBERS, TOO_CLOSE, read

SHOWN = [
    ("brine-level", {"height": "14 in", "expected": "8 in"}, "high"),
    ("brine-level", {"height": "20 cm", "expected": "8 in"}, "expected"),
    ("raw-hardness", {"raw": "25", "setting": "20"}, "higher"),
    ("raw-hardness", {"raw": "342 mg/L", "setting": "20 gpg"}, "matches"),
    ("cold-and-hot-pair", {"cold": "0.5", "hot": "12", "raw": "20"}, "hot-harder"),
    ("cold-and-hot-pair", {"cold": "19", "hot": "20", "raw": "20"}, "both-raw"),
    ("clock-reading", {"control": "9:10 am", "phone": "2:40 pm"}, "hours-out"),
    ("clock-reading", {"control": "2:40 am", "phone": "2:30 pm"}, "half-day-out"),
    ("clock-reading", {"control": "23:50", "phone": "0:10"}, "right"),
    ("backwash-flow", {"caught": "2.4 gal", "time": "60 s", "rating": "2.4 gpm"}, "in-band"),
    ("backwash-flow", {"caught": "0", "time": "60 s", "rating": "2.4 gpm"}, "none"),
    ("brine-draw", {"flow": "0.1 gpm", "rating": "0.25 gpm"}, "slow"),
    ("refill-measured", {"came": "1.5 gal", "time": "6 min", "rating": "0.5 gpm"}, "low"),
    ("leakage-slow-and-fast", {"slow": "0.5", "fast": "4", "raw": "20"}, "hard-fast"),
    ("meter-against-bucket", {"drawn": "5 gal", "counted": "0"}, "zero"),
    ("meter-against-bucket", {"drawn": "20 gal", "counted": "20"}, "agrees"),
    ("supply-voltage", {"measured": "18", "rated": "24"}, "low-or-none"),
    ("supply-pressure", {"running": "20 psi"}, "low"),
    ("brine-hydrometer", {"gravity": "1.2"}, "strong"),
    ("brine-hydrometer", {"gravity": "1.095"}, "weak"),
]


@pytest.mark.parametrize(("check", "texts", "result"), SHOWN)
def test_numbers_as_typed_show_a_result(check: str, texts: dict[str, str], result: str) -> None:
    assert read(check, texts, "us") == {"result": result, "problems": {}, "sentence": ""}


def test_every_check_with_numbers_is_among_them() -> None:
    assert {check for check, _, _ in SHOWN} == set(NUMBERS)


def test_what_is_no_number_is_told_beside_its_field() -> None:
    told = read("brine-level", {"height": "eight", "expected": ""}, "us")
    assert told["result"] is None
    assert told["problems"] == {
        "height": "“eight” does not start with a number. Write one, such as 12 or 3/4.",
        "expected": "Height expected now is empty. Write a length, such as 8\u00a0in.",
    }


def test_numbers_too_close_to_a_line_show_nothing() -> None:
    texts = {"drawn": "1 gal", "counted": "0.9 gal"}
    assert read("meter-against-bucket", texts, "us") == {
        "result": None,
        "problems": {},
        "sentence": TOO_CLOSE,
    }


@given(st.sampled_from(sorted(NUMBERS)), st.data())
def test_whatever_is_typed_gives_a_result_or_a_reason(check: str, data: st.DataObject) -> None:
    hostile = st.one_of(st.text(max_size=12), st.floats().map(str), st.integers(-5, 300).map(str))
    texts = {one.name: data.draw(hostile) for one in NUMBERS[check].inputs}
    told = read(check, texts, data.draw(st.sampled_from(["us", "metric"])))
    assert bool(told["result"]) + bool(told["problems"]) + bool(told["sentence"]) == 1
