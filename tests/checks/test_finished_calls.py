"""Lines of the shop's record that cannot be counted are told."""

from __future__ import annotations

from pathlib import Path

from tests.content.small_shop import FILES, problems_of

HEADER = "date,complaint,cause,minutes,note\n"


def test_a_sound_record_is_silent(tmp_path: Path) -> None:
    files = {**FILES, "finished_calls.csv": f"{HEADER}2026-03-14,hard,no-salt,20,\n"}

    assert problems_of(tmp_path, files) == []


def test_a_line_that_names_what_is_not_there_is_told(tmp_path: Path) -> None:
    files = {**FILES, "finished_calls.csv": f"{HEADER}2026-03-14,hard,no-slat,20,\n"}

    assert problems_of(tmp_path, files) == [
        'docs_src/finished_calls.csv:2: there is no fault "no-slat" '
        '(expected one of: no-salt, salt-bridge; nearest: "no-salt")'
    ]
