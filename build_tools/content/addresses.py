"""Which pages the handbook has, and which anchors each of them has.

Links are written between source files, as if every YAML page were a Markdown file in its folder.
The templates give each part of a page the anchor that is told here.
"""

from __future__ import annotations

import posixpath
from typing import Any

from build_tools.content import conversions
from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.entries import Entry, Page
from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS, SECTIONS, page_folder
from calculators import CALCULATORS
from calculators.quantities import KINDS

REFERENCE = (
    "tables",
    "conversions",
    "glossary",
    "abbreviations",
    "numbers",
    "sources",
    "units",
    "cautions",
    "shop",
    "on-this-phone",
)

#: The pages of a learner's record, where the handbook has skills.
OF_RECORD = (
    "practise/index.md",
    "practise/today.md",
    "practise/my-record.md",
    "trainers/sign-off.md",
    "trainers/crew.md",
)

POCKET_SHEET = "reference/pocket-sheet.md"
A_CALL = "practise/a-call.md"

#: Anchors of the page Learn, where the handbook has paths.
SHORT_PATHS, ALL_LESSONS = "short-paths", "all-lessons"


def has_calls(handbook: Handbook) -> bool:
    """Tell whether practice calls can be drawn: from complaints, and a fault to simulate."""
    return COMPLAINT in handbook.checks and any(
        one.content.simulation for one in handbook.faults.values()
    )


def has_pocket_sheet(handbook: Handbook) -> bool:
    """Tell whether the shop has a pocket sheet, or may have one in a file that failed to load."""
    return handbook.shop is None or handbook.shop.content.pocket_sheet is not None


def is_section_index(address: str) -> bool:
    """Tell whether a page is the home page or the index of a section."""
    return posixpath.basename(address) == "index.md"


def addresses(handbook: Handbook) -> set[str]:
    """Return the address of every page, also of those whose file failed to load."""
    folders = [*map(page_folder, SECTIONS), "learn", "work-out", "reference", "trainers"]
    return {
        *handbook.ids.get("markdown", ()),
        *(
            f"{page_folder(folder)}/{name}.md"
            for folder in SECTIONS
            for name in handbook.names(folder)
            if folder != "equipment" or name not in handbook.example_units
        ),
        *(f"work-out/{name}.md" for name in CALCULATORS),
        *(f"reference/{name}.md" for name in REFERENCE),
        "faults/what-customers-say.md",
        *(OF_RECORD if handbook.names("skills") else []),
        *(["practise/exercises.md"] if handbook.names("practice") else []),
        *([POCKET_SHEET] if has_pocket_sheet(handbook) else []),
        *([A_CALL, "practise/index.md"] if has_calls(handbook) else []),
        *(f"{folder}/index.md" for folder in folders),
    }


def anchors(handbook: Handbook, address: str) -> set[str] | None:
    """Return the anchors of a page, or None when its file failed to load or it is generated whole.

    A page made from YAML has one for each key ("customer-says"), each step ("step-3") and each
    result of a check ("hot-harder").
    """
    folder, _, name = address.removesuffix(".md").rpartition("/")
    if address in handbook.pages or (folder == "learn" and name in handbook.lessons):
        page = handbook.pages.get(address) or handbook.lessons[name]
        paths = handbook.names("paths") if address == LISTS["paths"][1] else set()
        return _markdown_anchors(page) | paths | ({SHORT_PATHS, ALL_LESSONS} if paths else set())
    if folder in SECTIONS:
        entry = getattr(handbook, folder).get(name)
        return _yaml_anchors(entry) if entry else None
    if folder == "reference":
        if name in handbook.unread or (name == "numbers" and "facts" in handbook.unread):
            return None
        return {
            "numbers": handbook.names("facts"),
            "sources": handbook.names("sources"),
            "cautions": handbook.names("cautions"),
            "tables": handbook.names("tables"),
            "glossary": handbook.names("glossary"),
            "units": {kind.replace(" ", "-") for kind in KINDS},
            "conversions": {
                *map(conversions.anchor, conversions.OWN_TABLES),
                conversions.OTHERS,
                conversions.COMMON,
                "temperature",
            },
        }.get(name)
    if address == LISTS["skills"][1]:
        return {*handbook.names("skills"), "what-signs-a-skill-off"}
    return None


def _markdown_anchors(page: Page) -> set[str]:
    return page.body_passage.markdown.anchors | {block.id for _, _, block in page.blocks}


def _yaml_anchors(entry: Entry[Any]) -> set[str]:
    found = {key.replace("_", "-") for key in entry.yaml.data}
    steps = getattr(entry.content, "steps", [])
    results = {one.name for one in getattr(entry.content, "results", [])}
    return found | results | {f"step-{number}" for number in range(1, len(steps) + 1)}


def target_of(base: str, link: str) -> tuple[str, str]:
    """Return the address and the anchor that a link on the page `base` leads to."""
    path, _, anchor = link.partition("#")
    if not path:
        return base, anchor
    return posixpath.normpath(posixpath.join(posixpath.dirname(base), path)), anchor


def link_to(base: str, address: str) -> str:
    """Return the relative link from the page `base` to an address."""
    return posixpath.relpath(address, posixpath.dirname(base) or ".")
