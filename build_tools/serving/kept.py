"""What is kept from one build to the next, so that a saved file costs only what it touches.

The Markdown of every page is made at each build; see `content/remembered.py` for how that stays
quick. Here MkDocs is told which pages it need not read or write again: those whose Markdown, and
whatever else goes into them, is as it was. A page that is read again gives its title, headings and
links; one that is not gets them from its last reading, so that navigation, links between pages and
the search are whole in either case.
"""

from __future__ import annotations

import hashlib
import logging
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.yaml import yaml_load

from build_tools.serving.folders import remove_empty_folders

HANDBOOK, SEARCH = "handbook", "material/search"
#: What `Page.render` and `Page.read_source` of MkDocs find out about a page.
_READ = ("markdown", "meta", "content", "toc", "_title_from_render", "present_anchor_ids")
_DIRTY_WARNING = "A 'dirty' build is being performed"


@dataclass
class _Reading:
    """What a page's text came to; the links by the address of the page that they lead to."""

    found: dict[str, Any]
    links: dict[str, dict[str, str]]


@dataclass
class _Built:
    """One build: what each file was made from, and what came of it."""

    settings: str
    copied: dict[str, Any] = field(default_factory=dict)
    read: dict[str, str] = field(default_factory=dict)
    written: dict[str, str] = field(default_factory=dict)
    readings: dict[str, _Reading] = field(default_factory=dict)
    searched: dict[str, list[dict[str, Any]]] = field(default_factory=dict)
    places: set[Path] = field(default_factory=set)


class Kept(BasePlugin):
    """A plugin beside the handbook's, for builds that follow each other in one process."""

    def __init__(self) -> None:
        self._last: _Built | None = None
        self._now = _Built("")
        self._is_writing = False
        self._has_begun = False
        self._environment: tuple[Any, Environment] | None = None

    def forget(self) -> None:
        """Let the next build make all anew."""
        self._last = None

    @contextmanager
    def building(self, config: MkDocsConfig) -> Iterator[bool]:
        """Frame a build; gives whether MkDocs can leave out what did not change.

        A build that fails before it has touched the site leaves everything as it is; after any
        other failure, and after a change of the settings, the next one makes all anew.
        """
        with open(config.config_file_path, "rb") as file:
            settings = _digest(yaml_load(file))  # with those that it takes from another file
        if self._last and self._last.settings != settings:
            self._last = None
        self._now = _Built(settings)
        self._is_writing = self._has_begun = False
        logger = logging.getLogger("mkdocs.commands.build")
        logger.addFilter(_without_warning)
        try:
            yield self._last is not None
        except BaseException:
            if self._has_begun:
                self._last = None
            raise
        finally:
            logger.removeFilter(_without_warning)
        self._last = self._now

    @event_priority(-100)
    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Note what each file is made from, and answer for it whether that changed."""
        self._has_begun = True
        now, plugin = self._now, config.plugins[HANDBOOK]
        addresses = sorted((file.src_uri, file.url) for file in files)
        common = _digest(addresses, plugin.reading_rests_on())
        for file in files:
            file.is_modified = partial(self._is_modified, file)
            now.places.add(Path(file.abs_dest_path))
            if file.is_documentation_page():
                text = plugin.markdown_of(file)
                now.read[file.src_uri] = _digest(common, text, file.content_string)
            else:
                now.copied[file.src_uri] = _state(file)
        return files

    def _with_compiled_templates(
        self, env: Environment, *, config: MkDocsConfig, files: Files
    ) -> Environment:
        """Take the theme's templates as they were compiled last, unless one of ours changed."""
        state = config.theme.dirs, _state_of_templates(config)
        if self._last is None or self._environment is None or self._environment[0] != state:
            self._environment = state, env
        return self._environment[1]

    def _restore_pages(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:
        """Give each page that was not read its last reading; from here on pages are written."""
        for file in files.documentation_pages():
            if self._is_modified(file):
                self._now.readings[file.src_uri] = _reading(file.page)
            else:
                reading = self._now.readings[file.src_uri] = self._last.readings[file.src_uri]
                _restore(file.page, reading, files)
        common = _digest(
            [_of_navigation(item) for item in self._navigation],
            config.plugins[HANDBOOK].writing_rests_on(config),
            _state_of_templates(config),
        )
        self._pages = files.documentation_pages()
        for file in self._pages:
            read = self._now.read[file.src_uri]
            self._now.written[file.src_uri] = _digest(common, read, file.page.title)
        self._is_writing = True

    on_env = CombinedEvent(
        event_priority(100)(_with_compiled_templates), event_priority(-100)(_restore_pages)
    )

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> None:
        """Remember the navigation: its titles are known when all pages are read."""
        self._navigation = nav

    @event_priority(100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Complete the search by the pages that were not written; remove what is gone."""
        index = config.plugins[SEARCH].search_index
        fresh: dict[str, list[dict[str, Any]]] = {}
        for entry in index.entries:
            fresh.setdefault(entry["location"].partition("#")[0], []).append(entry)
        entries = []
        for file in self._pages:
            name = file.src_uri
            if self._last is None or self._last.written.get(name) != self._now.written[name]:
                self._now.searched[name] = fresh.get(file.page.url, [])
            else:
                self._now.searched[name] = self._last.searched[name]
            entries += self._now.searched[name]
        index.entries = entries
        for place in (self._last.places - self._now.places) if self._last else ():
            place.unlink(missing_ok=True)
        remove_empty_folders(Path(config.site_dir))

    def _is_modified(self, file: File) -> bool:
        """Answer MkDocs in the place of a file: first about reading a page, then about writing."""
        if self._last is None:
            return True
        group = "written" if self._is_writing else "read"
        if not file.is_documentation_page():
            group = "copied"
        now, last = getattr(self._now, group), getattr(self._last, group)
        return last.get(file.src_uri) != now[file.src_uri]


def _reading(page: Page) -> _Reading:
    found = {name: getattr(page, name) for name in _READ}
    links = {file.src_uri: anchors for file, anchors in (page.links_to_anchors or {}).items()}
    return _Reading(found | {"meta": dict(page.meta)}, links)


def _restore(page: Page, reading: _Reading, files: Files) -> None:
    for name, value in reading.found.items():
        setattr(page, name, value)
    page.meta = dict(page.meta)
    page.links_to_anchors = {
        files.get_file_from_path(name): anchors for name, anchors in reading.links.items()
    }


def _of_navigation(item: Any) -> Any:
    """Return what the theme shows of one part of the navigation."""
    children = [_of_navigation(one) for one in item.children or ()]
    meta = getattr(item, "meta", None)
    return [type(item).__name__, item.title, getattr(item, "url", None), meta, children]


def _state_of_templates(config: MkDocsConfig) -> list[Any]:
    """Return the state of our own templates, which the theme takes before its own."""
    paths = sorted(Path(config.theme.dirs[0]).rglob("*.html"))
    return [(str(path), _state_of_path(path)) for path in paths]


def _state(file: File) -> Any:
    """Return by what a change of a file that is copied is known."""
    if file.abs_src_path is None:
        return hashlib.sha256(file.content_bytes).hexdigest()
    return file.abs_src_path, _state_of_path(Path(file.abs_src_path))


def _state_of_path(path: Path) -> tuple[int, int, int]:
    found = path.stat()
    return found.st_mtime_ns, found.st_size, found.st_ino


def _digest(*parts: Any) -> str:
    return hashlib.sha256(repr(parts).encode()).hexdigest()


def _without_warning(record: logging.LogRecord) -> bool:
    """Leave out MkDocs' warning of what this module takes care of; a strict build would end."""
    return not str(record.msg).startswith(_DIRTY_WARNING)
