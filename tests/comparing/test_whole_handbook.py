"""One changed value of the shipped shop, told across the whole handbook: all of it, and no more.

What has to be told is found another way: the pages are written plainly before and after, tags are
taken off, and the numbers of each page are held against each other by their place.
"""

from __future__ import annotations

import html
import re
import shutil
from collections import Counter

import pytest

from build_tools.comparing.marks import unmarked
from build_tools.comparing.record import shortened
from build_tools.content.handbook import load_handbook
from build_tools.content.values import Values
from build_tools.pages.site import write_site
from tests.comparing.shops import ShopFolder, causes, compared
from tests.pages.conftest import MAIN

#: The title of a page, which may stand at the head of its file.
TITLE = re.compile(r"^# .*\n+", re.MULTILINE)
_NUMBER = re.compile(r"\d+(?:[.,:/]\d+)*")


@pytest.fixture(scope="module")
def before_and_after(tmp_path_factory: pytest.TempPathFactory) -> tuple[ShopFolder, ShopFolder]:
    """Return the shipped handbook as it is, and with another allowance for iron."""
    made = []
    for name in ("before", "after"):
        root = tmp_path_factory.mktemp(name)
        shutil.copytree(MAIN.parent / "docs_src", root / "docs_src")
        made.append(ShopFolder(root))
    made[1].change("shop.yaml", "iron_allowance: 4 gpg", "iron_allowance: 3 gpg")
    return made[0], made[1]


def plain_pages(shop: ShopFolder) -> dict[str, str]:
    """Return the written pages of a shop."""
    handbook = load_handbook(shop.root / "docs_src", shop.root)
    return write_site(handbook, Values(handbook), "runtime", None).pages


def text_of(page: str) -> str:
    """Return a page's text: a picture is its words, a field its default; no tags, no links."""
    page = re.sub(r'<svg\b[^>]*aria-label="([^"]*)".*?</svg>', r" \1 ", page, flags=re.DOTALL)
    page = re.sub(r'<input type="text"[^>]* value="([^"]*)"', r" \1 <", page)
    page = re.sub(r"<option[^>]*>", " ", re.sub(r" data-exercise='[^']*'", "", page))
    return html.unescape(re.sub(r"<[^>]*>|\]\([^)]*\)|\{[:#][^}]*\}", " ", page))


def expected_changes(
    old: dict[str, str], new: dict[str, str]
) -> tuple[Counter[tuple[str, str, str]], set[str]]:
    """Return (page, old, new) of each number that differs, and the pages that say other words."""
    assert list(old) == list(new)
    found: Counter[tuple[str, str, str]] = Counter()
    reworded = set()
    for page in old:
        before, after = text_of(old[page]), text_of(new[page])
        if _NUMBER.sub("#", before) != _NUMBER.sub("#", after):
            reworded.add(page)
            continue
        numbers = zip(_NUMBER.findall(before), _NUMBER.findall(after), strict=True)
        found.update((page, one, other) for one, other in numbers if one != other)
    return found, reworded


def test_another_allowance_for_iron_is_told_everywhere_and_alone(
    before_and_after: tuple[ShopFolder, ShopFolder],
) -> None:
    before, after = before_and_after
    pages = plain_pages(before)
    expected, reworded = expected_changes(pages, plain_pages(after))
    # With another allowance an exercise may draw another question, of which the working is another.
    assert all(page.startswith("practise/") for page in reworded)
    record = before.record()
    texts = {address: unmarked(page["text"]) for address, page in record["pages"].items()}
    assert {address: TITLE.sub("", text).lstrip() for address, text in texts.items()} == {
        address: TITLE.sub("", shortened(page)).lstrip() for address, page in pages.items()
    }
    found = compared(record, after.record())
    told = Counter(
        (one.page, one.change.old[1].text, one.change.new[1].text)
        for one in found.numbers
        if one.page not in reworded
    )
    assert told == expected
    assert causes(found.numbers) == {("iron_allowance in docs_src/shop.yaml",)}
    assert {one.page for one in found.texts} == reworded
    assert found.pages == []
    kinds = {one.change.block.kind for one in found.numbers}
    assert kinds >= {"paragraph", "default", "answer", "item", "picture", "row"}
    assert {page for page, *_ in expected} >= {
        "learn/iron-and-the-setting.md",  # a text, a worked example with its working, a picture
        "reference/tables.md",
        "reference/pocket-sheet.md",
        "work-out/hardness-setting.md",  # a form's default
    }
    # The printed example of an exercise.
    assert "practise/counter-from-a-test.md" in reworded | {page for page, *_ in expected}
    assert len(list(expected.elements())) > 100
