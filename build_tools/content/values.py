"""Texts of the handbook with their expressions filled in, and what failed or was used in doing so.

Values holds the parts that the pages take values from, each with its own subject and module.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from build_tools.content import typed_in_units, unit_marks
from build_tools.content.entries import Entry, Passage
from build_tools.content.expressions import ToldElsewhere, ValueProblem, evaluated, unclosed
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import EXPRESSION
from build_tools.content.models import Equipment
from build_tools.content.named_values import NamedValues
from build_tools.content.origins import Origins
from build_tools.content.page_models import WorkedExample
from build_tools.content.problems import Problem
from build_tools.content.shop_calculators import ShopCalculators
from build_tools.content.shop_values import ShopValues
from build_tools.content.showing import Showing, Shown
from build_tools.content.typed_in_units import Answers
from build_tools.content.unit_figures import UnitFigures
from calculators import CALCULATORS
from calculators.quantities import KINDS, parse


def _as_it_is(text: str) -> str:
    return text


class Values:
    """The values of a handbook, and its texts filled with them.

    problems: what went wrong so far. uses: fact -> the (file, line, address) of each use.
    said: says a shown value, or the label of one, in the language of the pages.

    origins: is told where each value comes from. showing: in which units readers see values.
    shop: values of shop.yaml. calculators: run with the shop's values. figures: of units of
    equipment. names: what the names in expressions stand for.
    """

    def __init__(
        self,
        handbook: Handbook,
        origins: Origins | None = None,
        said: Callable[[str], str] = _as_it_is,
    ) -> None:
        self.handbook = handbook
        self.said = said
        self.problems: list[Problem] = []
        self.uses: dict[str, set[tuple[str, int, str]]] = {}
        self.origins = origins = origins or Origins()
        self.showing = showing = Showing(handbook, origins)
        self.shop = shop = ShopValues(handbook, showing, origins)
        self.calculators = ShopCalculators(shop, showing, origins)
        self.figures = UnitFigures(shop, self.calculators, showing, origins)
        self.names = NamedValues(handbook, showing, shop, self.calculators, self.figures)

    def of_translation(self, handbook: Handbook, said: Callable[[str], str]) -> Values:
        """Return the values of a translated handbook; `said` says them in its language."""
        return Values(handbook, self.origins.of_translation(handbook), said)

    def fill(self, passage: Passage, unit: Entry[Equipment] | None = None) -> str:
        """Return the text of a passage with every expression replaced by its value.

        unit: the equipment that `unit` stands for; the values are then shown in its units. What
        fails is noted in `problems` and left.
        """

        def value(match: re.Match[str]) -> str:
            line = passage.line_at(match.start())
            found = self.attempt(passage.entry, line, lambda: self._evaluated(match[0], unit))
            if found is None:
                return match[0]
            shown = self.said(str(found))
            return unit_marks.kept(shown) if isinstance(found, Shown) and found.is_kept else shown

        if stray := unclosed(passage.text):
            self.problems.append(passage.problem(*stray))
        with self.showing.in_units_of(unit):
            text = self._in_other_units(passage) if self.showing.is_other else passage.text
            return EXPRESSION.sub(value, text)

    def value_of(self, passage: Passage, unit: Entry[Equipment]) -> Any:
        """Return the value of a text that is one expression, without rounding where it can."""
        line = passage.line_at(0)
        return self.attempt(passage.entry, line, lambda: self._evaluated(passage.text, unit))

    def attempt(self, entry: Entry[Any], line: int, find: Callable[[], Any]) -> Any:
        """Return what `find` finds, or None after noting why not; note the facts it used."""
        self.names.used.clear()
        try:
            value = find()
        except ValueProblem as problem:
            self.problems.append(Problem(entry.file, line, str(problem)))
            return None
        except ToldElsewhere:
            return None
        for name in self.names.used:
            self.uses.setdefault(name, set()).add((entry.file, line, entry.address))
        return value

    @contextmanager
    def leaving_out_failures(self) -> Iterator[None]:
        """Note no problem while this is in force."""
        before = len(self.problems)
        try:
            yield
        finally:
            del self.problems[before:]

    def _evaluated(self, expression: str, unit: Entry[Equipment] | None) -> Any:
        return evaluated(expression, self.names.all_for(unit))

    def _in_other_units(self, passage: Passage) -> str:
        """Return a text whose typed quantities are those that readers of the other system see."""
        answers: Answers = []
        kinds: set[str] = set()
        content = passage.entry.content
        calculator = CALCULATORS.get(getattr(content, "calculate", None) or "")
        if calculator:
            kinds = {calculator.input(name).kind for name in content.given}
        if calculator and isinstance(content, WorkedExample):
            computed = self.calculators.answers(passage.entry)["values"]
            outputs = [calculator.output(name) for name in content.answers]
            kinds |= {output.kind for output in outputs}
            answers = [
                (parse(content.answers[one.name], one.kind), computed[one.name]["shown"])
                for one in outputs
                if "unit" in computed[one.name] and one.kind in KINDS
            ]
        return typed_in_units.in_units(passage, self.showing.units, answers, kinds)
