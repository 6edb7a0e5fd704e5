"""The pocket sheet and sign-off sheets of the shipped handbook."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.printing.built_site import BuiltSite
from build_tools.printing.commands import composed
from build_tools.printing.making import pdf_file
from build_tools.printing.wanted import Wanted
from build_tools.shops.place import here
from tests.printing.conftest import ROOT, Read


@pytest.fixture(scope="module")
def sheets_of(built: Callable[[Path], Path], browser_program: str) -> Callable[..., Read]:
    handbook, site = here().load_sound(), BuiltSite(built(ROOT / "mkdocs.yml"))

    def printed(kind: str, paper: str, *people: str) -> Read:
        document = composed(Wanted(kind, people=people), handbook, site, paper)
        return Read(pdf_file(document, browser_program, site.day.isoformat()))

    return printed


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_pocket_sheet_has_two_sides_on_either_paper(
    sheets_of: Callable[..., Read], paper: str
) -> None:
    read = sheets_of("pocket-sheet", paper)
    assert len(read.pdf.pages) == 2
    assert "Arrival check" in read.texts[0]
    assert "Cold and hot at one tap" in read.texts[1]
    assert all("Edition of" in text for text in read.texts)
    assert "Other numbers" not in " ".join(read.texts)


def test_each_person_has_a_sheet_and_the_rules_stand_once(sheets_of: Callable[..., Read]) -> None:
    read = sheets_of("sign-off", "letter", "Ada Fenwright", "Tom Quill")
    assert "Name: Ada Fenwright" in read.texts[0]
    assert "Name: Tom Quill" in read.texts[1]
    assert sum("What signs a skill off" in text for text in read.texts) == 1
    assert "What signs a skill off" in read.texts[2]
    assert "Fill it from the record" not in " ".join(read.texts)
    tops = [words for depth, words, _ in read.headings if depth == 1]
    assert tops == ["Sign-off sheet: Ada Fenwright", "Sign-off sheet: Tom Quill"]


def test_without_a_person_the_sheet_is_blank(sheets_of: Callable[..., Read]) -> None:
    read = sheets_of("sign-off", "a4")
    assert "Sign-off sheet Name: Skill Level" in read.texts[0]
    assert "What signs a skill off" in read.texts[1]
