"""How a learning system marks an answer: the expressions and rules that items are made of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from xml.etree.ElementTree import Element

from build_tools.class_pack.learning.elements import Child, element, text


def declared(
    identifier: str, base: str, right: Iterable[str | float], many: str = "single"
) -> Element:
    """Return the declaration of a response with its right answer."""
    values = [element("value", text(one)) for one in right]
    return element(
        "responseDeclaration",
        element("correctResponse", *values),
        identifier=identifier,
        cardinality=many,
        baseType=base,
    )


def outcome(identifier: str, base: str, value: str | None = None, **more: float) -> Element:
    """Return the declaration of what marking sets."""
    default = [] if value is None else [element("defaultValue", element("value", value))]
    return element(
        "outcomeDeclaration",
        *default,
        identifier=identifier,
        cardinality="single",
        baseType=base,
        **more,
    )


def variable(identifier: str) -> Element:
    """Return the value of a response or an outcome."""
    return element("variable", identifier=identifier)


def value(base: str, of: str | float) -> Element:
    """Return a fixed value."""
    return element("baseValue", text(of), baseType=base)


def between(identifier: str, low: float, high: float) -> Element:
    """Return whether a number lies in a range, its ends with it.

    The standard's own tolerance, an attribute of "equal", says the same; not every system reads it.
    """
    least = element("gte", variable(identifier), value("float", low))
    most = element("lte", variable(identifier), value("float", high))
    return element("and", least, most)


def in_one_of(identifier: str, ranges: Sequence[tuple[float, float]]) -> Element:
    """Return whether a number lies in any of some ranges."""
    return any_of([between(identifier, low, high) for low, high in ranges])


def written_as(identifier: str, texts: Iterable[str]) -> Element:
    """Return whether a text is one of these, in capitals or not."""
    return any_of(
        [
            element("stringMatch", variable(identifier), value("string", one), caseSensitive=False)
            for one in texts
        ]
    )


def any_of(conditions: Sequence[Element]) -> Element:
    """Return whether any condition holds."""
    return conditions[0] if len(conditions) == 1 else element("or", *conditions)


def same(one: Element, other: Element) -> Element:
    """Return whether two values are the same."""
    return element("match", one, other)


def set_to(identifier: str, expression: Element) -> Element:
    """Return the rule that sets an outcome."""
    return element("setOutcomeValue", expression, identifier=identifier)


def when(*branches: tuple[Element | None, Sequence[Child]]) -> Element:
    """Return a rule of branches, each a condition and its rules; None is for all that is left."""
    made = []
    for place, (condition, rules) in enumerate(branches):
        if condition is None:
            made.append(element("responseElse", *rules))
        else:
            made.append(element("responseElseIf" if place else "responseIf", condition, *rules))
    return element("responseCondition", *made)
