"""Whichever unit system a reader chooses, no page shows a quantity in the other one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.pages.conftest import MAIN, SECOND
from tests.pages.units.reading import (
    ONLY_METRIC,
    TRADE,
    Pairs,
    disagree,
    quantities_in,
    read,
    rounded_in_steps,
)

#: Signs that are units and nothing else, wherever they stand.
TRADE_SIGNS = re.compile(r"(?<![\w/])(?:gpg|gpm|gal|psi|lb|°F|ft³|ft²|in²|fl oz)(?![\w])")
#: A share for each degree; and lengths that are shown in steps of half or a quarter of an inch.
ROUGH = {
    ("1.25\u00a0%", "2.25\u00a0%"),
    ("2.25\u00a0%", "1.25\u00a0%"),
    ("26\u00a0mm", "1.25\u00a0in"),
    ("130\u00a0mm", "5.5\u00a0in"),
    ("860\u00a0mm", "33.5\u00a0in"),
}
#: What both systems measure alike: for each unit, of what, and the most that is so measured.
SHARED = {
    "mm": ("the size of a bead", 1.3),
    "mL": ("the size of a drop", 0.5),
    "L/day": ("the water that a person drinks", 6),
    "g": ("the mass of a mole, and the chlorine in a dose of bleach", 100),
    "m": ("gravity, in meters per second squared", 9.9),
    "°C": ("the temperature in a published relation", 100),
}


def pages(site: Path) -> Iterator[tuple[str, str]]:
    """Yield the address and the HTML of each page."""
    for path in sorted(site.rglob("*.html")):
        yield path.relative_to(site).as_posix(), path.read_text(encoding="utf-8")


def own_and_other(config: Path) -> tuple[bool, bool]:
    """Return, for US units and for metric ones, whether they are the other system of a shop."""
    return (False, True) if config == MAIN else (True, False)


@pytest.mark.parametrize("config", [MAIN, SECOND], ids=["shipped", "second shop"])
def test_metric_readers_see_no_us_units(built: Callable[[Path], Path], config: Path) -> None:
    _, metric = own_and_other(config)
    found = {}
    for address, html in pages(built(config)):
        pieces = read(html, other=metric)
        left = quantities_in(pieces, TRADE)
        left += [text for _, text in pieces if TRADE_SIGNS.search(text)]
        if left:
            found[address] = left[:3]
    assert found == {}


@pytest.mark.parametrize("config", [MAIN, SECOND], ids=["shipped", "second shop"])
def test_us_readers_see_no_metric_units(built: Callable[[Path], Path], config: Path) -> None:
    us, _ = own_and_other(config)
    found = {}
    for address, html in pages(built(config)):
        left = quantities_in(read(html, other=us), ONLY_METRIC, SHARED)
        if left:
            found[address] = left[:3]
    assert found == {}


@pytest.mark.parametrize("config", [MAIN, SECOND], ids=["shipped", "second shop"])
def test_both_systems_show_the_same_quantities(built: Callable[[Path], Path], config: Path) -> None:
    count, found = 0, {}
    in_steps = set()
    for _, html in pages(built(config)):
        in_steps |= {text.replace("\u00a0", " ") for text in rounded_in_steps(html)}
    for address, html in pages(built(config)):
        if address.startswith("practise/"):  # worked out from what is given, rounded in each system
            continue
        parser = Pairs()
        parser.feed(html)
        count += len(parser.pairs)
        wrong = [
            (own, other)
            for own, other in parser.pairs
            if (own, other) not in ROUGH
            and disagree(own, other, 1 if own.replace("\u00a0", " ") in in_steps else 0.5)
        ]
        if wrong:
            found[address] = wrong[:4]
    assert found == {}
    assert count > 100


def test_a_pair_that_is_not_the_same_is_noticed() -> None:
    assert disagree("18 gpg", "318 mg/L")
    assert disagree("60 °F", "60 °C")
    assert disagree("12 to 18 gpg", "205 to 398 mg/L")
    assert not disagree("18 gpg", "308 mg/L")
    assert not disagree("60 °F", "16 °C")
    assert not disagree("12 to 18 gpg", "205 to 308 mg/L")


def test_what_is_left_in_the_other_system_is_noticed() -> None:
    html = (
        '<article><p>It holds <span data-other="151 L">40 gal</span> and 18 gpg.</p>'
        '<img alt="50 psi" data-in-other="{&quot;alt&quot;:&quot;3 bar&quot;}">'
        "<p data-kept>1 lb</p></article>"
    )
    assert quantities_in(read(html, other=True), TRADE) == [
        "text: 18 gpg in “It holds 151 L and 18 gpg.”"
    ]
    assert len(quantities_in(read(html, other=False), TRADE)) == 3
    assert quantities_in(read(html, other=False), ONLY_METRIC) == []
    assert quantities_in(read(html, other=True), ONLY_METRIC) == [
        "text: 151 L in “It holds 151 L and 18 gpg.”",
        "alt: 3 bar in “3 bar”",
    ]


def test_without_scripts_only_the_shops_own_system_is_in_the_text(
    built: Callable[[Path], Path],
) -> None:
    html = (built(MAIN) / "learn" / "salt-and-brine" / "index.html").read_text(encoding="utf-8")
    assert " kg" not in re.sub(r"<template.*?</template>|<[^>]*>", "", html, flags=re.DOTALL)
    assert "\ue000" not in html and "\ue003" not in html


def test_every_page_has_the_switch_and_its_script_before_the_body(
    built: Callable[[Path], Path],
) -> None:
    for address, html in pages(built(MAIN)):
        head, _, body = html.partition("<body")
        assert re.search(r'<script src="[^"]*page/units\.js" data-own="us">', head), address
        assert body.count('class="units-switch" hidden') == 1, address
