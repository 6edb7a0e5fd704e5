"""The command print: what it writes, and what it says of what it cannot do."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pypdf
import pytest

from build_tools.commands import run
from build_tools.content.handbook import Handbook
from build_tools.printing import choosing, sheets
from build_tools.printing.built_site import BuiltSite
from build_tools.set_up import browser as browsers
from build_tools.set_up.failure import Failure

ROOT = Path(__file__).parents[2]
WRONG = [
    (
        ["handbok"],
        'There is no print "handbok" (expected one of: handbook, path, pocket-sheet, sign-off; '
        'nearest: "handbook").',
    ),
    (["handbook", "first-visit"], "“first-visit” is one word too many: only a path is named."),
    (["path", "first-vist"], 'There is no path "first-vist" (expected one of: '),
    (["path"], "Say which path to print (expected one of: "),
    (["handbook", "--person", "Ada"], "Only sign-off sheets are for a person: leave --person out."),
    (
        ["sign-off", "--person", " "],
        "The name of a person has 1 to 60 letters on one line.",
    ),
    (
        ["handbook", "--language", "es"],
        "Only a path is printed in another language: leave --language out.",
    ),
    (["handbook", "--paper", "a5"], "Invalid value for '--paper': 'a5' is not one of"),
    ([], "Missing argument '[handbook|path|pocket-sheet|sign-off]'."),
]  # fmt: skip


@pytest.mark.parametrize(("words", "said"), WRONG)
def test_bad_arguments_are_told_in_a_sentence(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["print", *words]) == 1
    told = capsys.readouterr().err
    assert told.startswith(said)
    assert told.count("\n") == 1


def test_folders_that_will_not_do_are_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = str(tmp_path / "a.pdf")
    for words, said in (
        (["--output", str(tmp_path)], f"{tmp_path} is a folder: name a file, such as "),
        (["--output", str(tmp_path / "no" / "a.pdf")], f"There is no folder {tmp_path / 'no'} to "),
        (["--output", file, "--site", str(tmp_path)], f"There is no built handbook in {tmp_path}:"),
    ):
        assert run(["print", "path", "first-visit", *words]) == 1
        assert capsys.readouterr().err.splitlines()[-1].startswith(said)


def test_a_missing_browser_is_told(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(browsers, "USUAL_PLACES", ())
    monkeypatch.setenv("PLAYWRIGHT_BROWSERS_PATH", str(tmp_path))
    assert run(["print", "handbook", "--output", str(tmp_path / "a.pdf")]) == 1
    assert capsys.readouterr().err == (
        "Printing needs a browser, and none was found: install Chromium or Chrome, then run the "
        "same command again.\n"
    )


def test_a_shop_without_sheets_or_paths_says_so(handbook: Handbook, site: BuiltSite) -> None:
    for make, said in (
        (lambda: sheets.pocket_sheet(handbook, site), "This shop has no pocket sheet: "),
        (lambda: sheets.sign_off(handbook, site, []), "This handbook has no skills to sign off: "),
        (
            lambda: choosing.find_path(handbook, "first"),
            'There is no path "first" (expected "first-visit").',
        ),
    ):
        with pytest.raises(Failure, match=f"^{re.escape(said)}"):
            make()


def test_a_path_of_the_shipped_handbook_from_its_built_site(
    built: Callable[[Path], Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "path.pdf"
    site = built(ROOT / "mkdocs.yml")
    assert run(["print", "path", "first-visit", "--site", str(site), "--output", str(file)]) == 0
    read = pypdf.PdfReader(file)
    assert capsys.readouterr().out == f"Written: {file} ({len(read.pages)} pages)\n"
    assert round(read.pages[0].mediabox.width) == 612, "a shop with US units has Letter paper"
    texts = [" ".join(page.extract_text().split()) for page in read.pages]
    number = int(re.search(r"Arrival check (\d+)", texts[1])[1])
    assert "Arrival check" in texts[number - 1]
    assert "Before any repair, setting or regeneration" in texts[number - 1]
    assert not any("Readings for" in text for text in texts), "a choice of units is for a screen"


def test_a_path_in_another_language(
    built: Callable[[Path], Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "path.pdf"
    where = ["--site", str(built(ROOT / "mkdocs.yml")), "--output", str(file)]
    assert run(["print", "path", "salt-and-brine", "--language", "es", *where]) == 1
    said = 'No page of the path "salt-and-brine" is in Español yet.'
    assert capsys.readouterr().err.splitlines()[-1] == said
    assert run(["print", "path", "first-visit", "--language", "es", *where]) == 0
    read = pypdf.PdfReader(file)
    assert read.trailer["/Root"]["/Lang"] == "es"
    texts = [" ".join(page.extract_text().split()) for page in read.pages]
    assert "Edición" in texts[0]
    assert "Índice" in texts[1]
    assert all("Edición del" in text for text in texts)
    assert all(f"Página {number}" in text for number, text in enumerate(texts, 1))
    assert any("(página " in text for text in texts)
