"""Writes for translators: a file to begin with, and the digests of texts that were compared."""

from __future__ import annotations

import re

from build_tools.content.entries import Page
from build_tools.content.handbook import Handbook
from build_tools.language.languages import ENGLISH, language_of
from build_tools.language.source_texts import DIGITS, START, SourceText, sections_of, source_texts
from build_tools.set_up.failure import Failure

_DIGEST = rf"@[0-9a-f]{{{DIGITS}}}"


def begin(handbook: Handbook, wanted: str) -> str:
    """Write the file of a page with its English texts in it, to be written over; return its name.

    wanted: the page in the language, such as "es/learn/what-hardness-is".
    """
    code, _, page = wanted.removesuffix(".md").removesuffix(".yaml").partition("/")
    folder = page.partition("/")[0]
    place = f"{page}.md" if folder == "learn" else f"{page}.yaml"
    entry = handbook.translation(code).entry_at(place) if language_of(wanted) != ENGLISH else None
    if entry is None:
        raise Failure(
            f'There is no page "{wanted}" to translate (expected a language and a lesson or a '
            "procedure, such as es/learn/what-hardness-is)."
        )
    path = handbook.docs_folder / code / place
    if path.exists():
        raise Failure(f"{handbook.file_name(path)} is there already, and is never overwritten.")
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(_written(entry), encoding="utf-8")
    return handbook.file_name(path)


def _written(entry) -> str:
    texts = list(source_texts(entry))
    if not isinstance(entry, Page):
        return "".join(map(_yaml, texts))
    front = "".join(_yaml(one) for one in texts if one.path and one.entry is entry)
    by_key = {one.key: one for one in texts}
    body = ""
    for section in sections_of(entry):
        source = by_key[f"#{section.id}"]
        heading, rest = "", entry.body[section.start : section.end].lstrip()
        if section.id != START:
            heading, _, rest = rest.partition("\n")
            body += f"{heading if '{#' in heading else f'{heading} {{#{section.id}}}'}\n"
        body += f"<!-- @{source.of} -->\n"
        done = 0
        offset = entry.body.index(rest, section.start) if rest else section.end
        for start, end, block in section.blocks:
            body += rest[done : start - offset] + _block(block, by_key)
            done = end - offset
        body += rest[done:]
    return f"---\n{front}---\n\n{body}"


def _block(block, by_key: dict[str, SourceText]) -> str:
    word = "picture" if hasattr(block.content, "drawing") else "worked-example"
    own = [one for key, one in by_key.items() if key.startswith(f"{block.id}.")]
    keys = "".join(_yaml(one, one.key.partition(".")[2]) for one in own)
    return f"```{word} {block.id} @{own[0].of}\n{keys}```\n"


def _yaml(source: SourceText, key: str = "") -> str:
    said = " ".join(source.text.split())
    return f"{key or f'{source.key} @{source.of}'}: >-\n  {said}\n"


def compared(handbook: Handbook, name: str) -> int:
    """Write the digests of the English texts into a file that was compared with them.

    Each text takes the digest of the English text of the same key. Returns how many changed.
    """
    path = (handbook.root / name).resolve()
    code = path.relative_to(handbook.docs_folder.resolve()).parts[0] if path.is_file() else ""
    translation = handbook.translation(code) if language_of(f"{code}/") != ENGLISH else None
    place = path.relative_to(translation.folder.resolve()).as_posix() if translation else ""
    if translation is None or place not in translation.files:
        raise Failure(f'There is no file "{name}" of translated texts.')
    text = path.read_text(encoding="utf-8")
    before = text
    for source in translation.sources(place):
        text = _with_digest(text, source)
    path.write_text(text, encoding="utf-8")
    return sum(a != b for a, b in zip(before.split("\n"), text.split("\n"), strict=True))


def _with_digest(text: str, source: SourceText) -> str:
    key = re.escape(source.key)
    if source.key.startswith("#"):
        above = (
            r"\A(?:---\n(?s:.*?)\n---\n)?\s*" if source.key == f"#{START}" else rf"\{{{key}\}}\n"
        )
        pattern = rf"({above}<!-- ){_DIGEST}"
    elif (
        source.entry.id and source.key.startswith(f"{source.entry.id}.") and not source.entry.place
    ):
        pattern = rf"(^[`~]{{3,}}[\w-]+ {re.escape(source.entry.id)} ){_DIGEST}"
    else:
        pattern = rf"(^{key} ){_DIGEST}"
    return re.sub(pattern, rf"\g<1>@{source.of}", text, flags=re.MULTILINE)
