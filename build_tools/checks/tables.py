"""Tables must name what their calculator has, and every cell must work out."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Table
from build_tools.content.problems import Problem, choosing, shortened
from build_tools.content.tables import worked_out
from build_tools.content.values import Values
from build_tools.content.yaml_file import KeyPath
from calculators import CALCULATORS
from calculators.declare import Calculator


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each unknown input or answer; refused cells go to `values`."""
    for table in handbook.tables.values():
        calculator = CALCULATORS.get(table.content.calculate)
        sides = (table.content.down, table.content.across)
        throughs = [side.through.calculate for side in sides if side and side.through]
        if calculator is None or not CALCULATORS.keys() >= set(throughs):
            continue  # told as a name of nothing
        wrong = [*_wrong_names(table, calculator)]
        yield from wrong
        if not wrong and handbook.shop is not None:
            worked_out(values, table)


def _wrong_names(table: Entry[Table], calculator: Calculator) -> Iterator[Problem]:
    content = table.content
    inputs = [(("down", "input"), content.down.input)]
    if content.across is not None:
        inputs.append((("across", "input"), content.across.input))
    inputs += [(("given", name), name) for name in content.given]
    outputs = [(("show", place), name) for place, name in enumerate(content.show)]
    yield from _unknown(table, calculator, inputs, outputs)
    for side in ("down", "across"):
        axis = getattr(content, side)
        through = axis and axis.through
        first = through and CALCULATORS.get(through.calculate)
        if first:
            path = (side, "through")
            inputs = [((*path, "input"), through.input)]
            inputs += [((*path, "given", name), name) for name in through.given]
            yield from _unknown(table, first, inputs, [((*path, "show"), through.show)])


def _unknown(
    table: Entry[Table],
    calculator: Calculator,
    inputs: list[tuple[KeyPath, str]],
    outputs: list[tuple[KeyPath, str]],
) -> Iterator[Problem]:
    for word, used, declared in (
        ("input", inputs, calculator.inputs),
        ("answer", outputs, calculator.outputs),
    ):
        names = [one.name for one in declared]
        for path, name in used:
            if name not in names:
                said = f'the calculator "{calculator.name}" has no {word} "{shortened(name)}"'
                yield table.problem(path, choosing(said, name, names))
