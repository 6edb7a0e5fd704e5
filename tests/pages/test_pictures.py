"""The figure that a picture block becomes."""

from __future__ import annotations

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.content.leads import pages_by_calculator
from build_tools.content.values import Values
from build_tools.pages.site import Site, write_site
from calculators.figures import picture
from tests.checks.test_pictures import CAUSES, LEVEL, WAY, with_blocks
from tests.content.small_shop import write


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    folder = tmp_path_factory.mktemp("pictures")
    handbook = load_handbook(write(folder, with_blocks(LEVEL, WAY, CAUSES)), folder)
    assert handbook.problems == []
    assert pages_by_calculator(handbook)["brine-level"] == {"index.md"}
    return write_site(handbook, Values(handbook), "runtime", None)


def test_a_calculators_picture_has_a_caption_and_leads_to_the_calculator(site: Site) -> None:
    page = site.pages["index.md"]

    assert '<figure class="picture" id="level" markdown="block">\n' in page
    assert picture("brine-level", {"brine": "2.8 gal", "tank_diameter": "18 in"}) in page
    assert (
        '<figcaption markdown="span">**The level.** The water of a refill stands here. '
        "[Change the numbers](work-out/brine-level.md?brine-level.brine=2.8+gal"
        "&brine-level.tank_diameter=18+in#brine-level){: .not-on-paper }</figcaption>\n</figure>\n"
    ) in page


def test_a_drawing_has_a_caption_alone(site: Site) -> None:
    page = site.pages["index.md"]

    assert '<figcaption markdown="span">**The way.** Follow the arrows.</figcaption>' in page


def test_causes_are_weighed_with_the_handbooks_own_diagnosis(site: Site) -> None:
    page = site.pages["index.md"]

    assert ">Complaint: Hard water</text>" in page
    assert ">Salt height: No salt</text>" in page
    assert "How likely each cause is: " in page
    assert "No salt from " in page
