"""Visits to pages, and the forms of the page that the form tests visit."""

from __future__ import annotations

from playwright.sync_api import Browser, BrowserContext, Page

from calculators import CALCULATORS

# Form id: the calculator, and what the author of the example wrote for its inputs.
EXAMPLES = {
    "setting": ("hardness-setting", {"hardness": "18 gpg", "iron": "0.3 mg/L"}),
    "leak": ("small-leak", {"measured": "drips", "drips": "60 /min"}),
    "capacity": ("resin-capacity", {"salt": "9 lb", "resin_volume": "1.5 ft³"}),
}


class Visits:
    """Opens pages, and remembers what must not happen in them."""

    def __init__(self, browser: Browser, everyday: BrowserContext) -> None:
        self.browser = browser
        self.everyday = everyday
        self.errors: list[str] = []
        self.requests: list[str] = []
        self._to_close: list[Page | BrowserContext] = []

    def page(self, **options: object) -> Page:
        """Return a blank page, in a browser profile of its own where it needs options."""
        if options:
            context = self.browser.new_context(**{"service_workers": "block", **options})
            self._to_close.append(context)
        else:
            context = self.everyday
        page = context.new_page()
        self._to_close.append(page)
        page.set_default_timeout(60_000)
        page.on("request", lambda request: self.requests.append(request.url))
        page.on("console", lambda message: self._note_error(message.type, message.text))
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        return page

    def close(self) -> None:
        """Close what was opened."""
        for opened in reversed(self._to_close):
            opened.close()

    def take_errors(self) -> list[str]:
        """Return the errors so far, which the test has provoked, and forget them."""
        taken, self.errors = self.errors, []
        return taken

    def strangers(self) -> list[str]:
        """Return the requests that went to another host."""
        own = ("http://127.0.0.1:", "http://localhost:", "data:", "blob:", "file:")
        return [url for url in self.requests if not url.startswith(own)]

    def _note_error(self, kind: str, text: str) -> None:
        if kind == "error":
            self.errors.append(text)


def example_of(name: str, units: str) -> dict[str, str]:
    """Return what the author of a calculator's own example would write for its inputs."""
    return {
        one.name: one.example if one.choices else one.shown(one.example, units)
        for one in CALCULATORS[name].inputs
        if one.example is not None
    }
