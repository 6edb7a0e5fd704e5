"""The command translations: how far the handbook is translated, and what is open."""

from __future__ import annotations

from pathlib import Path

import click

from build_tools.content.handbook import load_handbook
from build_tools.content.problems import in_order
from build_tools.language import catalogs, extracting, files, state
from build_tools.language.languages import LANGUAGES
from build_tools.set_up.failure import Failure


@click.command("translations")
@click.option("--strict", is_flag=True, help="Fail where a text or a word is open.")
@click.option("--words", is_flag=True, help="Take new words of the code into the catalogs.")
@click.option("--begin", metavar="PAGE", help="Write a file to translate, such as es/learn/x.")
@click.option("--compared", metavar="FILE", help="Its texts were compared with the English ones.")
@click.pass_obj
def translations(folders: tuple[Path, Path], **wanted: object) -> None:
    """List what is translated, stale and missing."""
    docs_folder, root = folders
    handbook = load_handbook(docs_folder, root)
    if wanted["begin"]:
        click.echo(f"Written: {files.begin(handbook, str(wanted['begin']))}")
        return
    if wanted["compared"]:
        count = files.compared(handbook, str(wanted["compared"]))
        click.echo(f"{count} digests are those of the English texts now.")
        return
    if wanted["words"]:
        renew_catalogs()
    open_texts = in_order(state.open_texts(handbook))
    open_words = [one for code in LANGUAGES for one in state.open_words(code, catalogs.INTERFACE)]
    for one in (*open_texts, *in_order(open_words)):
        click.echo(str(one))
    click.echo(state.table(list(state.rows(handbook))))
    if wanted["strict"] and (open_texts or open_words):
        raise Failure(f"{len(open_texts) + len(open_words)} texts and words are open.")


def renew_catalogs() -> None:
    """Write each catalog with the words of the code as it is now."""
    for code in LANGUAGES:
        for name in (catalogs.INTERFACE, catalogs.CALCULATORS):
            catalogs.write(code, name, extracting.renewed(code, name))
