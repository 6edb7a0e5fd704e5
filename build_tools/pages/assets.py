"""Our own styles and scripts, in a folder of the site whose name changes with their content.

A browser may so keep what it has for ever, and a page never gets the scripts of another edition.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from build_tools.bundling.bundles import bundles
from build_tools.offline.web_manifest import ICONS
from build_tools.search.files import HERE as SEARCH

THEME = Path(__file__).parent / "theme"
BROWSER = Path(__file__).parents[1] / "browser"
EMBEDDING = Path(__file__).parents[1] / "embedding"

PAGE = BROWSER / "page"

#: The styles of pages in their order: all of them are joined into one.
STYLES = (
    THEME / "handbook.css",
    THEME / "frame.css",
    THEME / "ways.css",
    THEME / "steps.css",
    THEME / "readings.css",
    THEME / "sheets.css",
    BROWSER / "controls.css",
    BROWSER / "forms.css",
    BROWSER / "figures.css",
    THEME / "find_the_cause.css",
    BROWSER / "call.css",
    BROWSER / "practice_call.css",
    BROWSER / "record.css",
    BROWSER / "sign_off.css",
    BROWSER / "exercise.css",
    BROWSER / "units.css",
    THEME / "paper.css",
    THEME / "paper_parts.css",
    THEME / "paper_sheets.css",
)
EMBEDDED_STYLES = (
    THEME / "handbook.css",
    BROWSER / "controls.css",
    BROWSER / "forms.css",
    BROWSER / "figures.css",
    BROWSER / "units.css",
    EMBEDDING / "embedded.css",
    THEME / "paper.css",
    THEME / "paper_parts.css",
)
# The joined files. Those of pages stand in one folder, which place.js takes for granted.
STYLE = "handbook.css"
SCRIPT = "page/handbook.js"
EMBEDDED_STYLE = "embedded.css"
EMBEDDED_SCRIPT = "page/embedded.js"
SCHEME_SCRIPT = "page/scheme.js"
UNITS_SCRIPT = "page/units.js"
#: The first module of each joined script, by the script's name without its ending.
ENTRIES = {
    "page/handbook": PAGE / "handbook.js",
    "page/embedded": PAGE / "embedding" / "embedded.js",
    "page/worker": PAGE / "worker.js",
    "search/worker": SEARCH / "worker.js",
}
ICON = "icon.svg"


@dataclass(frozen=True)
class Assets:
    """Where the assets stand in the site, and the file behind each name in that folder."""

    folder_name: str
    files: dict[str, Path]

    def address(self, name: str) -> str:
        """Return where in the site an asset stands."""
        return f"{self.folder_name}/{name}"


def find_assets() -> Assets:
    """Return the assets as they are now on disk."""
    files = {path.name: path for path in (THEME / ICON, *ICONS.iterdir())}
    files[SCHEME_SCRIPT] = PAGE / "embedding" / "scheme.js"
    files |= {f"search/{path.name}": path for path in SEARCH.glob("theme_worker*.js")}
    files[UNITS_SCRIPT] = PAGE / "units" / "units.js"
    files |= joined_files()
    digest = hashlib.sha256()
    for name, path in sorted(files.items()):
        content = hashlib.sha256(path.read_bytes()).hexdigest()
        digest.update(f"{name} {content}\n".encode())
    return Assets(f"assets/handbook-{digest.hexdigest()[:16]}", files)


def joined_files() -> dict[str, Path]:
    """Return the joined scripts and styles, and the maps to their sources, by their names."""
    styles = {
        STYLE.removesuffix(".css"): list(STYLES),
        EMBEDDED_STYLE.removesuffix(".css"): list(EMBEDDED_STYLES),
    }
    sources = {*PAGE.rglob("*.js"), *SEARCH.glob("*.js"), *STYLES, *EMBEDDED_STYLES}
    return bundles(ENTRIES, styles, sources)
