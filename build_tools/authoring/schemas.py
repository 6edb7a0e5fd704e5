"""JSON Schemas of the source formats, from the models, for editors and other programs.

They say what one file alone can be held to. What several files say of each other, and most of what
several keys say together, only the check tells.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter
from pydantic.json_schema import GenerateJsonSchema

from build_tools.content.fields import Format, Reference
from build_tools.content.loading import BLOCKS, FACT_NAME, LISTS, SECTIONS
from build_tools.content.models import Shop
from build_tools.content.page_models import LessonFront, PlainFront
from build_tools.language.glossary import FILE as GLOSSARY
from build_tools.language.glossary import TranslatedTerm
from build_tools.language.languages import LANGUAGES
from build_tools.language.translated_file import KEY, TITLES
from build_tools.language.translation import TRANSLATED_LISTS
from calculators import CALCULATORS
from calculators.simulation.changes import CHANGES

#: Where they are kept, from the root of the repository.
FOLDER = "docs/schemas"
#: The mapping of schemas to files, as language servers for YAML take it in an editor's settings.
SETTINGS = "editor-settings.json"
#: The newest that language servers for YAML understand.
_DIALECT = "http://json-schema.org/draft-07/schema#"
_NAMES = {"calculators": CALCULATORS, "changes": CHANGES}


class _Plain(GenerateJsonSchema):
    """Without titles that only repeat a key."""

    def field_title_should_be_set(self, schema: Any) -> bool:
        return False


def schemas() -> dict[str, dict[str, Any]]:
    """Return every schema by its file name."""
    found = {file_name("shop"): _schema("docs_src/shop.yaml", Shop)}
    for stem, (shape, _) in LISTS.items():
        found[file_name(stem)] = _list_of(stem, shape)
    for folder, shape in SECTIONS.items():
        found[file_name(folder)] = _schema(f"docs_src/{folder}/*.yaml", shape)
    found[file_name("lesson")] = _schema("front matter of docs_src/learn/*.md", LessonFront)
    found[file_name("page")] = _schema("front matter of any other page", PlainFront)
    for word, (shape, _, _) in BLOCKS.items():
        found[file_name(word)] = _schema(f"fenced block {word} of a page", shape)
    terms = dict[str, TranslatedTerm]
    found[file_name("translated-glossary")] = _schema("docs_src/<language>/glossary.yaml", terms)
    texts = _schema("translated texts: docs_src/<language>/", dict[str, str])
    texts["propertyNames"] = {"pattern": f"^(?:{KEY.pattern})$"}
    found[file_name("translation")] = texts
    return found


def file_name(what: str) -> str:
    """Return the name of a schema's file: of a folder, a list, "shop", "lesson" or a block."""
    return f"{what}.schema.json"


def settings() -> dict[str, Any]:
    """Return which schema is for which files: the setting of language servers for YAML."""
    lists = {file_name(one): [f"docs_src/{one}.yaml"] for one in ("shop", *LISTS)}
    folders = {file_name(one): [f"docs_src/{one}/*.yaml"] for one in SECTIONS}
    texts = (
        *(f"{one}.yaml" for one in TRANSLATED_LISTS),
        TITLES,
        *(f"{one}/*.yaml" for one in SECTIONS),
    )
    translated = {
        file_name("translated-glossary"): [f"docs_src/{code}/{GLOSSARY}" for code in LANGUAGES],
        file_name("translation"): [f"docs_src/{code}/{one}" for code in LANGUAGES for one in texts],
    }
    every = lists | folders | translated
    return {"yaml.schemas": {f"{FOLDER}/{name}": patterns for name, patterns in every.items()}}


def files() -> dict[str, str]:
    """Return the text of every file that is kept in the folder, by its name."""
    every: dict[str, Any] = {**schemas(), SETTINGS: settings()}
    return {
        name: json.dumps(one, ensure_ascii=False, indent=2) + "\n" for name, one in every.items()
    }


def stale(root: Path) -> list[str]:
    """Return the names of files that differ from what the models say, or are none of them."""
    folder, wanted = root / FOLDER, files()
    kept = {one.name: one.read_text("utf-8") for one in folder.glob("*.json")}
    return sorted(name for name in kept | wanted if kept.get(name) != wanted.get(name))


def renew(root: Path) -> list[str]:
    """Write what is stale, remove what no format has any more, and return the names."""
    folder, wanted = root / FOLDER, files()
    folder.mkdir(parents=True, exist_ok=True)
    names = stale(root)
    for name in names:
        if name in wanted:
            (folder / name).write_text(wanted[name], "utf-8", newline="\n")
        else:
            (folder / name).unlink()
    return names


def _schema(title: str, shape: type[Format]) -> dict[str, Any]:
    made = TypeAdapter(shape).json_schema(
        schema_generator=_Plain, ref_template="#/definitions/{model}"
    )
    named = {"definitions": made.pop("$defs")} if "$defs" in made else {}
    return {"$schema": _DIALECT, **_closed(made | named), "title": title}


def _list_of(stem: str, shape: type[Format]) -> dict[str, Any]:
    made = _schema(f"docs_src/{stem}.yaml", dict[str, shape])
    if stem == "facts":
        made["propertyNames"] = {"pattern": f"^(?:{FACT_NAME.pattern})$"}
    return made


def _closed(schema: Any) -> Any:
    """Return a schema with the names of each group that only a programmer adds to."""
    if isinstance(schema, list):
        return [_closed(one) for one in schema]
    if not isinstance(schema, dict):
        return schema
    rest = {key: _closed(one) for key, one in schema.items() if key != Reference.KEY}
    if group := schema.get(Reference.KEY):
        if group in _NAMES:
            rest["enum"] = sorted(_NAMES[group])
    return rest
