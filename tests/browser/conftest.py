"""A loopback web server, and pages to open in a real browser: what the browser tests share."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import BinaryIO, ClassVar

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Browser, BrowserContext, CDPSession, expect

from build_tools.browser.form import form_html
from build_tools.browser.runtime import runtime_files
from build_tools.pages.assets import joined_files
from calculators import CALCULATORS, run
from calculators.figures import picture
from tests.browser.headers_file import headers_by_path
from tests.browser.modules import MODULES, modules
from tests.browser.visits import EXAMPLES, Visits, example_of

# On a busy machine Python needs its time to start in the page; a right page is quick.
expect.set_options(timeout=60_000)

ROOT = Path(__file__).parents[2]
SECOND = ROOT / "tests" / "second_shop" / "mkdocs.yml"
BROWSER = ROOT / "build_tools" / "browser"
STYLES_OF_FORMS = ("controls.css", "forms.css")

# The strictest policy under which Python can run: no script in the page's text, no other host.
STRICT_POLICY = (
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self' blob:; "
    "img-src data:"
)


class _Handler(SimpleHTTPRequestHandler):
    """Serves one folder without a word; the media types that a browser insists on are fixed.

    With `compresses` it sends gzip twins in the place of their files, as some hosts do; with
    `reads_headers` what the folder's file `_headers` says. Under an address of their own stand
    modules of the pages' scripts, which the built files have joined: see modules.py.
    """

    extensions_map: ClassVar[dict[str, str]] = {
        **SimpleHTTPRequestHandler.extensions_map,
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
    }

    def __init__(
        self,
        *arguments: object,
        policy: str,
        compresses: bool,
        headers: Callable[[str], dict[str, str]],
        **options: object,
    ) -> None:
        self._policy = policy
        self._headers_for = headers
        self._compresses = compresses
        super().__init__(*arguments, **options)

    def translate_path(self, path: str) -> str:
        """Return the file for an address."""
        before, ours, name = path.partition(f"/{MODULES}")
        return super().translate_path(path) if before or not ours else str(modules()[name])

    def send_head(self) -> BinaryIO | None:
        """Send the headers; return what is to follow them."""
        twin = Path(f"{self.translate_path(self.path)}.gz")
        if not (self._compresses and twin.is_file()):
            return super().send_head()
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(self.path))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(twin.stat().st_size))
        self.end_headers()
        return twin.open("rb")

    def copyfile(self, source: BinaryIO, outputfile: BinaryIO) -> None:
        """Send a body; a page may turn away from it."""
        with suppress(ConnectionError):
            super().copyfile(source, outputfile)

    def end_headers(self) -> None:
        """Send the content security policy, where there is one, and the folder's own headers."""
        if self._policy:
            self.send_header("Content-Security-Policy", self._policy)
        for name, value in self._headers_for(self.path).items():
            self.send_header(name, value)
        super().end_headers()

    def log_message(self, format: str, *arguments: object) -> None:
        """Keep the test's output clean."""


@pytest.fixture(scope="session")
def serve() -> Iterator[Callable[..., str]]:
    """Serve folders over loopback until the tests end; calling it gives the folder's address."""
    servers = []

    def start(
        folder: Path, policy: str = "", *, compresses: bool = False, reads_headers: bool = False
    ) -> str:
        handler = partial(
            _Handler,
            directory=str(folder),
            policy=policy,
            compresses=compresses,
            headers=headers_by_path(folder) if reads_headers else lambda path: {},
        )
        server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        servers.append(server)
        return f"http://127.0.0.1:{server.server_port}/"

    yield start
    for server in servers:
        server.shutdown()
        server.server_close()


@pytest.fixture(scope="session")
def everyday(browser: Browser) -> Iterator[BrowserContext]:
    """Return one browser profile for most pages, which fetches the Python runtime only once.

    The offline worker, which would answer in the place of the test's server, has its own tests.
    """
    context = browser.new_context(service_workers="block")
    yield context
    context.close()


@pytest.fixture(scope="session")
def scriptless(browser: Browser) -> Iterator[BrowserContext]:
    """Return one browser profile for pages without scripts, which keep nothing."""
    context = browser.new_context(service_workers="block", java_script_enabled=False)
    yield context
    context.close()


@pytest.fixture(scope="session")
def storage(everyday: BrowserContext) -> CDPSession:
    """Return a way to what pages keep in the shared profile, by a blank page that stays open."""
    return everyday.new_cdp_session(everyday.new_page())


@pytest.fixture
def visits(
    browser: Browser, everyday: BrowserContext, scriptless: BrowserContext, storage: CDPSession
) -> Iterator[Visits]:
    """Pages for one test, which fails when a page asked another host or reported an error."""
    visits = Visits(browser, everyday, scriptless, storage)
    yield visits
    visits.close()
    assert visits.strangers() == []
    assert visits.errors == []


@pytest.fixture(scope="session")
def bare_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make a folder with two pages of forms and no theme, as a host of its own would have them."""
    folder = tmp_path_factory.mktemp("bare")
    runtime = runtime_files(ROOT)
    runtime.copy_to(folder)
    for style in STYLES_OF_FORMS:
        shutil.copy(BROWSER / style, folder)
    for name, path in joined_files().items():
        if name.startswith("page/"):
            shutil.copy(path, folder)
    runtime_url = f"{runtime.folder_name}/"
    every = {one.name: (one.name, example_of(one.name, "us")) for one in CALCULATORS.values()}
    for page, examples in (("index.html", EXAMPLES), ("every.html", every)):
        (folder / page).write_text(_page_of_forms(examples, runtime_url), encoding="utf-8")
    return folder


def _page_of_forms(examples: dict[str, tuple[str, dict[str, str]]], runtime_url: str) -> str:
    forms = "".join(
        form_html(
            CALCULATORS[name],
            run(name, texts),
            picture=picture(name, texts) or "",
            form_id=form_id,
            texts=texts,
            units="us",
            runtime_url=runtime_url,
        )
        for form_id, (name, texts) in examples.items()
    )
    styles = "".join(f'<link rel="stylesheet" href="{one}">' for one in STYLES_OF_FORMS)
    head = (
        '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Forms</title>'
        '<meta name="viewport" content="width=device-width"><link rel="icon" href="data:,">'
        f"{styles}</head>"
    )
    script = '<script type="module" src="handbook.js"></script>'
    return f'{head}<body class="md-typeset"><main>{forms}</main>{script}</body></html>'


@pytest.fixture(scope="session")
def bare(serve: Callable[..., str], bare_folder: Path) -> str:
    """Return the address of the pages of forms, which are served under the strict policy."""
    return serve(bare_folder, STRICT_POLICY)


@pytest.fixture(scope="session")
def handbook_folder(built: Callable[[Path], Path]) -> Path:
    """Return the built handbook of the demo shop; no test changes it."""
    return built(ROOT / "mkdocs.yml")


@pytest.fixture(scope="session")
def handbook(serve: Callable[..., str], handbook_folder: Path) -> str:
    """Return the address of the demo shop's handbook, at a host that reads its `_headers`."""
    return serve(handbook_folder, reads_headers=True)


@pytest.fixture(scope="session")
def instant(serve: Callable[..., str], tmp_path_factory: pytest.TempPathFactory) -> str:
    """Return the address of the second shop's pages, which the theme changes without loading."""
    folder = tmp_path_factory.mktemp("instant")
    address = serve(folder)
    config = load_config(str(SECOND), site_dir=str(folder), site_url=address)
    config.theme["features"].append("navigation.instant")
    build(config)
    return address
