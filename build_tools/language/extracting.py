"""Extracts, with Babel, every text to translate from the code into the catalogs' templates."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import get_args

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir

from build_tools.content.page_models import ProcedureGroup
from build_tools.language import catalogs
from build_tools.language.languages import CONFIGURED
from calculators.quantities import KINDS

ROOT = Path(__file__).parents[2]
_JINJA = "jinja2.ext:babel_extract"
#: What is read how: the files of the interface, and the calculators.
METHODS = {
    catalogs.INTERFACE: [
        ("build_tools/language/**.py", "python"),
        ("build_tools/**.md.jinja", _JINJA),
        ("build_tools/**.html.jinja", _JINJA),
        ("build_tools/**.html", _JINJA),
        ("build_tools/browser/**.py", "python"),
        ("build_tools/edition.py", "python"),
        ("build_tools/offline/**.py", "python"),
        ("build_tools/printing/**.py", "python"),
        ("build_tools/pages/**.py", "python"),
        ("build_tools/browser/page/**.js", "build_tools.language.script_texts:extract"),
    ],
    catalogs.CALCULATORS: [
        ("calculators/units.py", "ignore"),
        ("calculators/**.py", "build_tools.language.calculator_texts:extract"),
    ],
}
_MARKDOWN_TEMPLATES = {"comment_start_string": "{*", "comment_end_string": "*}"}
OPTIONS = {"build_tools/**.md.jinja": {**_MARKDOWN_TEMPLATES, "silent": "false"}}
#: The functions that say something, and which of their arguments are the words.
KEYWORDS = {
    "say": None,
    "marked": None,
    "say_count": (2, 3),
    "sayCount": (2, 3),
    "counted": (2, 3),
}


@cache
def template(name: str) -> Catalog:
    """Return the messages that stand in the code now, for the catalog of this name."""
    found = Catalog(project="handbook", charset="utf-8")
    for file, line, message, comments, context in extract_from_dir(
        ROOT, METHODS[name], OPTIONS, KEYWORDS, directory_filter=_is_source
    ):
        if message:
            found.add(message, None, [(file, line)], auto_comments=comments, context=context)
    if name == catalogs.CALCULATORS:
        for kind in KINDS.values():
            found.add(kind.words, None, [("calculators/units.py", 1)])
        for unit in unit_words():
            found.add(unit, None, [("calculators/units.py", 1)], context=catalogs.UNIT)
    if name == catalogs.INTERFACE:
        for group in get_args(ProcedureGroup):
            found.add(group, None, [("build_tools/content/page_models.py", 1)])
        for words in CONFIGURED:
            found.add(words, None, [("mkdocs.yml", 1)])
    return found


def unit_words() -> list[str]:
    """Return the units that are words of a language, and no signs that all share."""
    return [
        "cup/min", "cups", "day", "days", "drips/min", "drips/s", "eq", "gal/day", "grains",
        "grains/day", "grains/ft³", "grains/lb", "gal/kilograin", "kilograins/ft³", "kilograins",
        "months", "people", "pint/min", "pints", "week", "weeks", "years",
    ]  # fmt: skip


def _is_source(folder: str) -> bool:
    return Path(folder).name not in ("__pycache__", "node_modules", "simulation", "practice") or (
        "build_tools" in Path(folder).parts
    )


def renewed(code: str, name: str) -> Catalog:
    """Return a language's catalog with the messages of the code: new ones empty, old ones gone."""
    path = catalogs.file_of(code, name)
    catalog = catalogs.read(code, name) if path.is_file() else Catalog(locale=code)
    catalog.update(template(name), no_fuzzy_matching=False)
    catalog.obsolete.clear()
    return catalog
