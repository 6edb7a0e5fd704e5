"""The figures that picture blocks become."""

from __future__ import annotations

from functools import cached_property
from urllib.parse import urlencode

from build_tools.content.both_systems import compares_units
from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Picture
from build_tools.content.pictures import CAUSES, drawn
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge
from build_tools.language.speaking import drawn_in_words
from build_tools.pages.render import Library, Texts, render
from calculators import CALCULATORS
from calculators.diagnosis import Knowledge
from calculators.diagnosis.call import Call
from calculators.diagnosis.standing import Standing
from calculators.figures.causes import causes_picture


class Pictures:
    """Writes the figure of each picture block."""

    def __init__(self, handbook: Handbook, values: Values, library: Library) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library

    def figure(self, entry: Entry[Picture]) -> str:
        """Return a picture with its caption, and a link to the calculator that it is from."""
        content = entry.content
        if content.drawing == CAUSES:
            svg = self._causes(content)
        else:
            svg, _ = drawn(self._values, entry)
        return render(
            "picture",
            text=Texts(self._values, entry),
            picture=content,
            svg=drawn_in_words(svg),
            kept=content.calculate and compares_units(CALCULATORS[content.calculate]),
            link=self._form(entry) if content.calculate else "",
            remark=self._library.remark(f"work-out/{content.calculate}.md"),
        )

    def _form(self, entry: Entry[Picture]) -> str:
        """Return the link to the calculator's form with what the picture is given in it."""
        name = entry.content.calculate
        page = self._library.link(entry.address, f"work-out/{name}.md")["link"]
        given = {f"{name}.{one}": text for one, text in entry.content.given.items()}
        return f"{page}?{urlencode(given)}#{name}" if given else f"{page}#{name}"

    @cached_property
    def _knowledge(self) -> Knowledge:
        return knowledge(self._handbook)

    def _causes(self, content: Picture) -> str:
        known = self._knowledge
        complaint, findings = content.given["complaint"], content.given.get("findings", {})
        before, after = (
            Standing(known, Call(known, call))
            for call in ({"complaint": complaint}, {"complaint": complaint, "readings": findings})
        )
        found = [self._found(COMPLAINT, complaint)]
        found += [self._found(check, result) for check, result in findings.items()]
        return causes_picture(
            found,
            [
                (self._library.title(f"faults/{name}.md"), before.causes[name], after.causes[name])
                for name in after.ranking
            ],
            (before.unknown, after.unknown),
        )

    def _found(self, check: str, result: str) -> str:
        entry = self._handbook.checks[check]
        label = Texts(self._values, entry)(entry.content.result(result).label)
        return f"{self._library.title(entry.address)}: {label}"
