"""An exercise with numbers as plain data, and what is wrong with what it names."""

from __future__ import annotations

import re
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.fields import parse_any
from build_tools.content.practice_models import (
    LONGEST_CHAIN,
    LONGEST_SHEET,
    Aside,
    Asked,
    Exercise,
    Source,
)
from build_tools.content.problems import expected, shortened
from build_tools.content.values import Values
from build_tools.content.yaml_file import KeyPath
from calculators import CALCULATORS
from calculators.declare import Calculator, Input, InputProblem
from calculators.practice.mistakes import mistakes_in
from calculators.quantities import KINDS, QuantityError, parse, read_number, snap

#: What is wrong with an exercise: where in its file, and a sentence.
Report = list[tuple[KeyPath, str]]
#: The outputs between which an estimate of when the water changed is right.
_BETWEEN = {"hours": ["least_hours", "most_hours"], "drawn": ["least_drawn", "most_drawn"]}
_BRACED = re.compile(r"(?<!\{)\{([^{}]*)\}(?!\})")


class NumberData:
    """Makes the plain data of one exercise; `report` then has every problem."""

    def __init__(self, entry: Entry[Exercise], values: Values) -> None:
        self.report: Report = []
        self._content = entry.content
        self._values = values
        self._drawn: dict[str, dict[str, Any]] = {}
        self._outputs: list[list[str]] = []

    def data(self) -> dict[str, Any]:
        """Return what the calculators take of the exercise beside its title and story."""
        self._chain_length()
        steps = [self._step(number) for number in range(len(self._content.steps))]
        asides = {name: self._aside(name, one) for name, one in self._content.asides.items()}
        ask = [self._asked(place, one) for place, one in enumerate(self._content.ask)]
        made = {"drawn": self._drawn, "steps": steps, "asides": asides, "ask": ask}
        if self._content.mistakes is not None:
            made["mistakes"] = self._content.mistakes
        if not self.report:  # a name that is misspelled above is told once
            self._braces()
            self._mistakes(made)
        return made

    def _wrong(self, path: KeyPath, text: str) -> None:
        self.report.append((path, text))

    def _chain_length(self) -> None:
        most = LONGEST_SHEET if self._content.kind == "settings" else LONGEST_CHAIN
        if (count := len(self._content.steps)) > most:
            said = f"the exercise has {count} calculators in a row (expected at most {most})"
            self._wrong(("steps",), said)

    def _step(self, number: int) -> dict[str, Any]:
        step = self._content.steps[number]
        calculator = CALCULATORS.get(step.calculate)
        self._outputs.append([one.name for one in calculator.outputs] if calculator else [])
        if calculator is None:  # told as a name of nothing
            return {}
        names = [one.name for one in calculator.inputs]
        inputs = {}
        for name, source in step.given.items():
            path = ("steps", number, "given", name)
            one = calculator.input(name)
            if one is None:
                said = f'the calculator "{calculator.name}" has no input "{shortened(name)}"'
                self._wrong(path, f"{said} {expected(name, names)}")
            elif isinstance(source, str):
                inputs[name] = {"text": self._fixed(path, one, source)}
            else:
                inputs[name] = self._source(path, one, source, number)
        if set(step.given) <= set(names):
            self._missing(number, calculator, inputs)
        shop = self._values.shop.defaults(calculator)
        inputs |= {name: {"text": text} for name, text in shop.items() if name not in inputs}
        return {"calculate": calculator.name, "inputs": inputs}

    def _missing(self, number: int, calculator: Calculator, inputs: dict[str, Any]) -> None:
        for one in calculator.inputs:
            counts = not one.only_when or _fits(one, calculator, inputs)
            if counts and one.default is None and not one.optional and one.name not in inputs:
                said = (
                    f'"{one.name}" is given nowhere (expected a range or a text for '
                    f"“{one.label.lower()}”)"
                )
                self._wrong(("steps", number, "given"), said)

    def _fixed(self, path: KeyPath, one: Input, text: str) -> str:
        try:
            if one.kind in KINDS and one.kind != "time of day":
                parse(text, one.kind)
            one.read(text, "us")
        except (InputProblem, QuantityError) as problem:
            self._wrong(path, f'"{path[-1]}": {problem}')
        return text

    def _source(self, path: KeyPath, one: Input, source: Source, number: int) -> dict[str, Any]:
        if source.answer is not None:
            steps = [at for at in range(number) if source.answer in self._outputs[at]]
            if steps:
                return {"answer": source.answer, "step": steps[-1]}
            earlier = [name for outputs in self._outputs[:number] for name in outputs]
            said = f'no earlier step answers "{shortened(source.answer)}"'
            self._wrong((*path, "answer"), f"{said} {expected(source.answer, earlier)}")
            return {}
        if source.same is not None:
            if source.same not in self._drawn:
                said = f'nothing is drawn as "{shortened(source.same)}" before this step'
                self._wrong((*path, "same"), f"{said} {expected(source.same, self._drawn)}")
            elif self._drawn[source.same]["kind"] != one.kind:
                said = f'"{source.same}" is no {one.kind} (expected one, as "{one.name}" takes)'
                self._wrong((*path, "same"), said)
            return {"drawn": source.same}
        if one.name in self._drawn:
            said = f'"{one.name}" is drawn in an earlier step (expected "same: {one.name}")'
            self._wrong(path, said)
        if source.one_of is not None:
            self._drawn[one.name] = self._one_of(path, one, source.one_of)
        else:
            self._drawn[one.name] = self._range(path, one, source)
        return {"drawn": one.name}

    def _one_of(self, path: KeyPath, one: Input, texts: list[str]) -> dict[str, Any]:
        if one.kind == "choice":
            for place, text in enumerate(texts):
                if text not in one.choices:
                    said = f'"{shortened(text)}" is no choice of "{one.name}"'
                    self._wrong((*path, "one_of", place), f"{said} {expected(text, one.choices)}")
            return {"kind": one.kind, "unit": "", "one_of": texts}
        numbers: list[float] = []
        units: list[str] = []
        for place, text in enumerate(texts):
            at = (*path, "one_of", place)
            number, unit = self._number(at, text, one.kind, one.unit)
            if units and unit != units[0]:
                said = f'"{shortened(text)}" has another unit than the first (expected {units[0]})'
                self._wrong(at, said)
            else:
                self._in_range(at, one, number, unit)
            numbers.append(number)
            units.append(unit)
        return {"kind": one.kind, "unit": units[0], "one_of": numbers}

    def _range(self, path: KeyPath, one: Input, source: Source) -> dict[str, Any]:
        if one.kind == "choice":
            said = f'"{one.name}" is a choice (expected "one_of" with some of its choices)'
            self._wrong(path, said)
            return {"kind": one.kind, "unit": "", "one_of": list(one.choices)}
        before = len(self.report)
        made = self._spread(path, one.kind, one.unit, source)
        for key in ("from", "to") if len(self.report) == before else ():
            self._in_range((*path, key), one, made[key], made["unit"])
        return made

    def _spread(
        self, path: KeyPath, kind: str, unit: str, source: Source | Aside
    ) -> dict[str, Any]:
        """Return the ends and the step of a range as numbers of the unit that its start has."""
        low, unit = self._number((*path, "from"), source.low, kind, unit)
        high, other = self._number((*path, "to"), source.high, kind, unit)
        step, step_unit = self._step_of((*path, "step"), source.step, kind, unit)
        if {other, step_unit} != {unit}:
            self._wrong(path, f'"from", "to" and "step" have different units (expected {unit})')
        elif not low < high or not step > 0:
            said = 'the range is empty (expected "from" below "to", and a "step" above zero)'
            self._wrong(path, said)
            step = 1.0
        elif snap((high - low) / step) % 1:
            self._wrong((*path, "step"), 'the steps do not lead from "from" to "to"')
        return {"kind": kind, "unit": unit, "from": low, "to": high, "step": step or 1.0}

    def _step_of(self, path: KeyPath, text: str, kind: str, unit: str) -> tuple[float, str]:
        if kind != "time of day":
            return self._number(path, text, kind, unit)
        try:
            return parse(text, "time").to("h").number, unit
        except QuantityError as problem:
            self._wrong(path, f'"step": {problem}')
            return 1.0, unit

    def _number(self, path: KeyPath, text: str, kind: str, unit: str) -> tuple[float, str]:
        try:
            if kind in KINDS:
                read = parse(text, kind, unit if kind == "time of day" else None)
                return read.number, read.unit
            number, rest = read_number(text)
            if not rest:
                return float(number), ""
            said = f'"{shortened(text)}" has a unit (expected a number alone)'
        except QuantityError as problem:
            said = f'"{path[-1]}": {problem}'
        self._wrong(path, said)
        return 1.0, unit

    def _in_range(self, path: KeyPath, one: Input, number: float, unit: str) -> None:
        """Report a number that the calculator refuses or warns of."""
        text = f"{number!r} {unit}" if unit else repr(number)
        if one.kind == "time of day":
            return
        try:
            read = one.read(text, "us")
        except InputProblem as problem:
            self._wrong(path, f'"{one.name}": {problem.sentence}')
            return
        if warning := one.unusual_warning(read, self._values.handbook.units):
            self._wrong(path, f"not usual: {warning} (expected a range of usual numbers)")

    def _aside(self, name: str, one: Aside) -> dict[str, Any]:
        path = ("asides", name)
        if name in self._drawn:
            self._wrong(path, f'"{name}" is drawn for a calculator already (expected another name)')
        try:
            kind = parse_any(one.low).kind
        except QuantityError as problem:
            self._wrong((*path, "from"), f'"from": {problem}')
            return {}
        spread = self._spread(path, kind, parse_any(one.low).unit, one)
        self._drawn[name] = spread
        return {"label": one.what, "unit": spread["unit"]}

    def _asked(self, place: int, one: Asked) -> dict[str, Any]:
        steps = [
            at
            for at, outputs in enumerate(self._outputs)
            if one.answer in outputs and one.of in (None, self._content.steps[at].calculate)
        ]
        if not steps:
            every = [name for outputs in self._outputs for name in outputs]
            said = f'no step answers "{shortened(one.answer)}" {expected(one.answer, every)}'
            self._wrong(("ask", place, "answer"), said)
            return {}
        step = steps[-1]
        output = CALCULATORS[self._content.steps[step].calculate].output(one.answer)
        if (output.kind == "words") != bool(one.choices):
            said = (
                f'"{one.answer}" is a number (expected no "choices")'
                if one.choices
                else f'"{one.answer}" is answered in words (expected "choices" to choose from)'
            )
            self._wrong(("ask", place), said)
        made: dict[str, Any] = {"output": one.answer, "step": step, "choices": one.choices}
        if self._content.kind == "pair" and one.answer in _BETWEEN:
            made["between"] = _BETWEEN[one.answer]
        return made

    def _braces(self) -> None:
        """Report a name in the story's braces that nothing is drawn as, and no step answers."""
        asked = {one.answer for one in self._content.ask}
        names = [*self._drawn, *(name for one in self._outputs[:-1] for name in one)]
        for match in _BRACED.finditer(self._content.story):
            if match[1] in asked:
                said = f'the story tells "{match[1]}", which is asked (expected it in one place)'
                self._wrong(("story",), said)
            elif match[1] not in names:
                said = f'nothing is drawn as "{shortened(match[1])}"'
                self._wrong(("story",), f"{said} {expected(match[1], names)}")

    def _mistakes(self, made: dict[str, Any]) -> None:
        known = mistakes_in({**made, "mistakes": None})
        for place, name in enumerate(self._content.mistakes or ()):
            if name not in known:
                said = f'the mistake "{name}" cannot be made with these calculators'
                self._wrong(("mistakes", place), f"{said} {expected(name, known)}")


def _fits(one: Input, calculator: Calculator, inputs: dict[str, Any]) -> bool:
    """Tell whether an input may count, by the choice that decides over it."""
    name, choices = one.only_when
    source = inputs.get(name, {})
    if "drawn" in source:
        return False  # only some draws need it
    return source.get("text", calculator.input(name).default) in choices
