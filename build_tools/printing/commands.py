"""The command print."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from pathlib import Path

import click

from build_tools.building.with_mkdocs import build_site, print_what_mkdocs_says
from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.language.languages import ENGLISH, LANGUAGES
from build_tools.language.speaking import speaking
from build_tools.printing import choosing, sheets
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.cover import cover_of, usual_paper
from build_tools.printing.document import Document, book, loose_sheets
from build_tools.printing.making import count_pages, pdf_file
from build_tools.printing.wanted import KINDS, PAPERS, Wanted, checked_output
from build_tools.set_up import browser
from build_tools.set_up.failure import Failure
from build_tools.set_up.start import ROOT
from build_tools.shops.place import Place


def options_of_print(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `print`."""
    for one in (
        click.option(
            "--site",
            type=click.Path(path_type=Path, resolve_path=True),
            help="A folder with a built handbook; without it the handbook is built first.",
        ),
        click.option(
            "--person",
            "people",
            multiple=True,
            metavar="NAME",
            help="Of sign-off: a sheet for this person; again for each further one.",
        ),
        click.option(
            "--language",
            type=click.Choice([ENGLISH, *LANGUAGES]),
            default=ENGLISH,
            show_default=True,
            help="Of a path: the language of its pages.",
        ),
        click.option(
            "--paper", type=click.Choice(PAPERS), help="Without it, the shop's units decide."
        ),
        click.option(
            "--output",
            type=click.Path(path_type=Path, resolve_path=True),
            help="The file to write, in the place of one named after what it holds.",
        ),
        click.argument("name", default=""),
        click.argument("kind", metavar=f"[{'|'.join(KINDS)}]"),
    ):
        command = one(command)
    return command


def print_into_file(
    place: Place,
    wanted: Wanted,
    *,
    site: Path | None,
    output: Path | None,
    paper: str | None,
) -> None:
    """Print from a built site, or from one that is built for it."""
    print_what_mkdocs_says()
    file = checked_output(output or Path.cwd() / wanted.file_name)
    at_hand = browser.find(ROOT)
    if at_hand is None:
        raise Failure(
            "Printing needs a browser, and none was found: install Chromium or Chrome, then run "
            "the same command again."
        )
    handbook = place.load_sound()
    if wanted.kind == "path":
        choosing.find_path(handbook, wanted.name)  # told before anything takes its time
    with tempfile.TemporaryDirectory() as folder:
        if site is None:
            site = Path(folder) / "site"
            click.echo("Building the handbook ...", err=True)
            build_site(place, site)
        built = BuiltSite(site)
        document = composed(wanted, handbook, built, paper or usual_paper(handbook.shop.content))
        click.echo("Printing ...", err=True)
        data = pdf_file(document, at_hand, built.day.isoformat())
    file.write_bytes(data)
    click.echo(f"Written: {file} ({count_pages(data)} pages)")


def composed(wanted: Wanted, handbook: Handbook, site: BuiltSite, paper: str) -> Document:
    """Return the document of a print."""
    with speaking(wanted.language):
        return _composed(wanted, handbook, site, paper)


def _composed(wanted: Wanted, handbook: Handbook, site: BuiltSite, paper: str) -> Document:
    cover = cover_of(handbook.shop.content)
    values = Values(handbook)
    if wanted.kind == "handbook":
        return book(site, choosing.whole_handbook(handbook, values), cover, paper)
    if wanted.kind == "path":
        chosen = choosing.one_path(handbook, values, wanted.name, wanted.language)
        return book(site, chosen, cover, paper)
    if wanted.kind == "pocket-sheet":
        title, found = "Pocket sheet", sheets.pocket_sheet(handbook, site)
    else:
        title, found = "Sign-off", sheets.sign_off(handbook, site, wanted.people)
    return loose_sheets(site, title, found, cover, paper)
