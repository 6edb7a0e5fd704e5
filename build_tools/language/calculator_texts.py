"""Finds the texts of the calculators in their source, for Babel's extraction.

Every text of `calculators/` that a reader may see, whatever call it stands in: sentences, labels
and choices. A text with values put in is a template: `f"{number} is above"` becomes
"{number} is above". A formula is taken as it is shown, with its names in words.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from typing import Any, BinaryIO

from calculators.translating import SYMBOLS

#: A text of these has a message whatever it looks like; their names are no messages.
_DECLARED = {"Input": (1,), "Output": (1,), "Calculator": (1, 2)}
_NOT_SHOWN = ("kind", "unit", "shop", "equipment", "sources", "only_when", "name", "direction")
_FORMULA = 2
_NAME = re.compile(r"\{(\w+)\}")
_OPEN, _SHUT = "\ue000", "\ue001"
_PLACE = re.compile(f"{_OPEN}(\\w+){_SHUT}")
_SHOWN = re.compile(r"[A-Za-z“√(]?.*[A-Za-z]{2,}.*", re.DOTALL)
_MARKUP = re.compile(
    r"^[MlLHV][-\d{ ]|^\w+\(\{|[<>=]|^[A-Z]\d|^[-a-z_]+$|^\W*$|%[sd]|\.\w+$|^\w+/\w+$"
)

_LETTERS = re.compile(r"[A-Za-zÀ-ÖØ-öø-ÿ]+")

Found = tuple[int, None, str, list[str]]


def extract(fileobj: BinaryIO, keywords: Any, comment_tags: Any, options: Any) -> Iterator[Found]:
    """Yield the texts of a Python file as Babel wants them."""
    finder = _Finder()
    finder.visit(ast.parse(fileobj.read()))
    for line, text in sorted(set(finder.found)):
        if all(one in SYMBOLS for one in _LETTERS.findall(_NAME.sub("", text))):
            continue  # signs that all languages share
        yield line, None, text, []


class _Finder(ast.NodeVisitor):
    """Walks through a module and notes its texts."""

    def __init__(self) -> None:
        self.found: list[tuple[int, str]] = []

    def visit_Call(self, node: ast.Call) -> None:
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        if name == "step":
            self._note(node.args[1])
            self._note(node.args[_FORMULA], formula=True)
            for one in node.args[3:]:
                self.visit(one)
            return
        shown = _DECLARED.get(name)
        for place, one in enumerate(node.args):
            if shown is None or place > 3:
                self.visit(one)
            elif place in shown:
                self._note(one, declared=True)
        for one in node.keywords:
            if one.arg == "choices":
                for choice in getattr(one.value, "elts", []):
                    self._note(choice, declared=True)
            elif one.arg not in _NOT_SHOWN:
                self.visit(one.value)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        if node.name != "__repr__":
            self._body(node)

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        self._body(node)

    def visit_Module(self, node: ast.Module) -> None:
        self._body(node)

    def _body(self, node: Any) -> None:
        for place, one in enumerate(node.body):
            is_docstring = isinstance(one, ast.Expr) and isinstance(one.value, ast.Constant)
            if not (is_docstring and place == 0):
                self.visit(one)

    def visit_Return(self, node: ast.Return) -> None:
        if isinstance(node.value, ast.Constant):
            self._note(node.value, declared=True)
        elif node.value is not None:
            self.visit(node.value)

    def visit_IfExp(self, node: ast.IfExp) -> None:
        for one in (node.body, node.orelse):
            self._words(one)

    def visit_Assign(self, node: ast.Assign) -> None:
        """Several names at once may take a word for a sentence: `side, limit = "below", low`."""
        if isinstance(node.value, ast.Tuple) and isinstance(node.targets[0], ast.Tuple):
            self._words(node.value)
        elif getattr(node.targets[0], "id", "") == "formula":
            self._note(node.value, formula=True)
        else:
            self.visit(node.value)

    def _words(self, node: ast.AST) -> None:
        for one in node.elts if isinstance(node, ast.Tuple) else [node]:
            self._note(one, declared=isinstance(one, ast.Constant))

    def visit_Tuple(self, node: ast.Tuple) -> None:
        """A table's row of a number and a word, such as a class of hardness."""
        has_number = any(
            isinstance(one, ast.Constant) and isinstance(one.value, (int, float))
            for one in node.elts
        )
        for one in node.elts:
            if has_number:
                self._note(one, declared=isinstance(one, ast.Constant))
            self.visit(one)

    def visit_Constant(self, node: ast.Constant) -> None:
        self._note(node)

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        self._note(node)
        for one in node.values:
            if isinstance(one, ast.FormattedValue):
                self.visit(one.value)

    def _note(self, node: ast.AST, *, declared: bool = False, formula: bool = False) -> None:
        text = _text(node)
        if text is None:
            if not isinstance(node, ast.Constant):
                self.visit(node)
            return
        if formula:
            if _LETTERS_OUTSIDE.search(_NAME.sub("", _PLACE.sub("", text))):
                self.found.append((node.lineno, _PLACE.sub(r"{\1}", text)))
            text = re.sub(r"\{([^{}]+)\}", lambda name: _words(name[1]), text.replace("{{", "{"))
        text = _PLACE.sub(r"{\1}", text).strip(" ,;·")
        words = _NAME.sub("", text)
        if (
            (declared or formula)
            and "=" not in words
            and re.search("[A-Za-z]", words)
            and not re.fullmatch(r"[a-z_]+_[a-z_]+", words)
        ):
            self.found.append((node.lineno, text))
        elif (
            " " in text.strip()
            and re.search(r"[A-Za-z]{2,}", words)
            and _SHOWN.match(text)
            and not _MARKUP.search(words)
        ):
            self.found.append((node.lineno, text))


_LETTERS_OUTSIDE = re.compile(r"[a-z]{2,}")


def _words(name: str) -> str:
    return name.replace("_", " ")


def _text(node: ast.AST) -> str | None:
    """Return the text of a constant, or of one with values put in, or None for anything else."""
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else None
    if not isinstance(node, ast.JoinedStr):
        return None
    text, names = "", set()
    for number, one in enumerate(node.values):
        if isinstance(one, ast.Constant):
            text += one.value
        else:
            name = _name(one.value, number)
            names.add(name)
            text += f"{_OPEN}{name}{_SHUT}"
    return text


def _name(value: ast.AST, number: int) -> str:
    if isinstance(value, ast.Name):
        return value.id
    if isinstance(value, ast.Attribute):
        return value.attr
    return f"value{number}"
