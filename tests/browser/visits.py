"""Visits to pages, and the forms of the page that the form tests visit."""

from __future__ import annotations

import re
from typing import Any

from playwright.sync_api import Browser, BrowserContext, CDPSession, ConsoleMessage, Page

from calculators import CALCULATORS

# Form id: the calculator, and what the author of the example wrote for its inputs.
EXAMPLES = {
    "setting": ("hardness-setting", {"hardness": "18 gpg", "iron": "0.3 mg/L"}),
    "leak": ("small-leak", {"measured": "drips", "drips": "60 /min"}),
    "capacity": ("resin-capacity", {"salt": "9 lb", "resin_volume": "1.5 ft³"}),
}


#: What a page of a shared profile can be given after it is made, so that it needs no new one.
_SHARED = {"viewport", "color_scheme"}
_KEPT_BY_PAGES = "local_storage,indexeddb,cookies"


class Visits:
    """Opens pages, and remembers what must not happen in them.

    A new profile fetches and compiles Python anew, which takes longer than most tests. So pages
    share one where they can, without and with scripts; what a test's pages keep is removed.
    """

    def __init__(
        self,
        browser: Browser,
        everyday: BrowserContext,
        scriptless: BrowserContext,
        storage: CDPSession,
    ) -> None:
        self.browser = browser
        self.everyday = everyday
        self.scriptless = scriptless
        self._storage = storage
        self.errors: list[str] = []
        self.requests: list[str] = []
        self._to_close: list[Page | BrowserContext] = []

    def page(self, **options: Any) -> Page:
        """Return a blank page, in a browser profile of its own where its options need one."""
        scripts = options.get("java_script_enabled", True)
        if options.keys() - {"java_script_enabled"} <= _SHARED:
            page = (self.everyday if scripts else self.scriptless).new_page()
            if "viewport" in options:
                page.set_viewport_size(options["viewport"])
            if "color_scheme" in options:
                page.emulate_media(color_scheme=options["color_scheme"])
        else:
            context = self.browser.new_context(**{"service_workers": "block", **options})
            self._to_close.append(context)
            page = context.new_page()
        self._to_close.append(page)
        page.set_default_timeout(60_000)
        page.on("request", lambda request: self.requests.append(request.url))
        page.on("console", self._note_error)
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        return page

    def close(self) -> None:
        """Close what was opened, and remove what pages kept in the shared profile."""
        for opened in reversed(self._to_close):
            opened.close()
        own = re.compile(r"http://(127\.0\.0\.1|localhost):\d+")
        origins = {found[0] for url in self.requests if (found := own.match(url))}
        for origin in origins:
            what = {"origin": origin, "storageTypes": _KEPT_BY_PAGES}
            self._storage.send("Storage.clearDataForOrigin", what)

    def take_errors(self) -> list[str]:
        """Return the errors so far, which the test has provoked, and forget them."""
        taken, self.errors = self.errors, []
        return taken

    def strangers(self) -> list[str]:
        """Return the requests that went to another host."""
        own = ("http://127.0.0.1:", "http://localhost:", "data:", "blob:", "file:")
        return [url for url in self.requests if not url.startswith(own)]

    def _note_error(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            at = f" ({message.location['url']})" if "Failed to load" in message.text else ""
            self.errors.append(message.text + at)


def example_of(name: str, units: str) -> dict[str, str]:
    """Return what the author of a calculator's own example would write for its inputs."""
    return {
        one.name: one.example if one.choices else one.shown(one.example, units)
        for one in CALCULATORS[name].inputs
        if one.example is not None
    }
