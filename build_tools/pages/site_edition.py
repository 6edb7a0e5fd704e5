"""The edition of the site that a build makes: on its pages, in its files, beside an older one."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from build_tools.comparing.compared import compare
from build_tools.comparing.in_site import ADDRESS, TITLE, what_changed
from build_tools.comparing.record import NAME as RECORD
from build_tools.comparing.record import edition_of_record, record_of
from build_tools.comparing.record import write as write_record
from build_tools.content.handbook import Handbook
from build_tools.edition import Edition
from build_tools.offline.edition import edition_line, write_edition
from build_tools.pages import guides
from build_tools.pages.site import Site
from build_tools.publishing import hash_list


class SiteEdition:
    """An edition, and the record of what its pages say.

    compared_with: the record of an older edition: then there is a page on what changed since.
    """

    def __init__(self, edition: Edition, compared_with: dict[str, Any] | None) -> None:
        self.edition = edition
        self._compared_with = compared_with
        self._record: dict[str, Any] = {}

    def record(self, handbook: Handbook, site: Site) -> None:
        """Record the handbook; add the page on what changed to its site, if there is one."""
        self._record = record_of(handbook, self.edition)
        if self._compared_with is None:
            return
        old = edition_of_record(self._compared_with)
        comparison = compare(self._compared_with, self._record, old.words, self.edition.words)
        site.pages[ADDRESS] = what_changed(comparison)
        for (pages,) in map(dict.values, site.nav):
            if pages[0] == f"{guides.FOLDER}/index.md":
                pages.append({TITLE: ADDRESS})

    def line(self, page_url: str, assets: str) -> str:
        """Return the line at the end of a page. assets: the folder of the page's scripts."""
        return edition_line(self.edition, page_url, assets, ADDRESS if self._compared_with else "")

    def write(self, site: Path, workbox: list[str]) -> None:
        """Write the files of the edition into a site that is otherwise whole.

        workbox: the addresses of the library that the offline worker is made with.
        """
        write_edition(site, self.edition, workbox)
        write_record(self._record, site / RECORD)
        (site / hash_list.NAME).touch()  # it has headers too
