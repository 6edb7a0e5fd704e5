"""Links are written between source files; every page and anchor has one address."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.addresses import addresses, anchors, link_to, target_of
from build_tools.content.handbook import Handbook, load_handbook
from tests.content.small_shop import FILES, changed, problems_of, write


@pytest.fixture
def handbook(tmp_path: Path) -> Handbook:
    return load_handbook(write(tmp_path, FILES), tmp_path)


def test_every_kind_of_page_has_an_address(handbook: Handbook) -> None:
    assert addresses(handbook) >= {
        "index.md",
        "learn/hardness.md",
        "procedures/first-look.md",
        "procedures/index.md",
        "faults/no-salt.md",
        "equipment/meter-unit.md",
        "work-out/brine-refill.md",
        "reference/numbers.md",
    }


def test_a_page_made_from_yaml_has_an_anchor_for_each_key_and_step(handbook: Handbook) -> None:
    found = anchors(handbook, "procedures/first-look.md")
    assert found is not None
    assert found >= {"goal", "when", "steps", "step-1", "decide", "close"}
    assert found.isdisjoint({"step-0", "step-2", "parts"})
    assert "customer-says" in (anchors(handbook, "faults/no-salt.md") or ())


def test_a_markdown_page_has_its_headings_worked_examples_and_pictures(handbook: Handbook) -> None:
    own = {"hardness", "a-setting", "gannet-lane", "capacity-by-salt"}
    assert anchors(handbook, "learn/hardness.md") == own


def test_a_shop_that_failed_to_load_may_have_a_pocket_sheet(tmp_path: Path) -> None:
    files = changed("shop.yaml", "salt_bag_price: 8.25", "salt_bag_price: 9 dollars")
    files["index.md"] += "[The sheet](reference/pocket-sheet.md)\n"
    assert problems_of(tmp_path, files) == [
        'docs_src/shop.yaml:19: "salt_bag_price" is "9 dollars" (expected a number)'
    ]


def test_a_reference_page_has_an_anchor_for_each_entry(handbook: Handbook) -> None:
    assert anchors(handbook, "reference/numbers.md") == {"bucket", "scald_limit", "flush_time"}


@pytest.mark.parametrize(
    ("base", "link", "target"),
    [
        ("procedures/a.md", "../learn/b.md#c", ("learn/b.md", "c")),
        ("procedures/a.md", "b.md", ("procedures/b.md", "")),
        ("procedures/a.md", "#steps", ("procedures/a.md", "steps")),
        ("index.md", "learn/b.md", ("learn/b.md", "")),
    ],
)
def test_a_link_leads_to_an_address_and_back(base: str, link: str, target: tuple[str, str]) -> None:
    assert target_of(base, link) == target
    assert target_of(base, link_to(base, target[0]))[0] == target[0]
