"""What the expressions of the handbook's texts stand for: `{{ fact.hot_water }}` and the like.

Each expression is compiled and evaluated by itself, in Jinja's sandbox, so that every failure of a
page is found, each with its place.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache, cached_property
from typing import Any

from jinja2 import StrictUndefined, TemplateError, meta
from jinja2.sandbox import SandboxedEnvironment

from build_tools.content import typed_in_units, unit_marks
from build_tools.content.both_systems import fact_in, shown_in, text_in, with_own_units
from build_tools.content.entries import Entry, Example, Passage
from build_tools.content.expression_form import wrong_form
from build_tools.content.fields import Format, Measure, keys, parse_any
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import EXPRESSION, hide_expressions
from build_tools.content.models import Equipment, Fact, TypicalHome
from build_tools.content.page_models import WorkedExample
from build_tools.content.problems import Problem, expected, shortened
from build_tools.content.typed_in_units import Answers
from build_tools.content.unit_figures import (
    NAMES,
    OPTIONAL,
    WORKED_OUT,
    figure,
    in_us_units,
)
from calculators import CALCULATORS, run
from calculators.declare import Calculator, Input
from calculators.figures import picture
from calculators.figures.drawings import DRAWINGS, drawing
from calculators.quantities import KINDS, QuantityError, parse

_LIKE = "(expected an expression such as {{ fact.name }})"
_OPEN = re.compile(r"\{[{%]")


class ValueProblem(Exception):
    """Why an expression has no value, as a sentence for its writer."""


class ToldElsewhere(Exception):
    """The value stands in a file that failed to load: that problem is told there."""


# While authors work, the handbook is made anew after each change, and most inputs are the same
# again. The process ends when the calculators change: see pages/plugin.py.


@cache
def _result(name: str, inputs: tuple[tuple[str, str], ...], units: str) -> dict[str, Any]:
    return run(name, dict(inputs), units)


@cache
def _environment() -> SandboxedEnvironment:
    environment = SandboxedEnvironment(undefined=StrictUndefined, autoescape=False)
    environment.globals.clear()
    return environment


@cache
def _compiled(expression: str, names: tuple[str, ...]) -> Callable[..., Any]:
    """Return what evaluates an expression that may use these names."""
    source = shortened(expression)
    if not expression.startswith("{{"):
        raise ValueProblem(f'"{source}" is not an expression (expected "{{{{ … }}}}")')
    parsed = _environment().parse(expression)
    if wrong := wrong_form(parsed, source):  # before Jinja works out what only has constants
        raise ValueProblem(wrong)
    unknown = meta.find_undeclared_variables(parsed) - {*names}
    if unknown:
        name = min(unknown)
        raise ValueProblem(f'"{source}" uses the unknown name "{name}" {expected(name, names)}')
    return _environment().compile_expression(expression[2:-2], undefined_to_none=False)


@cache
def _picture(name: str, inputs: tuple[tuple[str, str], ...], units: str) -> str:
    return picture(name, dict(inputs), units) or ""


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


class _Names:
    """A name of the expressions with a dot after it: `fact`, `shop`, `home`, `unit`."""

    def __init__(self, find: Callable[[str], Any]) -> None:
        self._find_value = find

    def __getitem__(self, name: str) -> Any:
        return self._find_value(name)


class _Unit(_Names):
    """`unit`, the unit of equipment that a page is about; `unit("its-id")` is any other by name."""

    def __init__(self, find: Callable[[str], Any], named: Callable[[str], _Names]) -> None:
        super().__init__(find)
        self._named = named

    def __call__(self, name: Any) -> _Names:
        return self._named(str(name))


class Values:
    """Evaluates the expressions of a handbook and remembers where each fact is used.

    problems: what went wrong so far. uses: fact -> the (file, line, address) of each use.
    units: the units in which values are shown: the shop's, or those of a unit: see `shown_as`.
    """

    def __init__(self, handbook: Handbook) -> None:
        self.handbook = handbook
        self.problems: list[Problem] = []
        self.uses: dict[str, set[tuple[str, int, str]]] = {}
        self._used: set[str] = set()
        self.units = handbook.units
        self._written_in = handbook.own_units

    def of_translation(self, handbook: Handbook, said: Callable[[str], str]) -> Values:
        """Return values of the same kind for a translated handbook; `said` translates them."""
        made = type(self)(handbook)
        made.said = said
        return made

    @contextmanager
    def shown_as(self, unit: Entry[Any] | None) -> Iterator[None]:
        """Show values in the units of a unit of equipment, where it has its own."""
        before = self.units, self._written_in
        own = unit.content.units if unit and isinstance(unit.content, Equipment) else None
        if own:
            self.units = self._written_in = own
        else:
            self.units, self._written_in = self.handbook.units, self.handbook.own_units
        try:
            yield
        finally:
            self.units, self._written_in = before

    @property
    def _is_other(self) -> bool:
        """Whether values are shown in the system that their source is not written in."""
        return self.units != self._written_in

    @contextmanager
    def leaving_out_failures(self) -> Iterator[None]:
        """Note no problem while this is in force."""
        before = len(self.problems)
        try:
            yield
        finally:
            del self.problems[before:]

    def fill(self, passage: Passage, unit: Entry[Equipment] | None = None) -> str:
        """Return the text of a passage with every expression replaced by its value.

        unit: the equipment that `unit` stands for; the values are then shown in its units. What
        fails is noted in `problems` and left.
        """

        def value(match: re.Match[str]) -> str:
            place = passage.entry, passage.line_at(match.start())
            found = self.attempt(*place, lambda: self._evaluate(match[0], unit))
            if found is None:
                return match[0]
            shown = self.said(str(found))
            return unit_marks.kept(shown) if isinstance(found, Shown) and found.is_kept else shown

        if stray := _OPEN.search(hide_expressions(passage.text)):
            closing = "}}" if stray[0] == "{{" else "%}"
            said = f'"{stray[0]}" opens an expression that nothing closes (expected "{closing}")'
            self.problems.append(passage.problem(stray.start(), said))
        with self.shown_as(unit):
            text = self._in_other_units(passage) if self._is_other else passage.text
            return EXPRESSION.sub(value, text)

    def _in_other_units(self, passage: Passage) -> str:
        """Return a text whose typed quantities are those that readers of the other system see."""
        answers: Answers = []
        kinds: set[str] = set()
        content = passage.entry.content
        calculator = CALCULATORS.get(getattr(content, "calculate", None) or "")
        if calculator:
            kinds = {calculator.input(name).kind for name in content.given}
        if calculator and isinstance(content, WorkedExample):
            computed = self.answers(passage.entry)["values"]
            outputs = [calculator.output(name) for name in content.answers]
            kinds |= {output.kind for output in outputs}
            answers = [
                (parse(content.answers[one.name], one.kind), computed[one.name]["shown"])
                for one in outputs
                if "unit" in computed[one.name] and one.kind in KINDS
            ]
        return typed_in_units.in_units(passage, self.units, answers, kinds)

    def said(self, shown: str) -> str:
        """Return a shown value, or the label of one, in the language of the pages."""
        return shown

    def attempt(self, entry: Entry[Any], line: int, find: Callable[[], Any]) -> Any:
        """Return what `find` finds, or None after noting why not; note the facts it used."""
        self._used.clear()
        try:
            value = find()
        except ValueProblem as problem:
            self.problems.append(Problem(entry.file, line, str(problem)))
            return None
        except ToldElsewhere:
            return None
        for name in self._used:
            self.uses.setdefault(name, set()).add((entry.file, line, entry.address))
        return value

    def named(self, name: str, part: str, unit: Entry[Equipment] | None) -> Any:
        """Return the value of `name.part`, such as unit.backwash_flow."""
        return self._unit_value(unit, part) if name == "unit" else self._names[name][part]

    def evaluated(self, passage: Passage, unit: Entry[Equipment]) -> Any:
        """Return the value of a text that is one expression, without rounding where it can."""
        line = passage.line_at(0)
        return self.attempt(passage.entry, line, lambda: self._evaluate(passage.text, unit))

    def answers(self, example: Example) -> dict[str, Any]:
        """Return the result structure of a worked example."""
        return self.result(example.content.calculate, self.given(example))

    def given(self, entry: Entry[Any]) -> dict[str, Any]:
        """Return what a worked example, a picture or a table states for its calculator."""
        return {name: self.stated(entry, name, one) for name, one in entry.content.given.items()}

    # The next four say where a text is from. Here that is of no account: comparing/tracing.py.

    def stated(self, entry: Entry[Any], name: str, text: Any) -> Any:
        """Return what an entry itself states for the input `name` of a calculator."""
        return text

    def because(self, text: str, *of: Any) -> str:
        """Return a text that a page makes itself out of other values."""
        return text

    def once(self, sentences: Iterable[str]) -> list[str]:
        """Return sentences of several results, each once."""
        return list(dict.fromkeys(sentences))

    def made_from(self, data: dict[str, Any], make: Callable[[dict[str, Any]], Any]) -> Any:
        """Return what `make` makes of the plain data of an exercise."""
        return make(data)

    def result(self, name: str, given: Mapping[str, str]) -> dict[str, Any]:
        """Run a calculator; what is not given takes the shop's value where there is one."""
        return _result(name, self._inputs(name, given), self.units)

    def picture(self, name: str, given: Mapping[str, str]) -> str:
        """Return the curve of a calculator at the same inputs as SVG, or nothing without one."""
        return _picture(name, self._inputs(name, given), self.units)

    def drawing(self, name: str, given: Mapping[str, str]) -> tuple[str | None, dict[str, str]]:
        """Return a drawing without a calculator as SVG, and a sentence for each wrong input."""
        inputs = DRAWINGS[name].inputs if name in DRAWINGS else ()
        return drawing(name, self.complete(inputs, given), self.handbook.units)

    def _inputs(self, name: str, given: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
        calculator = CALCULATORS[name]
        inputs = {**self.shop_defaults(calculator), **given}
        return tuple(sorted(self.complete(calculator.inputs, inputs).items()))

    def complete(self, inputs: Iterable[Input], given: Mapping[str, str]) -> dict[str, str]:
        """Return what is given so that it means the same to readers of either unit system."""
        return with_own_units(inputs, given, self._written_in, defaults=self._is_other)

    def texts_shown(self, inputs: Iterable[Input], texts: Mapping[str, str]) -> dict[str, str]:
        """Return texts of inputs, by name, as readers see them."""
        if not self._is_other:
            return dict(texts)
        declared = {one.name: one for one in inputs}
        return {
            name: text_in(declared[name], text, self._written_in, self.units)
            for name, text in texts.items()
        }

    def measure(self, measure: Measure) -> Shown:
        """Return a quantity of a source file in the units of those who read it."""
        own = measure.quantity.shown(self._written_in)
        shown = shown_in(measure.quantity, self.units) if self._is_other else own
        made = Shown.of(shown, measure.text)
        made.own = own
        return made

    def _fact_measure(self, measure: Measure) -> Shown:
        made = self.measure(measure)
        if not self._is_other:
            return made
        rounded = Shown.of(fact_in(measure.text, measure.quantity, self.units), measure.text)
        rounded.own = made.own
        return rounded

    def fact(self, fact: Fact) -> Shown:
        """Return a fact's value, or its range with the ends as `low` and `high`."""
        if fact.kept and fact.value is not None:
            return self._kept(self._fact_measure(fact.value))
        if fact.value is not None:
            return self._fact_measure(fact.value)
        low, high = self._fact_measure(fact.low), self._fact_measure(fact.high)
        number, _, unit = low.partition("\u00a0")
        start = number if high.endswith(f"\u00a0{unit}") else low
        made = Shown.of(f"{start} to {high}", f"{fact.low.text} to {fact.high.text}")
        made.low, made.high = low, high
        return made

    def _evaluate(self, expression: str, unit: Entry[Equipment] | None) -> Any:
        source = shortened(expression)
        own = _Unit(lambda name: self._unit_value(unit, name), self._named_unit)
        names = {**self._names, "unit": own}
        try:
            value = _compiled(expression, tuple(names))(names)
            if isinstance(value, (str, int, float)) and not isinstance(value, bool):
                return value
        except (ValueProblem, ToldElsewhere):
            raise
        except TemplateError as error:
            raise ValueProblem(f'"{source}" fails: {shortened(error.message)} {_LIKE}') from None
        except Exception as error:  # whatever Python says to an expression of the writer's
            raise ValueProblem(f'"{source}" fails: {shortened(error)} {_LIKE}') from None
        raise ValueProblem(
            f'"{source}" is no single value (expected a name after it, as in {{{{ fact.name }}}})'
        )

    @cached_property
    def _names(self) -> dict[str, Any]:
        return {
            "fact": _Names(self._fact_value),
            "shop": _Names(self._shop_value),
            "home": _Names(self._home_value),
            "example": self._example,
            "work_out": self._work_out,
            "quantity": self._quantity,
            "kept": self._kept,
        }

    def _fact_value(self, name: str) -> Shown:
        entry = self.handbook.facts.get(name)
        if entry is None:
            self._missing("facts", name, "fact")
        self._used.add(name)
        return self.fact(entry.content)

    def _shop_value(self, name: str) -> Any:
        if self.handbook.shop is None:
            raise ToldElsewhere
        shop = self.handbook.shop.content
        if name in ("salt_bag_price", "water_price", "sewer_price"):
            price = getattr(shop, name)
            gap = " " if shop.currency[-1].isalnum() else ""
            return f"{shop.currency}{gap}{price:,.2f}".removesuffix(".00")
        if name not in _single_values(shop):
            raise ValueProblem(
                f'there is no shop value "{name}" {expected(name, _single_values(shop))}'
            )
        return self._field(shop, name)

    def _home_value(self, name: str) -> Any:
        if self.handbook.shop is None:
            raise ToldElsewhere
        if name not in keys(TypicalHome):
            raise ValueProblem(
                f'the typical home has no "{name}" {expected(name, keys(TypicalHome))}'
            )
        return self._field(self.handbook.shop.content.typical_home, name)

    def _named_unit(self, name: str) -> _Names:
        unit = self.handbook.equipment.get(name) or self.handbook.example_units.get(name)
        if unit is None:
            self._missing("equipment", name, "unit of equipment")
        return _Names(lambda figure: self._unit_value(unit, figure))

    def _unit_value(self, unit: Entry[Equipment] | None, name: str) -> Any:
        if unit is None:
            raise ValueProblem(
                '"unit" means nothing here (expected only on a page in equipment/ and '
                "in expected readings; elsewhere name one of the equipment, as in "
                '{{ unit("its-id").capacity }})'
            )
        if name not in NAMES:
            raise ValueProblem(f'a unit has no "{name}" {expected(name, NAMES)}')
        value = self.unit_figure(unit, name)
        if value is None:
            wanted = f'the key "{name}" in its file'
            if name not in OPTIONAL:
                wanted = '"only_for" with the controls that have it'
            raise ValueProblem(f'the unit "{unit.id}" has no "{name}" (expected {wanted})')
        return value

    def unit_figure(self, unit: Entry[Equipment], name: str) -> Any:
        """Return a figure of a unit, or None: its sheet leaves it out, or a calculator does."""
        if name in WORKED_OUT:
            worked = WORKED_OUT[name]
            result = self.worked_out(unit, worked.calculator, worked.given)
            value = result["values"].get(worked.output)
            return value and Shown.of(value["shown"], exact(value))
        value = figure(unit.content, name)
        if not isinstance(value, Measure):
            return value
        if self.units == "us" and not self._is_other:
            return Shown.of(in_us_units(name, value).shown("us"), value.text)
        return self.measure(value)

    def worked_out(
        self, unit: Entry[Equipment], name: str, given: Mapping[str, str]
    ) -> dict[str, Any]:
        """Run a calculator with the figures of a unit: see `unit_inputs`."""
        return self.result(name, self.unit_inputs(unit, name, given))

    def unit_inputs(
        self, unit: Entry[Equipment], name: str, given: Mapping[str, str]
    ) -> dict[str, str]:
        """Return what a unit gives to a calculator; a figure that is missing is not given.

        given: the names of further figures by input, as in `unit_figures.WORKED_OUT`.
        """
        inputs = self.equipment_inputs(CALCULATORS[name], unit)
        for about, named in given.items():
            group, _, part = named.partition(".")
            value = self._names[group][part] if group == "home" else self.unit_figure(unit, part)
            if value is not None:
                inputs[about] = typed(value)
        return inputs

    def _field(self, content: Format, name: str) -> Any:
        value = getattr(content, name)
        return self.measure(value) if isinstance(value, Measure) else value

    def _example(self, name: str) -> _Names:
        example = self.handbook.examples.get(str(name))
        if example is None:
            self._missing("examples", str(name), "worked example")
        content = example.content
        if content.calculate not in CALCULATORS or self.answers(example)["problems"]:
            raise ToldElsewhere
        return self._outputs(content.calculate, self.answers(example))

    def _work_out(self, calculator: str, **given: Any) -> _Names:
        name = str(calculator)
        if name not in CALCULATORS:
            raise ValueProblem(f'there is no calculator "{name}" {expected(name, CALCULATORS)}')
        result = self.result(name, {key: typed(value) for key, value in given.items()})
        for about, sentence in result["problems"].items():
            raise ValueProblem(f'the calculator "{name}" cannot use "{about}": {sentence}')
        return self._outputs(name, result)

    def _quantity(self, text: Any) -> Shown:
        """Return a quantity that a text takes as given, as in the rows of a table."""
        try:
            return self.measure(Measure(str(text), parse_any(str(text))))
        except QuantityError as problem:
            raise ValueProblem(f'"{shortened(text)}" is no quantity: {problem}') from None

    def _kept(self, value: Any) -> Shown:
        """Return a quantity in the shop's own unit for readers of both systems, such as a name."""
        made = value if isinstance(value, Shown) else Shown.of(str(value), str(value))
        if self._is_other and isinstance(value, Shown):
            if not value.own:
                raise ValueProblem("only a fact, a value of the shop or a text can be kept")
            made = Shown.of(value.own, value.typed)
        made.is_kept = True
        return made

    def _outputs(self, name: str, result: dict[str, Any]) -> _Names:
        def find(output: str) -> Shown:
            value = result["values"].get(output)
            if value is None:
                raise ValueProblem(
                    f'the calculator "{name}" gives no answer "{output}" here '
                    f"{expected(output, result['values'])}"
                )
            made = Shown.of(value["shown"], exact(value))
            made.is_kept = CALCULATORS[name].output(output).fixed_unit
            return made

        return _Names(find)

    def _missing(self, group: str, name: str, what: str) -> None:
        if self.handbook.knows(group, name):
            raise ToldElsewhere
        choices = sorted(self.handbook.names(group))
        raise ValueProblem(f'there is no {what} "{shortened(name)}" {expected(name, choices)}')

    def shop_defaults(self, calculator: Calculator) -> dict[str, str]:
        """Return the shop's values for the inputs of a calculator that the shop decides."""
        if self.handbook.shop is None:
            return {}
        shop = self.handbook.shop.content
        return {
            one.name: typed(self._field(shop, one.shop)) for one in calculator.inputs if one.shop
        }

    def equipment_inputs(self, calculator: Calculator, unit: Entry[Equipment]) -> dict[str, str]:
        """Return what a unit of equipment tells of the inputs of a calculator."""
        figures = {
            one.name: self.unit_figure(unit, one.equipment)
            for one in calculator.inputs
            if one.equipment
        }
        return {name: typed(value) for name, value in figures.items() if value is not None}

    def form_figures(self, calculator: Calculator, unit: Entry[Equipment]) -> dict[str, str]:
        """Return what a unit fills into a form: where its sheet tells nothing, the usual or ""."""
        usual = {
            one.name: "" if one.default is None else one.example_text(self.units)
            for one in calculator.inputs
            if one.equipment and getattr(unit.content, one.equipment) is None
        }
        own = self.equipment_inputs(calculator, unit)
        filled = usual | self.texts_shown(calculator.inputs, own)
        return {name: text.replace("\u00a0", " ") for name, text in filled.items()}


def _single_values(shop: Format) -> Iterable[str]:
    return [
        name for name in keys(type(shop)) if not isinstance(getattr(shop, name), (list, Format))
    ]


def typed(value: Any) -> str:
    """Return a value as text that a calculator reads, without rounding where that is known."""
    return value.typed if isinstance(value, Shown) else str(value)


def exact(value: dict[str, Any]) -> str:
    """Return an answer as text for another calculator, with all its digits."""
    return f"{value['number']!r} {value['unit']}" if "unit" in value else value["shown"]
