"""A built site as the source of a print: its pages, its styles and its edition."""

from __future__ import annotations

import copy
import datetime
import json
from functools import cached_property
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

from lxml import html

from build_tools.offline.web_manifest import MANIFEST_NAME
from build_tools.set_up.failure import Failure

_ANYWHERE = "https://site.invalid/"


class BuiltSite:
    """A folder that a build wrote. Pages are named as links do: "learn/salt-and-brine"."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._trees: dict[str, html.HtmlElement] = {}
        if not (folder / "index.html").is_file():
            raise Failure(f"There is no built handbook in {folder}: the command build writes one.")

    @property
    def day(self) -> datetime.date:
        """The day of the site's edition."""
        return datetime.date.fromisoformat(self._edition_line("").find("time").get("datetime"))

    def edition(self, page: str = "") -> str:
        """Return the site's edition as a page names it, in its language."""
        line = self._edition_line(page)
        return f"{line.findtext('time')}, {line.find_class('edition-source')[0].text_content()}"

    def _edition_line(self, page: str) -> html.HtmlElement:
        found = self._page(page).find_class("edition")
        if not found or not found[0].find_class("edition-source"):
            raise Failure(f"The site in {self.folder} does not tell its edition: build it anew.")
        return found[0]

    @cached_property
    def styles(self) -> list[str]:
        """The addresses of the styles that every page has, as those of files."""
        found = self._page("").xpath("//head/link[@rel='stylesheet']/@href")
        return [(self.folder / one).resolve().as_uri() for one in found]

    def language(self, page: str) -> str:
        """Return the language that a page is written in."""
        return self._page(page).get("lang")

    @property
    def name(self) -> str:
        """What the site calls itself."""
        return json.loads((self.folder / MANIFEST_NAME).read_text("utf-8"))["name"]

    @cached_property
    def address(self) -> str:
        """Where the site stands on the network; nothing where its build did not know it."""
        found = self._page("").xpath("//head/link[@rel='canonical']/@href")
        return found[0] if found else ""

    def has(self, page: str) -> bool:
        """Tell whether there is such a page."""
        return self._file(page).is_file()

    def article(self, page: str) -> html.HtmlElement:
        """Return what a page says, without the frame around it, to be changed as is needed."""
        return copy.deepcopy(self._page(page).xpath("//article")[0])

    def title(self, page: str) -> str:
        """Return the title of a page."""
        found = self._page(page).xpath("//article//h1")
        return words_of(found[0]) if found else self.name

    def target(self, page: str, link: str) -> tuple[str, str] | None:
        """Return the page and the anchor that a link leads to; None where it leaves the site."""
        base = urljoin(_ANYWHERE, f"{page}/" if page else "")
        parts = urlsplit(urljoin(base, link))
        if f"{parts.scheme}://{parts.netloc}/" != _ANYWHERE:
            return None
        name = unquote(parts.path).strip("/").removesuffix("index.html").strip("/")
        return (name, unquote(parts.fragment)) if self.has(name) else None

    def file_address(self, page: str, link: str) -> str:
        """Return the address of a file that a page shows, such as a picture."""
        return urljoin(self._file(page).resolve().as_uri(), link)

    def _file(self, page: str) -> Path:
        return self.folder / page / "index.html"

    def _page(self, page: str) -> html.HtmlElement:
        if page not in self._trees:
            try:
                data = self._file(page).read_bytes()
            except OSError as error:
                raise Failure(
                    f'The site in {self.folder} has no page "{page}": build it anew.'
                ) from error
            self._trees[page] = html.fromstring(data, parser=html.HTMLParser(encoding="utf-8"))
        return self._trees[page]


def words_of(element: html.HtmlElement) -> str:
    """Return the words of a heading without the sign that links to it."""
    own = copy.deepcopy(element)
    for sign in own.find_class("headerlink"):
        sign.drop_tree()
    return " ".join(own.text_content().split())
