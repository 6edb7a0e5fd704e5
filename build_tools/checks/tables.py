"""Tables must name what their calculator has, and every cell must work out."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Table
from build_tools.content.problems import Problem, expected, shortened
from build_tools.content.tables import worked_out
from build_tools.content.values import Values
from calculators import CALCULATORS
from calculators.declare import Calculator


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each unknown input or answer; refused cells go to `values`."""
    for table in handbook.tables.values():
        calculator = CALCULATORS.get(table.content.calculate)
        if calculator is None:
            continue
        wrong = [*_wrong_names(table, calculator)]
        yield from wrong
        if not wrong and handbook.shop is not None:
            worked_out(values, table)


def _wrong_names(table: Entry[Table], calculator: Calculator) -> Iterator[Problem]:
    content = table.content
    named = [(("down", "input"), content.down.input)]
    if content.across is not None:
        named.append((("across", "input"), content.across.input))
    named += [(("given", name), name) for name in content.given]
    inputs = [one.name for one in calculator.inputs]
    for path, name in named:
        if name not in inputs:
            said = f'the calculator "{calculator.name}" has no input "{shortened(name)}"'
            yield table.problem(path, f"{said} {expected(name, inputs)}")
    outputs = [one.name for one in calculator.outputs]
    for place, name in enumerate(content.show):
        if name not in outputs:
            said = f'the calculator "{calculator.name}" has no answer "{shortened(name)}"'
            yield table.problem(("show", place), f"{said} {expected(name, outputs)}")
