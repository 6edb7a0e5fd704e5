"""What a container that serves the site is made from: its file, the server's settings, the site."""

from __future__ import annotations

import shutil
from pathlib import Path

from build_tools.pages import headers
from build_tools.publishing.hash_list import NAME as LIST
from build_tools.publishing.server_settings import server_settings
from build_tools.set_up.failure import Failure

CONTAINER, SETTINGS = "Containerfile", "Caddyfile"
NAMES = (CONTAINER, SETTINGS)
_TEMPLATE = Path(__file__).with_name(CONTAINER)


def write(site: Path, output: Path) -> None:
    """Write a folder that any program for containers builds an image from.

    Raises Failure without a built site, and for a folder with something else in it.
    """
    if not (site / LIST).is_file():
        raise Failure(f"There is no built site in {site}: run the command build first.")
    if output.exists() and {path.name for path in output.iterdir()} - {*NAMES, "site"}:
        raise Failure(f"The folder {output} holds something else: name a new or an empty one.")
    shutil.rmtree(output / "site", ignore_errors=True)
    shutil.copytree(site, output / "site")
    rules = headers.read_rules((site / headers.NAME).read_text("utf-8"))
    text = _TEMPLATE.read_text("utf-8").replace("@ROOT@", headers.root_of(rules).lstrip("/"))
    (output / CONTAINER).write_text(text, encoding="utf-8", newline="\n")
    (output / SETTINGS).write_text(server_settings(site), encoding="utf-8", newline="\n")
