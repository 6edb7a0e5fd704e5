"""The command build."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import click

from build_tools.browser import BrowserFilesError
from build_tools.browser.compressed import brotli_twin, is_compressed
from build_tools.browser.runtime import compressed_files, runtime_files
from build_tools.building.with_mkdocs import build_site, print_what_mkdocs_says
from build_tools.comparing.commands import record_of_side
from build_tools.publishing import hash_list
from build_tools.set_up.failure import Failure
from build_tools.set_up.start import ROOT
from build_tools.shops.place import Place

# Every folder of a built site has these; one that has not is never emptied for a new site.
SIGNS_OF_A_SITE = ("404.html", "sitemap.xml")


def options_of_build(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of `build`."""
    for one in (
        click.option(
            "--compared-with",
            metavar="OLD",
            help="Add a page on what changed since a revision, or since the edition in a folder.",
        ),
        click.option(
            "--output",
            type=click.Path(path_type=Path, file_okay=False, resolve_path=True),
            help="The folder to write, in the place of site.",
        ),
    ):
        command = one(command)
    return command


def build(place: Place, output: Path | None, compared_with: str | None) -> None:
    """Write the site, ready for a web host."""
    output = output or place.root / "site"
    if output.exists() and any(output.iterdir()) and not _is_site(output):
        raise Failure(
            f"The folder {output} holds something other than a built handbook, and a build empties "
            "its folder: name a new or an empty one."
        )
    print_what_mkdocs_says()
    build_site(place, output, compared_with and record_of_side(compared_with, place.root))
    _compress(output)
    hash_list.write_list(output)
    click.echo(f"The handbook is in {output}")


def _is_site(folder: Path) -> bool:
    """Whether a folder holds a site that an earlier build wrote."""
    return all((folder / name).is_file() for name in SIGNS_OF_A_SITE)


def _compress(site: Path) -> None:
    """Put a brotli twin beside each large file of the runtime, for hosts that can serve it."""
    runtime = runtime_files(ROOT)
    cache = compressed_files(ROOT)
    if not all(is_compressed(path, cache) for path in runtime.compressible.values()):
        click.echo("Compressing the browser's Python (half a minute, once) ...", err=True)
    try:
        for address, path in runtime.compressible.items():
            shutil.copy(brotli_twin(path, cache), site / f"{address}.br")
    except BrowserFilesError as error:
        raise Failure(str(error)) from error
