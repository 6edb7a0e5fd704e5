"""What the names in expressions stand for.

`fact.name`, `shop.name`, `home.name` and `unit.name` are values of the sources; `example("id")` and
`work_out("calculator", …)` have the answers of a calculator after a dot; `quantity("9 lb")` and
`kept(…)` tell how a quantity is shown.
"""

from __future__ import annotations

from typing import Any, NoReturn

from build_tools.content.entries import Entry
from build_tools.content.expressions import Dotted, DottedOrCalled, ToldElsewhere, ValueProblem
from build_tools.content.fields import Measure, parse_any
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.problems import expected, shortened
from build_tools.content.shop_calculators import ShopCalculators
from build_tools.content.shop_values import ShopValues
from build_tools.content.showing import Showing, Shown, typed
from build_tools.content.unit_figures import NAMES, OPTIONAL, UnitFigures
from calculators import CALCULATORS
from calculators.quantities import QuantityError


class NamedValues:
    """The values of a handbook by name; what is wrong with a name is a ValueProblem.

    used: the facts that were asked for since somebody emptied it.
    """

    def __init__(
        self,
        handbook: Handbook,
        showing: Showing,
        shop: ShopValues,
        calculators: ShopCalculators,
        figures: UnitFigures,
    ) -> None:
        self._handbook = handbook
        self._showing = showing
        self._calculators = calculators
        self._figures = figures
        self.used: set[str] = set()
        self._anywhere = {
            "fact": Dotted(self._fact),
            "shop": Dotted(shop.value),
            "home": Dotted(shop.of_home),
            "example": self._example,
            "work_out": self._work_out,
            "quantity": self._quantity,
            "kept": showing.kept,
        }

    def all_for(self, unit: Entry[Equipment] | None) -> dict[str, Any]:
        """Return every name that an expression may use; `unit` is this unit of equipment."""
        own = DottedOrCalled(lambda name: self._of_unit(unit, name), self._unit)
        return {**self._anywhere, "unit": own}

    def find(self, name: str, part: str, unit: Entry[Equipment] | None = None) -> Any:
        """Return the value of `name.part`, such as unit.backwash_flow."""
        return self.all_for(unit)[name][part]

    def _fact(self, name: str) -> Shown:
        entry = self._handbook.facts.get(name)
        if entry is None:
            self._missing("facts", name, "fact")
        self.used.add(name)
        return self._showing.fact(entry.content)

    def _unit(self, name: str) -> Dotted:
        unit = self._handbook.equipment.get(name) or self._handbook.example_units.get(name)
        if unit is None:
            self._missing("equipment", name, "unit of equipment")
        return Dotted(lambda figure: self._of_unit(unit, figure))

    def _of_unit(self, unit: Entry[Equipment] | None, name: str) -> Any:
        if unit is None:
            raise ValueProblem(
                '"unit" means nothing here (expected only on a page in equipment/ and '
                "in expected readings; elsewhere name one of the equipment, as in "
                '{{ unit("its-id").capacity }})'
            )
        if name not in NAMES:
            raise ValueProblem(f'a unit has no "{name}" {expected(name, NAMES)}')
        value = self._figures.of(unit, name)
        if value is None:
            wanted = f'the key "{name}" in its file'
            if name not in OPTIONAL:
                wanted = '"only_for" with the controls that have it'
            raise ValueProblem(f'the unit "{unit.id}" has no "{name}" (expected {wanted})')
        return value

    def _example(self, name: str) -> Dotted:
        example = self._handbook.examples.get(str(name))
        if example is None:
            self._missing("examples", str(name), "worked example")
        calculator = example.content.calculate
        if calculator not in CALCULATORS:
            raise ToldElsewhere
        result = self._calculators.answers(example)
        if result["problems"]:
            raise ToldElsewhere
        return _answers(calculator, result)

    def _work_out(self, calculator: str, **given: Any) -> Dotted:
        name = str(calculator)
        if name not in CALCULATORS:
            raise ValueProblem(f'there is no calculator "{name}" {expected(name, CALCULATORS)}')
        texts = {key: typed(value) for key, value in given.items()}
        result = self._calculators.result(name, texts)
        for about, sentence in result["problems"].items():
            raise ValueProblem(f'the calculator "{name}" cannot use "{about}": {sentence}')
        return _answers(name, result)

    def _quantity(self, text: Any) -> Shown:
        """Return a quantity that a text takes as given, as in the rows of a table."""
        try:
            return self._showing.measure(Measure(str(text), parse_any(str(text))))
        except QuantityError as problem:
            raise ValueProblem(f'"{shortened(text)}" is no quantity: {problem}') from None

    def _missing(self, group: str, name: str, what: str) -> NoReturn:
        if self._handbook.knows(group, name):
            raise ToldElsewhere
        choices = sorted(self._handbook.names(group))
        raise ValueProblem(f'there is no {what} "{shortened(name)}" {expected(name, choices)}')


def _answers(name: str, result: dict[str, Any]) -> Dotted:
    def find(output: str) -> Shown:
        value = result["values"].get(output)
        if value is None:
            raise ValueProblem(
                f'the calculator "{name}" gives no answer "{output}" here '
                f"{expected(output, result['values'])}"
            )
        made = Shown.of_answer(value)
        made.is_kept = CALCULATORS[name].output(output).fixed_unit
        return made

    return Dotted(find)
