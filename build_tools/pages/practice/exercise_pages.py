"""The pages of exercises: one each, with an example that stands without scripts, and their list."""

from __future__ import annotations

from functools import cached_property
from itertools import groupby
from typing import Any

from mkdocs.utils import get_relative_url

from build_tools.content import unit_marks
from build_tools.content.both_systems import compares_units
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.practice_models import FAMILIES, Exercise
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge
from build_tools.pages.forms import page_url
from build_tools.pages.render import Library, render
from build_tools.pages.standing_cautions import in_full
from build_tools.practice.exercise_data import exercise_data
from build_tools.practice.printed import printed
from calculators import CALCULATORS
from calculators.diagnosis import Knowledge

ADDRESS, TITLE = "practise/exercises.md", "Exercises"
NOTE = "Work with fresh numbers each time, and see at once where a slip came from."
#: What is done in an exercise of each kind.
KINDS = {
    "number": "a number to work out",
    "pair": "two samples to read",
    "settings": "a whole sheet to work out",
    "order": "steps to put in order",
    "evidence": "readings to weigh",
}


class ExercisePages:
    """Writes the page of each exercise; a handbook without exercises has none.

    knowledge_address: where in the site the diagnosis's knowledge lies.
    """

    def __init__(
        self,
        handbook: Handbook,
        values: Values,
        library: Library,
        runtime_folder: str,
        knowledge_address: str,
    ) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._runtime_folder = runtime_folder
        self._knowledge_address = knowledge_address
        if handbook.practice:
            library.name(ADDRESS, TITLE)

    def pages(self) -> dict[str, str]:
        """Return the Markdown of each page by its address."""
        if not self._handbook.practice:
            return {}
        ordered = in_order(self._handbook)
        following = [*ordered[1:], None]
        pages = {
            one.address: self._page(one, after)
            for one, after in zip(ordered, following, strict=True)
        }
        pages[ADDRESS] = render(
            "exercises",
            title=TITLE,
            groups=[
                {
                    "title": family,
                    "cards": [self._library.link(ADDRESS, *member) for member in members],
                }
                for family, members in by_family(self._handbook)
            ],
        )
        return pages

    def _page(self, entry: Entry[Exercise], following: Entry[Exercise] | None) -> str:
        data, _ = exercise_data(entry, self._values)
        units = self._handbook.units
        library = self._knowledge if entry.content.kind == "evidence" else None
        url = page_url(entry.address)
        needed = self._knowledge_address if library else ""
        question, solution = self._values.origins.made_from(
            data, lambda plain: _example(plain, units, library)
        )
        compares = any(
            compares_units(CALCULATORS[one["calculate"]]) for one in data.get("steps", ())
        )
        return render(
            "exercise",
            title=data["title"],
            kind=KINDS[entry.content.kind],
            runtime=get_relative_url(self._runtime_folder, url),
            knowledge=get_relative_url(needed, url) if needed else "",
            units=units,
            exercise=data,
            kept=unit_marks.kept,
            as_given=unit_marks.kept if compares else str,
            cautions=in_full(self._handbook, self._values, entry.content.cautions),
            question=question,
            **solution,
            lessons=self._links(entry, "learn", entry.content.learn),
            procedures=self._links(entry, "procedures", entry.content.procedures),
            following=following and self._library.link(entry.address, following.address),
        )

    @cached_property
    def _knowledge(self) -> Knowledge:
        return knowledge(self._handbook)

    def _links(self, entry: Entry[Any], folder: str, names: list[str]) -> list[dict[str, str]]:
        return [self._library.link(entry.address, f"{folder}/{name}.md") for name in names]


def _example(exercise: dict[str, Any], units: str, library: Knowledge | None) -> tuple[Any, Any]:
    """Return the printed question of an exercise and its solution."""
    example = printed(exercise, units, library)
    return example.question, example.solved


def in_order(handbook: Handbook) -> list[Entry[Exercise]]:
    """Return the exercises by family, in the order in which the list shows them."""
    families = list(FAMILIES)
    return sorted(
        handbook.practice.values(),
        key=lambda one: (families.index(one.content.family), one.content.order, one.id),
    )


def by_family(handbook: Handbook) -> list[tuple[str, list[tuple[str, str]]]]:
    """Return the addresses of the exercises with what is done in each, in their families."""
    return [
        (FAMILIES[family], [(one.address, KINDS[one.content.kind]) for one in members])
        for family, members in groupby(in_order(handbook), key=lambda one: one.content.family)
    ]
