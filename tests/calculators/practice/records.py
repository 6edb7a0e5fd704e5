"""Records for tests: made by hand in few words, and drawn by hypothesis."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from hypothesis import strategies as st

from calculators.practice.record import identity, new_record

FIRST = date(2026, 3, 2)


def day(number: int) -> str:
    """Return the day that is some days after the first one."""
    return (FIRST + timedelta(days=number)).isoformat()


def attempt(number: int, item: str = "dose", *, minute: int = 0, **other: Any) -> dict[str, Any]:
    """Return an answer on the day with this number: right and sure, unless told otherwise."""
    made = {
        "at": f"{day(number)}T12:{minute:02d}:00.000Z",
        "day": day(number),
        "item": item,
        "family": "settings",
        "skill": "controls",
        "right": True,
        "sure": True,
        "score": 1,
        "critical": False,
        **other,
    }
    return made if "code" in made else {"seed": "a", **made}


def call(number: int, code: str, score: float, **other: Any) -> dict[str, Any]:
    """Return a practice call."""
    named = {"item": "call: Power and clock", "family": "Power and clock", "skill": ""}
    return attempt(number, **{**named, "code": code, "score": score, **other})


def seen(number: int, system: str, level: int = 3, **other: Any) -> dict[str, Any]:
    """Return what an observer saw."""
    named = {"skill": "controls", "observer": "Marta Quill"}
    return {**named, "day": day(number), "level": level, "system": system, **other}


def record(*entries: dict[str, Any], name: str = "Ana Bee") -> dict[str, Any]:
    """Return the record that holds some answers and observations."""
    made = new_record(name)
    for one in entries:
        made["observed" if "level" in one else "attempts"].append(one)
    return made


_NUMBERS = st.integers(0, 40)
ATTEMPTS = st.builds(
    attempt,
    _NUMBERS,
    st.sampled_from(["dose", "clock", "bucket"]),
    minute=st.integers(0, 3),
    right=st.booleans(),
    sure=st.booleans(),
    critical=st.booleans(),
    score=st.sampled_from([0, 0.5, 1, 1.0]),
)
SEEN = st.builds(seen, _NUMBERS, st.sampled_from(["a street", "another"]), st.integers(0, 4))
RECORDS = st.lists(ATTEMPTS | SEEN, max_size=12, unique_by=identity).map(
    lambda entries: record(*entries)
)
