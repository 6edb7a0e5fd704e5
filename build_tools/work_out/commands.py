"""The command work-out."""

from __future__ import annotations

import json
from collections.abc import Callable

import click

from build_tools.set_up.failure import Failure
from build_tools.shops.place import Place
from calculators import CALCULATORS
from calculators.quantities import SYSTEMS


def options_of_work_out(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `work-out`."""
    for one in (
        click.option("--json", "as_json", is_flag=True, help="The plain structure that pages get."),
        click.option("--units", type=click.Choice(SYSTEMS), help="In place of the shop's own."),
        click.option("--unit", help="The id of a unit of equipment that fills in its figures."),
        click.argument("inputs", nargs=-1, metavar="[INPUT=VALUE]..."),
        click.argument("name", required=False),
    ):
        command = one(command)
    return command


def list_calculators() -> None:
    """List the calculators."""
    from build_tools.work_out import terminal

    click.echo(terminal.listed())


def work_out(
    place: Place,
    name: str,
    inputs: tuple[str, ...],
    unit: str | None,
    units: str | None,
    as_json: bool,
) -> None:
    """Work a calculator out with the shop's values for what is not given."""
    from build_tools.content.values import Values
    from build_tools.work_out import terminal

    handbook = place.load()
    if handbook.shop is None:
        raise Failure("shop.yaml could not be read: the command check tells why.")
    units = units or handbook.units
    calculator = terminal.find(name, CALCULATORS, "calculator")
    values = Values(handbook)
    defaults = values.shop.defaults(calculator)
    if unit:
        equipment = terminal.find(unit, handbook.equipment, "unit of equipment")
        defaults |= values.figures.inputs(equipment, calculator)
    result = terminal.worked_out(calculator, inputs, defaults, units)
    if as_json:
        click.echo(json.dumps(result, ensure_ascii=False, indent=2))
    elif not result["problems"]:
        click.echo(terminal.answer(calculator, result))
    if result["problems"]:
        told = terminal.problems_told(result["problems"])
        raise Failure(f"{told}\n\n{terminal.inputs_listed(calculator, units)}")
