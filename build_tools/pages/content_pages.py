"""The pages of procedures, equipment, lessons, and plain pages."""

from __future__ import annotations

from typing import Any

from build_tools.content.entries import Block, Entry, Page
from build_tools.content.fields import Measure, keys
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.page_models import Decision, Picture, Procedure, Step
from build_tools.content.readings import expected_readings
from build_tools.content.values import Values
from build_tools.pages.forms import Forms
from build_tools.pages.pictures import Pictures
from build_tools.pages.render import Library, Texts, fill_section, render
from build_tools.pages.settings import Settings
from build_tools.pages.standing_cautions import in_full


class ContentPages:
    """Writes the Markdown of each page of the content.

    used: the addresses of the pages that use each calculator.
    """

    def __init__(
        self,
        handbook: Handbook,
        values: Values,
        library: Library,
        forms: Forms,
        used: dict[str, set[str]],
    ) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._forms = forms
        self._calculators = used
        self._pictures = Pictures(handbook, values, library)

    def procedure(self, entry: Entry[Procedure]) -> str:
        """Return the page of a procedure."""
        text = Texts(self._values, entry)
        content = entry.content
        return render(
            "procedure",
            text=text,
            content=content,
            cautions=in_full(self._handbook, self._values, content.cautions),
            steps=[
                self._step(entry, text, number, step) for number, step in enumerate(content.steps)
            ],
            decisions=self._decisions(entry, text, content.decide),
            lessons=self._links(entry, "learn", content.learn),
            calculators=self._used_calculators(entry),
        )

    def equipment(self, entry: Entry[Equipment]) -> str:
        """Return the page of a unit of equipment."""
        content = entry.content
        shop = self._handbook.shop.content
        worked = Settings(self._values, entry, shop)
        measures = {name: getattr(content, name) for name in keys(Equipment)}
        figures = [
            {"label": name.replace("_", " ").capitalize(), "shown": self._values.measure(value)}
            for name, value in measures.items()
            if isinstance(value, Measure)
        ]
        return render(
            "equipment",
            text=Texts(self._values, entry, entry),
            content=content,
            figures=[{"label": "Control", "shown": content.control}, *figures],
            home={
                "people": shop.typical_home.people,
                "hardness": self._values.measure(shop.typical_home.hardness),
                "iron": self._values.measure(shop.typical_home.iron),
            },
            settings=[
                {
                    "label": one.label,
                    "shown": one.shown,
                    "link": f"../work-out/{one.calculator}.md",
                }
                for one in worked.settings
            ],
            warnings=worked.warnings,
            procedures=[
                self._library.link(entry.address, procedure.address)
                for procedure in self._handbook.procedures.values()
                if any(step.expect for step in procedure.content.steps)
            ],
        )

    def lesson(self, page: Page, following: Page | None) -> str:
        """Return the page of a lesson; `following` is the lesson after it."""
        return render(
            "lesson",
            text=Texts(self._values, page),
            content=page.content,
            body=self.body(page),
            next_lesson=following and self._library.link(page.address, following.address),
        )

    def body(self, page: Page) -> str:
        """Return a page's body with its expressions filled and its blocks in place."""
        written = []
        for line, part in page.sections():
            if isinstance(part, str):
                written.append(fill_section(self._values, page, line, part))
            else:
                written.append(f"{self._block(part).strip()}\n\n")
        return "".join(written)

    def _block(self, block: Block) -> str:
        if isinstance(block.content, Picture):
            return self._pictures.figure(block)
        text = Texts(self._values, block)
        form = self._forms.of_example(block)
        return render("example", text=text, example=block.content, form=form)

    def _step(
        self, entry: Entry[Procedure], text: Texts, number: int, step: Step
    ) -> dict[str, Any]:
        return {
            "content": step,
            "readings": self._readings(entry, number, step),
            "decisions": self._decisions(entry, text, step.decide),
        }

    def _readings(self, entry: Entry[Procedure], number: int, step: Step) -> list[dict[str, Any]]:
        """Return what a step expects: each reading with its value for each unit of the shop."""
        rows: dict[str, list[dict[str, str]]] = {}
        for place in range(len(step.expect)):
            for unit in self._handbook.carried:
                for label, shown in expected_readings(self._values, entry, number, place, unit):
                    row = self._library.link(entry.address, unit.address, shown)
                    rows.setdefault(label, []).append(row)
        return [{"label": label, "rows": of_units} for label, of_units in rows.items()]

    def _decisions(
        self, entry: Entry[Procedure], text: Texts, decisions: list[Decision]
    ) -> list[dict[str, str]]:
        made = []
        for one in decisions:
            link = self._library.link(entry.address, f"{one.go_to}.md") if one.go_to else {}
            made.append(
                {
                    "found": text(one.found),
                    "then": text(one.then),
                    "link": link.get("link", ""),
                    "link_words": link.get("words", ""),
                }
            )
        return made

    def _links(self, entry: Entry[Any], folder: str, names: list[str]) -> list[dict[str, str]]:
        return [self._library.link(entry.address, f"{folder}/{name}.md") for name in names]

    def _used_calculators(self, entry: Entry[Any]) -> list[dict[str, str]]:
        return [
            self._library.link(entry.address, f"work-out/{name}.md", "with your own numbers")
            for name, pages in self._calculators.items()
            if entry.address in pages
        ]
