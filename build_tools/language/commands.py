"""The command translations: how far the handbook is translated, and what is open."""

from __future__ import annotations

from collections.abc import Callable

import click

from build_tools.content.handbook import Handbook
from build_tools.content.problems import in_order
from build_tools.language import catalogs, extracting, files, state
from build_tools.language.languages import LANGUAGES
from build_tools.set_up.failure import Failure


def options(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the options of translations."""
    for one in (
        click.option("--compared", default="", help="A file whose texts were compared anew."),
        click.option("--begin", default="", help="Write a file to translate: es/learn/its-name."),
        click.option("--words", is_flag=True, help="Take the words of the code into catalogs."),
        click.option("--strict", is_flag=True, help="Fail where a text or a word is open."),
    ):
        command = one(command)
    return command


def translations(handbook: Handbook, strict: bool, words: bool, begin: str, compared: str) -> None:
    """List what is translated, stale and missing, after doing what is asked for."""
    if begin:
        click.echo(f"Written: {files.begin(handbook, begin)}")
        return
    if compared:
        count = files.compared(handbook, compared)
        click.echo(f"Digests that are now those of the English texts: {count}.")
        return
    if words:
        renew_catalogs()
    found = state.open_texts(handbook)
    for code in LANGUAGES:
        found += state.open_words(code, catalogs.INTERFACE)
        found += state.open_calculators(handbook.translation(code))
    for one in in_order(found):
        click.echo(str(one))
    click.echo(state.table(list(state.rows(handbook))))
    if strict and found:
        raise Failure(f"Open texts and words: {len(set(found))}.")


def renew_catalogs() -> None:
    """Write each catalog with the words of the code as it is now."""
    for code in LANGUAGES:
        for name in (catalogs.INTERFACE, catalogs.CALCULATORS):
            catalogs.write(code, name, extracting.renewed(code, name))
