"""The web app manifest, by which a phone shows the handbook among its own programs."""

from __future__ import annotations

import json
from pathlib import Path

ICONS = Path(__file__).parent / "icons"
MANIFEST_NAME = "manifest.webmanifest"

# As in handbook.css: the theme's green, and its paper.
GREEN, PAPER = "#134e4a", "#fcfbf7"


def web_manifest(site_name: str, icons_folder: str) -> str:
    """Return the manifest of a site that keeps the icons in `icons_folder`."""

    def icon(name: str, size: int, purpose: str) -> dict[str, str]:
        address = f"{icons_folder}/{name}-{size}.png"
        return {"src": address, "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}

    manifest = {
        "name": site_name,
        "short_name": "Handbook",
        "id": "./",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": PAPER,
        "theme_color": GREEN,
        "icons": [
            icon("icon", 192, "any"),
            icon("icon", 512, "any"),
            icon("maskable", 512, "maskable"),
        ],
    }
    return json.dumps(manifest, indent=2) + "\n"
