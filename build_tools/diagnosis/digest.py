"""A digest of what simulated homes are made from: the simulation's source and a fault's changes."""

from __future__ import annotations

import ast
import hashlib
import json
import re
from functools import cache
from pathlib import Path
from typing import Any

START = ("calculators.simulation.visit", "calculators.diagnosis.home_codes")
# How calculators tell their inputs, steps and sources; no number of a simulated home depends on it,
# nor on what a module imports from these, nor on its declared calculators.
TELLING = {
    f"calculators.{name}"
    for name in ("sources", "working", "declare", "inputs", "outputs", "readings")
}
MAKER = Path(__file__).with_name("homes_of_fault.py")
_IMPORT = re.compile(
    r"^\s*(?:from (calculators[\w.]*) import ([\w, ]+)|import (calculators[\w.]*))", re.MULTILINE
)


def digest_of(given: Any, root: Path) -> str:
    """Return the digest of what homes are given and of all code that makes them."""
    text = json.dumps(given, sort_keys=True)
    return hashlib.sha256(f"{_source_digest(root)}\n{text}".encode()).hexdigest()[:16]


@cache
def _source_digest(root: Path) -> str:
    text = [code_of(MAKER.read_text("utf-8"))]
    text += [code_of(path.read_text("utf-8")) for path in modules(root, START)]
    return hashlib.sha256("\n".join(text).encode()).hexdigest()


def modules(root: Path, start: tuple[str, ...]) -> list[Path]:
    """Return the files of these modules and of all that they import from `calculators`."""
    found: dict[str, Path] = {}
    waiting = list(start)
    while waiting:
        name = waiting.pop()
        path = _file(root, name)
        if name in found or path is None or name in (*TELLING, "calculators"):
            continue
        found[name] = path
        for package, names, module in _IMPORT.findall(path.read_text("utf-8")):
            waiting += [module] if module else [package, *_joined(package, names)]
    return [found[name] for name in sorted(found)]


def code_of(source: str) -> str:
    """Return the lines that do something: without comments, docstrings, declared calculators.

    >>> code_of('\"\"\"What it is for.\"\"\"\\n\\nX = 1  # one\\n# two\\n')
    'X = 1  # one'
    """
    left_out: set[int] = set()
    tree = ast.parse(source)
    for node in tree.body:
        if _only_tells(node):
            left_out |= set(range(node.lineno, (node.end_lineno or node.lineno) + 1))
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and node.body:
            first = node.body[0]
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
                left_out |= set(range(first.lineno, (first.end_lineno or first.lineno) + 1))
    lines = [
        line.rstrip()
        for number, line in enumerate(source.splitlines(), 1)
        if number not in left_out and line.strip() and not line.lstrip().startswith("#")
    ]
    return "\n".join(lines)


def _only_tells(node: ast.stmt) -> bool:
    if isinstance(node, ast.ImportFrom):
        return node.module in TELLING
    value = node.value if isinstance(node, ast.Assign) else None
    return isinstance(value, ast.Call) and ast.unparse(value.func) == "Calculator"


def _joined(package: str, names: str) -> list[str]:
    return [f"{package}.{one.strip().split(' ')[0]}" for one in names.split(",")]


def _file(root: Path, module: str) -> Path | None:
    path = root.joinpath(*module.split("."))
    for one in (path.with_suffix(".py"), path / "__init__.py"):
        if one.is_file():
            return one
    return None
