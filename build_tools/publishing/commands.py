"""The commands for who publishes a built site: check-copy, container."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click

from build_tools.pages import headers
from build_tools.publishing import container, copy_at_address, copy_in_folder
from build_tools.publishing.findings import Findings
from build_tools.publishing.hash_list import NAME, BrokenList, read_list
from build_tools.set_up.failure import Failure


def options_of_check_copy(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `check-copy`."""
    for one in (
        click.option(
            "--list",
            "list_file",
            type=click.Path(path_type=Path, dir_okay=False, exists=True),
            help=f"The list to compare with, in the place of site/{NAME}.",
        ),
        click.argument("copy", metavar="ADDRESS-OR-FOLDER"),
    ):
        command = one(command)
    return command


def options_of_container(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of `container`."""
    return click.option(
        "--output",
        required=True,
        type=click.Path(path_type=Path, file_okay=False, resolve_path=True),
        help="The folder to write, new or empty, or one that this command wrote.",
    )(command)


def check_copy(copy: str, list_file: Path) -> None:
    """Tell what of a copy is not as the list has it; with anything, the exit code is 1."""
    try:
        listed = read_list(list_file.read_text("utf-8"))
    except FileNotFoundError:
        raise Failure(
            f"There is no list at {list_file}: build the site first, or name a list with --list."
        ) from None
    except (BrokenList, UnicodeDecodeError) as error:
        raise Failure(f"{list_file} is no list of hashes: {error}.") from None
    if copy.startswith(("http://", "https://")):
        rules = list_file.with_name(headers.NAME)
        wanted = headers.read_rules(rules.read_text("utf-8")) if rules.is_file() else {}
        found = copy_at_address.compare(copy, listed, wanted)
    elif Path(copy).is_dir():
        found = copy_in_folder.compare(Path(copy), listed)
    else:
        raise Failure(
            f"{copy} is neither a folder nor an address that begins with http:// or https://."
        )
    _tell(copy, found, len(listed))


def write_container(site: Path, output: Path) -> None:
    """Write what a container is made from."""
    container.write(site, output)
    click.echo(f"Written into {output}: {', '.join(container.NAMES)} and site.")


def _tell(copy: str, found: Findings, number: int) -> None:
    for warning in found.warnings:
        click.echo(f"Warning: {warning}", err=True)
    if found.problems:
        count = len(found.problems)
        last = "1 file is not" if count == 1 else f"{count} files are not"
        raise Failure("\n".join([*sorted(found.problems), f"{last} as in the list."]))
    click.echo(f"{copy} is complete and unaltered: {number} files.")
