"""The page on which a practice call is worked through, and the knowledge that its script needs."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from mkdocs.utils import get_relative_url

from build_tools.content.addresses import A_CALL, link_to
from build_tools.content.handbook import Handbook
from build_tools.pages.call_page import CallPage
from build_tools.pages.forms import page_url
from build_tools.pages.render import Library, render
from calculators.practice import hidden_call, practice_call, scoring

ADDRESS, TITLE = A_CALL, "A practice call"
NOTE = "A home with a hidden fault: find it, repair it, and read what each reading was worth."
#: Where a learner may look something up while a call goes on.
LOOK_UP = {
    "Procedures": "procedures/index.md",
    "Find the cause": "faults/index.md",
    "Checks": "checks/index.md",
    "Work it out": "work-out/index.md",
}


def call_practice_page(
    handbook: Handbook, library: Library, call: CallPage, runtime_folder: str
) -> str:
    """Return the page's Markdown. call: what the page "Find the cause" is made from."""
    url = page_url(ADDRESS)
    stages = call.stages(ADDRESS)
    return render(
        "call_practice",
        title=TITLE,
        runtime=get_relative_url(runtime_folder, url),
        knowledge=get_relative_url(call.knowledge_address, url),
        units=handbook.units,
        jargon=sorted(
            {word for one in handbook.glossary.values() for word in one.content.spellings}
        ),
        causes={name: _cause(handbook, library, name) for name in handbook.faults},
        groups=_groups(handbook, library),
        parts=_parts(call),
        stages=stages,
        look_up={words: link_to(ADDRESS, address) for words, address in LOOK_UP.items()},
        rules=_rules(),
    )


def _cause(handbook: Handbook, library: Library, name: str) -> dict[str, Any]:
    """Return a cause's title, and where the debrief links to."""
    entry = handbook.faults[name]

    def links(folder: str, names: list[str]) -> list[dict[str, str]]:
        return [_link(library, f"{folder}/{one}.md") for one in names]

    return {
        **_link(library, entry.address),
        "procedures": links("procedures", entry.content.procedures),
        "lessons": links("learn", entry.content.learn),
    }


def _link(library: Library, address: str) -> dict[str, str]:
    """Return a link that a script writes, which MkDocs does not see."""
    return {
        "title": library.title(address),
        "link": get_relative_url(page_url(address), page_url(ADDRESS)),
    }


def _groups(handbook: Handbook, library: Library) -> list[dict[str, Any]]:
    """Return the groups of faults with their faults, all by their titles."""
    ordered = sorted(
        handbook.faults.values(),
        key=lambda one: (one.content.group, library.title(one.address).lower()),
    )
    return [
        {
            "title": group,
            "faults": [{"id": one.id, "title": library.title(one.address)} for one in members],
        }
        for group, members in groupby(ordered, key=lambda one: one.content.group)
    ]


def _parts(call: CallPage) -> list[str]:
    """Return all parts that repairs may need."""
    faults = call.data["faults"].values()
    return sorted({part for fault in faults for part in fault["parts"]}, key=str.lower)


def _rules() -> dict[str, Any]:
    """Return the numbers of the rules that the page prints."""
    return {
        "two": round(hidden_call.TWO_SHARE * 100),
        "none": round(hidden_call.NONE_SHARE * 100),
        "consent": round(practice_call.CONSENT),
        "safe": round(practice_call.MAKING_SAFE),
        "stop": round(practice_call.STOPPING),
        "cause": scoring.CAUSE,
        "remedy": scoring.REMEDY + scoring.CLOSING,
        "economy": scoring.ECONOMY,
        "confidence": scoring.CONFIDENCE,
        "safety": scoring.SAFETY,
        "words": scoring.WORDS,
        "group": round(scoring.CAUSE * scoring.RIGHT_GROUP),
        "effect": round(scoring.CAUSE * scoring.EFFECT),
        "part": scoring.GOOD_PART,
        "destroyed": scoring.DESTROYED,
        "wrong": scoring.WRONG_CAUSE,
        "most": scoring.CRITICAL_MOST,
    }
