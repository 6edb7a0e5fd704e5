"""What a print says of the shop whose handbook it is."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.content.models import Shop
from build_tools.language.speaking import marked, say

_UNITS = {"us": marked("US customary units"), "metric": marked("metric units")}
_PAPER = {"us": "letter", "metric": "a4"}


@dataclass(frozen=True)
class Cover:
    """The shop, its town, and the units that its readers see."""

    shop: str
    town: str
    units: str


def cover_of(shop: Shop) -> Cover:
    """Return what prints say of a shop."""
    return Cover(shop.name, shop.town, say(_UNITS[shop.units]))


def usual_paper(shop: Shop) -> str:
    """Return the size of paper that the shop's printer most likely holds."""
    return _PAPER[shop.units]
