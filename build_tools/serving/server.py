"""Serves the site and builds it anew after each save; what fails is told on the page."""

from __future__ import annotations

import logging
import time
import traceback
from pathlib import Path
from urllib.parse import urlsplit

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException
from mkdocs.livereload import LiveReloadServer

from build_tools.serving.folders import Folders
from build_tools.serving.kept import HANDBOOK, Kept
from build_tools.serving.pages import Pages, State
from build_tools.serving.panel import counted, first_page
from build_tools.serving.trouble import listening, told
from build_tools.set_up.start import ROOT

log = logging.getLogger("mkdocs.livereload")

#: The name of our plugin beside the handbook's.
_KEPT = "handbook while serving"


class Live:
    """One served handbook: its builds, and what the last of them came to."""

    def __init__(self, config_file: Path, address: tuple[str, int], base: Path) -> None:
        self._config_file = config_file
        self._address = address
        self._kept = Kept()
        self.folders = Folders(base)
        self.state = State()
        self.config = self._load()
        self.config.plugins.on_startup(command="serve", dirty=False)
        self.root = _root(self.config.site_url)
        self._url = f"http://{address[0]}:{address[1]}{self.root}"
        self._fresh: MkDocsConfig | None = self.config
        page = first_page(self.config.site_name)
        (self.folders.shown / "index.html").write_text(page, encoding="utf-8")

    def build(self) -> None:
        """Build once; a failure is noted for the pages, and for the terminal."""
        start = time.monotonic()
        with listening() as said:
            try:
                self._build()
            except Exception as error:
                if not isinstance(error, MkDocsException):
                    traceback.print_exc()
                self.state.told = told(error, said.sentences, ROOT)
                log.info("The page lists %s.", counted(self.state.told))
                return
        self.folders.show()
        self.state.told = []
        self.state.has_site = True
        log.info("Built in %.1f seconds.", time.monotonic() - start)

    def forget(self) -> None:
        """Let the next build make all anew."""
        self._kept.forget()

    def build_until_sources_rest(self) -> None:
        """Build, and again where a source was saved meanwhile: nobody listens to saves yet."""
        before = None
        while before != (before := _state_of(Path(self.config.docs_dir))):
            self.build()

    def _build(self) -> None:
        config = self._fresh or self._load()
        self._fresh = None
        config.site_url = self._url
        config.plugins[_KEPT] = self._kept
        handbook = config.plugins[HANDBOOK]
        try:
            with self._kept.building(config) as dirty:
                build(config, serve_url=self._url, dirty=dirty)
        finally:
            self.state.sources = {_url(one): files for one, files in handbook.made_from.items()}

    def _load(self) -> MkDocsConfig:
        return load_config(str(self._config_file), strict=True, site_dir=str(self.folders.work))


def serve(config_file: Path, host: str, port: int) -> None:
    """Serve a handbook until Ctrl+C."""
    live = Live(config_file, (host, port), ROOT / ".cache" / "serving" / str(port))
    plugins = live.config.plugins
    try:
        live.build_until_sources_rest()
        server = LiveReloadServer(
            live.build, host, port, root=str(live.folders.shown), mount_path=live.root
        )
        server.error_handler = lambda code: _file(live.folders.shown / f"{code}.html")
        server.set_app(Pages(server, live.state))
        for place in (live.config.docs_dir, live.config.config_file_path, *live.config.watch):
            server.watch(place)
        plugins.on_serve(server, config=live.config, builder=live.build)
        try:
            server.serve()
        except KeyboardInterrupt:
            log.info("Shutting down ...")
        finally:
            server.shutdown()
    finally:
        plugins.on_shutdown()
        live.folders.remove()


def _root(site_url: str | None) -> str:
    """Return the path of the site at the server, with slashes at both ends."""
    return f"/{urlsplit(site_url or '/').path.strip('/')}/".replace("//", "/")


def _state_of(folder: Path) -> dict[str, int]:
    """Return when each file of a folder was saved last."""
    return {str(path): path.stat().st_mtime_ns for path in folder.rglob("*") if path.is_file()}


def _file(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() else None


def _url(address: str) -> str:
    """Return where a page stands at the server, by the address of its source."""
    stem = address.removesuffix(".md")
    return stem.removesuffix("index") if stem.split("/")[-1] == "index" else f"{stem}/"
