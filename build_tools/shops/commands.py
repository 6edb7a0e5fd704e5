"""The command `new shop FOLDER`: questions on the terminal, or their answers as options."""

from __future__ import annotations

import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from build_tools.checks import find_problems
from build_tools.content.handbook import load_handbook
from build_tools.set_up.failure import Failure
from build_tools.set_up.start import ROOT
from build_tools.shops import new_shop
from build_tools.shops.place import LIBRARY, place_of
from build_tools.shops.questions import QUESTIONS, Answers, BadAnswer, carried, copies

#: The first word after `new` that makes a shop.
SHOP = "shop"


class NewCommand(click.Command):
    """The command `new`, whose first word may be the command `shop`, which has its own options."""

    def make_context(
        self, info_name: str | None, args: list[str], parent: Any = None, **extra: Any
    ) -> click.Context:
        """Return the context of the command that the words are for."""
        if args and args[0] == SHOP:
            return new_shop_command.make_context(f"{info_name} {SHOP}", args[1:], parent, **extra)
        return super().make_context(info_name, args, parent, **extra)


def _answer(
    words: str, default: str | None, read: Callable[[str], Any], given: str | None, option: str
) -> Any:
    """Return what was given, or what is answered on the terminal; a bad answer is asked again."""
    if given is not None:
        try:
            return read(given)
        except BadAnswer as problem:
            raise Failure(f"--{option}: {problem}") from None

    def asked(text: str) -> Any:
        try:
            return read(text)
        except BadAnswer as problem:
            raise click.UsageError(str(problem)) from None

    return click.prompt(words, default=default, value_proc=asked)


def _without_asking(default: str | None, given: str | None, option: str) -> str:
    """Return what is given, or else the default."""
    taken = default if given is None else given
    if taken is None:
        raise Failure(f"--{option} is missing, and it has no default.")
    return taken


def _with_options(command: Callable[..., None]) -> Callable[..., None]:
    for one in reversed(QUESTIONS):
        default = " or ".join(dict.fromkeys(one.default or ())).replace("{town}", "TOWN")
        told = f"{one.words}; else: {default.rstrip('.')}." if default else f"{one.words}."
        command = click.option(f"--{one.name}", help=told)(command)
    return command


@click.command("new shop")
@_with_options
@click.option("--equipment", help="Names of shipped units that the shop carries, with commas.")
@click.option("--copies", help="Units of its own, begun as copies: NAME=SHIPPED, with commas.")
@click.option("--defaults", is_flag=True, help="Ask nothing: take the defaults for the rest.")
@click.argument("folder", type=click.Path(path_type=Path, resolve_path=True))
def new_shop_command(
    folder: Path,
    equipment: str | None,
    copies: str | None,
    defaults: bool,
    **given: str | None,
) -> None:
    """Write a small handbook of another shop, which draws on the shipped one."""
    new_shop.make_room(folder)
    library = load_handbook(LIBRARY, ROOT)
    if library.problems:
        raise Failure("Some shipped sources could not be read: the command check tells which.")
    shipped = [*library.equipment]
    answers: Answers = {}
    for one in QUESTIONS:
        default, option = one.default_for(answers), given[one.name.replace("-", "_")]
        if defaults:
            option = _without_asking(default, option, one.name)
        answers[one.name] = _answer(
            one.words, default, lambda text, one=one: one.read(text, answers), option, one.name
        )
    chosen, own = _equipment(equipment, copies, shipped, defaults)
    new_shop.write(folder, new_shop.texts(library, answers, chosen, own))
    click.echo(f"Written: {folder}")
    place = shlex.quote(str(folder))
    click.echo(f"Check it:  python3 -m build_tools check --shop {place}")
    click.echo(f"Look at it:  python3 -m build_tools serve --shop {place}")
    _tell_what_cannot_be(folder)


def _tell_what_cannot_be(folder: Path) -> None:
    """Check the new shop: answers that are possible one by one may not go together."""
    made = place_of(folder)
    problems = find_problems(made.docs_folder, made.root, made.library)
    if problems:
        for problem in problems:
            click.echo(str(problem), err=True)
        raise Failure(
            "The shop is written, but its answers leave the problems above. Change them in "
            f"{made.docs_folder / 'shop.yaml'}, then run the check."
        )


def _equipment(
    named: str | None, copied: str | None, shipped: list[str], defaults: bool
) -> tuple[list[str], dict[str, str]]:
    """Return the shipped units that the shop carries, and its own: what each is a copy of."""
    every = ", ".join(shipped)
    if defaults:
        copied = copied or ""
        named = named if named is not None else ("" if copied else every)
    chosen = _answer(
        "Shipped units that it carries, none for none",
        every,
        lambda text: [] if text.strip() == "none" else carried(text, shipped),
        named,
        "equipment",
    )
    own = _answer(
        f"Units of its own, begun as copies, such as my-softener={shipped[0]}",
        "none",
        lambda text: _own(text, shipped, chosen),
        copied,
        "copies",
    )
    return chosen, own


def _own(text: str, shipped: list[str], chosen: list[str]) -> dict[str, str]:
    found = {} if text.strip() == "none" else copies(text, shipped)
    if not found and not chosen:
        raise BadAnswer("A shop carries at least one unit. Name one to begin from.")
    return found
