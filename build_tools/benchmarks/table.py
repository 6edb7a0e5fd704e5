"""What was measured, as one table or as plain data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from statistics import median
from typing import Any

# What everything is measured against.
PLAIN = "plain"

WIDTH_OF_SETTING, WIDTH_OF_VALUE = 34, 19


@dataclass(frozen=True)
class Row:
    """One thing measured in one setting: a value for the plain way and for each of ours."""

    subject: str
    setting: str
    unit: str
    values: Mapping[str, float]

    @classmethod
    def of_medians(
        cls, subject: str, setting: str, unit: str, rounds: Iterable[Mapping[str, float]]
    ) -> Row:
        """Return the medians over all rounds."""
        rounds = list(rounds)
        values = {name: median(one[name] for one in rounds) for name in rounds[0]}
        return cls(subject, setting, unit, values)

    def ratio(self, name: str) -> float:
        """Return how much of the plain way's time or bytes a way takes."""
        return self.values[name] / self.values[PLAIN]

    def as_data(self) -> dict[str, Any]:
        """Return what JSON can hold."""
        return {
            "subject": self.subject,
            "setting": self.setting,
            "unit": self.unit,
            "values": {name: round(value, 1) for name, value in self.values.items()},
            "ratios": {name: round(self.ratio(name), 3) for name in self._ours()},
        }

    def as_text(self) -> str:
        """Return a line of the table: each of our ways with its part of the plain one."""
        cells = [f"{self.values[PLAIN]:,.0f}"]
        cells += [f"{self.values[name]:,.0f} {self.ratio(name):>7.1%}" for name in self._ours()]
        return _line(f"  {self.setting}", cells)

    def _ours(self) -> list[str]:
        return [name for name in self.values if name != PLAIN]


def table(rows: Iterable[Row]) -> str:
    """Return all rows, under a heading for each subject with the names of the ways."""
    lines: list[str] = []
    heading = ""
    for row in rows:
        names = [PLAIN, *(f"{name}, of plain" for name in row.values if name != PLAIN)]
        if heading != (heading := _line(f"{row.subject}, {row.unit}", names)):
            lines += ["", heading] if lines else [heading]
        lines.append(row.as_text())
    return "\n".join(lines)


def _line(first: str, cells: Iterable[str]) -> str:
    return first.ljust(WIDTH_OF_SETTING) + "".join(cell.rjust(WIDTH_OF_VALUE) for cell in cells)
