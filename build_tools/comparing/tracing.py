"""Marks each number with what it rests on: see marks.py, and content/origins.py for when.

Nothing is worked out again for it: the results are those that the pages have, only marked.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from build_tools.comparing.causes import Causes
from build_tools.comparing.marks import Marks, unmarked
from build_tools.content.entries import Entry
from build_tools.content.fields import Format, Measure
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.origins import Origins
from build_tools.content.showing import Shown, typed

#: What stands for a figure that a sheet leaves out rests on these.
INSTEAD = {"bed_depth": ("resin_volume", "tank_diameter"), "short_title": ("title",)}
#: What of a picture is text: what it says in words, and what is written in it.
_SPOKEN = re.compile(r'(?<=aria-label=")[^"]*(?=")|(?<=>)[^<>]+(?=<)')


class _Numbered(float):
    """A number of a result that, written out for another calculator, keeps its mark."""

    mark: str

    def __repr__(self) -> str:
        return f"{float.__repr__(self)}{self.mark}"


class Tracing(Origins):
    """Marks the values of a handbook; `causes` tells what the marks stand for."""

    def __init__(self, handbook: Handbook) -> None:
        self.marks = Marks()
        self.causes = Causes(handbook)
        self._results: dict[tuple[Any, ...], dict[str, Any]] = {}
        self._measures = {id(one): (one, cause) for one, cause in self.causes.measures()}

    def of_translation(self, handbook: Handbook) -> Tracing:
        """Return what traces a translation, with the same marks and causes."""
        made = Tracing(handbook)
        made.marks, made.causes.found = self.marks, self.causes.found
        return made

    def measure(self, measure: Measure, shown: Shown) -> Shown:
        """Return a quantity, marked where it is one of a fact or of the shop."""
        _, cause = self._measures.get(id(measure), (None, ""))
        return self._shown(shown, [cause]) if cause else shown

    def fact(self, shown: Shown) -> Shown:
        """Return a fact's value or range, both as it is shown and for calculators."""
        shown.typed = self.marks.for_calculator(shown.typed, self.marks.of(shown))
        return shown

    def shop(self, content: Format, name: str, value: Any) -> Shown:
        """Return a value of the shop, marked."""
        return self._shown(value, [self.causes.shop_field(content, name)])

    def unit_figure(self, unit: Entry[Equipment], name: str, value: Any) -> Shown:
        """Return a figure of a unit's sheet, marked."""
        names = INSTEAD.get(name, ()) if getattr(unit.content, name) is None else (name,)
        return self._shown(value, [self.causes.unit(unit, one) for one in names])

    def stated(self, entry: Entry[Any], name: str, text: Any) -> Any:
        """Return what an entry states, marked; what comes from elsewhere has its marks."""
        if not isinstance(text, str) or self.marks.of(text):
            return text
        return self.marks.for_calculator(text, [self.causes.stated(entry, name, text)])

    def plain(self, data: Any) -> Any:
        """Return texts without marks."""
        return unmarked(data)

    def result(
        self, name: str, inputs: Mapping[str, str], units: str, found: dict[str, Any]
    ) -> dict[str, Any]:
        """Return the result with all its numbers marked; an input with its own causes alone."""
        key = name, tuple(inputs.items()), units
        if key not in self._results:
            self._results[key] = self._marked(name, inputs, found)
        return self._results[key]

    def _marked(
        self, name: str, inputs: Mapping[str, str], found: dict[str, Any]
    ) -> dict[str, Any]:
        formula = {self.causes.formula(name)}
        every = formula | self.marks.of(inputs)
        mark = self.marks.mark(every)
        return {
            "workings": self.marks.on(found["workings"], every),
            "warnings": [self.marks.on(one, every) + mark for one in found["warnings"]],
            "calculator": found["calculator"],
            "problems": self.marks.on(found["problems"], every),
            "inputs": {
                one: understood
                if "choice" in understood
                else {**understood, "shown": self.marks.on(understood["shown"], causes)}
                for one, understood in found["inputs"].items()
                for causes in [self.marks.of(inputs.get(one, "")) or formula]
            },
            "values": {
                one: self._value(value, every, mark) for one, value in found["values"].items()
            },
        }

    def _value(self, value: dict[str, Any], causes: Iterable[str], mark: str) -> dict[str, Any]:
        made = {name: self.marks.on(one, causes) for name, one in value.items() if name != "unit"}
        if "unit" in value:
            number = _Numbered(value["number"])
            number.mark = mark
            made |= {"unit": value["unit"], "number": number}
        else:
            made["shown"] = self.marks.for_calculator(value["shown"], causes)
        return made

    def picture(self, name: str, inputs: Mapping[str, str], svg: str) -> str:
        """Return a calculator's picture with the numbers of its words marked."""
        return self._drawn(svg, {self.causes.formula(name), *self.marks.of(inputs)})

    def drawing(self, given: Mapping[str, str], svg: str) -> str:
        """Return a drawing with the numbers of its words marked."""
        return self._drawn(svg, {self.causes.drawings(), *self.marks.of(given)})

    def _drawn(self, svg: str, causes: Iterable[str]) -> str:
        return _SPOKEN.sub(lambda match: self.marks.on(match[0], causes), svg)

    def because(self, text: str, *of: Any) -> str:
        """Return a text that rests on what other values rest on."""
        return self.marks.on(text, self.marks.of([str(one) for one in of]))

    def once(self, sentences: Iterable[str]) -> list[str]:
        """Return sentences without those that read as an earlier one."""
        return list({unmarked(one): one for one in sentences}.values())

    def made_from(self, data: dict[str, Any], make: Callable[[dict[str, Any]], Any]) -> Any:
        """Return what is made of an exercise; all of it rests on all of the exercise."""
        causes = {self.causes.exercise(data["id"]), *self.marks.of(data)}
        causes |= {self.causes.formula(step["calculate"]) for step in data.get("steps", ())}
        return self.marks.on(make(unmarked(data)), causes)

    def _shown(self, value: Any, causes: list[str]) -> Shown:
        made = Shown.of(
            self.marks.on(str(value), causes), self.marks.for_calculator(typed(value), causes)
        )
        for end in ("low", "high"):
            if hasattr(value, end):
                setattr(made, end, getattr(value, end))
        return made
