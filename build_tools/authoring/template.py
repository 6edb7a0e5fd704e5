"""A format as a file that explains itself, written from its model alone.

Keys that are needed come first, each under a comment that tells its meaning, with a value that
loads; then the others, as comments. A value that is not yet the writer's own ends in a mark, which
the check tells until it is taken away.
"""

from __future__ import annotations

import json
import re
import textwrap
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import TypeAdapter
from pydantic.fields import FieldInfo

from build_tools.checks.left_examples import MARK
from build_tools.content.fields import Format, Measure, Reference, first_of, keys
from build_tools.content.models import Fact
from build_tools.content.page_models import Reading
from build_tools.content.yaml_file import read_yaml
from calculators.quantities import KINDS

WIDTH = 100
_SUCH_AS = re.compile(r'such as (?:"([^"]+)"|([\w-]+))')
#: What ends the words of a description that can stand as a text.
_REST = re.compile(r"(, or \[\]|, such as|; missing|: |, \[\]).*")


MAY_BE_LEFT_OUT = '# What follows may be left out. To use a key, take one "#" away from its lines.'
#: Keys of which one must be there although none is needed by itself.
_ONE_OF: dict[type[Format], tuple[str, ...]] = {Fact: ("value",), Reading: ("value",)}


@dataclass(frozen=True)
class Example:
    """A value that loads and that the writer is to replace."""

    value: Any


@dataclass(frozen=True)
class Several:
    """The parts of a list, each as the keys it is given."""

    parts: tuple[dict[str, Any], ...]


#: Returns a name that exists of a group, or None.
Known = Callable[[str], str | None]


def lines(
    shape: type[Format], given: dict[str, Any], known: Known, *, all_keys: bool = True
) -> list[str]:
    """Return the lines of one thing in a format; those that may be left out only with `all_keys`.

    given: by key, what is known of it: a value, an `Example`, or `Several`; other keys that are
    needed get an example of their own.
    """
    needed, free = [], []
    for key, field in keys(shape).items():
        value = given[key] if key in given else _example(field.annotation, field, known)
        part = _key(key, value, field, known)
        if key in given or key in _ONE_OF.get(shape, ()) or field.is_required():
            needed += [*_comment(field), *part]
        else:
            free += [*_comment(field), *(f"#{one}" for one in part)]
    return [*needed, *([MAY_BE_LEFT_OUT, *free] if free and all_keys else [])]


def scalar(value: Any) -> str:
    """Return a value as YAML on one line, in quotes only where it needs them."""
    if isinstance(value, list):
        return f"[{', '.join(map(_in_flow, value))}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{_in_flow(k)}: {_in_flow(v)}' for k, v in value.items())}}}"
    if not isinstance(value, str):
        return json.dumps(value)
    read = read_yaml(f"key: {value}", "")
    plain = not read.problems and read.data == {"key": value}
    return value if plain else json.dumps(value, ensure_ascii=False)


def _in_flow(value: Any) -> str:
    text = scalar(value)
    special = isinstance(value, str) and set(value) & set(",[]{}") and not text.startswith('"')
    return json.dumps(value, ensure_ascii=False) if special else text


def _comment(field: FieldInfo) -> list[str]:
    told = field.description or "a value"
    choices = _choices(field.annotation)
    if choices and not all(one in told for one in choices):
        told += f"; one of {', '.join(map(scalar, choices))}"
    return textwrap.wrap(
        told, WIDTH - 8, initial_indent="# ", subsequent_indent="# ", break_on_hyphens=False
    )


def _key(key: str, value: Any, field: FieldInfo, known: Known) -> list[str]:
    mark = f"  {MARK}" if isinstance(value, Example) else ""
    value = value.value if isinstance(value, Example) else value
    if isinstance(value, Several):
        shape = first_of(Format, field.annotation)
        items = [
            _item(lines(shape, part, known, all_keys=place == 0))
            for place, part in enumerate(value.parts)
        ]
        return [f"{key}:", *_indented(line for item in items for line in item)]
    shape = _without_none(field.annotation)
    if isinstance(shape, type) and issubclass(shape, Format):
        return [f"{key}:", *_indented(lines(shape, value, known))]
    if isinstance(value, list) and value:
        return [f"{key}:", *(f"  - {scalar(one)}{mark}" for one in value)]
    if isinstance(value, dict) and value:
        pairs = (f"  {scalar(name)}: {scalar(one)}{mark}" for name, one in value.items())
        return [f"{key}:", *pairs]
    return [f"{key}: {scalar(value)}{mark}"]


def _item(part: list[str]) -> list[str]:
    """Return the lines of one item: its comments before the dash, so that the dash has a key."""
    first = next(index for index, line in enumerate(part) if not line.startswith("#"))
    return [*part[:first], f"- {part[first]}", *_indented(part[first + 1 :])]


def _indented(part: Iterable[str]) -> list[str]:
    return [f"  {line}" for line in part]


def _example(annotation: Any, field: FieldInfo, known: Known) -> Any:
    """Return an example of a field, from its type and its description."""
    told = field.description or ""
    kind = _without_none(annotation)
    if get_origin(kind) is list:
        return _example_list(kind, field, known)
    if get_origin(kind) is Literal:
        return Example(get_args(kind)[0])
    if get_origin(kind) is dict:
        return Example({"name": "1"} if any(map(_least, field.metadata)) else {})
    if isinstance(kind, type) and issubclass(kind, Format):
        return _shape(kind, known)
    if group := first_of(Reference, (field.metadata, annotation)):
        return Example(known(group.group) or _such_as(told) or "name-of-one")
    if kind is bool:
        return Example(True)
    if kind in (int, float):
        return Example(1)
    if kind is Measure:
        return Example(_such_as(told) or _quantity(annotation, field))
    return Example(_such_as(told) or _sentence(told))


def _example_list(kind: Any, field: FieldInfo, known: Known) -> Any:
    told, (item,) = field.description or "", get_args(kind)
    if "[]" in told:
        return Example([])
    shape = _without_none(item)
    least = max([1, *map(_least, field.metadata)])
    if isinstance(shape, type) and issubclass(shape, Format):
        return Several(({},) * least)
    inner = FieldInfo(annotation=item, description=told)
    return Example([_example(item, inner, known).value] * least)


def _least(told: Any) -> int:
    return getattr(told, "min_length", 0) or 0


def _shape(kind: type[Format], known: Known) -> dict[str, Any]:
    return {
        key: _example(field.annotation, field, known)
        for key, field in keys(kind).items()
        if field.is_required()
    }


def _without_none(annotation: Any) -> Any:
    while True:
        origin = get_origin(annotation)
        if origin is Annotated:
            annotation = get_args(annotation)[0]
        elif origin in (Union, UnionType):
            annotation = next(one for one in get_args(annotation) if one is not NoneType)
        else:
            return annotation


def _choices(annotation: Any) -> tuple[str, ...]:
    """Return what there is to choose from in a type, where it is closed."""
    if get_origin(annotation) is Literal:
        return get_args(annotation)
    if isinstance(annotation, type) and issubclass(annotation, Format):
        return ()
    return next((found for one in get_args(annotation) if (found := _choices(one))), ())


def _such_as(told: str) -> str | None:
    found = _SUCH_AS.search(told)
    return (found[1] or found[2]) if found else None


def _quantity(annotation: Any, field: FieldInfo) -> str:
    """Return one of the unit of the field's kind."""
    told = field.metadata if annotation is Measure else [None]
    read = TypeAdapter(Annotated[annotation, *told]).json_schema()
    words = read["title"] if "title" in read else read["anyOf"][0]["title"]
    kind = next((one for one in KINDS.values() if one.words == words), KINDS["volume"])
    return f"1 {kind.units[0]}"


def _sentence(told: str) -> str:
    words = _REST.sub("", told).removeprefix("a list of ")
    return f"{words[:1].upper()}{words[1:]}."
