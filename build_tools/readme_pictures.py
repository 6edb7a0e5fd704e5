"""The pictures of the README: the handbook as it is now, on a phone and on a desk."""

from __future__ import annotations

import os
import tempfile
import threading
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import NamedTuple

from playwright.sync_api import Browser, sync_playwright

from build_tools.building.with_mkdocs import build_site, print_what_mkdocs_says
from build_tools.engines.chromium import QUIET_FLAGS
from build_tools.shops.place import Place


class Shot(NamedTuple):
    """One picture: its file, the page it shows, and the width and height of the screen."""

    file: str
    page: str
    width: int
    height: int


SHOTS = (
    Shot("phone.png", "procedures/measure-drain-flow/#steps", 390, 844),
    Shot("desk.png", "learn/salt-and-brine/", 1280, 860),
)


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *arguments: object) -> None:
        """Say nothing of each request."""


def renew_pictures(place: Place, folder: Path) -> list[Path]:
    """Build the handbook into a folder of its own, and take pictures of it; return their files."""
    print_what_mkdocs_says()
    with tempfile.TemporaryDirectory() as temporary:
        site = Path(temporary) / "site"
        build_site(place, site)
        return _take_pictures(site, folder)


def _take_pictures(site: Path, folder: Path) -> list[Path]:
    """Write a picture of each page of a built site into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    handler = partial(_Quiet, directory=str(site))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server, sync_playwright() as playwright:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        browser = playwright.chromium.launch(
            executable_path=os.environ["HANDBOOK_BROWSER"], args=list(QUIET_FLAGS)
        )
        address = f"http://127.0.0.1:{server.server_port}/"
        made = [_take(browser, address, shot, folder) for shot in SHOTS]
        browser.close()
        server.shutdown()
    return made


def _take(browser: Browser, address: str, shot: Shot, folder: Path) -> Path:
    page = browser.new_page(
        viewport={"width": shot.width, "height": shot.height},
        color_scheme="light",
        service_workers="block",
    )
    page.goto(address + shot.page, wait_until="networkidle")
    file = folder / shot.file
    page.screenshot(path=file, animations="disabled")
    page.close()
    return file
