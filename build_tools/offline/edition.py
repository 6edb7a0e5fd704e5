"""An edition: the list of all files of a written site, by which a phone keeps it whole.

A site gets three files at its root. `edition.json` is small and tells which edition is out.
`edition-<id>.json` lists every file that a phone keeps. `service-worker.js` is the offline worker
of this edition.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape
from pathlib import Path

from mkdocs.utils import get_relative_url

from build_tools.browser.runtime import FETCHED_AS_PARTS
from build_tools.edition import Edition
from build_tools.language.languages import ENGLISH, LANGUAGES, language_of
from build_tools.language.speaking import say, speaking, spoken
from build_tools.publishing import hash_list
from build_tools.publishing.hash_list import hash_of

KEEP_PAGE = "reference/on-this-phone/"

WORKER = Path(__file__).with_name("service_worker.js")
WORKER_NAME = "service-worker.js"

# Not of use on a phone: what hosts read, compressed twins, maps for developers, pages for the
# frames of other sites, the theme's other languages, what only the slowest start needs, the
# sitemap, which the offline worker makes itself, and the list of hashes.
LEFT_OUT_ENDINGS = (".gz", ".br", ".map", ".whl")
LEFT_OUT_NAMES = {
    "python_stdlib.zip",
    "pyodide-lock.json",
    "_headers",
    "sitemap.xml",
    WORKER_NAME,
    hash_list.NAME,
}
LEFT_OUT_FOLDERS = ("embed/", "assets/javascripts/lunr/")

# The library of the offline worker: npm packages, and where the site has their files. Its version
# is that of package.json, which the folder's name must follow.
WORKBOX = ("core", "routing", "strategies", "precaching")
WORKBOX_FOLDER = "assets/workbox-7.4.1"

# The offline worker fetches these when it is installed, so that any visited page looks right.
ESSENTIAL_FOLDER = "assets/"


@dataclass(frozen=True)
class KeptFile:
    """A file of the site: its address as a browser asks for it, its size and its hash."""

    address: str
    size: int
    sha256: str

    @property
    def is_part(self) -> bool:
        """Whether pages fetch it compressed wherever the host is: see parts.js."""
        return self.address.rsplit("/", 1)[-1] in FETCHED_AS_PARTS


def write_edition(site: Path, made: Edition, workbox: list[str]) -> str:
    """Write the three files into a site that is otherwise whole; return the edition's id.

    workbox: the addresses of the library that the offline worker is made with.
    """
    files = list(kept_files(site))
    digest = hashlib.sha256(WORKER.read_bytes())
    for file in files:
        digest.update(f"{file.address} {file.sha256}\n".encode())
    edition = digest.hexdigest()[:16]
    size = sum(file.size for file in files)
    _write(
        site / f"edition-{edition}.json",
        [[file.address, file.size, file.sha256, file.is_part] for file in files],
    )
    out = {"id": edition, "date": made.date.isoformat(), "size": size, "source": made.source}
    _write(site / "edition.json", out)
    essential = [file.address for file in files if file.address.startswith(ESSENTIAL_FOLDER)]
    # From language to language a page is loaded anew: see `pages/overrides/main.html`.
    pages = [
        file.address
        for file in files
        if (file.address.endswith("/") or not file.address) and language_of(file.address) == ENGLISH
    ]
    spoken_too = [code for code in LANGUAGES if (site / code).is_dir()]
    head = f"// Edition {edition}\n" + "".join(
        f"const {name} = {json.dumps(value)};\n"
        for name, value in (
            ("WORKBOX", workbox),
            ("ESSENTIAL", essential),
            ("ADDRESSES", pages),
            ("NOT_HERE", {code: _not_here(code) for code in (ENGLISH, *spoken_too)}),
        )
    )
    (site / WORKER_NAME).write_text(head + WORKER.read_text("utf-8"), encoding="utf-8")
    return edition


def _not_here(language: str) -> list[str]:
    """Return what the offline worker says in the place of a page: title, sentence, link's words."""
    with speaking(language):
        words = [
            say("This page is not on this phone"),
            say("There is no network, and this page was not opened or kept here before."),
            say("The handbook’s first page"),
        ]
    return [escape(one) for one in words]


def workbox_files(root: Path) -> list[Path]:
    """Return the library's files, in the order in which they are loaded."""
    packages = root / "node_modules"
    return [packages / f"workbox-{name}" / "build" / f"workbox-{name}.prod.js" for name in WORKBOX]


def edition_line(edition: Edition, page_url: str, assets: str, changes: str = "") -> str:
    """Return the line at the end of a page: its edition, and the way to keep it on a phone.

    assets: the folder of the page's scripts, by which they know whether they are of its edition.
    changes: the address of the page on what changed, where there is one.
    """
    site = get_relative_url(".", page_url)
    link = get_relative_url(changes.removesuffix(".md") + "/", page_url) if changes else ""
    in_english = f" ({say('in English')})" if spoken() != ENGLISH else ""
    what_changed = f' · <a href="{link}">{say("What changed")}</a>{in_english}' if link else ""
    keep = get_relative_url(KEEP_PAGE, page_url)
    return (
        f'\n<p class="edition" data-site="{site}/" data-assets="{assets}">'
        f'{edition_words(edition)}<span class="not-on-paper">{what_changed}'
        f' · <a href="{keep}">{say("Keep this handbook on this phone")}</a>{in_english}'
        "</span></p>\n"
    )


def edition_words(edition: Edition) -> str:
    """Return the words that name an edition on a page, as HTML; machines read the day."""
    day = f'<time datetime="{edition.date}">{edition.day}</time>'
    words = say("Edition of {date}", date=day)
    return f'{words}, <span class="edition-source">{edition.source}</span>'


def kept_files(site: Path) -> Iterator[KeptFile]:
    """Yield the files that a phone keeps, in the order of their addresses."""
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if path.is_dir() or path.name in LEFT_OUT_NAMES or path.suffix in LEFT_OUT_ENDINGS:
            continue
        if name.startswith(LEFT_OUT_FOLDERS) or (
            path.parent == site and name.startswith("edition") and path.suffix == ".json"
        ):
            continue
        address = name.removesuffix("index.html") if path.name == "index.html" else name
        yield KeptFile(address, path.stat().st_size, hash_of(path))


def _write(path: Path, content: object) -> None:
    path.write_text(json.dumps(content, separators=(",", ":")) + "\n", encoding="utf-8")
