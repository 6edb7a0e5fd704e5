"""The reference pages: words, all numbers, sources, units, cautions and the shop."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from build_tools.content import conversions, unit_marks
from build_tools.content.addresses import POCKET_SHEET, has_pocket_sheet
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.models import Fact, Term
from build_tools.content.unit_words import spelled_out
from build_tools.content.values import Values
from build_tools.pages.carried_table import carried
from build_tools.pages.render import Library, Texts, render
from build_tools.pages.standing_cautions import in_full
from calculators import CALCULATORS
from calculators.quantities import KINDS
from calculators.sources import SOURCES

NUMBERS, SOURCE_LIST = "reference/numbers.md", "reference/sources.md"
GLOSSARY, CAUTIONS = "reference/glossary.md", "reference/cautions.md"
TITLES = {
    "reference/tables.md": "Tables to carry",
    "reference/conversions.md": "Conversions",
    GLOSSARY: "Glossary",
    "reference/abbreviations.md": "Abbreviations",
    NUMBERS: "All numbers",
    SOURCE_LIST: "Sources",
    "reference/units.md": "Units",
    CAUTIONS: "Cautions",
    "reference/shop.md": "This shop",
    "reference/on-this-phone.md": "Keep this handbook on this phone",
}
POCKET_TITLE = "Pocket sheet"
GROUPS = (
    ("published", "Published figures"),
    ("common practice", "Common practice of the trade, no source"),
)


def _by_term(term: dict[str, Any]) -> str:
    return term["term"].lower()


def titles(handbook: Handbook) -> dict[str, str]:
    """Return the title of each reference page of a handbook by its address."""
    found = dict(TITLES)
    if has_pocket_sheet(handbook):
        found = {POCKET_SHEET: POCKET_TITLE, **found}
    return found


def source_title(handbook: Handbook, key: str) -> str:
    """Return the title of a source of the calculators or of the handbook."""
    return SOURCES[key][0] if key in SOURCES else handbook.sources[key].content.title


class ReferencePages:
    """Writes the reference pages; `pages` comes last, when all uses of facts are known."""

    def __init__(self, handbook: Handbook, values: Values, library: Library) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        for address, title in titles(handbook).items():
            library.name(address, title)

    def pages(self) -> dict[str, str]:
        """Return the Markdown of each reference page by its address."""
        return {
            "reference/tables.md": self._tables(),
            "reference/conversions.md": self._conversions(),
            GLOSSARY: self._glossary(),
            "reference/abbreviations.md": self._abbreviations(),
            NUMBERS: self._numbers(),
            SOURCE_LIST: self._sources(),
            "reference/units.md": self._units(),
            CAUTIONS: self._cautions(),
            "reference/shop.md": self._shop(),
            "reference/on-this-phone.md": render("on_this_phone"),
        }

    def _tables(self) -> str:
        tables = [
            carried(self._values, "reference/tables.md", entry)
            for entry in self._handbook.tables.values()
        ]
        return render("tables", tables=tables, shop=self._handbook.shop.content.name)

    def _conversions(self) -> str:
        tables = []
        for name in conversions.OWN_TABLES:
            head, rows = conversions.factors(KINDS[name])
            title = conversions.title(KINDS[name])
            table = {"id": conversions.anchor(name), "title": title, "head": head, "rows": rows}
            tables.append(table)
        head, rows = conversions.common_values()
        return render(
            "conversions",
            tables=tables,
            common={"id": conversions.COMMON, "head": head, "rows": rows},
            temperature=conversions.temperature(),
            others={"id": conversions.OTHERS, "rows": conversions.pairs()},
        )

    def _glossary(self) -> str:
        terms = sorted(map(self._term, self._handbook.glossary.values()), key=_by_term)
        letters = groupby(terms, key=lambda term: term["term"][0].upper())
        return render("glossary", letters=[(letter, list(some)) for letter, some in letters])

    def _term(self, entry: Entry[Term]) -> dict[str, str]:
        term, text = entry.content, Texts(self._values, entry)
        lessons = [f"learn/{name}.md" for name in term.learn]
        return {
            "id": entry.id,
            "term": text(term.term),
            "abbreviation": term.abbreviation or "",
            "means": text(term.means),
            "not": ", ".join(f"“{word}”" for word in term.instead_of),
            "learn": self._library.links_in_a_row(GLOSSARY, lessons),
        }

    def _abbreviations(self) -> str:
        rows: dict[str, dict[str, str]] = {}
        for kind in KINDS.values():
            for unit in kind.units:
                words = spelled_out(unit)
                if words not in (unit, f"{unit}s") and unit not in rows:
                    link = f"units.md#{conversions.anchor(kind.name)}"
                    rows[unit] = {"sign": unit, "words": words, "link": link}
        for entry in self._handbook.glossary.values():
            if sign := entry.content.abbreviation:
                words = rows[sign]["words"] if sign in rows else entry.content.term
                link = f"glossary.md#{entry.id}"
                rows[sign] = {"sign": sign, "words": words, "link": link}
        ordered = sorted(rows.values(), key=lambda row: row["sign"].lower().lstrip("°√"))
        return render("abbreviations", rows=ordered)

    def _numbers(self) -> str:
        facts = [self._fact(entry) for entry in self._handbook.facts.values()]
        groups = [
            {"title": title, "facts": [fact for fact in facts if fact["why"] == why]}
            for why, title in GROUPS
        ]
        return render("numbers", groups=[group for group in groups if group["facts"]])

    def _fact(self, entry: Entry[Fact]) -> dict[str, str]:
        fact = entry.content
        shown = self._values.showing.fact(fact)
        basis = "Common practice, no source."
        if fact.basis == "published":
            title = source_title(self._handbook, fact.source)
            basis = f"Published: [{title}](sources.md#{fact.source})."
        uses = [address for _, _, address in self._values.uses.get(entry.id, ())]
        return {
            "id": entry.id,
            "why": fact.basis,
            "what": Texts(self._values, entry)(fact.what),
            "shown": unit_marks.kept(shown) if shown.is_kept else shown,
            "basis": basis,
            "uses": self._library.links_in_a_row(NUMBERS, uses),
        }

    def _sources(self) -> str:
        rows = [(key, *source) for key, source in SOURCES.items()]
        for key, entry in self._handbook.sources.items():
            source = entry.content
            rows.append((key, source.title, source.publisher, source.where or "", source.seen))
        rows.sort(key=lambda row: row[1].lower())
        return render(
            "sources",
            sources=[
                {
                    "key": key,
                    "title": title,
                    "publisher": publisher,
                    "where": where,
                    "seen": seen,
                    "backs": self._backed_by(key),
                }
                for key, title, publisher, where, seen in rows
            ],
        )

    def _backed_by(self, key: str) -> str:
        facts = [
            f"[{Texts(self._values, entry)(entry.content.what)}](numbers.md#{entry.id})"
            for entry in self._handbook.facts.values()
            if entry.content.source == key
        ]
        pages = [f"work-out/{one.name}.md" for one in CALCULATORS.values() if key in one.sources]
        row = self._library.links_in_a_row(SOURCE_LIST, pages)
        return ", ".join([*facts, *([row] if row else [])])

    def _units(self) -> str:
        kinds = []
        for kind in KINDS.values():
            units = []
            for unit in kind.units:
                others = [word for word, name in kind.spelled.items() if name == unit]
                others = [f"`{word}`" for word in others if word != unit.lower()][:8]
                units.append({"name": unit, "others": ", ".join(others)})
            title, anchor = conversions.title(kind), conversions.anchor(kind.name)
            kinds.append({"title": title, "anchor": anchor, "units": units})
        return render("units", kinds=kinds)

    def _cautions(self) -> str:
        cautions = in_full(self._handbook, self._values, list(self._handbook.cautions))
        printed_on: dict[str, list[str]] = {}
        for entry in self._handbook.entries():
            for _, group, name in entry.references():
                if group == "cautions":
                    printed_on.setdefault(name, []).append(entry.address)
        for one in cautions:
            pages = printed_on.get(one["id"], [])
            one["pages"] = self._library.links_in_a_row(CAUTIONS, pages)
        return render("cautions", cautions=cautions)

    def _shop(self) -> str:
        entry = self._handbook.shop
        shop, show = entry.content, self._values.showing.measure
        rows = [
            ("Allowance for iron", show(shop.iron_allowance)),
            ("Allowance for manganese", show(shop.manganese_allowance)),
            ("Water for each person", show(shop.water_per_person)),
            ("Share of it that is hot", show(shop.hot_share)),
            (f"Salt, a bag of {show(shop.salt_bag)}", self._price("salt_bag_price")),
            (f"Water, {show(shop.water_price_volume)}", self._price("water_price")),
            (f"Sewer, {show(shop.water_price_volume)}", self._price("sewer_price")),
        ]
        return render(
            "shop",
            shop=shop,
            text=Texts(self._values, entry),
            rows=[{"label": label, "shown": shown} for label, shown in rows],
            kits=[
                {"name": kit.name, "measures": kit.measures, "step": show(kit.step)}
                for kit in shop.test_kits
            ],
            equipment=[
                self._library.link("reference/shop.md", unit.address)
                | {"note": Texts(self._values, unit, unit)(unit.content.summary)}
                for unit in self._handbook.carried
            ],
        )

    def _price(self, name: str) -> str:
        return self._values.shop.value(name)
