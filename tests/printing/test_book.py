"""Prints with contents: their page numbers, links, feet, bookmarks and paper."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.printing.built_site import BuiltSite
from build_tools.printing.choosing import whole_handbook
from tests.printing.conftest import Read

ON_THE_PATH = ("The spring and its hardness", "Set the cabinet softener", "Dripping cistern")
A4, LETTER = (595, 842), (612, 792)
#: Words of buttons, hints and fields that only a screen has.
OF_A_SCREEN = (
    "Copy a link to these numbers",
    "Back to the example",
    "Try your own numbers",
    "The form is off",
    "A number alone is read in the unit",
    "Change the numbers",
    "Keep this handbook on this phone",
    "Other numbers",
    "Next:",
)


@pytest.fixture(scope="module")
def whole(print_of: Callable[..., Read]) -> Read:
    return print_of("handbook")


@pytest.fixture(scope="module")
def path(print_of: Callable[..., Read]) -> Read:
    return print_of("path", "first-visit", "letter")


def page_of(read: Read, heading: str) -> int:
    """Return the page on which a heading stands that the print has once."""
    [number] = [page for _, words, page in read.headings if words == heading]
    return number


def test_contents_tell_the_page_of_each_heading(
    whole: Read, handbook: Handbook, site: BuiltSite
) -> None:
    chosen = whole_handbook(handbook, Values(handbook))
    begins = page_of(whole, "Contents")
    ends = page_of(whole, chosen.chapters[0].title)
    contents = " ".join(whole.texts[begins - 1 : ends - 1])
    titles = [site.title(page) for one in chosen.chapters for g in one.groups for page in g.pages]
    assert len(titles) > 50
    for title in titles:
        told = {int(number) for number in re.findall(re.escape(title) + r" (\d+)", contents)}
        stands = {page for _, words, page in whole.headings if words == title}
        assert told, title
        assert told <= stands, title
        assert all(title in whole.texts[number - 1] for number in told)


def test_pages_of_the_handbook_stand_under_their_chapters(
    whole: Read, handbook: Handbook, site: BuiltSite
) -> None:
    top = [words for depth, words, _ in whole.headings if depth == 1]
    assert top == [
        site.name, "Contents", "Learn", "Procedures", "Find the cause", "Checks", "Work it out",
        "Reference", "Equipment", "For trainers",
    ]  # fmt: skip
    depth = {words: depth for depth, words, _ in whole.headings}
    assert depth["Set the cabinet softener"] == 2
    assert depth["Before you leave"] == 3


def test_links_lead_to_pages_of_the_print_and_their_numbers_stand_beside_them(path: Read) -> None:
    lesson, procedure, fault = (page_of(path, title) for title in ON_THE_PATH)
    of_procedure = range(procedure, fault)
    text = " ".join(path.texts[number - 1] for number in of_procedure)
    assert f"The spring and its hardness (page {lesson})" in text
    assert lesson in [page for number in of_procedure for page in path.links(number)]
    assert path.links(page_of(path, "Contents")) == [lesson, procedure, fault]


def test_pages_that_are_not_printed_are_told_by_their_names(path: Read) -> None:
    text = path.texts[page_of(path, "The spring and its hardness") - 1]
    assert "the equipment page (see “Cabinet softener for a kitchen”)" in text


def test_each_page_has_the_edition_and_its_number_in_its_foot(
    whole: Read, path: Read, site: BuiltSite
) -> None:
    for read, title in ((whole, site.name), (path, f"The first visit: {site.name}")):
        for number, text in enumerate(read.texts, 1):
            foot = f"Holm Water Workshop · {title} · Edition of {site.edition()}"
            assert foot in text, number
            assert f"Page {number}" in text


def test_the_title_page_tells_shop_edition_and_units(path: Read, site: BuiltSite) -> None:
    for words in (
        "Holm Water Workshop, Fjordvik",
        "The first visit",
        f"From: {site.name}",
        "For somebody who sees the cabinet for the first time.",
        f"Edition {site.edition()}",
        "Units metric units",
    ):
        assert words in path.texts[0]


def test_nothing_of_a_screen_is_printed(whole: Read) -> None:
    words = " ".join(whole.texts)
    assert [one for one in OF_A_SCREEN if one in words] == []
    assert "How it is worked out" in words, "workings are unfolded"
    assert "Start from grains per gallon" in words


@pytest.mark.parametrize(("read", "size"), [("whole", A4), ("path", LETTER)])
def test_paper(read: str, size: tuple[int, int], request: pytest.FixtureRequest) -> None:
    for page in request.getfixturevalue(read).pdf.pages:
        assert (round(page.mediabox.width), round(page.mediabox.height)) == size


def test_the_file_is_tagged_and_tells_its_language_and_title(path: Read, site: BuiltSite) -> None:
    root = path.pdf.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/StructTreeRoot"]
    assert root["/Lang"] == "en"
    assert path.pdf.metadata.title == f"The first visit: {site.name}"
    assert path.pdf.metadata.creation_date.date() == site.day
