"""A metric shop over the whole shipped handbook, built: its pages read as its own."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.commands import ROOT, run
from build_tools.content.handbook import load_handbook
from build_tools.language.languages import LANGUAGES
from build_tools.shops.place import place_of
from calculators.units import METRIC
from tests.pages.conftest import Text

#: What is named after somebody's street, and how a text would say it.
STREETS = re.compile(
    r"\b(?:[Oo]n|[Aa]t|[Ii]n) (?:the )?[A-Z][a-z]+ "
    r"(?:Lane|Street|Road|Row|Quay|Steps|Close|Court|Rise|Hill|Yard|Ridge|Avenue|Square)\b"
)
#: Pages that are about units, or about the shipped shop as an example for trainers.
IN_ALL_UNITS = {
    "embed/hardness-units",
    "learn/what-hardness-is",
    "practise/hardness-from-a-report",
    "reference/conversions",
    "reference/sources",
    "reference/units",
    "trainers/authoring",
    "trainers/class-pack",
    "trainers/shops",
    "work-out/hardness-units",
}
OPTIONS = (
    *("--name", "Norr Vatten", "--town", "Vik", "--region", "A lake among hills.", "--defaults"),
    *("--units", "metric", "--people", "2", "--hardness", "18 °dH", "--iron", "0.2 mg/L"),
    *("--iron-allowance", "80 mg/L per mg/L", "--water-per-person", "130 L/day"),
    *("--hot-share", "42 %", "--hardness-step", "2 °dH", "--iron-step", "0.2 mg/L"),
    *("--currency", "kr", "--salt-bag", "20 kg", "--salt-bag-price", "139"),
    *("--equipment", "twin-tank-softener", "--copies", "vik-softener=apartment-softener"),
)
LOCAL = ("Only an electrician on the county's list opens an outlet.", "Call the county first.")


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, built: Callable[[Path], Path]) -> Path:
    """The site of a shop that the command wrote, built once."""
    shop = tmp_path_factory.mktemp("norr") / "shop"
    assert run(["new", "shop", str(shop), *OPTIONS]) == 0
    with (shop / "docs_src" / "shop.yaml").open("a", encoding="utf-8") as file:
        lines = "".join(f"  - caution: shock\n    local: {one}\n" for one in LOCAL)
        file.write(f"local_cautions:\n{lines}")
    return built(place_of(shop).config)


@pytest.fixture(scope="module")
def pages(site: Path) -> dict[str, str]:
    """The text of each page by its address."""
    return {
        page.parent.relative_to(site).as_posix(): str(Text(page.read_text("utf-8"))).replace(
            " ,", ","
        )
        for page in site.rglob("index.html")
    }


def names_of_the_shipped_shop() -> list[str]:
    """Return the name of the shipped shop, its town, and the names in its region."""
    shop = load_handbook(ROOT / "docs_src", ROOT).shop.content
    regions = re.findall(r"[A-Z][a-z]+ (?:River|Ridge)", shop.region)
    assert len(regions) == 2
    return [shop.name, shop.name.split()[0], shop.town, *(one.split()[0] for one in regions)]


def test_nothing_of_the_shipped_shop_stands_anywhere(site: Path, pages: dict[str, str]) -> None:
    names = re.compile("|".join(names_of_the_shipped_shop()), re.IGNORECASE)
    for file in site.rglob("*"):
        if file.suffix in (".html", ".json", ".webmanifest", ".xml", ".md"):
            assert not names.search(file.read_text("utf-8")), file
    for address, text in pages.items():
        assert not STREETS.search(text), address


def test_it_is_the_shops_own(pages: dict[str, str]) -> None:
    assert "For the technicians of Norr Vatten, Vik." in pages["."]
    assert "In Vik we count 80 mg/L per mg/L" in pages["learn/iron-and-the-setting"]
    assert "kr 139" in pages["reference/shop"]
    assert f"In Vik: {' '.join(LOCAL)}" in pages["reference/cautions"]
    assert f"In Vik: {' '.join(LOCAL)}" in pages["procedures/check-supply-and-drive"]
    assert "has not been measured" in pages["trainers/how-well-the-cause-is-found"]


def test_only_what_it_carries_has_a_page_and_a_row(pages: dict[str, str]) -> None:
    units = {one.removeprefix("equipment/") for one in pages if one.startswith("equipment/")}
    assert units == {"twin-tank-softener", "vik-softener"}
    readings = pages["procedures/measure-drain-flow"]
    assert "Vik softener" in readings
    assert "Family, delayed meter" not in readings


def test_worked_examples_answer_with_its_values(pages: dict[str, str]) -> None:
    lesson = pages["learn/iron-and-the-setting"]
    assert "A fresh sample tests 394 mg/L, with 0.6 mg/L of iron" in lesson
    assert "Compensated hardness 442 mg/L" in lesson  # 394 + 0.6 x 80
    assert "The setting comes to 222.3 mg/L" in lesson  # 111 + 1.3 x 80 + 0.1 x 68, in whole steps


def test_no_page_mixes_units(pages: dict[str, str]) -> None:
    us = [unit for unit in METRIC if unit != "gpg per mg/L"]
    pattern = re.compile(r"\d[\d.,]*\s(" + "|".join(map(re.escape, us)) + r")(?![\w/³²])")
    found = {
        address: match[0]
        for address, text in pages.items()
        if address not in IN_ALL_UNITS and (match := pattern.search(text))
    }
    # "about 6 in 10" is a chance
    assert {address: one for address, one in found.items() if not one.endswith(" in")} == {}


def test_shipped_sources_name_no_shop_town_or_street() -> None:
    names = re.compile("|".join(map(re.escape, names_of_the_shipped_shop())))
    translated = {ROOT / "docs_src" / code for code in LANGUAGES}  # shops do not draw on them
    for file in (ROOT / "docs_src").rglob("*"):
        if translated & {*file.parents} or file.name == "shop.yaml":
            continue
        if file.suffix in (".md", ".yaml"):
            text = file.read_text("utf-8")
            assert not names.search(text), file
            assert not STREETS.search(text), file
