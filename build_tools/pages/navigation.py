"""The sections of the site: their order, their index pages and the navigation."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import groupby
from typing import Any, get_args

from build_tools.content.addresses import A_CALL, has_calls
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import ProcedureGroup
from build_tools.content.values import Values
from build_tools.language.speaking import say
from build_tools.pages import guides, measured_page
from build_tools.pages.diagnosis_pages import checks_in_order
from build_tools.pages.practice import call_practice_page, exercise_pages, record_pages
from build_tools.pages.reference_pages import titles
from build_tools.pages.render import Library, Texts
from build_tools.pages.sayings_page import SAYINGS
from calculators import GROUPS


@dataclass(frozen=True)
class Section:
    """A section of the site: its folder, its title, and its pages in groups with their notes.

    listed_above: whether the page of the section around it lists its pages too; note: what that page
    says of this one, where it lists it as one page. page: the section's own page, if not the index.
    """

    folder: str
    title: str
    groups: list[tuple[str, list[tuple[str, str]]]]
    subsections: list[Section] = field(default_factory=list)
    listed_above: bool = True
    note: str = ""
    page: str = ""

    @property
    def index(self) -> str:
        """The address of the section's own page."""
        return self.page or f"{self.folder}/index.md"

    @property
    def addresses(self) -> list[str]:
        """The addresses of the section's pages, in order."""
        return [address for _, pages in self.groups for address, _ in pages]


def sections(handbook: Handbook, values: Values) -> list[Section]:
    """Return the sections in the order in which the site shows them."""

    def noted(entries: Any, note: str) -> list[tuple[str, str]]:
        return [
            (one.address, Texts(values, one, one)(getattr(one.content, note))) for one in entries
        ]

    lessons = handbook.lessons_in_order
    faults = sorted(handbook.faults.values(), key=lambda one: one.content.group)
    by_group = groupby(faults, key=lambda one: one.content.group)
    in_order = sorted(handbook.procedures.values(), key=lambda one: one.content.order)
    procedures = [
        (group, noted([one for one in in_order if one.content.group == group], "goal"))
        for group in get_args(ProcedureGroup)
    ]
    calculators = [
        (group, [(f"work-out/{one.name}.md", one.question) for one in members])
        for group, members in GROUPS.items()
    ]
    checks = Section(
        "checks",
        say("Checks"),
        [
            (stage.capitalize(), [(one.address, _first_step(values, one)) for one in members])
            for stage, members in groupby(
                checks_in_order(handbook), key=lambda one: one.content.stage
            )
        ],
        listed_above=False,
    )
    equipment = Section("equipment", say("Equipment"), [("", noted(handbook.carried, "summary"))])
    calls = [(A_CALL, call_practice_page.NOTE)] if has_calls(handbook) else []
    records = record_pages.NOTES.items() if record_pages.has_record(handbook) else []
    practice = [*calls, *records]
    exercises = Section(
        "practise",
        exercise_pages.TITLE,
        exercise_pages.by_family(handbook),
        listed_above=False,
        note=exercise_pages.NOTE,
        page=exercise_pages.ADDRESS,
    )
    people = record_pages.NOTES_FOR_TRAINERS if record_pages.has_record(handbook) else {}
    trainers = {**guides.addresses(), **people, measured_page.ADDRESS: measured_page.NOTE}
    below = [exercises] if handbook.practice else []
    practise = [Section("practise", say("Practise"), [("", practice)], subsections=below)]
    return [
        Section("learn", say("Learn"), [("", noted(lessons, "aim"))]),
        Section("procedures", say("Procedures"), [one for one in procedures if one[1]]),
        Section(
            "faults",
            say("Find the cause"),
            [
                ("", [(SAYINGS, say("Every saying, and the fault that it may come from."))]),
                *(
                    (group, [(one.address, _sayings(values, one)) for one in members])
                    for group, members in by_group
                ),
            ],
            subsections=[checks],
        ),
        Section("work-out", say("Work it out"), calculators),
        *(practise if practice or below else []),
        Section(
            "reference",
            say("Reference"),
            [("", [(address, "") for address in titles(handbook)])],
            subsections=[equipment],
        ),
        Section(guides.FOLDER, say("For trainers"), [("", [*trainers.items()])]),
    ]


def _sayings(values: Values, fault: Any) -> str:
    text = Texts(values, fault)
    return " ".join(f"“{text(saying)}”" for saying in fault.content.customer_says[:2])


def _first_step(values: Values, check: Any) -> str:
    return Texts(values, check)(check.content.how[0])


def navigation(handbook: Handbook, found: list[Section], library: Library) -> list[Any]:
    """Return the `nav` of MkDocs."""
    extra = [address for address in handbook.pages if not _belongs(address, found)]
    home: list[Any] = ["index.md"]
    home += [{library.title(address): address} for address in extra if address != "index.md"]
    return [{say("Home"): home}, *(_tree(section, library) for section in found)]


def _belongs(address: str, found: list[Section]) -> bool:
    indexes = {one.index for section in found for one in (section, *section.subsections)}
    return address in indexes


def _tree(section: Section, library: Library) -> dict[str, Any]:
    pages: list[Any] = []
    for group, members in section.groups:
        titled = [{library.title(address): address} for address, _ in members]
        pages += [{group: titled}] if group else titled
    below = [_tree(one, library) for one in section.subsections]
    return {section.title: [section.index, *pages, *below]}
