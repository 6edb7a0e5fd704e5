"""The kinds of field that the source formats are made of.

A field declares what its text is: prose, the name of something else, or a quantity of a kind.
Checks find all prose and all names through `parts`, so a new format needs no new check.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, ClassVar, get_args

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainValidator,
    WithJsonSchema,
)

from build_tools.content.yaml_file import KeyPath
from calculators.quantities import (
    KINDS,
    Quantity,
    QuantityError,
    check_length,
    nearest,
    normal_spelling,
    parse,
    read_number,
    spellings,
)


class Marker:
    """What the text of a field is, where it is more than a text."""


class Prose(Marker):
    """Text that readers see: inline Markdown with expressions."""


@dataclass(frozen=True)
class Reference(Marker):
    """The name of something that must exist: a page, a fact, a calculator, …"""

    #: Under this key a JSON Schema tells the group; `authoring.schemas` puts names in its place.
    KEY: ClassVar[str] = "x-group"
    group: str

    def __get_pydantic_json_schema__(self, schema: Any, handler: Any) -> dict[str, Any]:
        return {**handler(schema), self.KEY: self.group}


class Format(BaseModel):
    """The base of every source format: nothing unknown, nothing converted silently."""

    model_config = ConfigDict(
        strict=True, extra="forbid", frozen=True, allow_inf_nan=False, arbitrary_types_allowed=True
    )


Text = Annotated[str, Field(min_length=1), Prose()]
Name = Annotated[str, Field(min_length=1)]
#: A name that stands in texts of every kind as it is.
Plain = Annotated[str, Field(min_length=1), AfterValidator(lambda text: _without_marks(text))]
Whole = Annotated[int, Field(ge=1)]
Price = Annotated[float, Field(gt=0)]
PriceOrNothing = Annotated[float, Field(ge=0)]


def _without_marks(text: str) -> str:
    if mark := re.search(r"[<>{}\n]", text):
        raise ValueError(f'"{mark[0]}" does not belong in a name. Write letters and signs alone.')
    return text


def reference(group: str) -> Any:
    """Return the type of a field that names one thing of a group."""
    return Annotated[str, Field(min_length=1), Reference(group)]


@dataclass(frozen=True)
class Measure:
    """A quantity of a source file and the text it was written as."""

    text: str
    quantity: Quantity


#: What may be less than nothing: a temperature, and a drain that lies below the floor.
_BELOW_ZERO = ("temperature", "length")


def measure(kind: str | None = None) -> Any:
    """Return the type of a field that holds a quantity of a kind, or of any kind."""
    words = KINDS[kind].words if kind else "a quantity with its unit"

    def read(value: object) -> Measure:
        if isinstance(value, bool) or not isinstance(value, (str, int, float)):
            raise ValueError(f"this is no quantity. Write {words} as a text.")
        text = str(value)
        quantity = parse(text, kind) if kind else parse_any(text)
        if quantity.number < 0 and quantity.kind not in _BELOW_ZERO:
            raise ValueError(f"“{text.strip()}” is below zero. Write it without the sign.")
        return Measure(text, quantity)

    schema = {"type": ["string", "number"], "title": words}
    return Annotated[Measure, PlainValidator(read), WithJsonSchema(schema)]


def parse_any(text: str) -> Quantity:
    """Read a quantity whose kind only its unit tells.

    Where a spelling belongs to several kinds ("grains"), the kind counts that has it as its unit.
    """
    check_length(text)
    _, rest = read_number(text)
    if not rest:
        raise QuantityError(f"“{text.strip()}” has no unit. Write a quantity with its unit.")
    spelled = normal_spelling(rest)
    kinds = [kind for kind in KINDS.values() if spelled in kind.spelled]
    if not kinds:
        close = nearest(spelled, spellings())
        guess = f" The nearest is “{close}”." if close else ""
        raise QuantityError(f"“{rest}” is no unit known here.{guess}")
    own = [kind for kind in kinds if spelled in map(normal_spelling, kind.units)]
    return parse(text, (own or kinds)[0].name)


def same_as_written(text: str, written: Quantity, other: Quantity) -> bool:
    """Tell whether `other` rounds to `written` in the last place of its text."""
    difference = abs(written.number - other.to(written.unit).number)
    return difference <= last_place(text) / 2 * (1 + 1e-9)


def last_place(text: str) -> float:
    """Return what the last place of a written number is worth: 0.1 for "2.4", 1/4 for "3/4"."""
    if decimals := re.search(r"\.(\d+)", text):
        return 10.0 ** -len(decimals[1])
    if fraction := re.search(r"[/⁄]\s*([1-9]\d*)", text):
        return 1 / int(fraction[1])
    return 0.1 if set(text) & set("½⅓⅔¼¾⅛⅜⅝⅞") else 1.0


def _literal(value: object) -> str:
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise ValueError(
            'this is no quantity or choice. Write a text such as "18 gpg", or a number.'
        )
    return str(value)


def _listed(value: object) -> object:
    return [value] if isinstance(value, str) else value


_GIVEN: dict[str, Any] = {"type": ["string", "number"]}
#: What a calculator is given: a text as a person would type it, or a bare number.
Given = Annotated[str, BeforeValidator(_literal), WithJsonSchema(_GIVEN)]


def _literal_or_named(value: object) -> object:
    if not isinstance(value, dict):
        return _literal(value)
    return {str(name): _literal(one) for name, one in value.items()}


#: The same, or several of them by name.
GivenOrNamed = Annotated[
    str | dict[str, str],
    PlainValidator(_literal_or_named),
    WithJsonSchema({"type": ["string", "number", "object"], "additionalProperties": _GIVEN}),
]
_NAME: dict[str, Any] = {"type": "string", "minLength": 1}
_NAMES: dict[str, Any] = {"anyOf": [_NAME, {"type": "array", "items": _NAME, "minItems": 1}]}
#: One name or a list of names.
NameOrNames = Annotated[
    list[Name], Field(min_length=1), BeforeValidator(_listed), WithJsonSchema(_NAMES)
]


def either(*ways: str) -> ConfigDict:
    """Return what a format says to editors where one of several keys, or pairs, must be there."""
    return ConfigDict(json_schema_extra={"oneOf": [{"required": way.split()} for way in ways]})


def keys(model: type[BaseModel]) -> dict[str, Any]:
    """Return the fields of a format by the key that stands in the file."""
    return {field.alias or name: field for name, field in model.model_fields.items()}


@cache
def _markers(model: type[BaseModel]) -> tuple[tuple[str, str, Marker | None], ...]:
    return tuple(
        (name, field.alias or name, first_of(Marker, (field.metadata, field.annotation)))
        for name, field in model.model_fields.items()
    )


def first_of(wanted: type, annotation: Any) -> Any:
    """Return the first instance, or subclass, of `wanted` in a type with all its arguments."""
    if isinstance(annotation, wanted):
        return annotation
    if isinstance(annotation, type) and issubclass(annotation, wanted):
        return annotation
    inner = annotation if isinstance(annotation, (list, tuple)) else get_args(annotation)
    return next((found for part in inner if (found := first_of(wanted, part))), None)


def parts(value: Any, path: KeyPath = (), marker: Marker | None = None) -> Iterator[Any]:
    """Yield (key path, value, marker) for every marked value in a loaded format."""
    if isinstance(value, BaseModel):
        for name, key, marked in _markers(type(value)):
            yield from parts(getattr(value, name), (*path, key), marked)
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from parts(item, (*path, index), marker)
    elif value is not None and marker is not None:
        yield path, value, marker
