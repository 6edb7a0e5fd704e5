"""The words of the trade in another language: one for one thing, as the glossary has it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property

from pydantic import Field

from build_tools.content.entries import Passage
from build_tools.content.fields import Format, Text
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, choosing
from build_tools.content.validation import validate
from build_tools.content.yaml_file import read_text, read_yaml

FILE = "glossary.yaml"


class TranslatedTerm(Format):
    """One entry of <language>/glossary.yaml, under the name of a term of the English glossary."""

    term: Text = Field(description="the word in this language")
    instead_of: list[Text] = Field([], description="words that are not used for it")


class Glossary:
    """The terms of one language."""

    def __init__(self, handbook: Handbook, code: str) -> None:
        self._handbook = handbook
        path = handbook.docs_folder / code / FILE
        self.terms: dict[str, TranslatedTerm] = {}
        self.problems: list[Problem] = []
        if not path.is_file():
            return
        file = handbook.file_name(path)
        text, self.problems = read_text(path, file)
        read = read_yaml(text or "", file)
        known = handbook.names("glossary")
        for name, data in (read.data or {}).items():
            if name not in known:
                said = choosing(f'the glossary has no term "{name}"', name, sorted(known))
                read.report(read.line(name), said)
            elif content := validate(TranslatedTerm, read, data, (name,)):
                self.terms[name] = content
        self.problems += read.problems

    def rows(self) -> list[tuple[str, str]]:
        """Return each term in the language beside its English one, in the order of the first."""
        rows = [
            (one.term, self._handbook.glossary[name].content.term)
            for name, one in self.terms.items()
            if name in self._handbook.glossary
        ]
        return sorted(rows, key=lambda row: row[0].lower())

    def wrong_words(self, passage: Passage) -> Iterator[tuple[int, str, str]]:
        """Yield (offset, word, term) for each word that the glossary has another one for."""
        for piece in passage.markdown.pieces:
            for match in self._pattern.finditer(piece.text):
                word = " ".join(match[0].split())
                yield piece.offset(match.start()), word, self._wanted[word.lower()]

    @cached_property
    def _wanted(self) -> dict[str, str]:
        return {word.lower(): one.term for one in self.terms.values() for word in one.instead_of}

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        longest_first = sorted(self._wanted, key=lambda word: (-len(word), word))
        spelled = "|".join(r"\s+".join(map(re.escape, one.split())) for one in longest_first)
        return re.compile(rf"(?<![\w-])(?:{spelled})(?![\w-])" if spelled else r"(?!)", re.I)
