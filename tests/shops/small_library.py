"""A shop over a small library, as texts that tests write and break one thing at a time."""

from __future__ import annotations

from pathlib import Path

from build_tools.checks import find_problems
from build_tools.shops.place import Place
from tests.content.small_shop import FILES, write

#: A metric shop with one unit of its own.
SHOP = {
    "shop.yaml": """\
name: Heather Water
town: Vik
region: Chalk hills.
units: metric
typical_home:
  people: 3
  hardness: 300 mg/L
  iron: 0.2 mg/L
iron_allowance: 86 mg/L per mg/L
manganese_allowance: 68 mg/L per mg/L
water_per_person: 130 L/day
hot_share: 40 %
test_kits:
  - name: Drop kit
    measures: hardness
    step: 1 °dH
currency: kr
salt_bag: 20 kg
salt_bag_price: 140
water_price: 30
sewer_price: 0
water_price_volume: 1 m3
equipment:
  - vik-unit
""",
    "facts.yaml": "# Nothing is replaced yet.\n",
    "equipment/vik-unit.yaml": FILES["equipment/meter-unit.yaml"].replace("Meter", "Vik"),
}


def place(folder: Path, shop: dict[str, str], library: dict[str, str] = FILES) -> Place:
    """Write a shop and its library below a folder, and return where they are."""
    shipped = write(folder / "shipped", library)
    docs = write(folder / "shop", shop)
    return Place(folder / "shop" / "mkdocs.yml", docs, folder / "shop", shipped)


def problems_of(folder: Path, shop: dict[str, str], library: dict[str, str] = FILES) -> list[str]:
    """Write a shop over a library and return the lines of its problems."""
    at = place(folder, shop, library)
    return [str(one) for one in find_problems(at.docs_folder, at.root, at.library)]


def with_lines(name: str, more: str) -> dict[str, str]:
    """Return the shop with lines added to one of its files."""
    return {**SHOP, name: SHOP.get(name, "") + more}
