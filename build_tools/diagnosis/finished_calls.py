"""The shop's own record of finished calls: one line a call, read so that none is lost in silence.

The file is a table in CSV with the header `date,complaint,cause,minutes,note`: the day of the
call as 2026-03-14, what the customer said (a result of the check "complaint"), the fault that was
found, the minutes on site, and a note that nothing is read from.
"""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from build_tools.content.problems import Problem, choosing, shortened
from build_tools.content.yaml_file import read_text

FILE = "finished_calls.csv"
HEADER = ("date", "complaint", "cause", "minutes", "note")
#: The longest call that is believed, in minutes.
LONGEST = 24 * 60


@dataclass(frozen=True)
class FinishedCall:
    """One line of the record."""

    day: date
    complaint: str
    cause: str
    minutes: float
    note: str


@dataclass
class Record:
    """All calls that could be read, and what is wrong with the other lines."""

    calls: list[FinishedCall] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    @property
    def counts(self) -> Counter[str]:
        """How often each fault was the cause."""
        return Counter(one.cause for one in self.calls)


def read_record(path: Path, file: str, complaints: Iterable[str], faults: Iterable[str]) -> Record:
    """Read a record; `file` is how messages call it. No file is an empty record."""
    record = Record()
    if not path.exists():
        return record
    text, record.problems = read_text(path, file)
    if text is None:
        return record
    complaints, faults = list(complaints), list(faults)
    lines = _lines(text, file, record.problems)
    _, header = next(lines, (1, []))
    if tuple(header) != HEADER:
        said = f'the first line reads "{shortened(",".join(header))}"'
        record.problems.append(Problem(file, 1, f'{said} (expected "{",".join(HEADER)}")'))
        return record
    for line, row in lines:
        wrong = [*_wrong(row, complaints, faults)]
        record.problems += [Problem(file, line, said) for said in wrong]
        if row and not wrong:
            day, complaint, cause, minutes, note = (cell.strip() for cell in row)
            record.calls.append(
                FinishedCall(date.fromisoformat(day), complaint, cause, float(minutes), note)
            )
    return record


def _lines(text: str, file: str, problems: list[Problem]) -> Iterator[tuple[int, list[str]]]:
    """Yield each line's number and cells; what is no line of a table becomes a problem."""
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    while True:
        try:
            yield rows.line_num + 1, next(rows)
        except StopIteration:
            return
        except csv.Error as error:
            said = f"this is no line of a table: {error} (expected cells with commas between)"
            problems.append(Problem(file, rows.line_num, said))


def _wrong(row: list[str], complaints: list[str], faults: list[str]) -> Iterator[str]:
    if not row:
        return
    if len(row) != len(HEADER):
        cells = "1 cell" if len(row) == 1 else f"{len(row)} cells"
        yield f"this line has {cells} (expected {len(HEADER)}: {','.join(HEADER)})"
        return
    day, complaint, cause, minutes, _ = (cell.strip() for cell in row)
    if not _is_day(day):
        yield f'the date "{shortened(day)}" is no day (expected one such as 2026-03-14)'
    if complaint not in complaints:
        yield choosing(f'there is no complaint "{shortened(complaint)}"', complaint, complaints)
    if cause not in faults:
        yield choosing(f'there is no fault "{shortened(cause)}"', cause, faults)
    if not _is_minutes(minutes):
        yield (
            f'the minutes read "{shortened(minutes)}" '
            f"(expected a number from 0 to {LONGEST}, without a unit)"
        )


def _is_day(text: str) -> bool:
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _is_minutes(text: str) -> bool:
    try:
        return 0 <= float(text) <= LONGEST
    except ValueError:
        return False
