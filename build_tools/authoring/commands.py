"""The commands of who writes sources: check, new, update-answers, schemas."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click

from build_tools.authoring import answers, new, reports, schemas
from build_tools.checks import find_problems
from build_tools.content.problems import Problem
from build_tools.set_up.failure import Failure
from build_tools.shops.place import Place
from calculators.quantities import nearest


def check(place: Place, how: str) -> None:
    """Tell the problems; with any, the exit code is 1."""
    problems = _problems(place)
    if problems and how == "lines":
        raise Failure(reports.lines(problems, place.root))
    if said := reports.FORMATS[how](problems, place.root):
        click.echo(said)
    if problems:
        raise click.exceptions.Exit(1)


def _problems(place: Place) -> list[Problem]:
    return find_problems(place.docs_folder, place.root, place.library)


def check_and_watch(place: Place, how: str) -> None:
    """Tell the problems now and after each saved file, until Ctrl+C."""
    from build_tools.authoring.watching import saves

    for _ in saves(*place.watched):
        if said := reports.FORMATS[how](_problems(place), place.root):
            click.echo(said)


def make_new(place: Place, wanted: new.Wanted) -> None:
    """Write a new source, and tell what is next."""
    if wanted.kind not in new.KINDS:
        close = nearest(wanted.kind, new.KINDS)
        guess = f'; nearest: "{close}"' if close else ""
        kinds = ", ".join(new.KINDS)
        raise Failure(f'There is no kind "{wanted.kind}" (expected one of: {kinds}{guess}).')
    written = new.make(place.load(), wanted)
    click.echo(f"Written: {written.file}:{written.line}")
    click.echo("The command check names each line that is still an example.")
    click.echo(written.next)


def update_answers(place: Place) -> None:
    """Rewrite stated answers that are stale, and tell each."""
    renewed = answers.renew(place.load(), place.root)
    for one in renewed:
        click.echo(str(one))
    if not renewed:
        click.echo("Every stated answer is right.")


def renew_schemas(root: Path) -> None:
    """Write the schemas that are stale."""
    names = schemas.renew(root)
    for name in names:
        click.echo(f"Renewed: {schemas.FOLDER}/{name}")
    if not names:
        click.echo(f"All schemas in {schemas.FOLDER} are as the formats are.")


def options_of_check(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of `check`."""
    for one in (
        click.option(
            "--watch", is_flag=True, help="Check again after each saved file; Ctrl+C ends it."
        ),
        click.option(
            "--format",
            "how",
            type=click.Choice([*reports.FORMATS]),
            default="lines",
            show_default=True,
            help="For people, as one JSON object a line, or as one SARIF log.",
        ),
    ):
        command = one(command)
    return command


def options_of_new(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `new`."""
    for one in (
        click.option("--page", default="", help="Of an example: the page that it stands in."),
        click.option("--calculate", default="", help="Of an example, table, exercise: by what."),
        click.option("--name", default="", help="In the place of the name that the title gives."),
        click.argument("title"),
        click.argument("kind", metavar=f"[{'|'.join(new.KINDS)}]"),
    ):
        command = one(command)
    return command
