"""A quantity in prose must be backed: a fact, a computed value, or a given of the text's block."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from build_tools.checks.examples import wrong_names
from build_tools.content.entries import Block, Passage
from build_tools.content.fields import Format, Measure, keys, same_as_written
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import WorkedExample
from build_tools.content.pictures import inputs_of
from build_tools.content.problems import Problem, asking
from build_tools.content.typed_quantities import (
    Typed,
    kinds_of,
    prices,
    typed_quantities,
    typed_under_head,
)
from calculators import CALCULATORS
from calculators.quantities import Quantity, QuantityError, display_unit, parse

_HOW = (
    "an expression: put the value in facts.yaml and write {{ fact.its_name }}, or compute "
    "it with {{ work_out(…) }} or a worked example"
)


@dataclass(frozen=True)
class _Backing:
    """An expression, and the quantity it prints; two for a range."""

    expression: str
    measures: tuple[Measure, ...]


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each typed quantity that nothing backs.

    In the texts of a worked example or a picture a quantity may be typed when it is one of its
    givens or answers.
    """
    yield from unbacked(handbook, handbook.passages)


def unbacked(
    handbook: Handbook, passages: Iterable[Passage], read: Callable[[str], str] = str
) -> Iterator[Problem]:
    """Yield a problem for each typed quantity in some texts that nothing backs.

    read: returns a text with its quantities in English words.
    """
    backings = [*_backings(handbook)]
    currency = handbook.shop.content.currency if handbook.shop else ""
    blocks = [*handbook.examples.values(), *handbook.pictures.values()]
    of_blocks = {id(block): _own(block, handbook.units) for block in blocks}
    for passage in passages:
        own = of_blocks.get(id(passage.entry), {})
        if own is None:
            continue
        for piece in [*passage.markdown.pieces, *passage.markdown.beside]:
            text = read(piece.text)
            found = [*typed_quantities(text), *typed_under_head(text, piece.head)]
            for typed in [*found, *prices(text, currency)]:
                if not _among(typed, own):
                    said = f'nothing backs the typed quantity "{typed.text}"'
                    advice = _advice(typed, backings, own)
                    yield passage.problem(piece.offset(typed.start), asking(said, advice))


def _advice(typed: Typed, backings: list[_Backing], own: dict[str, list[Quantity]]) -> str:
    for backing in backings:
        if _prints(backing, typed):
            return f"{{{{ {backing.expression} }}}}, which has this value"
    if own:
        return f"one of the block's own givens or answers; otherwise {_HOW}"
    return _HOW


def _own(block: Block, units: str) -> dict[str, list[Quantity]] | None:
    """Return the givens and answers of a block that are quantities, by kind.

    None when it names no calculator or drawing, or other inputs than that has: what is meant is not
    known.
    """
    content = block.content
    calculator = CALCULATORS.get(content.calculate)
    if content.calculate and (calculator is None or any(wrong_names(block, calculator))):
        return None
    inputs = calculator.inputs if calculator else inputs_of(content)
    found: dict[str, list[Quantity]] = {"": []}
    texts = [
        (content.given[one.name], one)
        for one in inputs
        if isinstance(content.given.get(one.name), str)
    ]
    if isinstance(content, WorkedExample):
        texts += [(text, calculator.output(name)) for name, text in content.answers.items()]
    for text, declared in texts:
        try:
            quantity = parse(text, declared.kind, display_unit(declared.unit, units))
        except (QuantityError, KeyError):  # a choice, a count or words
            continue
        found.setdefault(quantity.kind, []).append(quantity)
    return found


def _among(typed: Typed, own: dict[str, list[Quantity]]) -> bool:
    for kind in kinds_of(typed.unit) & own.keys():
        ends = zip(typed.ends(), typed.quantities(kind), strict=False)
        same = [any(same_as_written(text, end, one) for one in own[kind]) for text, end in ends]
        if same and all(same):
            return True
    return False


def _backings(handbook: Handbook) -> Iterator[_Backing]:
    for name, entry in handbook.facts.items():
        fact = entry.content
        yield _Backing(f"fact.{name}", (fact.value,) if fact.value else (fact.low, fact.high))
    if handbook.shop:
        yield from _fields("shop", handbook.shop.content)
        yield from _fields("home", handbook.shop.content.typical_home)


def _fields(name: str, content: Format) -> Iterator[_Backing]:
    for key in keys(type(content)):
        value = getattr(content, key)
        if isinstance(value, Measure):
            yield _Backing(f"{name}.{key}", (value,))


def _prints(backing: _Backing, typed: Typed) -> bool:
    kind = backing.measures[0].quantity.kind
    if kind not in kinds_of(typed.unit):
        return False
    ends = typed.quantities(kind)
    return len(ends) == len(backing.measures) and all(
        same_as_written(text, end, measure.quantity)
        for text, end, measure in zip(typed.ends(), ends, backing.measures, strict=True)
    )
