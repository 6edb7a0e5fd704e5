"""Every exercise as plain data for `calculators.practice`, with its texts filled."""

from __future__ import annotations

from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.practice_models import Exercise
from build_tools.content.values import Values
from build_tools.practice.evidence_data import EvidenceData
from build_tools.practice.number_data import NumberData, Report
from build_tools.practice.order_data import OrderData


def exercise_data(entry: Entry[Exercise], values: Values) -> tuple[dict[str, Any], Report]:
    """Return an exercise as plain data, and what is wrong with it; the data is then of no use."""
    content = entry.content
    made: dict[str, Any] = {
        "id": entry.id,
        "kind": content.kind,
        "title": _filled(entry, values, ("title",), content.title),
        "skill": content.skill,
        "family": content.family,
        "written_in": values.handbook.own_units,
        "story": _filled(entry, values, ("story",), content.story),
    }
    special = _KINDS[content.kind](entry, values)
    return {**made, **special.data()}, special.report


def _filled(entry: Entry[Any], values: Values, path: tuple[str | int, ...], text: str) -> str:
    return " ".join(values.fill(entry.passage(path, text)).split())


_KINDS = {
    "number": NumberData,
    "pair": NumberData,
    "settings": NumberData,
    "order": OrderData,
    "evidence": EvidenceData,
}
