"""How values are shown: quantities of the sources in the units of those who read them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from build_tools.content.both_systems import fact_in, shown_in, text_in, with_own_units
from build_tools.content.entries import Entry
from build_tools.content.expressions import ValueProblem
from build_tools.content.fields import Measure
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment, Fact
from calculators.declare import Input

if TYPE_CHECKING:
    from build_tools.content.origins import Origins


class Shown(str):
    """A value as the reader sees it; `typed` is the same for a calculator, without rounding."""

    typed: str
    low: Shown
    high: Shown
    #: The same for readers of the shop's own unit system, where that is known.
    own = ""
    #: Whether its unit is its subject, so that both systems have the same.
    is_kept = False

    @classmethod
    def of(cls, shown: str, typed: str) -> Shown:
        made = cls(shown)
        made.typed = typed
        return made

    @classmethod
    def of_answer(cls, value: Mapping[str, Any]) -> Shown:
        """Return an answer of a calculator, as it stands in its result."""
        return cls.of(value["shown"], exact(value))


def typed(value: Any) -> str:
    """Return a value as text that a calculator reads, without rounding where that is known."""
    return value.typed if isinstance(value, Shown) else str(value)


def exact(value: Mapping[str, Any]) -> str:
    """Return an answer as text for another calculator, with all its digits."""
    return f"{value['number']!r} {value['unit']}" if "unit" in value else value["shown"]


class Showing:
    """For whom values are shown, and quantities of the sources as they see them.

    units: the unit system of the readers. is_other: whether it is not the one that the source is
    written in.
    """

    def __init__(self, handbook: Handbook, origins: Origins) -> None:
        self._handbook = handbook
        self._origins = origins
        self.units = handbook.units
        self._written_in = handbook.own_units

    @property
    def is_other(self) -> bool:
        return self.units != self._written_in

    @contextmanager
    def in_units_of(self, unit: Entry[Any] | None) -> Iterator[None]:
        """Show values in the units of a unit of equipment, where it has its own."""
        before = self.units, self._written_in
        own = unit.content.units if unit and isinstance(unit.content, Equipment) else None
        if own:
            self.units = self._written_in = own
        else:
            self.units, self._written_in = self._handbook.units, self._handbook.own_units
        try:
            yield
        finally:
            self.units, self._written_in = before

    def measure(self, measure: Measure) -> Shown:
        """Return a quantity of a source file."""
        own = measure.quantity.shown(self._written_in)
        shown = shown_in(measure.quantity, self.units) if self.is_other else own
        made = Shown.of(shown, measure.text)
        made.own = own
        return self._origins.measure(measure, made)

    def fact(self, fact: Fact) -> Shown:
        """Return a fact's value, or its range with the ends as `low` and `high`."""
        return self._origins.fact(self._fact(fact))

    def _fact(self, fact: Fact) -> Shown:
        if fact.kept and fact.value is not None:
            return self.kept(self._of_fact(fact.value))
        if fact.value is not None:
            return self._of_fact(fact.value)
        low, high = self._of_fact(fact.low), self._of_fact(fact.high)
        number, _, unit = low.partition("\u00a0")
        start = number if high.endswith(f"\u00a0{unit}") else low
        made = Shown.of(f"{start} to {high}", f"{fact.low.text} to {fact.high.text}")
        made.low, made.high = low, high
        return made

    def _of_fact(self, measure: Measure) -> Shown:
        """Return a quantity about as exact as it is written: facts stand in prose."""
        made = self.measure(measure)
        if not self.is_other:
            return made
        rounded = Shown.of(fact_in(measure.text, measure.quantity, self.units), measure.text)
        rounded.own = made.own
        return rounded

    def kept(self, value: Any) -> Shown:
        """Return a quantity in the shop's own unit for readers of both systems, such as a name."""
        made = value if isinstance(value, Shown) else Shown.of(str(value), str(value))
        if self.is_other and isinstance(value, Shown):
            if not value.own:
                raise ValueProblem("only a fact, a value of the shop or a text can be kept")
            made = Shown.of(value.own, value.typed)
        made.is_kept = True
        return made

    def complete(self, inputs: Iterable[Input], given: Mapping[str, str]) -> dict[str, str]:
        """Return what is given so that it means the same to readers of either unit system."""
        return with_own_units(inputs, given, self._written_in, defaults=self.is_other)

    def texts(self, inputs: Iterable[Input], texts: Mapping[str, str]) -> dict[str, str]:
        """Return texts of inputs, by name, as readers see them."""
        if not self.is_other:
            return dict(texts)
        declared = {one.name: one for one in inputs}
        return {
            name: text_in(declared[name], text, self._written_in, self.units)
            for name, text in texts.items()
        }
