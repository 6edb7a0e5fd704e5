"""What printed numbers rest on: facts, the shop's values, units' figures, what is stated, formulas.

A cause has the same name in every edition, so two editions can be asked whether it changed.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from build_tools.comparing.formulas import FOLDER, digest_of
from build_tools.content.entries import Entry
from build_tools.content.fields import Format, Measure
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment, TypicalHome
from build_tools.content.page_models import Picture, Procedure, Table, WorkedExample
from calculators import CALCULATORS

FACT, SHOP, UNIT, STATED, FORMULA, EXERCISE = (
    "fact",
    "shop value",
    "equipment figure",
    "stated",
    "formula",
    "exercise",
)
#: Causes of these kinds have no value that could be shown, only a digest.
DIGESTS = (FORMULA, EXERCISE)


@dataclass
class Cause:
    """One of them. words: what it is called beside its file. value: as its source has it."""

    kind: str
    words: str
    file: str
    value: str

    def as_data(self) -> dict[str, str]:
        """Return it for an edition's record."""
        return {"kind": self.kind, "words": self.words, "file": self.file, "value": self.value}


@dataclass
class Causes:
    """The causes of a handbook by name; each is noted when it is first asked for."""

    handbook: Handbook
    found: dict[str, Cause] = field(default_factory=dict)

    def fact(self, name: str) -> str:
        """Return the name of a fact as a cause."""
        entry = self.handbook.facts[name]
        fact = entry.content
        value = fact.value.text if fact.value else f"{fact.low.text} to {fact.high.text}"
        return self._note(f"fact {name}", Cause(FACT, name, self._file(entry), value))

    def shop(self, name: str) -> str:
        """Return the name of a value of shop.yaml, such as "typical_home.people"."""
        entry = self.handbook.shop
        value: Any = entry.content
        for part in name.split("."):
            value = getattr(value, part) if isinstance(value, Format) else value[int(part)]
        return self._note(f"shop {name}", Cause(SHOP, name, self._file(entry), _written(value)))

    def shop_field(self, content: Format, name: str) -> str:
        """Return the name of a value of the shop, or of its typical home."""
        return self.shop(f"typical_home.{name}" if isinstance(content, TypicalHome) else name)

    def unit(self, entry: Entry[Equipment], name: str) -> str:
        """Return the name of a figure on a unit's sheet."""
        value = _written(getattr(entry.content, name))
        return self._note(f"unit {entry.id} {name}", Cause(UNIT, name, self._file(entry), value))

    def stated(self, entry: Entry[Any], name: str, text: str) -> str:
        """Return the name of what an entry states for an input; it may state several texts."""
        cause = f"stated {type(entry.content).__name__} {entry.id} {name}"
        before = self.found.get(cause)
        if before is None:
            words = f"{name} given to {_WHAT[type(entry.content)]} “{entry.id}”"
            return self._note(cause, Cause(STATED, words, self._file(entry), text))
        if text not in before.value.split("; "):
            before.value = f"{before.value}; {text}"
        return cause

    def formula(self, calculator: str) -> str:
        """Return the name of the code that a calculator's answers come from."""
        module = CALCULATORS[calculator].compute.__module__
        file = f"{module.replace('.', '/')}.py"
        cause = Cause(FORMULA, f"the formula of “{calculator}”", file, digest_of(module))
        return self._note(f"formula {calculator}", cause)

    def drawings(self) -> str:
        """Return the name of the code of drawings without a calculator."""
        module = "calculators.figures.drawings"
        file = f"{FOLDER.name}/figures"
        return self._note(
            "formula of drawings", Cause(FORMULA, "the drawings", file, digest_of(module))
        )

    def exercise(self, name: str) -> str:
        """Return the name of an exercise's file."""
        entry = self.handbook.practice[name]
        file = self._file(entry)
        value = hashlib.sha256((self.handbook.root / entry.file).read_bytes()).hexdigest()[:16]
        return self._note(
            f"exercise {name}", Cause(EXERCISE, f"the exercise “{name}”", file, value)
        )

    def measures(self) -> Iterator[tuple[Measure, str]]:
        """Yield each quantity of the facts and of the shop, and the name of its cause."""
        for name, entry in self.handbook.facts.items():
            fact = entry.content
            for one in (fact.value, fact.low, fact.high):
                if one is not None:
                    yield one, self.fact(name)
        if self.handbook.shop:
            for name, one in _measures(self.handbook.shop.content):
                yield one, self.shop(name)

    def _file(self, entry: Entry[Any]) -> str:
        return file_named(self.handbook, entry.file)

    def _note(self, name: str, cause: Cause) -> str:
        self.found.setdefault(name, cause)
        return name


def file_named(handbook: Handbook, file: str) -> str:
    """Return a source as every edition calls it: one of the library by its place in it."""
    path = (handbook.root / file).resolve()
    library = handbook.library and handbook.library.resolve()
    if library is None or not path.is_relative_to(library):
        return file
    return f"library/{path.relative_to(library).as_posix()}"


#: What messages call an entry that states something.
_WHAT = {
    WorkedExample: "the worked example",
    Picture: "the picture",
    Table: "the table",
    Procedure: "what is expected in",
}


def _written(value: Any) -> str:
    if value is None:
        return "nothing"
    return value.text if isinstance(value, Measure) else str(value)


def _measures(content: Any, path: str = "") -> Iterator[tuple[str, Measure]]:
    if isinstance(content, Measure):
        yield path, content
    elif isinstance(content, Format):
        for name in type(content).model_fields:
            yield from _measures(getattr(content, name), f"{path}.{name}".lstrip("."))
    elif isinstance(content, list):
        for place, one in enumerate(content):
            yield from _measures(one, f"{path}.{place}")
