"""Finds the words of the pages' scripts, for Babel's extraction, also in calls within calls."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, BinaryIO

from babel.messages.jslexer import Token, tokenize, unquote_string

Found = tuple[int, str, str | tuple[str, ...], list[str]]


def extract(fileobj: BinaryIO, keywords: Any, comment_tags: Any, options: Any) -> Iterator[Found]:
    """Yield each call of a function that says something, with the texts it is given."""
    source = fileobj.read().decode("utf-8")
    tokens = [one for one in tokenize(source, jsx=False) if "comment" not in one.type]
    for place, token in enumerate(tokens[:-1]):
        is_call = (
            token.type == "name" and token.value in keywords and tokens[place + 1].value == "("
        )
        is_method = place and tokens[place - 1].value in ("#", ".", "function")
        if is_call and not is_method:
            texts = _texts(tokens, place + 1)
            if any(texts):
                yield token.lineno, token.value, tuple(texts) if len(texts) > 1 else texts[0], []


def _texts(tokens: list[Token], place: int) -> list[str | None]:
    """Return the arguments of a call that are texts; None for any other one."""
    texts: list[str | None] = [None]
    depth = 0
    for token in tokens[place:]:
        if token.value in ("(", "[", "{"):
            depth += 1
        elif token.value in (")", "]", "}"):
            depth -= 1
            if depth == 0:
                break
        elif depth == 1 and token.value == ",":
            texts.append(None)
        elif depth == 1 and token.type == "string":
            texts[-1] = unquote_string(token.value)
    return texts
