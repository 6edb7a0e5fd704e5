"""Checks loaded data against its format and says in sentences what does not fit."""

from __future__ import annotations

import re
from typing import Any

from pydantic import BaseModel, ValidationError

from build_tools.content.fields import Format, first_of, keys
from build_tools.content.problems import asking, choosing, shortened
from build_tools.content.yaml_file import KeyPath, YamlFile

_WANTED = {
    "string_type": "a text",
    "int_type": "a whole number",
    "float_type": "a number",
    "bool_type": "true or false",
    "list_type": 'a list: lines that begin with "- "',
    "dict_type": "lines of a name, a colon and a value",
    "model_type": "keys and values",
}


def validate[Shape: Format](
    shape: type[Shape], read: YamlFile, data: Any, place: KeyPath = ()
) -> Shape | None:
    """Return `data` in its format, or None after noting in `read` everything that does not fit.

    place: the key path of `data` in the file.
    """
    try:
        return shape.model_validate(data)
    except ValidationError as error:
        for one in error.errors(include_url=False):
            path = tuple(one["loc"])
            inside = path[:-1] if one["type"] == "missing" else path
            read.report(read.line(*place, *inside), _sentence(shape, place + path, one))
    return None


def _sentence(shape: type[Format], path: KeyPath, error: Any) -> str:
    kind, value, here = error["type"], error["input"], tuple(error["loc"])
    name = called(path)
    if kind == "missing":
        return asking(f'the key "{here[-1]}" is missing', description(shape, here))
    if kind == "extra_forbidden":
        return choosing(
            f'unknown key "{shortened(here[-1])}"', here[-1], _keys_at(shape, here[:-1])
        )
    if kind == "value_error" and isinstance(value, dict):  # about several keys together
        return str(error["ctx"]["error"])
    if value is None:
        return asking(f"{name} is empty", description(shape, here))
    if kind == "value_error":
        return f"{name}: {error['ctx']['error']}"
    if kind == "literal_error":
        choices = re.findall(r"'([^']*)'", error["ctx"]["expected"])
        return choosing(f"{name} is {_value(value)}", value, choices)
    if kind in _WANTED:
        return asking(f"{name} is {_value(value)}", _WANTED[kind])
    if kind in ("too_short", "string_too_short"):
        return asking(f"{name} is empty", description(shape, here))
    return asking(f"{name} is {_value(value)}", _limit(error))


def called(path: KeyPath) -> str:
    """Return how a message calls the part at a path: its key, or its place in a list."""
    if not path:
        return "this"
    if isinstance(path[-1], int) and len(path) > 1:
        return f'item {path[-1] + 1} of "{path[-2]}"'
    return f'"{shortened(path[-1])}"'


def _value(value: object) -> str:
    if isinstance(value, (dict, list)):
        return "a list" if isinstance(value, list) else "a set of keys and values"
    if isinstance(value, bool):
        return f"the switch {str(value).lower()}"
    return f'"{shortened(value)}"' if isinstance(value, str) else f"the number {value}"


def _limit(error: Any) -> str:
    words = {"greater_than": "above {gt:g}", "greater_than_equal": "of at least {ge:g}"}
    if error["type"] not in words:
        return f"something else: {error['msg']}"
    return f"a number {words[error['type']].format(**error['ctx'])}"


def _keys_at(shape: type[Format], path: KeyPath) -> list[str]:
    model = _model_at(shape, path)
    return list(keys(model)) if model else []


def description(shape: type[Format], path: KeyPath) -> str:
    """Return what the key at a path of a format holds, or the nearest key around it."""
    for place in reversed([place for place, part in enumerate(path) if isinstance(part, str)]):
        model = _model_at(shape, path[:place])
        field = keys(model).get(path[place]) if model else None
        if field:
            return field.description or "a value"
    return "a value"


def _model_at(shape: type[Format], path: KeyPath) -> type[BaseModel] | None:
    model: type[BaseModel] | None = shape
    for part in path:
        if isinstance(part, str) and model is not None:
            field = keys(model).get(part)
            model = first_of(BaseModel, field.annotation) if field else None
    return model
