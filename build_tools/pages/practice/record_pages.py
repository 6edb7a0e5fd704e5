"""The pages of a learner's record: what is due, the record, the sign-off sheet and the crew."""

from __future__ import annotations

from typing import Any
from urllib.parse import quote

from mkdocs.utils import get_relative_url

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.practice_models import FAMILIES, Exercise
from build_tools.content.skill_models import Skill
from build_tools.content.values import Values
from build_tools.pages.forms import page_url
from build_tools.pages.render import Library, Texts, render
from calculators.practice import crew, record, remembering, sign_off

TODAY, MY_RECORD = "practise/today.md", "practise/my-record.md"
SIGN_OFF, CREW = "trainers/sign-off.md", "trainers/crew.md"
EXERCISES, CALLS = "practise/exercises.md", "practise/a-call.md"
TITLES = {
    TODAY: "Due today",
    MY_RECORD: "My record",
    SIGN_OFF: "Sign-off sheet",
    CREW: "The crew",
}
#: What the lists of the sections' pages say of each: for who learns, and for who trains.
NOTES = {
    TODAY: "What comes back today, and two new items.",
    MY_RECORD: "What you can do so far; save it, load it, delete it.",
}
NOTES_FOR_TRAINERS = {
    SIGN_OFF: "What an observer must have seen, to print or to fill in here.",
    CREW: "All records beside each other: who can do what, and what many get wrong.",
}
#: The rules, in numbers that the pages print.
RULES = {
    "intervals": remembering.INTERVALS,
    "drop": remembering.DROP,
    "new": remembering.NEW,
    "old": remembering.OLD,
    "alone": sign_off.ALONE,
    "systems": sign_off.SYSTEMS,
    "heavy_systems": sign_off.HEAVY_SYSTEMS,
    "calls": sign_off.CALLS,
    "call_score": round(sign_off.CALL_SCORE * 100),
    "run": sign_off.RUN,
    "run_days": sign_off.RUN_DAYS,
    "months": sign_off.MONTHS,
    "recent": sign_off.RECENT,
    "fewest": crew.FEWEST,
    "longest": record.LONGEST_TEXT,
}


def has_record(handbook: Handbook) -> bool:
    """Tell whether the handbook has skills, and so the pages of a record."""
    return bool(handbook.skills)


class RecordPages:
    """Writes the pages around a learner's record; a handbook without skills has none of them."""

    def __init__(
        self, handbook: Handbook, values: Values, library: Library, runtime_folder: str
    ) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._runtime_folder = runtime_folder
        if has_record(handbook):
            for address, title in TITLES.items():
                library.name(address, title)

    def pages(self) -> dict[str, str]:
        """Return the Markdown of each page by its address."""
        if not has_record(self._handbook):
            return {}
        return {
            TODAY: self._page("due_today", TODAY, items=self._items(TODAY)),
            MY_RECORD: self._page("my_record", MY_RECORD),
            SIGN_OFF: self._page("sign_off", SIGN_OFF, sheet=self._sheet()),
            CREW: self._page("crew", CREW),
        }

    def _page(self, template: str, address: str, **names: Any) -> str:
        url = page_url(address)
        return render(
            template,
            runtime=get_relative_url(self._runtime_folder, url),
            skills=[self._skill(entry) for entry in self._handbook.skills.values()],
            levels=sign_off.LEVELS,
            rules=RULES,
            pages={
                name: self._library.link(address, one)["link"]
                for name, one in (
                    ("today", TODAY),
                    ("record", MY_RECORD),
                    ("sheet", SIGN_OFF),
                    ("crew", CREW),
                )
            },
            lead_on=[
                self._library.link(address, one)
                for one in (EXERCISES, CALLS)
                if self._library.knows(one)
            ],
            **names,
        )

    def _skill(self, entry: Entry[Skill]) -> dict[str, Any]:
        """Return a skill as `calculators.practice.sign_off` takes it."""
        exercises = [one for one in self._exercises() if one.content.skill == entry.id]
        families = sorted({one.content.family for one in exercises})
        return {
            "id": entry.id,
            "title": Texts(self._values, entry)(entry.content.title),
            "families": {name: FAMILIES[name] for name in families},
            "items": {
                **{one.id: self._library.title(one.address) for one in exercises},
                **{_call(name): _call_title(name) for name in entry.content.faults},
            },
            "safety": [one.id for one in exercises if _is_about_safety(one)],
            "faults": entry.content.faults,
            "heavy": entry.content.heavy,
        }

    def _items(self, base: str) -> list[dict[str, Any]]:
        """Return what can be due: each exercise, and a practice call of each group of faults."""
        shares: dict[str, float] = {}
        for fault in self._handbook.faults.values():
            share = fault.content.share_of_calls.quantity.number / 100
            shares[fault.id] = share
            group = _call(fault.content.group)
            shares[group] = shares.get(group, 0) + share
        items = [
            {
                "id": one.id,
                "family": one.content.family,
                "share": sum(shares.get(name, 0) for name in one.content.faults or ()),
                "title": self._library.title(one.address),
                "about": FAMILIES[one.content.family],
                "link": self._link(base, one.address),
            }
            for one in self._exercises()
        ]
        if self._library.knows(CALLS):
            groups = dict.fromkeys(one.content.group for one in self._handbook.faults.values())
            items += [
                {
                    "id": _call(group),
                    "family": group,
                    "share": shares[_call(group)],
                    "title": _call_title(group),
                    "about": "a home with a hidden fault",
                    "link": f"{self._link(base, CALLS)}?family={quote(group)}",
                }
                for group in sorted(groups)
            ]
        return items

    def _sheet(self) -> list[dict[str, Any]]:
        rows = []
        for entry in self._handbook.skills.values():
            text = Texts(self._values, entry)
            procedures = [f"procedures/{name}.md" for name in entry.content.procedures]
            rows.append(
                {
                    "id": entry.id,
                    "title": text(entry.content.title),
                    "seen": [text(one) for one in entry.content.seen],
                    "procedures": self._library.links_in_a_row(SIGN_OFF, procedures),
                    "heavy": entry.content.heavy,
                    "faults": ", ".join(entry.content.faults),
                }
            )
        return rows

    def _exercises(self) -> list[Entry[Exercise]]:
        return list(self._handbook.practice.values())

    def _link(self, base: str, address: str) -> str:
        """Return a link that a script writes, which MkDocs does not see."""
        return get_relative_url(page_url(address), page_url(base))


def _call(group: str) -> str:
    """Return the item under which practice calls of a group of faults come back."""
    return f"call: {group}"


def _call_title(group: str) -> str:
    return f"A practice call: {group.lower()}"


def _is_about_safety(exercise: Entry[Exercise]) -> bool:
    return any(pair.safety for pair in exercise.content.pairs or ())
