"""Our own styles and scripts, in a folder of the site whose name changes with their content.

A browser may so keep what it has for ever, and a page never gets the scripts of another edition.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from build_tools.offline.web_manifest import ICONS
from build_tools.search.files import search_scripts

THEME = Path(__file__).parent / "theme"
BROWSER = Path(__file__).parents[1] / "browser"
EMBEDDING = Path(__file__).parents[1] / "embedding"

STYLES = (
    "handbook.css",
    "forms.css",
    "figures.css",
    "find_the_cause.css",
    "call.css",
    "practice_call.css",
    "record.css",
    "exercise.css",
    "units.css",
)
SCRIPT = "page/handbook.js"
EMBEDDED_STYLES = ("handbook.css", "forms.css", "figures.css", "units.css", "embedded.css")
EMBEDDED_SCRIPT = "page/embedding/embedded.js"
SCHEME_SCRIPT = "page/embedding/scheme.js"
UNITS_SCRIPT = "page/units/units.js"
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
    own = (
        "forms.css",
        "figures.css",
        "call.css",
        "practice_call.css",
        "record.css",
        "exercise.css",
        "units.css",
    )
    styles = (*(BROWSER / name for name in own), EMBEDDING / "embedded.css")
    files = {path.name: path for path in (*THEME.iterdir(), *ICONS.iterdir(), *styles)}
    scripts = (BROWSER / "page").rglob("*.js")
    files |= {path.relative_to(BROWSER).as_posix(): path for path in scripts}
    files |= search_scripts()
    digest = hashlib.sha256()
    for name, path in sorted(files.items()):
        content = hashlib.sha256(path.read_bytes()).hexdigest()
        digest.update(f"{name} {content}\n".encode())
    return Assets(f"assets/handbook-{digest.hexdigest()[:16]}", files)
