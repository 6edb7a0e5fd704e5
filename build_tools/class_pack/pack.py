"""A whole pack: posed, printed and packed for learning systems, then written into a folder."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from build_tools.class_pack import sheets
from build_tools.class_pack.choosing import checked_codes, chosen_exercises, drawn_codes
from build_tools.class_pack.learning.items import Item
from build_tools.class_pack.learning.package import files, zipped
from build_tools.class_pack.pdf import printed
from build_tools.class_pack.posed import Posed, posed
from build_tools.class_pack.posed_call import PosedCall
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.practice_models import Exercise
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge_data
from build_tools.pages.standing_cautions import in_full
from build_tools.practice.exercise_data import exercise_data
from build_tools.set_up.failure import Failure
from calculators.diagnosis import Knowledge
from calculators.practice.calls import Calls
from calculators.practice.drawing import CannotBePosed

#: A folder with this file is a pack, and nothing else is ever written over.
SIGN = "class-pack.json"
QUESTIONS, KEY, INDEX, LEARNING = "questions", "key", "index.html", "for-learning-systems"
_OWN = re.compile(rf"index\.html|({QUESTIONS}|{KEY})\.(html|pdf)|{LEARNING}/sheet-\d+\.zip")
#: By page: how its sheets are called, and what stands at the top right of each.
HEADS = {
    QUESTIONS: ("Sheet", "Name: ______________________"),
    KEY: ("Key to sheet", "Answer key"),
    "index": ("Sheet", ""),
}
WORDS = {
    "questions.html": "the question sheets, to print",
    "questions.pdf": "the same, ready to print",
    "key.html": "the answers with their workings, a key for each sheet",
    "key.pdf": "the same, ready to print",
}


class Wanted:
    """What a pack is asked to hold. edition: a day as "2026-05-01", or ""; address: of the site."""

    def __init__(
        self,
        seed: str,
        *,
        people: int = 1,
        exercises: Sequence[str] = (),
        families: Sequence[str] = (),
        calls: Sequence[str] = (),
        units: str = "",
        edition: str = "",
        address: str = "",
    ) -> None:
        self.seed = seed
        self.people = people
        self.exercises, self.families, self.calls = exercises, families, calls
        self.units, self.edition = units, edition
        self.address = f"{address.rstrip('/')}/" if address else ""

    @property
    def mixed(self) -> bool:
        """Whether nothing was chosen."""
        return not (self.exercises or self.families or self.calls)

    @property
    def line(self) -> str:
        """What stands at the foot of every page."""
        day = f"edition of {self.edition}" if self.edition else "edition without a date"
        return f"seed {self.seed}, {day}"


class Sheet:
    """What one person gets."""

    def __init__(self, number: int, exercises: list[Posed], calls: list[PosedCall]) -> None:
        self.number = number
        self.exercises = exercises
        self.calls = calls


class Pack:
    """The sheets of a pack. Raises Failure for what cannot be had."""

    def __init__(self, handbook: Handbook, wanted: Wanted) -> None:
        self.wanted = wanted
        self.units = wanted.units or handbook.units
        if self.units != handbook.units:
            handbook = handbook.in_the_other_system()
        self._handbook, self._values = handbook, Values(handbook)
        self._knowledge = Knowledge(knowledge_data(handbook))
        self._calls = Calls(self._knowledge)
        named = wanted.mixed or wanted.exercises or wanted.families
        self._entries = (
            chosen_exercises(handbook, wanted.seed, wanted.exercises, wanted.families)
            if named
            else []
        )
        if wanted.mixed and not self._entries:
            raise Failure("This handbook has no exercises to make a pack of.")
        self._codes = checked_codes(self._knowledge, wanted.calls)
        self._data = [self._plain(one) for one in self._entries]
        self.sheets = [self._sheet(number) for number in range(1, wanted.people + 1)]

    def _plain(self, entry: Entry[Exercise]) -> dict[str, Any]:
        data, report = exercise_data(entry, self._values)
        if report:
            raise Failure(
                f'The exercise "{entry.id}" has a problem: the command check tells which.'
            )
        return data

    def _sheet(self, number: int) -> Sheet:
        seed = f"{self.wanted.seed}-{number}"
        made = []
        for entry, data in zip(self._entries, self._data, strict=True):
            try:
                one = posed(data, seed, self.units, self._knowledge)
            except CannotBePosed:
                raise Failure(
                    f'No clear question comes of the exercise "{entry.id}" with the seed {seed}: '
                    "take another seed."
                ) from None
            one.cautions = in_full(self._handbook, self._values, entry.content.cautions)
            made.append(one)
        codes = drawn_codes(self._calls, seed) if self.wanted.mixed else self._codes
        calls = [PosedCall(self._knowledge, code, self.units) for code in codes if code]
        return Sheet(number, made, calls)

    # As files

    def pages(self) -> dict[str, str]:
        """Return the printed pages by the names of their files."""
        return {f"{name}.html": self._page(name, sheets=self.sheets) for name in (QUESTIONS, KEY)}

    def _page(self, template: str, **names: Any) -> str:
        shop = self._handbook.shop
        title = f"{shop.content.name if shop else 'Handbook'}: practice"
        pack = {
            "shop": sheets.in_style(title),
            "foot": sheets.in_style(self.wanted.line),
            "title": title,
            "line": self.wanted.line,
            "people": self.wanted.people,
            "address": self.wanted.address,
        }
        kind, right = HEADS[template]
        return sheets.page(template, pack=pack, kind=kind, right=right, **names)

    def packages(self) -> dict[str, bytes]:
        """Return a package for learning systems for each sheet that has exercises."""
        made = {}
        for sheet in self.sheets:
            items = [
                Item(one, sheet.number, one.cautions, self.wanted.address)
                for one in sheet.exercises
            ]
            if items:
                title = f"Practice sheet {sheet.number}, {self.wanted.line}"
                name = f"{LEARNING}/sheet-{sheet.number:02d}.zip"
                made[name] = zipped(files(items, sheet.number, title))
        return made

    def index(self, names: Sequence[str]) -> str:
        """Return the page that tells what is in the folder."""
        listed = [
            {"name": name, "words": WORDS.get(name, "the questions for learning systems")}
            for name in names
        ]
        return self._page("index", sheets=self.sheets, files=listed)


def make_room(folder: Path) -> None:
    """Make a folder ready for a pack; an older pack's files go. Raises Failure for another folder."""
    if folder.is_file():
        raise Failure(f"{folder} is a file: name a folder.")
    sign = folder / SIGN
    if folder.is_dir() and any(folder.iterdir()) and not sign.is_file():
        raise Failure(
            f"The folder {folder} holds something other than a class pack, and a pack writes over "
            "what it finds: name a new or an empty one."
        )
    if sign.is_file():
        for name in _listed(sign):
            (folder / name).unlink(missing_ok=True)
        sign.unlink()
    (folder / LEARNING).mkdir(parents=True, exist_ok=True)


def _listed(sign: Path) -> list[str]:
    """Return the files that an older pack wrote, none that lies outside its folder."""
    try:
        names = json.loads(sign.read_text("utf-8"))["files"]
    except (ValueError, KeyError, TypeError):
        raise Failure(f"{sign} cannot be read: name another folder.") from None
    return [name for name in names if isinstance(name, str) and _OWN.fullmatch(name)]


def write(pack: Pack, folder: Path, browser: str | None, say: Callable[[str], None]) -> list[str]:
    """Write a pack into a folder; return the names of its files."""
    content: dict[str, bytes] = {name: text.encode("utf-8") for name, text in pack.pages().items()}
    content |= pack.packages()
    make_room(folder)
    for name, data in content.items():
        (folder / name).write_bytes(data)
    if browser:
        for name in (QUESTIONS, KEY):
            data = printed(browser, folder / f"{name}.html", pack.wanted.edition)
            (folder / f"{name}.pdf").write_bytes(data)
            content[f"{name}.pdf"] = data
    else:
        say("No PDF files: print questions.html and key.html from a browser.")
    names = sorted(content)
    (folder / INDEX).write_text(pack.index(names), "utf-8", newline="\n")
    names = [INDEX, *names]
    kept = {
        "seed": pack.wanted.seed,
        "edition": pack.wanted.edition,
        "people": pack.wanted.people,
        "units": pack.units,
        "exercises": [one.exercise["id"] for one in pack.sheets[0].exercises],
        "calls": [[call.code for call in sheet.calls] for sheet in pack.sheets],
        "files": names,
    }
    (folder / SIGN).write_text(json.dumps(kept, indent=2) + "\n", "utf-8", newline="\n")
    return names
