"""The code of a formula as a digest: comments, line breaks and docstrings do not count."""

from __future__ import annotations

import ast
import hashlib
import io
import tokenize
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import calculators

FOLDER = Path(calculators.__file__).parent
#: Tokens that change nothing of what is worked out.
_SILENT = {tokenize.COMMENT, tokenize.NL, tokenize.ENCODING, tokenize.ENDMARKER}


@cache
def digest_of(module: str) -> str:
    """Return what is another when the code of a module, or of what it imports, is another.

    module: its full name, such as "calculators.water". What the package itself has, the one door to
    all calculators, does not count.
    """
    digest = hashlib.sha256()
    for name in sorted(_closure(module)):
        digest.update(f"{name} {_digest_of_file(_path(name))}\n".encode())
    return digest.hexdigest()[:16]


def digest_of_all() -> dict[str, str]:
    """Return the digest of every module by its name."""
    names = [path.relative_to(FOLDER.parent).with_suffix("").as_posix() for path in _files()]
    return {name.replace("/", "."): _digest_of_file(FOLDER.parent / f"{name}.py") for name in names}


def _files() -> list[Path]:
    return sorted(FOLDER.rglob("*.py"))


def _path(module: str) -> Path | None:
    place = FOLDER.parent.joinpath(*module.split("."))
    for path in (place.with_suffix(".py"), place / "__init__.py"):
        if path.is_file() and path != FOLDER / "__init__.py":
            return path
    return None


def _closure(module: str) -> set[str]:
    found: set[str] = set()
    left = [module]
    while left:
        name = left.pop()
        if name not in found and _path(name):
            found.add(name)
            left += _imported(_path(name))
    return found


@cache
def _imported(path: Path) -> tuple[str, ...]:
    return tuple(_names(ast.parse(path.read_bytes())))


def _names(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (one.name for one in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{one.name}" for one in node.names)


@cache
def _digest_of_file(path: Path) -> str:
    digest = hashlib.sha256()
    before = tokenize.NEWLINE
    for token in tokenize.tokenize(io.BytesIO(path.read_bytes()).readline):
        is_docstring = token.type == tokenize.STRING and before in (
            tokenize.NEWLINE,
            tokenize.INDENT,
        )
        if token.type not in _SILENT:
            before = token.type
            if not is_docstring:
                said = "" if token.type in (tokenize.NEWLINE, tokenize.INDENT) else token.string
                digest.update(f"{token.type} {said}\n".encode())
    return digest.hexdigest()[:16]
