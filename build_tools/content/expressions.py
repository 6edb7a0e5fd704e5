"""Evaluates the expressions of texts, such as `{{ fact.hot_water }}`, in Jinja's sandbox.

Each one is compiled by itself, so that every failure of a page is found, each with its place, and
it sees nothing but the names that it is given.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

from jinja2 import StrictUndefined, TemplateError, meta
from jinja2.sandbox import SandboxedEnvironment

from build_tools.content.expression_form import wrong_form
from build_tools.content.markdown_file import hide_expressions
from build_tools.content.problems import expected, shortened

_LIKE = "(expected an expression such as {{ fact.name }})"
_OPEN = re.compile(r"\{[{%]")


class ValueProblem(Exception):
    """Why an expression has no value, as a sentence for its writer."""


class ToldElsewhere(Exception):
    """The value stands in a file that failed to load: that problem is told there."""


class Dotted:
    """A name with a dot after it, such as `fact`; `find` returns the value of what follows."""

    def __init__(self, find: Callable[[str], Any]) -> None:
        self._find_value = find

    def __getitem__(self, name: str) -> Any:
        return self._find_value(name)


class DottedOrCalled(Dotted):
    """A name that may also be called first, as in `unit("its-id").capacity`."""

    def __init__(self, find: Callable[[str], Any], called: Callable[[str], Dotted]) -> None:
        super().__init__(find)
        self._called = called

    def __call__(self, name: Any) -> Dotted:
        return self._called(str(name))


def evaluated(expression: str, names: Mapping[str, Any]) -> str | int | float:
    """Return the single value of an expression, braces included, or raise a ValueProblem.

    names: what it may use. What raises ToldElsewhere in finding a value raises it here.
    """
    source = shortened(expression)
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


def unclosed(text: str) -> tuple[int, str] | None:
    """Return where an expression opens that nothing closes, and the sentence that tells it."""
    stray = _OPEN.search(hide_expressions(text))
    if stray is None:
        return None
    closing = "}}" if stray[0] == "{{" else "%}"
    said = f'"{stray[0]}" opens an expression that nothing closes (expected "{closing}")'
    return stray.start(), said


# Both are kept while authors work: after each change most expressions are the same again.


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
