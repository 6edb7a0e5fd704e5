"""The library's worked examples, pictures and tables as another shop's own.

Their stories were written with the shipped shop's values. For another shop each answer is worked
out anew, and what a text repeats of it follows. For readers in metric units what is given is told
in metric units, rounded as a reader there would have it, and all answers come from that.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from build_tools.content.entries import Entry, Page, Passage
from build_tools.content.fields import same_as_written
from build_tools.content.handbook import Handbook, load_handbook
from build_tools.content.page_models import Axis, Picture, Table, WorkedExample
from build_tools.content.pictures import inputs_of
from build_tools.content.typed_quantities import Typed, kinds_of, typed_quantities
from build_tools.content.values import Values
from calculators import CALCULATORS
from calculators.declare import Calculator, Input
from calculators.quantities import KINDS, Quantity, QuantityError, display_unit, parse

_TIME_OF_DAY = "time of day"


@dataclass(frozen=True)
class _Told:
    """A quantity that a text may repeat: as it was written, and as this shop's readers see it."""

    written: Quantity
    shown: str


def load(docs_folder: Path, root: Path, library: Path | None) -> Handbook:
    """Load a handbook; what it draws on is told with its own shop's values."""
    handbook = load_handbook(docs_folder, root, library)
    if library is None or handbook.shop is None:
        return handbook
    values = Values(handbook)
    made: dict[int, Entry[Any]] = {}
    for group in (handbook.examples, handbook.pictures, handbook.tables):
        for name, entry in group.items():
            if handbook.is_shipped(entry):
                told = _table(entry, values) if group is handbook.tables else _block(entry, values)
                made[id(entry)] = group[name] = told
    for page in (*handbook.lessons.values(), *handbook.pages.values()):
        _put_in(page, made)
    return handbook


def _put_in(page: Page, made: dict[int, Entry[Any]]) -> None:
    page.blocks[:] = [(start, end, made.get(id(block), block)) for start, end, block in page.blocks]


def _block(entry: Entry[WorkedExample | Picture], values: Values) -> Entry[Any]:
    content = entry.content
    calculator = CALCULATORS.get(content.calculate or "")
    if content.calculate and calculator is None:
        return entry  # told as a name of nothing
    inputs = calculator.inputs if calculator else inputs_of(content)
    given = _given(content.given, inputs, values.showing.units)
    known = [*_givens(content.given, given, inputs)]
    changed: dict[str, Any] = {"given": given}
    if isinstance(content, WorkedExample):
        result = values.calculators.result(calculator.name, given)["values"]
        shown = {name: result[name]["shown"] for name in content.answers if name in result}
        changed["answers"] = content.answers | shown
        known += _answers(content.answers, shown, calculator)
    for key in ("title", "story", "note"):
        if text := getattr(content, key, None):
            changed[key] = _retold(entry.passage((key,), text), known)
    return replace(entry, content=content.model_copy(update=changed))


def _table(entry: Entry[Table], values: Values) -> Entry[Table]:
    table = entry.content
    calculator = CALCULATORS.get(table.calculate)
    if calculator is None:
        return entry
    changed: dict[str, Any] = {
        "given": _given(table.given, calculator.inputs, values.showing.units)
    }
    for side in ("down", "across"):
        if (axis := getattr(table, side)) is not None:
            changed[side] = _axis(axis, calculator, values.showing.units)
    return replace(entry, content=table.model_copy(update=changed))


def _axis(axis: Axis, calculator: Calculator, units: str) -> Axis:
    through, name = axis.through, axis.input
    changed: dict[str, Any] = {}
    if through is not None:
        calculator, name = CALCULATORS.get(through.calculate), through.input
        if calculator is not None:
            given = _given(through.given, calculator.inputs, units)
            changed["through"] = through.model_copy(update={"given": given})
    one = calculator and calculator.input(name)
    if one is not None:
        changed["values"] = [_seen(text, one, units) for text in axis.values]
    return axis.model_copy(update=changed)


def _given(given: dict[str, Any], inputs: Iterable[Input], units: str) -> dict[str, Any]:
    declared = {one.name: one for one in inputs}
    return {
        name: _seen(text, declared[name], units)
        if name in declared and isinstance(text, str)
        else text
        for name, text in given.items()
    }


def _seen(text: str, one: Input, units: str) -> str:
    """Return what an input is given as readers of `units` would write it."""
    written = _read(text, one.kind, one.unit)
    if written is None or display_unit(written.unit, units) == written.unit:
        return text
    return written.shown(units).replace("\u00a0", " ")


def _read(text: str, kind: str, unit: str) -> Quantity | None:
    if kind not in KINDS or kind == _TIME_OF_DAY:
        return None
    try:
        return parse(text, kind, unit)
    except QuantityError:  # told by the check of what is given
        return None


def _givens(old: dict[str, Any], new: dict[str, Any], inputs: Iterable[Input]) -> Iterator[_Told]:
    for one in inputs:
        text = old.get(one.name)
        written = _read(text, one.kind, one.unit) if isinstance(text, str) else None
        if written is not None:
            yield _Told(written, new[one.name] if new[one.name] != text else "")


def _answers(
    stated: dict[str, str], shown: dict[str, str], calculator: Calculator
) -> Iterator[_Told]:
    for name, text in stated.items():
        output = calculator.output(name)
        written = output and name in shown and _read(text, output.kind, output.unit)
        if written:
            same = " ".join(text.split()) == " ".join(shown[name].split())
            yield _Told(written, "" if same else shown[name])


def _retold(passage: Passage, known: list[_Told]) -> str:
    """Return a text in which each quantity that it repeats is as this shop's readers see it."""
    text = passage.text
    places = []
    for piece in passage.markdown.pieces:
        for typed in typed_quantities(piece.text):
            if shown := _shown(typed, known):
                end = piece.offset(typed.start + len(typed.text) - 1) + 1
                places.append((piece.offset(typed.start), end, shown))
    for start, end, shown in sorted(places, reverse=True):
        text = text[:start] + shown + text[end:]
    return text


def _shown(typed: Typed, known: list[_Told]) -> str:
    """Return what stands for a typed quantity, or for a range; nothing where it stays as it is."""
    for kind in sorted(kinds_of(typed.unit)):
        ends = zip(typed.ends(), typed.quantities(kind), strict=False)
        found = [_match(text, end, known) for text, end in ends]
        if found and all(found) and any(one.shown for one in found):
            return " to ".join(one.shown or one.written.shown("us") for one in found)
    return ""


def _match(text: str, written: Quantity, known: list[_Told]) -> _Told | None:
    """Return what a text repeats: of all that round to it, the nearest; of these a given first."""
    alike = [
        one
        for one in known
        if one.written.kind == written.kind and same_as_written(text, written, one.written)
    ]
    if not alike:
        return None
    return min(alike, key=lambda one: abs(one.written.to(written.unit).number - written.number))
