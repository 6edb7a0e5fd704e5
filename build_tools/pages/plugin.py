"""The MkDocs plugin: hands the finished pages, styles and scripts to MkDocs."""

from __future__ import annotations

from copy import copy
from pathlib import Path
from typing import Any, Literal
from urllib.parse import urlsplit

from jinja2 import Environment
from markupsafe import Markup
from mkdocs.config.base import Config
from mkdocs.config.config_options import ExtraScriptValue, Type
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url

from build_tools.browser import BrowserFilesError
from build_tools.browser.runtime import runtime_files
from build_tools.checks import check_handbook
from build_tools.comparing.in_site import ADDRESS as WHAT_CHANGED
from build_tools.content.handbook import made_from
from build_tools.content.loading import DATA_FILES
from build_tools.content.values import Values
from build_tools.edition import edition_of
from build_tools.embedding.files import Surroundings, embedding_files
from build_tools.language import theme as language_theme
from build_tools.language.languages import ENGLISH, language_of
from build_tools.language.speaking import speaking
from build_tools.offline.edition import WORKBOX_FOLDER, edition_words, workbox_files
from build_tools.offline.web_manifest import MANIFEST_NAME, web_manifest
from build_tools.pages import guides
from build_tools.pages.assets import ICON, SCRIPT, STYLE, Assets, find_assets
from build_tools.pages.glossary_links import GlossaryLinks
from build_tools.pages.headers import NAME, headers_file
from build_tools.pages.sayings_page import SAYINGS
from build_tools.pages.security import policy, theme_scripts, with_policy
from build_tools.pages.site import Site
from build_tools.pages.site_edition import SiteEdition
from build_tools.pages.units.both import site_in_both_systems
from build_tools.pages.units.elements import with_elements
from build_tools.pages.units.switch import slug, with_switch
from build_tools.printing.foot import with_foot
from build_tools.publishing import hash_list
from build_tools.search.files import THEME_WORKER, WORDS, search_words, with_search
from build_tools.serving.code import start_anew, state_of_code
from build_tools.serving.trouble import ContentProblems
from build_tools.shops.place import library_of
from build_tools.shops.retold import load

ROOT = Path(__file__).parents[2]
OVERRIDES = Path(__file__).parent / "overrides"
CODE = (ROOT / "calculators", ROOT / "build_tools")
#: What pages count in the search, by address or folder: customers' words lead to faults first.
SEARCH_BOOST = {"faults/index.md": 1, SAYINGS: 1, "faults": 4, "checks": 0.5, "practise": 0.3}


class HandbookSettings(Config):
    """The settings of the plugin in mkdocs.yml."""

    #: Whether the pages of the shipped handbook stand in this one, save those that it replaces.
    draws_on_library = Type(bool, default=False)


class HandbookPlugin(BasePlugin[HandbookSettings]):
    """Loads and checks the sources, then adds what they make to the site."""

    def __init__(self) -> None:
        self._site = Site({}, [], {}, {}, [])
        self._glossary = GlossaryLinks()
        self._policy = ""
        self._for_templates = MkDocsConfig()
        self._words: dict[str, str] = {}
        self._files = Files([])
        self._nav = Navigation([], [])
        self._assets = Assets("", {})
        self._serving = False
        #: The source file of each page that has one, by its address; also of earlier builds.
        self.made_from: dict[str, set[str]] = {}
        self._edition: SiteEdition | None = None
        #: The record of an older edition: then there is a page on what changed since.
        self.compared_with: dict[str, Any] | None = None
        self._code = state_of_code(CODE)

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember the command; having this event also keeps the plugin between rebuilds.

        MkDocs keeps it for all sites that one process builds: nothing of one may reach the next.
        """
        self._serving = command == "serve"
        self.compared_with = None

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Add the styles, the scripts and the icon."""
        if self._serving and self._code != state_of_code(CODE):
            start_anew()  # Python has the old modules
        try:
            self._assets = find_assets()
        except BrowserFilesError as error:
            raise PluginError(str(error)) from None
        own = Path(config.config_file_path), Path(config.docs_dir)
        edition = None if self._serving else edition_of(*own, library_of(config))
        self._edition = edition and SiteEdition(edition, self.compared_with)
        config.extra_css.append(self._assets.address(STYLE))
        config.extra_javascript.append(_module(self._assets.address(SCRIPT)))
        config.theme.dirs.insert(0, str(OVERRIDES))
        config.extra["assets"] = self._assets.folder_name
        # Columns are aligned by an attribute of their own: the policy lets no style attribute work.
        config.mdx_configs.setdefault("tables", {})["use_align_attribute"] = True
        config.mdx_configs.setdefault("toc", {})["slugify"] = slug
        config.markdown_extensions.append(self._glossary)
        config.theme["logo"] = config.theme["favicon"] = self._assets.address(ICON)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Make every page; with any problem in the sources, make none and say them all."""
        docs = Path(config.docs_dir)
        handbook = load(docs, Path(config.config_file_path).parent, library_of(config))
        self.made_from |= made_from(handbook)
        values = Values(handbook)
        if problems := check_handbook(handbook, values):
            raise ContentProblems(problems)
        try:
            runtime = runtime_files(ROOT)
        except BrowserFilesError as error:
            raise PluginError(str(error)) from None
        self._site = site_in_both_systems(handbook, values, runtime.folder_name, config.site_url)
        config.extra["own_units"] = handbook.own_units
        if self._edition is not None:
            self._edition.record(handbook, self._site)
        self._glossary.use(handbook)
        language_theme.remove_sources(files)
        self._words = language_theme.words_files(self._site.languages)
        config.nav = self._site.nav
        copied = dict(runtime.files)
        copied |= {self._assets.address(name): path for name, path in self._assets.files.items()}
        copied |= {
            place: handbook.source(place)
            for place in handbook.other_files
            if files.get_file_from_path(place) is None
        }
        copied |= {f"{WORKBOX_FOLDER}/{path.name}": path for path in workbox_files(ROOT)}
        manifest = web_manifest(config.site_name, self._assets.folder_name)
        files.append(File.generated(config, MANIFEST_NAME, content=manifest))
        for address, path in copied.items():
            files.append(File.generated(config, address, abs_src_path=str(path)))
        for address, markdown in self._site.pages.items():
            if files.get_file_from_path(address) is None:
                files.append(File.generated(config, address, content=markdown))
        surroundings = Surroundings.of_site(
            config,
            files,
            self._assets,
            policy=policy(self._scripts_of_serving),
            edition=edition_words(self._edition.edition) if self._edition else "",
        )
        bare = embedding_files(self._site.bare_forms, surroundings)
        words = {WORDS: search_words(handbook)}
        spoken = {self._words_address(code): text for code, text in self._words.items()}
        for address, content in {**bare, **words, **spoken, **self._site.files}.items():
            files.append(File.generated(config, address, content=content))
        for file in list(files):
            is_source = file.src_uri.endswith((".yaml", ".yml")) or file.src_uri in DATA_FILES
            if is_source or THEME_WORKER.fullmatch(file.src_uri):
                files.remove(file)
        return files

    def markdown_of(self, file: File) -> str:
        """Return a page's finished text, or nothing where a page on disk is taken as it is."""
        return self._site.pages.get(file.src_uri, "")

    def reading_rests_on(self) -> list[object]:
        """Return what, beside its text, the reading of each page rests on.

        Whatever else one of the events below comes to use for a page belongs here, or into
        `writing_rests_on`: while serving, pages for which all of it is as before are kept.
        """
        return [self._glossary.terms, sorted(SEARCH_BOOST.items())]

    def writing_rests_on(self, config: MkDocsConfig) -> list[object]:
        """Return what, beside its reading, the writing of each page rests on."""
        scripts = [(one.path, one.type) for one in config.extra_javascript]
        styles = [*map(str, config.extra_css)]
        own = [self._words, config.extra["own_units"]]
        return [self._policy, self._assets.folder_name, styles, scripts, *own]

    def on_page_markdown(
        self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Return a page's finished text; that of a page on disk still has its expressions."""
        address = page.file.src_uri
        page.meta["language"] = language_of(address)
        if boost := SEARCH_BOOST.get(address) or SEARCH_BOOST.get(address.partition("/")[0]):
            page.meta.setdefault("search", {"boost": boost})
        if address == WHAT_CHANGED:
            page.meta["search"] = {"exclude": True}  # it names everything
        self._glossary.page = page.file.src_uri
        return self._site.pages.get(page.file.src_uri, markdown)

    def on_page_content(self, html: str, *, page: Page, **_: object) -> str:
        """End each page with its edition; while authors work, there are no editions."""
        if self._edition is None:
            return html
        with speaking(page.meta["language"]):
            return html + self._edition.line(page.url, self._assets.folder_name)

    def on_nav(self, nav: Navigation, **_: object) -> None:
        """Keep the pages of each language together."""
        language_theme.part_navigation(nav)
        self._nav = nav

    def on_page_context(
        self, context: dict[str, Any], *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> dict[str, Any]:
        """Give a page the navigation of its language, its words, and the way to the others."""
        code = page.meta["language"]
        context["nav"] = language_theme.navigation_for(nav, code)
        context["switches"] = language_theme.switches(page, self._files)
        context["words"] = self._words_address(code) if code in self._words else ""
        context["config"] = self._for_templates
        return context

    def on_template_context(self, context: dict[str, Any], **_: object) -> dict[str, Any]:
        """Let the page for a wrong address say so in every language."""
        context["nav"] = language_theme.navigation_for(self._nav, ENGLISH)
        context["not_found"] = language_theme.not_found(self._site.languages)
        context["config"] = self._for_templates
        return context

    def _words_address(self, code: str) -> str:
        return language_theme.words_address(code, self._words[code])

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:
        """Compute the policy of the theme's pages, now that all of them are known."""
        self._files = files
        base_urls = {get_relative_url(".", file.url) for file in files.documentation_pages()}
        scripts = theme_scripts(env, config, {*base_urls, _root(config)})
        self._policy = policy(self._scripts_of_serving or scripts)
        self._for_templates = copy(config)  # the theme escapes the name here and there only
        self._for_templates["site_name"] = Markup.escape(config.site_name)

    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Put the policy, our search, the units and the foot of its prints into a page."""
        code = page.meta["language"]
        with speaking(code):
            edition = self._edition and self._edition.edition
            whole = with_foot(output, config.site_name, edition)
        return self._finished(language_theme.configured_words(whole, code), config, code)

    def on_post_template(
        self, output_content: str, *, template_name: str, config: MkDocsConfig
    ) -> str:
        """Put the policy also into the page for a wrong address."""
        if not template_name.endswith(".html"):
            return output_content
        return self._finished(output_content, config, ENGLISH)

    def _finished(self, html: str, config: MkDocsConfig, code: str) -> str:
        with speaking(code):
            html = with_elements(with_switch(html, config.extra["own_units"]))
        return with_policy(with_search(html, self._assets.folder_name, code), self._policy)

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Make an edition of the site; then write what hosts shall send, and the list of hashes."""
        site = Path(config.site_dir)
        if self._edition is not None:
            workbox = [f"{WORKBOX_FOLDER}/{path.name}" for path in workbox_files(ROOT)]
            self._edition.write(site, workbox)
        text = headers_file(site, self._policy, _root(config))
        (site / NAME).write_text(text, encoding="utf-8")
        if not self._serving:
            hash_list.write_list(site)

    def on_serve(
        self, server: LiveReloadServer, *, config: MkDocsConfig, **_: object
    ) -> LiveReloadServer:
        """Rebuild also when the library, the guides, the calculators or the tool itself change."""
        library = library_of(config)
        for folder in (*CODE, guides.DOCUMENTS, *([library] if library else [])):
            server.watch(str(folder))
        return server

    @property
    def _scripts_of_serving(self) -> list[str]:
        """While serving, MkDocs writes a script into each page that loads it anew after a change.

        It differs from page to page and no hash is known, so all scripts in pages run then.
        """
        return ["'unsafe-inline'"] if self._serving else []


def _root(config: MkDocsConfig) -> str:
    """Return the path of the site on its host, as far as it is known."""
    return urlsplit(config.site_url or "/").path


def _module(path: str) -> ExtraScriptValue:
    script = ExtraScriptValue(path)
    script.type = "module"
    return script
