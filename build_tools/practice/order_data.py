"""An exercise that orders steps as plain data, and what is wrong with what it names."""

from __future__ import annotations

import re
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.page_models import Procedure
from build_tools.content.practice_models import ORDERED, Exercise, Taken
from build_tools.content.problems import expected, shortened
from build_tools.content.values import Values
from build_tools.practice.number_data import Report

#: A link of Markdown, whose words stay in the step.
_LINK = re.compile(r"\[([^\]]*)\]\([^)]*\)")


class OrderData:
    """Makes the plain data of one exercise; `report` then has every problem."""

    def __init__(self, entry: Entry[Exercise], values: Values) -> None:
        self.report: Report = []
        self._entry = entry
        self._values = values

    def data(self) -> dict[str, Any]:
        """Return the steps in the procedure's order, and the pairs."""
        content = self._entry.content
        procedure = self._values.handbook.procedures.get(content.procedure)
        if procedure is None:  # it failed to load, which is told there
            return {"items": [], "pairs": []}
        if (count := len(content.take)) not in ORDERED:
            said = f"the exercise takes {count} steps (expected {ORDERED[0]} to {ORDERED[-1]})"
            self.report.append((("take",), said))
        placed = [self._item(place, one, procedure) for place, one in enumerate(content.take)]
        found = sorted(one for one in placed if one is not None)
        names = [one.name for one in content.take]
        self._pairs(names, [name for _, name, _ in found])
        return {
            "items": [{"name": name, "text": text} for _, name, text in found],
            "pairs": [
                {
                    "first": one.first,
                    "then": one.then,
                    "safety": one.safety,
                    "why": self._filled(self._entry, ("pairs", place, "why"), one.why),
                }
                for place, one in enumerate(content.pairs)
            ],
        }

    def _filled(self, entry: Entry[Any], path: tuple[str | int, ...], text: str) -> str:
        return " ".join(self._values.fill(entry.passage(path, text)).split())

    def _item(
        self, place: int, taken: Taken, procedure: Entry[Procedure]
    ) -> tuple[int, str, str] | None:
        """Return the place, name and text of a step of the procedure."""
        texts = [" ".join(step.do.split()) for step in procedure.content.steps]
        wanted = " ".join(taken.begins.split())
        found = [at for at, text in enumerate(texts) if text.startswith(wanted)]
        path = ("take", place, "begins")
        title = f'of the procedure "{procedure.id}"'
        if len(found) == 1:
            at = found[0]
            text = self._filled(procedure, ("steps", at, "do"), procedure.content.steps[at].do)
            return at, taken.name, _LINK.sub(r"\1", text)
        if found:
            said = f'{len(found)} steps {title} begin with "{shortened(wanted)}" (expected one)'
        else:
            said = f'no step {title} begins with "{shortened(wanted)}" {expected(wanted, texts)}'
        self.report.append((path, said))
        return None

    def _pairs(self, names: list[str], ordered: list[str]) -> None:
        for place, name in enumerate(names):
            if names.index(name) != place:
                said = f'two steps have the name "{shortened(name)}" (expected each once)'
                self.report.append((("take", place, "name"), said))
        for place, pair in enumerate(self._entry.content.pairs):
            known = True
            for key, name in (("first", pair.first), ("then", pair.then)):
                if name not in names:
                    known = False
                    said = f'no step is taken as "{shortened(name)}" {expected(name, names)}'
                    self.report.append((("pairs", place, key), said))
            if known and {pair.first, pair.then} <= set(ordered):
                if ordered.index(pair.first) >= ordered.index(pair.then):
                    said = (
                        f'"{pair.then}" does not come after "{pair.first}" in the procedure '
                        "(expected a pair that the procedure keeps)"
                    )
                    self.report.append((("pairs", place), said))
