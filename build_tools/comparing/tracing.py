"""Values that mark each number with what it rests on: see marks.py.

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
from build_tools.content.models import Equipment, Fact
from build_tools.content.unit_figures import WORKED_OUT
from build_tools.content.values import Shown, Values
from calculators.declare import Calculator

#: What stands for a figure that a sheet leaves out rests on these.
INSTEAD = {"bed_depth": ("resin_volume", "tank_diameter"), "short_title": ("title",)}
#: What of a picture is text: what it says in words, and what is written in it.
_SPOKEN = re.compile(r'(?<=aria-label=")[^"]*(?=")|(?<=>)[^<>]+(?=<)')


class _Numbered(float):
    """A number of a result that, written out for another calculator, keeps its mark."""

    mark: str

    def __repr__(self) -> str:
        return f"{float.__repr__(self)}{self.mark}"


class TracedValues(Values):
    """Values whose numbers bear marks; `causes` tells what the marks stand for."""

    def __init__(self, handbook: Handbook) -> None:
        super().__init__(handbook)
        self.marks = Marks()
        self.causes = Causes(handbook)
        self._results: dict[tuple[Any, ...], dict[str, Any]] = {}
        self._origins = {id(one): (one, cause) for one, cause in self.causes.measures()}

    def of_translation(self, handbook: Handbook, said: Callable[[str], str]) -> Values:
        """Return traced values of a translation, with the same marks and causes."""
        made = super().of_translation(handbook, said)
        made.marks, made.causes.found = self.marks, self.causes.found
        return made

    def measure(self, measure: Measure) -> Shown:
        """Return a quantity, marked where it is one of a fact or of the shop."""
        shown = super().measure(measure)
        _, cause = self._origins.get(id(measure), (None, ""))
        return self._shown(shown, [cause]) if cause else shown

    def fact(self, fact: Fact) -> Shown:
        """Return a fact's value or range, both as it is shown and for calculators."""
        made = super().fact(fact)
        made.typed = self.marks.for_calculator(made.typed, self.marks.of(made))
        return made

    def _shop_value(self, name: str) -> Any:
        value = super()._shop_value(name)
        return value if isinstance(value, Shown) else self._shown(value, [self.causes.shop(name)])

    def _field(self, content: Format, name: str) -> Any:
        value = super()._field(content, name)
        if isinstance(value, Shown):
            return value
        return self._shown(value, [self.causes.shop_field(content, name)])

    def unit_figure(self, unit: Entry[Equipment], name: str) -> Any:
        """Return a figure of a unit; one that is worked out has the marks of its result."""
        value = super().unit_figure(unit, name)
        if value is None or name in WORKED_OUT:
            return value
        names = INSTEAD.get(name, ()) if getattr(unit.content, name) is None else (name,)
        return self._shown(value, [self.causes.unit(unit, one) for one in names])

    def stated(self, entry: Entry[Any], name: str, text: Any) -> Any:
        """Return what an entry states, marked; what comes from elsewhere has its marks."""
        if not isinstance(text, str) or self.marks.of(text):
            return text
        return self.marks.for_calculator(text, [self.causes.stated(entry, name, text)])

    def because(self, text: str, *of: Any) -> str:
        """Return a text that rests on what other values rest on."""
        return self.marks.on(text, self.marks.of([str(one) for one in of]))

    def made_from(self, data: dict[str, Any], make: Callable[[dict[str, Any]], Any]) -> Any:
        """Return what is made of an exercise; all of it rests on all of the exercise."""
        causes = {self.causes.exercise(data["id"]), *self.marks.of(data)}
        causes |= {self.causes.formula(step["calculate"]) for step in data.get("steps", ())}
        return self.marks.on(make(unmarked(data)), causes)

    def result(self, name: str, given: Mapping[str, str]) -> dict[str, Any]:
        """Return the result with all its numbers marked; an input with its own causes alone."""
        key = name, super()._inputs(name, given), self.units
        if key not in self._results:
            self._results[key] = self._marked(name, dict(key[1]), super().result(name, given))
        return self._results[key]

    def _marked(self, name: str, inputs: dict[str, str], found: dict[str, Any]) -> dict[str, Any]:
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

    def form_figures(self, calculator: Calculator, unit: Entry[Equipment]) -> dict[str, str]:
        """Return what a unit fills into a form; a script reads it, and nobody sees it before."""
        return unmarked(super().form_figures(calculator, unit))

    def once(self, sentences: Iterable[str]) -> list[str]:
        """Return sentences without those that read as an earlier one."""
        return list({unmarked(one): one for one in sentences}.values())

    def picture(self, name: str, given: Mapping[str, str]) -> str:
        """Return a calculator's picture with the numbers of its words marked."""
        inputs = dict(super()._inputs(name, given))
        causes = {self.causes.formula(name), *self.marks.of(inputs)}
        return self._drawn(super().picture(name, given), causes)

    def drawing(self, name: str, given: Mapping[str, str]) -> tuple[str | None, dict[str, str]]:
        """Return a drawing with the numbers of its words marked."""
        svg, problems = super().drawing(name, unmarked(dict(given)))
        return svg and self._drawn(svg, {self.causes.drawings(), *self.marks.of(given)}), problems

    def _inputs(self, name: str, given: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
        return tuple((one, unmarked(text)) for one, text in super()._inputs(name, given))

    def _drawn(self, svg: str, causes: Iterable[str]) -> str:
        return _SPOKEN.sub(lambda match: self.marks.on(match[0], causes), svg)

    def _value(self, value: dict[str, Any], causes: Iterable[str], mark: str) -> dict[str, Any]:
        made = {name: self.marks.on(one, causes) for name, one in value.items() if name != "unit"}
        if "unit" in value:
            number = _Numbered(value["number"])
            number.mark = mark
            made |= {"unit": value["unit"], "number": number}
        else:
            made["shown"] = self.marks.for_calculator(value["shown"], causes)
        return made

    def _shown(self, value: Any, causes: list[str]) -> Shown:
        made = Shown.of(
            self.marks.on(str(value), causes),
            self.marks.for_calculator(
                value.typed if isinstance(value, Shown) else str(value), causes
            ),
        )
        for end in ("low", "high"):
            if hasattr(value, end):
                setattr(made, end, getattr(value, end))
        return made
