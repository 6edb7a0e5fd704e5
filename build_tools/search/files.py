"""The files of the search in the site: our ranking, its libraries, and the words of customers."""

from __future__ import annotations

import json
import re
from pathlib import Path

from build_tools.content.handbook import Handbook
from build_tools.language.languages import ENGLISH

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
SCRIPTS = ("search.js", "tongues.js", "worker.js", "theme_worker.js", "theme_worker_es.js")
PACKAGES = {
    "minisearch.js": "minisearch/dist/es/index.js",
    "stemmer.js": "stemmer/index.js",
    "stemmer_es.js": "@orama/stemmers/dist/es.js",
}
WORDS = "search/search-words.json"
#: The theme's own search, which ours stands in for; the middle of its name changes with the theme.
THEME_WORKER = re.compile(r"assets/javascripts/workers/search\.\w+\.min\.js(\.map)?")


def search_scripts() -> dict[str, Path]:
    """Return the scripts of the search by their names among the assets."""
    files = {name: HERE / name for name in SCRIPTS}
    files |= {name: ROOT / "node_modules" / place for name, place in PACKAGES.items()}
    return {f"search/{name}": path for name, path in files.items()}


def search_words(handbook: Handbook) -> str:
    """Return, for each word that people say, the handbook's own words for it."""
    meant: dict[str, list[str]] = {}
    for word, entry in handbook.search_words.items():
        for said in entry.content.said:
            meant.setdefault(said, []).append(word)
    return json.dumps(meant, ensure_ascii=False, sort_keys=True)


def with_search(page: str, assets_folder: str, language: str = ENGLISH) -> str:
    """Return the HTML of a page of the theme, in which the theme starts our search."""
    worker = "theme_worker" if language == ENGLISH else f"theme_worker_{language}"
    return THEME_WORKER.sub(f"{assets_folder}/search/{worker}.js", page)
