"""Single modules of the pages' scripts, which tests call in a page; the site has them joined."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from build_tools.bundling.bundles import bundles
from build_tools.pages.assets import PAGE, SEARCH

#: Where the tests' hosts have them, as if they were files of the site.
MODULES = "modules-for-tests/"
#: A page that runs nothing: from it a test puts into the browser what pages are to find there.
BLANK = f"{MODULES}blank.html"

ENTRIES = {
    "calculator_client": PAGE / "calculator_client.js",
    "messages": PAGE / "messages.js",
    "search": SEARCH / "search.js",
    "worker": PAGE / "worker.js",  # which the client starts
}


@cache
def modules() -> dict[str, Path]:
    """Return the files by their names, such as "search.js"."""
    joined = bundles(ENTRIES, {}, {*PAGE.rglob("*.js"), *SEARCH.glob("*.js")})
    return joined | {"blank.html": Path(__file__).with_name("blank.html")}
