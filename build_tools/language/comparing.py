"""A translated text beside its English one: the same expressions, links and numbers, in its words.

So every number on a translated page is the English page's: computed by the same expression, or
typed in the text of an example that the check holds to its givens.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from build_tools.content.markdown_file import EXPRESSION
from build_tools.content.problems import asking, shortened
from build_tools.language.links import LINK
from build_tools.language.source_texts import SourceText
from build_tools.language.translated_file import TranslatedText

#: What is compared, and how a message calls it.
_EXPRESSIONS, _LINKS, _NUMBERS = "the expression", "the link", "the number"
_NUMBER = re.compile(r"(?<![\w.,])\d+(?:[.,/]\d+)*|[½⅓⅔¼¾⅛⅜⅝⅞]")
_ID = re.compile(r"\{:?[ ]*#[^{}\n]*\}")


def differences(source: SourceText, text: TranslatedText) -> Iterator[tuple[int, str]]:
    """Yield (line, what is wrong) for each thing that one of both texts has and the other lacks."""
    english, own = _things(source.text), _things(text.text)
    for what in english:
        for missing in (english[what] - own[what]).elements():
            said = f'{_called(text)} lacks {what} "{shortened(missing)}" of the English text'
            yield text.line, asking(said, "the same in both")
        for added in (own[what] - english[what]).elements():
            said = (
                f'{_called(text)} has {what} "{shortened(added)}", which the English text has not'
            )
            yield text.line_of(added), asking(said, "the same in both")
    if source.key.startswith("#"):
        yield from _blocks(source, text)


def _blocks(source: SourceText, text: TranslatedText) -> Iterator[tuple[int, str]]:
    own = [name for kind, name, _ in text.parts if kind == "block"]
    english = [block.id for block in source.blocks]
    for name in english:
        if name not in own:
            said = f'{_called(text)} lacks the block "{name}" of the English text'
            yield text.line, asking(said, "the same blocks in both")
    for name in own:
        if name and name not in english:
            said = f'{_called(text)} has the block "{name}", which the English text has not'
            yield text.line, asking(said, "the same blocks in both")


def _called(text: TranslatedText) -> str:
    return f'the section "{text.key}"' if text.key.startswith("#") else f'"{text.key}"'


def _things(text: str) -> dict[str, Counter[str]]:
    """Return the expressions, links and numbers of a text, each as often as it stands there."""
    expressions = Counter(" ".join(one.split()) for one in EXPRESSION.findall(text))
    plain = _ID.sub("", EXPRESSION.sub(" ", text))
    links = Counter(LINK.findall(plain))
    numbers = Counter(_NUMBER.findall(LINK.sub("]", plain)))
    return {_EXPRESSIONS: expressions, _LINKS: links, _NUMBERS: numbers}
