"""The pocket sheet: the arrival check in short, and the tables most used; one sheet, both sides.

All of it is taken from the content: nothing is typed for the sheet.
"""

from __future__ import annotations

import re
from typing import Any

from build_tools.content.addresses import POCKET_SHEET
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.models import PocketSheet
from build_tools.content.page_models import Decision, Procedure
from build_tools.content.stages import split_stage
from build_tools.content.values import Values
from build_tools.pages.carried_table import carried
from build_tools.pages.diagnosis_pages import DiagnosisPages
from build_tools.pages.render import Library, Texts, render
from build_tools.pages.standing_cautions import in_full

_LINK = re.compile(r"\[([^\]]*)\]\([^)]*\)")
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z“*])")
#: So many of the faults that a result speaks for stand beside it.
FAULTS = 2


def first_sentence(text: str) -> str:
    """Return the first sentence of a text, its links as plain words.

    >>> first_sentence("see [the unit](unit.md) at 2.4 gpm. Then go.")
    'See the unit at 2.4 gpm.'
    """
    first = _SENTENCE.split(_LINK.sub(r"\1", text), maxsplit=1)[0]
    return first[:1].upper() + first[1:]


def pocket_sheet(
    handbook: Handbook,
    values: Values,
    library: Library,
    diagnosis: DiagnosisPages,
    sheet: PocketSheet,
) -> str:
    """Return the page of the pocket sheet."""
    procedure = handbook.procedures[sheet.procedure]
    check = handbook.checks[sheet.check]
    text = Texts(values, check)
    return render(
        "pocket_sheet",
        shop=handbook.shop.content.name,
        procedure=library.link(POCKET_SHEET, procedure.address),
        cautions=in_full(handbook, values, procedure.content.cautions),
        stages=_stages(library, values, procedure),
        check=library.link(POCKET_SHEET, check.address),
        results=[
            {
                "label": text(result.label),
                "means": text(result.means),
                "faults": ", ".join(
                    "[{words}]({link})".format(**library.link(POCKET_SHEET, address))
                    for address, _ in diagnosis.spoken_for(check, result)[:FAULTS]
                ),
            }
            for result in check.content.results
        ],
        tables=[carried(values, POCKET_SHEET, handbook.tables[name]) for name in sheet.tables],
    )


def _stages(library: Library, values: Values, procedure: Entry[Procedure]) -> list[dict[str, Any]]:
    """Return the steps under the words of their stages; without such words, under none."""
    text = Texts(values, procedure)
    stages: list[dict[str, Any]] = []
    for number, step in enumerate(procedure.content.steps, 1):
        do = text(step.do)
        stage, do = split_stage(do)
        if stage or not stages:
            stages.append({"title": stage, "steps": []})
        decisions = [*step.decide]
        if number == len(procedure.content.steps):
            decisions += procedure.content.decide
        stages[-1]["steps"].append(
            {
                "number": number,
                "do": first_sentence(do),
                "decisions": [_decision(library, text, one) for one in decisions],
            }
        )
    return stages


def _decision(library: Library, text: Texts, decision: Decision) -> dict[str, str]:
    """Return what was found, and the page it leads to or else what follows."""
    found = _LINK.sub(r"\1", text(decision.found))
    if decision.go_to:
        link = library.link(POCKET_SHEET, f"{decision.go_to}.md")
        return {"found": found, "then": f"[{link['words']}]({link['link']})"}
    return {"found": found, "then": first_sentence(text(decision.then))}
