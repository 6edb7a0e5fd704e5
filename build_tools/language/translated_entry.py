"""Entries of the handbook whose texts are in another language."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from build_tools.content.entries import Entry, Page, Passage
from build_tools.content.yaml_file import KeyPath
from build_tools.language.translated_file import TranslatedText


@dataclass(frozen=True)
class InAnotherLanguage(Entry[Any]):
    """An entry whose texts are translated. english: the paths of those that are not."""

    english: frozenset[KeyPath] = frozenset()
    translated: dict[KeyPath, TranslatedText] = field(default_factory=dict, repr=False)

    def line(self, *path: str | int) -> int:
        """Return the line of a text in the translated file."""
        found = self.translated.get(path)
        return found.line if found else 1

    def passage(self, path: KeyPath, text: str) -> Passage:
        """Return the text at a key path as a passage of the translated file."""
        return Passage(self, text, lambda offset: self.line(*path), path)

    def said(self, path: KeyPath, text: str) -> str:
        """Return a text as the page shows it: English words are marked as English."""
        return f'<span lang="en">{text}</span>' if path in self.english else text


@dataclass(frozen=True)
class PageInAnotherLanguage(Page):
    """A Markdown page whose texts are translated."""

    english: frozenset[KeyPath] = frozenset()
    translated: dict[KeyPath, TranslatedText] = field(default_factory=dict, repr=False)

    said = InAnotherLanguage.said
