"""Why a number or a text is another one: which cause changed between the two editions."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from build_tools.comparing.causes import DIGESTS
from build_tools.comparing.differences import Change, NumberChange

TEXT, TOOL, UNITS = "text", "tool", "units of the readers"


@dataclass(frozen=True)
class Reason:
    """A cause that changed. old, new: its values, "" where it has none to show."""

    kind: str
    words: str
    file: str
    old: str = ""
    new: str = ""

    @property
    def name(self) -> str:
        """What it is called, with its file."""
        return f"{self.words} in {self.file}" if self.words else self.file

    def as_data(self) -> dict[str, Any]:
        """Return it as plain data; no value is null."""
        return {
            "kind": self.kind,
            "name": self.words or None,
            "file": self.file or None,
            "old": self.old or None,
            "new": self.new or None,
        }


class Explanation:
    """Finds the reasons of changes between two records."""

    def __init__(self, old: dict[str, Any], new: dict[str, Any]) -> None:
        self._old = old
        self._new = new
        self._reasons = {
            name: reason
            for name in {*old["causes"], *new["causes"]}
            if (reason := self._reason(old["causes"].get(name), new["causes"].get(name)))
        }
        names = {*old["files"], *new["files"]}
        self._files = sorted(
            name for name in names if old["files"].get(name) != new["files"].get(name)
        )
        self._values = {
            cause["file"] for record in (old, new) for cause in record["causes"].values()
        }

    def of(self, change: Change, old_page: str | None, new_page: str | None) -> tuple[Reason, ...]:
        """Return the reasons of a change on a page, the same under both addresses or not.

        What a number rests on explains another value of it. Where a number or a text came or went,
        or words are others, a calculator may have said so; else the page's own text is first asked.
        """
        file = self._file_of(old_page, new_page)
        own = [Reason(TEXT, "the text", file)] if file in self._files else []
        sides = [(self._old, change.old), (self._new, change.new)]
        if isinstance(change, NumberChange):
            blocks = [(record, side and side[0]) for record, side in sides]
            numbers = [(record, side[1].mark) for record, side in sides if side]
        else:
            blocks = sides
            numbers = [(record, one.mark) for record, side in sides if side for one in side.numbers]
        said = self._changed((record, mark) for record, one in blocks if one for mark in one.marks)
        rested_on = self._changed(numbers)
        if isinstance(change, NumberChange) and change.old and change.new:
            ordered = (rested_on, own)
        elif said:
            ordered = ([*said, *(one for one in own if file not in {by.file for by in said})],)
        else:
            ordered = (own, rested_on)
        for found in (*ordered, self._elsewhere(new_page or old_page or "")):
            if found:
                return tuple(found)
        return ()

    def _changed(self, marks: Iterable[tuple[dict[str, Any], str]]) -> list[Reason]:
        """Return the causes behind marks that changed, each mark with the record that it is of."""
        names = {name for record, mark in marks if mark for name in _causes(record, mark)}
        found = {self._reasons[name] for name in names if name in self._reasons}
        return sorted(found, key=lambda one: (one.kind in DIGESTS, one.name))

    def _elsewhere(self, page: str) -> list[Reason]:
        """Return what changed that no number tells of: readers' units, other texts, the tool."""
        if self._old["units"] != self._new["units"]:
            return [Reason(UNITS, "units", "shop.yaml", self._old["units"], self._new["units"])]
        formulas = [one for one in self._code() if page.startswith("work-out/")]
        texts = [name for name in self._files if name not in self._values] or self._files
        if not formulas and texts:
            found = [Reason(TEXT, "the text", name) for name in texts]
        else:
            found = [Reason("formula", "the code", name) for name in formulas or self._code()]
        if self._old["tool"] != self._new["tool"]:
            found.append(Reason(TOOL, "how pages are written", "build_tools"))
        return found

    def _code(self) -> list[str]:
        old, new = self._old["calculators"], self._new["calculators"]
        names = sorted(name for name in {*old, *new} if old.get(name) != new.get(name))
        return [f"{name.replace('.', '/')}.py" for name in names]

    def _file_of(self, old_page: str | None, new_page: str | None) -> str:
        for record, page in ((self._new, new_page), (self._old, old_page)):
            if page in record["pages"] and record["pages"][page]["file"]:
                return record["pages"][page]["file"]
        return ""

    def _reason(self, old: dict[str, str] | None, new: dict[str, str] | None) -> Reason | None:
        if old is None or new is None or old["value"] == new["value"]:
            return None
        shown = ("", "") if new["kind"] in DIGESTS else (old["value"], new["value"])
        return Reason(new["kind"], new["words"], new["file"], *shown)


def _causes(record: dict[str, Any], mark: str) -> list[str]:
    return record["marks"]["sets"][ord(mark) - record["marks"]["first"]]
