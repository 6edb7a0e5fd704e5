"""A copy of the small metric shop with its two pages in Spanish, to change one thing at a time."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.checks import find_problems
from build_tools.content.handbook import Handbook, load_handbook
from build_tools.language import files
from build_tools.language.state import open_texts
from build_tools.language.translation import Translation

SECOND = Path(__file__).parents[1] / "second_shop"
LESSON, PROCEDURE = "es/learn/the-spring.md", "es/procedures/set-the-cabinet.yaml"
CAUTIONS = "es/cautions.yaml"
#: What the copy says of a few texts; the others stay as in English.
WORDS = {
    LESSON: {
        "Everyone in": "Todos en",
        "drinks from one spring, at about": "beben de una sola fuente, de unos",
        "A reading at the harbor": "Una lectura en el puerto",
        "The kit in the flat by the harbor reads 16 °dH, which is 286 mg/L.": (
            "El kit del apartamento junto al puerto marca 16 °dH, que son 286 mg/L."
        ),
        "The spring and its hardness": "La fuente y su dureza",
    },
    PROCEDURE: {
        "Set the cabinet softener": "Ajustar el gabinete",
        "Enter the hardness.": "Ponga la dureza.",
        "Wait {{ fact.calm_water }}.": "Espere {{ fact.calm_water }}.",
        "Setting for the typical home": "Ajuste para la casa típica",
    },
}


class Shop:
    """The copy: its folder, and what is said about it."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.docs = root / "docs_src"

    def change(self, place: str, old: str, new: str) -> None:
        """Put a text of a file in the place of another, which must be there once."""
        path = self.docs / place
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, (place, old, text.count(old))
        path.write_text(text.replace(old, new), encoding="utf-8")

    def write(self, place: str, text: str) -> None:
        """Write a file."""
        (self.docs / place).write_text(text, encoding="utf-8")

    @property
    def handbook(self) -> Handbook:
        """The copy as it is now."""
        return load_handbook(self.docs, self.root)

    @property
    def translation(self) -> Translation:
        """Its Spanish part."""
        return self.handbook.translation("es")

    @property
    def problems(self) -> list[str]:
        """What the check says of its Spanish part."""
        found = [str(one) for one in find_problems(self.docs, self.root)]
        return [one for one in found if "/es/" in one]

    @property
    def open(self) -> list[str]:
        """What the command translations lists."""
        return [str(one) for one in open_texts(self.handbook)]


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    """Return a copy whose lesson and procedure have Spanish files, begun as a translator does."""
    shutil.copytree(SECOND / "docs_src", tmp_path / "docs_src")
    made = Shop(tmp_path)
    for place, words in WORDS.items():
        files.begin(made.handbook, place.rpartition(".")[0])
        for old, new in words.items():
            made.change(place, old, new)
    texts = {one.key: one.of for one in sources(made, "cautions")}
    made.write(
        CAUTIONS,
        f"dry-hands.title @{texts['dry-hands.title']}: Manos secas\n"
        f"dry-hands.text @{texts['dry-hands.text']}: Desenchufe antes de quitar la tapa.\n",
    )
    return made


def sources(shop: Shop, group: str) -> list:
    """Return the English texts of a list."""
    from build_tools.language.source_texts import source_texts

    entries = getattr(shop.handbook, group).values()
    return [one for entry in entries for one in source_texts(entry)]


@pytest.fixture
def page_of() -> Callable[[Shop, str], str]:
    """Return a function that gives the Markdown of a Spanish page."""
    from build_tools.content.values import Values
    from build_tools.pages.site import write_site

    def page(shop: Shop, address: str) -> str:
        handbook = shop.handbook
        return write_site(handbook, Values(handbook), "runtime", None).pages[address]

    return page
