"""Expected readings must work out for every unit of equipment the shop carries."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Procedure, Reading
from build_tools.content.problems import Problem, choosing, shortened
from build_tools.content.readings import expected_reading
from build_tools.content.values import Values
from build_tools.content.yaml_file import KeyPath
from calculators import CALCULATORS


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each unknown input or output; what fails to work out goes to `values`."""
    for procedure in handbook.procedures.values():
        for step, one in enumerate(procedure.content.steps):
            for place, reading in enumerate(one.expect):
                yield from _names(procedure, ("steps", step, "expect", place), reading)
                for unit in handbook.carried:
                    expected_reading(values, procedure, step, place, unit)


def _names(procedure: Entry[Procedure], path: KeyPath, reading: Reading) -> Iterator[Problem]:
    calculator = CALCULATORS.get(reading.calculate or "")
    if calculator is None:
        return
    title = f'the calculator "{calculator.name}" has no'
    inputs = [one.name for one in calculator.inputs]
    for name in reading.inputs:
        if name not in inputs:
            said = choosing(f'{title} input "{shortened(name)}"', name, inputs)
            yield procedure.problem((*path, "inputs", name), said)
    outputs = [one.name for one in calculator.outputs]
    for place, name in enumerate(reading.show or []):
        if name not in outputs:
            said = choosing(f'{title} answer "{shortened(name)}"', name, outputs)
            yield procedure.problem((*path, "show", place), said)
