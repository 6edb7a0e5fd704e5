"""Worked examples are worked out again: what they state must be what the calculator says."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from build_tools.content.entries import Block, Example
from build_tools.content.fields import last_place
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, choosing, expected, shortened
from build_tools.content.values import Values
from calculators import CALCULATORS
from calculators.declare import Calculator, Output
from calculators.quantities import Quantity, QuantityError, parse, plain, read_number, round_to


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each answer that is not the computed one and each wrong input."""
    for example in handbook.examples.values():
        calculator = CALCULATORS.get(example.content.calculate)
        if calculator is None:
            continue
        wrong = [*wrong_names(example, calculator)]
        yield from wrong
        if not wrong and handbook.shop is not None:  # its units and allowances decide the answers
            yield from _answers(handbook, example, calculator, values.calculators.answers(example))


def wrong_names(block: Block, calculator: Calculator) -> Iterator[Problem]:
    """Yield a problem for each given and each answer that the calculator does not have."""
    sides = (("given", "input", calculator.inputs), ("answers", "answer", calculator.outputs))
    for key, word, declared in sides:
        names = [one.name for one in declared]
        for name in getattr(block.content, key, ()):
            if name not in names:
                said = f'the calculator "{calculator.name}" has no {word} "{shortened(name)}"'
                yield block.problem((key, name), choosing(said, name, names))


def _answers(
    handbook: Handbook, example: Example, calculator: Calculator, result: dict[str, Any]
) -> Iterator[Problem]:
    title = f'worked example "{example.id}"'
    for name, sentence in result["problems"].items():
        yield example.problem(("given", name), f'{title}, "{name}": {sentence}')
    if result["problems"]:
        return
    inputs = ", ".join(
        f"{one['label'].lower()} {one['shown']}" for one in result["inputs"].values()
    )
    if handbook.is_shipped(example):  # pages show what it is with this shop's values
        return
    for name, stated in example.content.answers.items():
        computed = result["values"].get(name)
        try:
            if computed is None:
                said = f'{title} states "{name}", which these inputs do not give '
                said += expected(name, result["values"])
            elif right := right_answer(stated, calculator.output(name), computed):
                said = (
                    f'{title} states "{name}" as "{shortened(stated)}", but it is '
                    f'{computed["shown"]} for {inputs} (expected "{right}")'
                )
            else:
                continue
        except QuantityError as error:
            said = f'{title}, "{name}": {error}'
        yield example.problem(("answers", name), said)


def right_answer(stated: str, output: Output, computed: dict[str, Any]) -> str | None:
    """Return what a stated answer should be, or None when it says what the computed one says.

    In the unit shown, the stated number must be the shown one. In another unit the computed number
    must round to the stated one, in its last digit; one that would hide a twentieth of it counts as
    too coarse.
    """
    if " ".join(stated.split()) == " ".join(computed["shown"].split()):
        return None
    if output.kind == "words":
        return computed["shown"]
    if not computed["unit"]:
        same = read_number(stated) == read_number(computed["shown"])
        return None if same else computed["shown"]
    quantity = parse(stated, output.kind, computed["unit"])
    shown = parse(computed["shown"], output.kind)
    if quantity.unit == shown.unit:
        return None if quantity.number == shown.number else computed["shown"]
    exact = Quantity(computed["number"], computed["unit"], output.kind).to(quantity.unit)
    place = last_place(stated)
    while exact.number and place / 2 > abs(exact.number) / 20:
        place /= 10
    if abs(quantity.number - exact.number) <= place / 2 * (1 + 1e-9):
        return None
    rounded = round_to(exact.number, place)
    return f"{plain(rounded)} {quantity.unit}"
