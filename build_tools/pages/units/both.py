"""The site for readers of both unit systems."""

from __future__ import annotations

from mkdocs.exceptions import PluginError

from build_tools.content.handbook import Handbook
from build_tools.content.problems import summary
from build_tools.content.values import Values
from build_tools.pages.site import Site, write_site
from build_tools.pages.units.pairs import Unlike, paired


def site_in_both_systems(
    handbook: Handbook, values: Values, runtime_folder: str, site_url: str | None
) -> Site:
    """Return the site of a handbook, with a mark around each text that differs by the system.

    The pages are made in the shop's own system and in the other one, each number worked out for
    it, and then made one.
    """
    own = write_site(handbook, values, runtime_folder, site_url)
    read = Values(handbook.in_the_other_system())
    read.uses = values.uses
    other = write_site(read.handbook, read, runtime_folder, site_url)
    if read.problems:
        raise PluginError(summary(read.problems))
    return Site(
        _paired(own.pages, other.pages),
        own.nav,
        _paired(own.bare_forms, other.bare_forms),
        own.files | other.files,
        own.languages,
    )


def _paired(own: dict[str, str], other: dict[str, str]) -> dict[str, str]:
    made = {}
    for address, text in own.items():
        try:
            made[address] = paired(text, other[address])
        except Unlike as difference:
            raise PluginError(
                f"{address} differs in more than its quantities for readers of the other unit "
                f"system: {difference}"
            ) from None
    return made
