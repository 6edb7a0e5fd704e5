"""The catalogs have every word of the code, and say each with the same places for values."""

from __future__ import annotations

import io
import re

import pytest
from babel.messages.catalog import Message

from build_tools.language import catalogs, extracting
from build_tools.language.calculator_texts import extract as calculator_texts
from build_tools.language.languages import LANGUAGES
from build_tools.language.script_texts import extract as script_texts
from build_tools.language.speaking import say, say_count, speaking
from build_tools.language.state import open_words

_PLACE = re.compile(r"\{\w+\}")


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_word_of_the_interface_is_translated(code: str) -> None:
    found = [str(one) for one in open_words(code, catalogs.INTERFACE)]
    assert not found, (
        "python3 -m build_tools translations --words takes new ones in:\n" + "\n".join(found)
    )


@pytest.mark.parametrize("code", LANGUAGES)
@pytest.mark.parametrize("name", [catalogs.INTERFACE, catalogs.CALCULATORS])
def test_no_catalog_holds_words_that_the_code_has_not(code: str, name: str) -> None:
    template = extracting.template(name)
    known = {(message.id, message.context) for message in template if message.id}
    there = {(one.id, one.context) for one in catalogs.read(code, name) if one.id}
    assert there - known == set()
    assert known - there == set()


@pytest.mark.parametrize("code", LANGUAGES)
@pytest.mark.parametrize("name", [catalogs.INTERFACE, catalogs.CALCULATORS])
def test_a_translation_has_the_places_for_values_of_the_english_words(code: str, name: str) -> None:
    for message in catalogs.read(code, name):
        if message.id and catalogs.is_translated(message):
            wanted = _places(message.id)
            for words in _forms(message):
                assert _places(words) == wanted, message.id


def test_a_plural_takes_the_form_of_its_number() -> None:
    one, more = "About {count} minute.", "About {count} minutes."
    assert [say_count(count, one, more) for count in (1, 2)] == [
        "About 1 minute.",
        "About 2 minutes.",
    ]
    with speaking("es"):
        assert [say_count(count, one, more) for count in (1, 2)] == [
            "Unos 1 minuto.",
            "Unos 2 minutos.",
        ]


def test_the_forms_of_a_plural_are_told_to_browsers_by_their_category() -> None:
    words = catalogs.browser_words("es")
    assert words["forms"] == {"one": 0, "other": 1}
    assert words["words"]["answer"] == ("respuesta", "respuestas")


def test_words_without_a_translation_are_said_in_english() -> None:
    with speaking("es"):
        assert say("Words that no catalog has, {name}.", name="x") == (
            "Words that no catalog has, x."
        )


def test_calls_within_calls_of_a_script_are_found() -> None:
    source = b"""
      import { say } from "./words.js"; // say("in a comment")
      this.#say(say("It holds {count}.", { count: counted(n, "answer", "answers") }));
      const later = marked('Later'); other.say("a method"); say(variable);
    """
    found = [
        (words, line) for line, _, words, _ in script_texts(io.BytesIO(source), _KEYWORDS, (), {})
    ]
    assert found == [
        (("It holds {count}.", None), 3),
        ((None, "answer", "answers"), 3),
        ("Later", 4),
    ]


def test_texts_of_a_calculator_are_found_as_they_are_shown() -> None:
    source = b'''
"""Says nothing to readers."""
def _work(given, work):
    """Neither does this."""
    work.step("held", "The pipe holds it.", "{area} \xc3\x97 {pipe_length}, not below zero", 1, "gal")
    if given.flow:
        work.warn(f"At {given.flow} it is too fast.")
    return {"held": 1}
ONE = Calculator("its-name", "Its title", "Its question?", inputs=[
    Input("flow", "Flow", "flow", "gpm", help="Of the tap.", choices=("slow", "fast")),
], outputs=[Output("held", "Held", "volume", "gal")], compute=_work, sources=["some-key"])
'''
    found = [text for _, _, text, _ in calculator_texts(io.BytesIO(source), None, (), {})]
    assert found == [
        "The pipe holds it.",
        "area × pipe length, not below zero",
        "{area} × {pipe_length}, not below zero",
        "At {flow} it is too fast.",
        "Its question?",
        "Its title",
        "Flow",
        "Of the tap.",
        "fast",
        "slow",
        "Held",
    ]


_KEYWORDS = extracting.KEYWORDS


def _forms(message: Message) -> list[str]:
    return list(message.string) if isinstance(message.string, (list, tuple)) else [message.string]


def _places(words: str | tuple[str, ...]) -> set[str]:
    texts = words if isinstance(words, tuple) else (words,)
    return {place for text in texts for place in _PLACE.findall(text)}
