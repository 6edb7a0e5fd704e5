"""Calculators at the terminal: their list, one calculator's inputs, an answer with its working."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from build_tools.set_up.failure import Failure
from calculators import CALCULATORS, GROUPS, run
from calculators.declare import Calculator
from calculators.quantities import nearest


def listed() -> str:
    """Return every calculator, in its group, with the question it answers."""
    width = max(len(name) for name in CALCULATORS)
    parts = []
    for group, calculators in GROUPS.items():
        lines = [f"  {one.name:<{width}}  {one.question}" for one in calculators]
        parts.append("\n".join([group, *lines]))
    return "\n\n".join(parts)


def find(name: str, known: Mapping[str, Any], what: str) -> Any:
    """Return what is known by a name. Raises Failure, with the nearest name, where nothing is."""
    if name in known:
        return known[name]
    close = nearest(name, known)
    several = f"such as {', '.join(list(known)[:3])}"
    guess = f"The nearest is {close}." if close else f"There are {len(known)}, {several}."
    raise Failure(f'There is no {what} "{name}". {guess}')


def worked_out(
    calculator: Calculator, given: Iterable[str], defaults: dict[str, str], units: str
) -> dict[str, Any]:
    """Return what `calculators.run` says to inputs such as "hardness=18 gpg".

    defaults: the values of the shop and of a unit. Raises Failure for what is no input.
    """
    inputs = dict(defaults)
    for text in given:
        key, equals, value = text.partition("=")
        if not equals:
            raise Failure(
                f'"{text}" is no input: write it as NAME=VALUE, such as "hardness=18 gpg".'
            )
        inputs[key.strip()] = value
    return run(calculator.name, inputs, units)


def inputs_listed(calculator: Calculator, units: str) -> str:
    """Return the inputs of a calculator with an example of each, as the command takes them."""
    lines = ["It takes"]
    for one in calculator.inputs:
        more = f" ({', '.join(one.choices)})" if one.choices else ""
        more += ", may be left out" if one.optional else ""
        lines.append(f'  "{one.name}={one.example_text(units)}"  {one.label}{more}')
    return _plain_spaces("\n".join(lines))


def answer(calculator: Calculator, result: dict[str, Any]) -> str:
    """Return the question, the inputs, the working, the answer, warnings and cautions."""
    parts = [
        calculator.question,
        _part("Inputs", [_named(one) for one in result["inputs"].values()]),
        _part("Working", _steps(result["workings"])),
        _part("Answer", [_named(one) for one in result["values"].values()]),
        _part("Take note", result["warnings"]),
        _part("Caution", calculator.cautions),
    ]
    return _plain_spaces("\n\n".join(part for part in parts if part))


def problems_told(problems: dict[str, str]) -> str:
    """Return what is wrong with the inputs, one line for each."""
    return _plain_spaces("\n".join(f"{name}: {sentence}" for name, sentence in problems.items()))


def _part(title: str, lines: Iterable[str]) -> str:
    return "\n".join([title, *(f"  {line}" for line in lines)]) if lines else ""


def _named(one: dict[str, Any]) -> str:
    return f"{one['label']}: {one['shown']}"


def _steps(workings: list[dict[str, str]]) -> list[str]:
    lines = []
    for number, step in enumerate(workings, 1):
        lines.append(f"{number}. {step['sentence']}")
        lines.append(f"   {step['formula']} = {step['numbers']} = {step['result']}")
    return lines


def _plain_spaces(text: str) -> str:
    return text.replace("\u00a0", " ")
