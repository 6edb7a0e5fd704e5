"""All pages of the site from the loaded handbook, in one pass."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from build_tools.content.addresses import A_CALL, POCKET_SHEET, has_calls
from build_tools.content.handbook import Handbook
from build_tools.content.leads import pages_by_calculator
from build_tools.content.values import Values
from build_tools.embedding.files import page_address
from build_tools.language.pages import language_sites
from build_tools.pages import guides, measured_page
from build_tools.pages.calculator_pages import CalculatorPages
from build_tools.pages.call_page import CallPage
from build_tools.pages.content_pages import ContentPages
from build_tools.pages.diagnosis_pages import DiagnosisPages
from build_tools.pages.forms import Forms
from build_tools.pages.navigation import Section, navigation, sections
from build_tools.pages.path_list import ADDRESS as LEARN
from build_tools.pages.path_list import with_paths
from build_tools.pages.pocket_sheet import pocket_sheet
from build_tools.pages.practice import call_practice_page
from build_tools.pages.practice.exercise_pages import ExercisePages
from build_tools.pages.practice.record_pages import RecordPages
from build_tools.pages.reference_pages import ReferencePages
from build_tools.pages.related import Related
from build_tools.pages.render import Library, render
from build_tools.pages.sayings_page import SAYINGS, TITLE, sayings_page
from calculators import CALCULATORS


@dataclass(frozen=True)
class Site:
    """What the site is made of, beside what is copied into it.

    pages: the Markdown of every page by its address. files: other texts by theirs. bare_forms: the
    forms of bare pages, by calculator. languages: the codes of those that have pages, beside English.
    """

    pages: dict[str, str]
    nav: list[Any]
    bare_forms: dict[str, str]
    files: dict[str, str]
    languages: list[str]


def write_site(
    handbook: Handbook, values: Values, runtime_folder: str, site_url: str | None
) -> Site:
    """Return the site of a handbook without problems.

    values: knows every use of a fact once the checks have run. runtime_folder: where in the site
    the browser's Python lies. site_url: the site's address, where the build knows it.
    """
    library = Library(handbook, values)
    forms = Forms(values, runtime_folder)
    used = pages_by_calculator(handbook)
    content = ContentPages(handbook, values, library, forms, used)
    diagnosis = DiagnosisPages(handbook, values, library)
    call = CallPage(handbook, values, library, runtime_folder)
    calculators = CalculatorPages(handbook, library, forms, site_url)
    reference = ReferencePages(handbook, values, library)
    records = RecordPages(handbook, values, library, runtime_folder)
    exercises = ExercisePages(handbook, values, library, runtime_folder, call.knowledge_address)
    library.name(SAYINGS, TITLE)
    library.name(measured_page.ADDRESS, measured_page.TITLE)
    if has_calls(handbook):
        library.name(A_CALL, call_practice_page.TITLE)
    found = sections(handbook, values)
    lessons = handbook.lessons_in_order
    pages = {entry.address: content.procedure(entry) for entry in handbook.procedures.values()}
    pages |= {entry.address: diagnosis.fault(entry) for entry in handbook.faults.values()}
    pages |= {entry.address: diagnosis.check(entry) for entry in handbook.checks.values()}
    pages |= {entry.address: content.equipment(entry) for entry in handbook.equipment.values()}
    for lesson, following in zip(lessons, [*lessons[1:], None], strict=True):
        pages[lesson.address] = content.lesson(lesson, following)
    pages |= {page.address: content.body(page) for page in handbook.pages.values()}
    pages |= {f"work-out/{one.name}.md": calculators.page(one) for one in CALCULATORS.values()}
    causes = "faults/index.md"
    body = pages.get(causes, "# Find the cause\n")
    pages[causes] = diagnosis.find_the_cause(causes, body, call.section(causes))
    pages[SAYINGS] = sayings_page(handbook, values, library)
    if has_calls(handbook):
        pages[A_CALL] = call_practice_page.call_practice_page(
            handbook, library, call, runtime_folder
        )
    pages |= records.pages() | guides.pages(library)
    pages[measured_page.ADDRESS] = measured_page.measured_page(handbook)
    pages[LEARN] = with_paths(handbook, values, library, pages.get(LEARN, "# Learn\n"))
    for section in found:
        for one in (section, *section.subsections):
            pages[one.index] = _index(one, pages.get(one.index), library)
    pages |= exercises.pages()
    if sheet := handbook.shop.content.pocket_sheet:
        pages[POCKET_SHEET] = pocket_sheet(handbook, values, library, diagnosis, sheet)
    related = Related(handbook, library)
    pages = {address: related.with_lists(address, text) for address, text in pages.items()}
    pages |= reference.pages()
    bare_forms = {
        name: forms.of_calculator(one, page_address(one)) for name, one in CALCULATORS.items()
    }
    others = list(language_sites(handbook, values, library, runtime_folder))
    for one in others:
        pages |= one.pages
    nav = [*navigation(handbook, found, library), *(one.nav for one in others)]
    files = {call.knowledge_address: call.knowledge}
    return Site(pages, nav, bare_forms, files, [one.code for one in others])


def _index(section: Section, body: str | None, library: Library) -> str:
    """Return a section's own page: what its author wrote, then a list of its pages."""
    groups = [
        {
            "title": title,
            "cards": [library.link(section.index, address, note) for address, note in members],
        }
        for title, members in section.groups
    ]
    noted = [(one.index, one.note) for one in section.subsections if one.note]
    if noted:
        cards = [library.link(section.index, address, note) for address, note in noted]
        if not groups or groups[0]["title"]:
            groups.insert(0, {"title": "", "cards": []})
        groups[0]["cards"] += cards
    groups += [
        {
            "title": one.title,
            "cards": [library.link(section.index, address, note) for address, note in members],
        }
        for one in section.subsections
        if one.listed_above
        for _, members in one.groups
    ]
    return render("section", body=body or f"# {section.title}\n", groups=groups)
