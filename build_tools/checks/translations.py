"""Translated texts say what the English ones say; a caution never stands in words of before."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from build_tools.checks.unbacked import unbacked
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, asking
from build_tools.language.comparing import differences
from build_tools.language.glossary import Glossary
from build_tools.language.languages import LANGUAGES
from build_tools.language.translation import State, Translation
from build_tools.language.typed import in_english

_CAUTIONS = "cautions.yaml"


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each translated text that could mislead; stale ones are only listed.

    What is stale or missing is shown in English: see the command translations. Only a caution must
    be translated wherever a page of the language prints it.
    """
    for code in LANGUAGES:
        translation = handbook.translation(code)
        glossary = Glossary(handbook, code)
        yield from translation.problems
        yield from glossary.problems
        for file, states in translation.states():
            for state in states:
                if state.now:
                    for line, said in differences(state.source, state.now):
                        yield Problem(file.file, line, said)
            if file.address == _CAUTIONS:
                yield from _cautions(translation, states)
        if translation.pages and _CAUTIONS not in translation.files:
            name = handbook.file_name(translation.folder / _CAUTIONS)
            yield Problem(name, 1, asking("the file is missing", "the cautions of the pages"))
        if not translation.problems:
            passages = [
                passage
                for entry in translation.entries
                for passage in entry.passages()
                if passage.path not in entry.english  # told as English ones
            ]
            read = partial(in_english, code=code)
            yield from unbacked(translation.in_this_language, passages, read)
            for passage in passages:
                for offset, word, term in glossary.wrong_words(passage):
                    said = f'"{word}" is no word of this handbook'
                    yield passage.problem(offset, asking(said, f'"{term}", see the glossary'))


def _cautions(translation: Translation, states: list[State]) -> Iterator[Problem]:
    """Yield a problem for each caution whose translation is stale or missing."""
    file = translation.files[_CAUTIONS].file
    for state in states:
        source = state.source
        if state.now:
            continue
        there = f"{source.entry.file}:{source.line}"
        if state.once:
            said = (
                f'the caution "{source.key}" translates an English text that has changed: {there}'
            )
            yield Problem(file, state.once.line, asking(said, f"{source.key} @{source.of}"))
        else:
            said = f'the caution "{source.key}" is not translated: {there}'
            yield Problem(file, 1, asking(said, f"{source.key} @{source.of}"))
