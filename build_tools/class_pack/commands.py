"""The command class-pack; how it takes several words for an option: options.py."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click
from mkdocs.config import load_config

from build_tools.class_pack.options import MOST_PEOPLE, checked
from build_tools.set_up.start import ROOT
from build_tools.shops.place import Place
from calculators.quantities import SYSTEMS


def options_of_class_pack(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of `class-pack`."""
    for one in (
        click.option("--no-pdf", is_flag=True, help="Make no PDF files."),
        click.option(
            "--address", help="Where the handbook's site is, for links to its calculators."
        ),
        click.option("--units", type=click.Choice(SYSTEMS), help="In place of the shop's own."),
        click.option(
            "--edition", default="", help='The day that each page bears, such as "2026-05-01".'
        ),
        click.option(
            "--people",
            default=1,
            show_default=True,
            type=click.IntRange(1, MOST_PEOPLE),
            help="So many sheets, each with numbers and a key of its own.",
        ),
        click.option("--calls", multiple=True, metavar="CODE...", help="These practice calls."),
        click.option(
            "--family", multiple=True, metavar="FAMILY...", help="All exercises of families."
        ),
        click.option("--exercises", multiple=True, metavar="ID...", help="These exercises."),
        click.option(
            "--output",
            required=True,
            type=click.Path(path_type=Path, resolve_path=True),
            help="The folder to write, new or empty, or one with an older pack.",
        ),
        click.option("--seed", required=True, help="A number: the same one gives the same pack."),
    ):
        command = one(command)
    return command


def write_class_pack(
    place: Place,
    *,
    seed: str,
    output: Path,
    exercises: tuple[str, ...],
    family: tuple[str, ...],
    calls: tuple[str, ...],
    people: int,
    edition: str,
    units: str | None,
    address: str | None,
    no_pdf: bool,
) -> None:
    """Write question sheets with their key, and files for learning systems."""
    from build_tools.class_pack.pack import Pack, Wanted, write
    from build_tools.set_up import browser

    address = address or load_config(str(place.config)).site_url or ""
    checked(seed, edition, address)
    wanted = Wanted(
        seed,
        people=people,
        exercises=exercises,
        families=family,
        calls=calls,
        units=units or "",
        edition=edition,
        address=address,
    )
    at_hand = None if no_pdf else browser.find(ROOT)
    names = write(Pack(place.load_sound(), wanted), output, at_hand, click.echo)
    click.echo(f"Written into {output}: {', '.join(names)}.")
