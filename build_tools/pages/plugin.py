"""The MkDocs plugin: hands the finished pages, styles and scripts to MkDocs."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Literal

from mkdocs.config.config_options import ExtraScriptValue
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.utils import get_build_datetime

from build_tools.browser import BrowserFilesError
from build_tools.browser.runtime import runtime_files
from build_tools.checks import check_handbook
from build_tools.content.handbook import load_handbook
from build_tools.content.problems import summary
from build_tools.content.values import Values
from build_tools.offline.edition import (
    WORKBOX_FOLDER,
    edition_line,
    workbox_files,
    write_edition,
)
from build_tools.offline.web_manifest import MANIFEST_NAME, web_manifest
from build_tools.pages.assets import ICON, SCRIPT, STYLES, find_assets
from build_tools.pages.site import Site, write_site

ROOT = Path(__file__).parents[2]
OVERRIDES = Path(__file__).parent / "overrides"
CODE = (ROOT / "calculators", ROOT / "build_tools")


class HandbookPlugin(BasePlugin):
    """Loads and checks the sources, then adds what they make to the site."""

    def __init__(self) -> None:
        self._site = Site({}, [])
        self._assets = find_assets()
        self._serving = False
        self._date = get_build_datetime().date()
        self._code = _state_of_code()

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember the command; having this event also keeps the plugin between rebuilds."""
        self._serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Add the styles, the scripts and the icon."""
        if self._serving and self._code != _state_of_code():
            os.execv(sys.executable, sys.orig_argv)  # Python has the old modules: start anew
        self._assets = find_assets()
        self._date = get_build_datetime().date()
        config.extra_css += [self._assets.address(name) for name in STYLES]
        config.extra_javascript.append(_module(self._assets.address(SCRIPT)))
        config.theme.dirs.insert(0, str(OVERRIDES))
        config.extra["assets"] = self._assets.folder_name
        config.theme["logo"] = config.theme["favicon"] = self._assets.address(ICON)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Make every page; with any problem in the sources, make none and say them all."""
        docs = Path(config.docs_dir)
        handbook = load_handbook(docs, Path(config.config_file_path).parent)
        values = Values(handbook)
        if problems := check_handbook(handbook, values):
            raise PluginError(summary(problems))
        try:
            runtime = runtime_files(ROOT)
        except BrowserFilesError as error:
            raise PluginError(str(error)) from None
        self._site = write_site(handbook, values, runtime.folder_name)
        config.nav = self._site.nav
        copied = dict(runtime.files)
        copied |= {self._assets.address(name): path for name, path in self._assets.files.items()}
        copied |= {f"{WORKBOX_FOLDER}/{path.name}": path for path in workbox_files(ROOT)}
        manifest = web_manifest(config.site_name, self._assets.folder_name)
        files.append(File.generated(config, MANIFEST_NAME, content=manifest))
        for address, path in copied.items():
            files.append(File.generated(config, address, abs_src_path=str(path)))
        for address, markdown in self._site.pages.items():
            if files.get_file_from_path(address) is None:
                files.append(File.generated(config, address, content=markdown))
        for file in list(files):
            if file.src_uri.endswith((".yaml", ".yml")):
                files.remove(file)
        return files

    def on_page_markdown(
        self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Return a page's finished text; that of a page on disk still has its expressions."""
        return self._site.pages.get(page.file.src_uri, markdown)

    def on_page_content(self, html: str, *, page: Page, **_: object) -> str:
        """End each page with its edition; while authors work, there are no editions."""
        return html if self._serving else html + edition_line(self._date, page.url)

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Make an edition of the site that is now written."""
        if not self._serving:
            workbox = [f"{WORKBOX_FOLDER}/{path.name}" for path in workbox_files(ROOT)]
            write_edition(Path(config.site_dir), self._date, workbox)

    def on_serve(self, server: LiveReloadServer, **_: object) -> LiveReloadServer:
        """Rebuild also when the calculators or the tool itself change."""
        for folder in CODE:
            server.watch(str(folder))
        return server


def _module(path: str) -> ExtraScriptValue:
    script = ExtraScriptValue(path)
    script.type = "module"
    return script


def _state_of_code() -> dict[str, int]:
    """Return when each Python file of the tool was last changed."""
    return {str(path): path.stat().st_mtime_ns for folder in CODE for path in folder.rglob("*.py")}
