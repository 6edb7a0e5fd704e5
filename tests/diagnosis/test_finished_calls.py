"""The shop's record of calls: what is read, and every line that is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.diagnosis.finished_calls import FILE, Record, read_record
from calculators.diagnosis.shares import updated_shares

HEADER = "date,complaint,cause,minutes,note\n"
GOOD = "2026-03-14,salty,salt-bridge,35,\n"
COMPLAINTS, FAULTS = ["hard", "salty"], ["salt-bridge", "no-power"]


def read(folder: Path, text: str) -> Record:
    """Read a record of this text."""
    (folder / FILE).write_text(text, "utf-8")
    return read_record(folder / FILE, f"docs_src/{FILE}", COMPLAINTS, FAULTS)


def test_calls_are_counted_by_their_cause(tmp_path: Path) -> None:
    record = read(
        tmp_path, f'{HEADER}{GOOD}2026-03-15, hard, no-power, 7.5,"a switch, by the door"\n'
    )

    assert record.problems == []
    assert record.counts == {"salt-bridge": 1, "no-power": 1}
    assert record.calls[1].note == "a switch, by the door"
    assert record.calls[1].minutes == 7.5


def test_no_file_and_no_calls_count_nothing(tmp_path: Path) -> None:
    nothing = read_record(tmp_path / FILE, FILE, COMPLAINTS, FAULTS)

    assert (nothing.calls, nothing.problems) == ([], [])
    assert read(tmp_path, f"{HEADER}\n").problems == []


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (
            "14.3.2026,salty,salt-bridge,35,",
            'the date "14.3.2026" is no day (expected one such as 2026-03-14)',
        ),
        (
            "20260314,salty,salt-bridge,35,",
            'the date "20260314" is no day (expected one such as 2026-03-14)',
        ),
        (
            "2026-03-14,salt,salt-bridge,35,",
            'there is no complaint "salt" (expected one of: hard, salty; nearest: "salty")',
        ),
        (
            "2026-03-14,salty,salt-bride,35,",
            (
                'there is no fault "salt-bride" (expected one of: salt-bridge, no-power; nearest: '
                '"salt-bridge")'
            ),
        ),
        (
            "2026-03-14,salty,salt-bridge,35 min,",
            'the minutes read "35 min" (expected a number from 0 to 1440, without a unit)',
        ),
        (
            "2026-03-14,salty,salt-bridge,nan,",
            'the minutes read "nan" (expected a number from 0 to 1440, without a unit)',
        ),
        (
            "2026-03-14,salty,salt-bridge",
            "this line has 3 cells (expected 5: date,complaint,cause,minutes,note)",
        ),
        (
            '2026-03-14,salty,"salt"-bridge,35,',
            (
                "this is no line of a table: ',' expected after '\"' "
                "(expected cells with commas between)"
            ),
        ),
    ],
)
def test_every_bad_line_is_named(tmp_path: Path, row: str, said: str) -> None:
    record = read(tmp_path, f"{HEADER}{GOOD}{row}\n{GOOD}")

    assert [str(one) for one in record.problems] == [f"docs_src/{FILE}:3: {said}"]
    assert record.counts == {"salt-bridge": 2}


def test_all_problems_of_a_line_are_told_at_once(tmp_path: Path) -> None:
    assert len(read(tmp_path, f"{HEADER}today,odd,odd,odd,\n").problems) == 4


def test_another_header_is_refused(tmp_path: Path) -> None:
    record = read(tmp_path, f"date,cause\n{GOOD}")

    assert [str(one) for one in record.problems] == [
        (
            f'docs_src/{FILE}:1: the first line reads "date,cause" '
            '(expected "date,complaint,cause,minutes,note")'
        )
    ]
    assert record.calls == []


def test_counted_calls_move_the_judged_shares() -> None:
    """Ten calls in a row of a fault of 1 %: (200 × 0.01 + 10) / 210."""
    shares = updated_shares({"rare": 1, "common": 99}, {"rare": 10})

    assert shares["rare"] == pytest.approx(12 / 210)
    assert sum(shares.values()) == pytest.approx(1)
    assert updated_shares({"rare": 1, "common": 99}, {}) == {"rare": 0.01, "common": 0.99}
