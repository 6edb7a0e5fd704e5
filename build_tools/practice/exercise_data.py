"""Every exercise as plain data for `calculators.practice`, with its texts filled."""

from __future__ import annotations

from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.practice_models import Exercise
from build_tools.content.values import Values
from build_tools.practice.evidence_data import EvidenceData
from build_tools.practice.number_data import NumberData, Report
from build_tools.practice.order_data import OrderData
from build_tools.practice.printed import printed
from calculators.practice.mistakes import mistakes_in


def exercise_data(entry: Entry[Exercise], values: Values) -> tuple[dict[str, Any], Report]:
    """Return an exercise as plain data, and what is wrong with it; the data is then of no use.

    One of the library that another shop draws on tells no mistake that comes too close to another
    number with this shop's values.
    """
    content = entry.content
    made: dict[str, Any] = {
        "id": entry.id,
        "kind": content.kind,
        "title": _filled(entry, values, ("title",), content.title),
        "skill": content.skill,
        "family": content.family,
        "story": _filled(entry, values, ("story",), content.story),
    }
    special = _KINDS[content.kind](entry, values)
    data = {**made, **special.data()}
    if data.get("steps") and not special.report and values.handbook.is_shipped(entry):
        units = values.handbook.units
        clear = values.origins.made_from(data, lambda plain: _clear_mistakes(plain, units))
        data |= {} if clear is None else {"mistakes": clear}
    return data, special.report


def _clear_mistakes(data: dict[str, Any], units: str) -> list[str] | None:
    """Return as many mistakes as an exercise can be posed with, or None where all of its own do."""
    if printed(data, units):
        return None
    clear: list[str] = []
    for mistake in mistakes_in(data):
        if printed({**data, "mistakes": [*clear, mistake]}, units):
            clear.append(mistake)
    return clear


def _filled(entry: Entry[Any], values: Values, path: tuple[str | int, ...], text: str) -> str:
    return " ".join(values.fill(entry.passage(path, text)).split())


_KINDS = {
    "number": NumberData,
    "pair": NumberData,
    "settings": NumberData,
    "order": OrderData,
    "evidence": EvidenceData,
}
