"""The pages of procedures, equipment, lessons, and plain pages."""

from __future__ import annotations

from typing import Any

from build_tools.content.both_systems import compares_units
from build_tools.content.entries import Block, Entry, Page
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.page_models import Decision, Picture, Procedure, Step
from build_tools.content.stages import split_stage
from build_tools.content.values import Values
from build_tools.language.speaking import say
from build_tools.pages.equipment_page import equipment_page
from build_tools.pages.expected_tables import expected_tables
from build_tools.pages.forms import Forms
from build_tools.pages.pictures import Pictures
from build_tools.pages.render import Library, Texts, fill_section, render
from build_tools.pages.standing_cautions import in_full
from calculators import CALCULATORS


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
        carried = self._handbook.carried
        steps = [self._step(entry, text, number, step) for number, step in enumerate(content.steps)]
        has_readings = any(step.expect for step in content.steps)
        return render(
            "procedure",
            text=text,
            content=content,
            group=say(content.group),
            section=self._library.section(say("Procedures")),
            up=self._library.up,
            units=[
                {"id": unit.id, "title": self._library.title(unit.address)}
                for unit in (carried if has_readings and len(carried) > 1 else [])
            ],
            cautions=in_full(self._handbook, self._values, content.cautions),
            steps=steps,
            jump=[
                (say("Before you start"), "before"),
                (say("Steps"), "steps"),
                *((one["stage"], one["stage_id"]) for one in steps if one["stage"]),
                (say("Before you leave"), "close"),
            ],
            decisions=self._decisions(entry, text, content.decide),
            lessons=self._links(entry, "learn", content.learn),
            calculators=self._used_calculators(entry),
        )

    def equipment(self, entry: Entry[Equipment]) -> str:
        """Return the page of a unit of equipment."""
        return equipment_page(self._handbook, self._values, self._library, entry)

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
        kept = compares_units(CALCULATORS[block.content.calculate])
        return render("example", text=text, example=block.content, form=form, kept=kept)

    def _step(
        self, entry: Entry[Procedure], text: Texts, number: int, step: Step
    ) -> dict[str, Any]:
        stage, do = split_stage(text(step.do))
        return {
            "content": step,
            "stage": stage,
            "stage_id": f"stage-{number + 1}",
            "do": do,
            "readings": expected_tables(self._values, self._library, entry, number),
            "decisions": self._decisions(entry, text, step.decide),
        }

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
            self._library.link(entry.address, f"work-out/{name}.md", say("with your own numbers"))
            for name, pages in self._calculators.items()
            if entry.address in pages
        ]
