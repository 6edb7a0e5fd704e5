"""An exercise that reads evidence as plain data, and what is wrong with what it names."""

from __future__ import annotations

from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.practice_models import Exercise
from build_tools.content.values import Values
from build_tools.practice.number_data import Report


class EvidenceData:
    """Makes the plain data of one exercise; `report` then has every problem."""

    def __init__(self, entry: Entry[Exercise], values: Values) -> None:
        self.report: Report = []
        self._content = entry.content
        self._faults = values.handbook.faults

    def data(self) -> dict[str, Any]:
        """Return the faults of which one is hidden, and the control of the home."""
        for place, name in enumerate(self._content.faults):
            fault = self._faults.get(name)
            if fault is not None and not fault.content.simulation:
                said = f'the fault "{name}" is not simulated (expected one with "simulation")'
                self.report.append((("faults", place), said))
        return {"faults": self._content.faults, "control": self._content.control}
