"""A handbook made of the English one and what is translated of it."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from build_tools.content.entries import Entry, Page
from build_tools.content.handbook import Handbook
from build_tools.content.loading import LISTS
from build_tools.content.page_models import Picture
from build_tools.content.yaml_file import KeyPath
from build_tools.language.links import rewritten
from build_tools.language.source_texts import key_of, sections_of, source_texts
from build_tools.language.translated_entry import InAnotherLanguage, PageInAnotherLanguage
from build_tools.language.translated_file import TITLES, TranslatedText

if TYPE_CHECKING:
    from build_tools.language.translation import Translation

NOT_TRANSLATED = '<div class="untranslated" lang="en" markdown>'


def translated_handbook(translation: Translation) -> Handbook:
    """Return the handbook with the entries that are translated in the place of the English ones."""
    english = translation.handbook
    made = replace(
        english,
        _translations={},
        cautions=_listed(translation, "cautions"),
        paths=_listed(translation, "paths"),
        equipment=_titled(translation, "equipment"),
        examples=dict(english.examples),
        pictures=dict(english.pictures),
        lessons=dict(english.lessons),
        procedures=dict(english.procedures),
    )
    for address, entry in translation.pages.items():
        group = made.lessons if isinstance(entry, Page) else made.procedures
        group[entry.id] = _translated(translation, entry, address)
        for _, _, block in getattr(group[entry.id], "blocks", ()):
            blocks = made.pictures if isinstance(block.content, Picture) else made.examples
            blocks[block.id] = block
    return made


def _listed(translation: Translation, name: str) -> dict[str, Entry[Any]]:
    """Return the entries of a list, with the texts that its file in the language has."""
    texts = translation.texts_of(f"{name}.yaml")
    file = f"{translation.code}/{name}.yaml"
    address = LISTS[name][1]
    return {
        key: _with_texts(translation, entry, _at_paths(entry, texts, f"{key}."), file, address)
        for key, entry in getattr(translation.handbook, name).items()
    }


def _titled(translation: Translation, folder: str) -> dict[str, Entry[Any]]:
    """Return the entries of a folder without pages in the language, with their titles in it."""
    texts = translation.texts_of(TITLES)
    made = {}
    for name, entry in getattr(translation.handbook, folder).items():
        own = _at_paths(entry, texts, f"{folder}/{name}.")
        titled = _with_texts(translation, entry, own, TITLES, entry.address)
        made[name] = replace(titled, english=frozenset())
    return made


def _translated(translation: Translation, entry: Entry[Any], address: str) -> Entry[Any]:
    """Return the entry of a page in the language."""
    place = translation.place_of(address)
    texts = translation.texts_of(place)
    file = translation.files[place].file
    made = _with_texts(translation, entry, _at_paths(entry, texts), file, address)
    return _page(translation, entry, made, texts) if isinstance(entry, Page) else made


def _with_texts(
    translation: Translation,
    entry: Entry[Any],
    texts: dict[KeyPath, TranslatedText],
    file: str,
    address: str,
) -> InAnotherLanguage:
    """Return an English entry with texts of the language at their paths."""
    data = copy.deepcopy(entry.yaml.data)
    for part in entry.place:
        data = data[part]
    for path, text in texts.items():
        _put(data, path, rewritten(translation, entry.address, address, text.text))
    wanted = {one.path for one in source_texts(entry) if one.path and one.entry is entry}
    return InAnotherLanguage(
        entry.id,
        file,
        address,
        type(entry.content).model_validate(data),
        entry.yaml,
        entry.place,
        frozenset(wanted - texts.keys()),
        texts,
    )


def _put(data: Any, path: KeyPath, text: str) -> None:
    for part in path[:-1]:
        data = data[part]
    data[path[-1]] = text


def _page(
    translation: Translation,
    page: Page,
    front: InAnotherLanguage,
    texts: dict[str, TranslatedText],
) -> PageInAnotherLanguage:
    """Return a Markdown page: its sections in the order of the English ones."""
    body = ""
    placed = []
    for section in sections_of(page):
        found = texts.get(f"#{section.id}")
        blocks = {block.id: block for _, _, block in section.blocks}
        if found is None:
            body += f"{NOT_TRANSLATED}\n\n"
            parts = list(_english_parts(page, section))
        else:
            parts = found.parts
        for kind, said, *_ in parts:
            if kind == "text":
                is_own = found is not None
                body += rewritten(translation, page.address, front.address, said, say_so=is_own)
            elif said in blocks:
                own = _at_paths(blocks[said], texts, f"{said}.")
                block = _with_texts(translation, blocks[said], own, front.file, front.address)
                placed.append((len(body), len(body), block))
        body = body.rstrip("\n") + "\n\n" + ("" if found else "</div>\n\n")
    return PageInAnotherLanguage(
        page.id,
        front.file,
        front.address,
        front.content,
        page.yaml,
        (),
        body=body,
        blocks=placed,
        english=front.english,
        translated=front.translated,
    )


def _english_parts(page: Page, section) -> Iterator[tuple[str, str]]:
    done = len(page.body) - len(page.body[section.start :].lstrip())
    for start, end, block in section.blocks:
        yield "text", page.body[done:start]
        yield "block", block.id
        done = end
    yield "text", page.body[done : section.end]


def _at_paths(
    entry: Entry[Any], texts: dict[str, TranslatedText], prefix: str = ""
) -> dict[KeyPath, TranslatedText]:
    """Return the translated texts of an entry by their paths in it."""
    paths = [passage.path for passage in Entry.passages(entry)]
    return {path: texts[key] for path in paths if (key := prefix + key_of(path)) in texts}
