"""The page "What changed" in a built site."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from tests.comparing.shops import copy_of_second_shop
from tests.pages.conftest import Text


@pytest.fixture(scope="module")
def site(before: dict[str, Any], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the site of a changed shop, compared with what it was; MkDocs warns of nothing."""
    folder = tmp_path_factory.mktemp("compared")
    shop = copy_of_second_shop(folder / "shop")
    shop.change("facts.yaml", "value: 500 mL", "value: 400 mL")
    shop.change("procedures/set-the-cabinet.yaml", "Enter the hardness.", "Enter *it* <b>now</b>.")
    config = load_config(str(shop.config), strict=True, site_dir=str(folder / "site"))
    config.plugins.on_startup(command="build", dirty=False)
    config.plugins["handbook"].compared_with = before
    build(config)
    return folder / "site"


def test_it_is_a_page_of_the_site(site: Path) -> None:
    html = (site / "trainers" / "what-changed" / "index.html").read_text("utf-8")
    text = str(Text(html))
    assert "From the edition of November 25, 2026, revision 2b637838, to that of" in text
    assert "cup in docs_src/facts.yaml: 500 → 400 mL" in text
    assert "4 numbers on 4 pages." in text
    link = "../../procedures/set-the-cabinet/#step-4"
    place = "Steps, step 4: “Time the rinse with a …”"
    assert f'<tr><td><a href="{link}">{place}</a></td><td>500 mL</td><td>400 mL</td></tr>' in html
    assert "Enter <del>[−the hardness−]</del><ins>[+it now+]</ins>." in html
    assert "http-equiv" in html and "Content-Security-Policy" in html


def test_links_lead_to_anchors_that_are_there(site: Path) -> None:
    page = (site / "procedures" / "set-the-cabinet" / "index.html").read_text("utf-8")
    assert 'id="step-4"' in page


def test_every_page_leads_to_it_and_the_search_does_not_know_it(site: Path) -> None:
    page = (site / "learn" / "the-spring" / "index.html").read_text("utf-8")
    assert '<a href="../../trainers/what-changed/">What changed</a>' in page
    index = (site / "search" / "search_index.json").read_text("utf-8")
    assert "learn/the-spring/" in index and "what-changed" not in index
