"""The fastest way to start Python is used; each that fails gives way, and answers stay right."""

from __future__ import annotations

import gzip
import json
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect

from calculators import run
from tests.browser.visits import EXAMPLES, Visits
from tests.waiting import until

# The browser refuses something to scripts of the worker, which a test cannot reach otherwise.
NO_WEBASSEMBLY = "delete self.WebAssembly;"
NO_STORAGE = """
  Object.defineProperty(self, "caches", {
    get() { throw new DOMException("refused", "SecurityError"); },
  });
"""
NO_DIGESTS = "Object.defineProperty(crypto, 'subtle', { value: undefined });"


@pytest.fixture
def site(bare_folder: Path, tmp_path: Path) -> Path:
    """Copy the page with its runtime, to damage it."""
    return shutil.copytree(bare_folder, tmp_path / "site")


def expect_answer(page: Page, start: str) -> None:
    """Change a number, and check the answer and the word about the start."""
    page.locator("#setting-hardness").fill("29")
    right = run("hardness-setting", {**EXAMPLES["setting"][1], "hardness": "29"})
    for name, value in right["values"].items():
        expect(page.locator(f"#setting [data-output={name}] strong")).to_have_text(value["shown"])
    expect(page.locator("#setting .live-form__start")).to_have_text(start)


def in_worker(script: str) -> Callable[[Route], None]:
    """Let a script run in the worker before its own."""

    def answer(route: Route) -> None:
        response = route.fetch()
        route.fulfill(response=response, body=f"{script}\n{response.text()}")

    return answer


def requested(visits: Visits) -> set[str]:
    """Return the names of the files that were asked for."""
    return {url.rsplit("/", 1)[1] for url in visits.requests}


def test_the_memory_image_is_used(visits: Visits, site: Path, serve: Callable[..., str]) -> None:
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect_answer(page, "")
    assert {"image.bin.gz", "pyodide.asm.wasm.gz", "pyodide.asm.mjs"} <= requested(visits)
    others = {"python_stdlib.zip", "compiled.zip", "pyodide.mjs", "pyodide-lock.json"}
    assert requested(visits) & others == set()


def test_a_host_that_compresses_is_not_asked_for_twins(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    page.goto(serve(site, compresses=True))
    expect_answer(page, "")
    assert {"image.bin", "pyodide.asm.wasm"} <= requested(visits)
    assert not any(name.endswith(".gz") for name in requested(visits))


def test_the_next_visit_takes_the_large_files_from_the_browser(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    address = serve(site)
    page.goto(address)
    expect_answer(page, "")
    until(page, "async () => (await (await caches.open('runtime parts')).keys()).length >= 4")
    visits.requests.clear()
    page.goto(address)
    expect_answer(page, "")
    assert "pack.json" in requested(visits)
    large = {"image.bin", "image.bin.gz", "pyodide.asm.wasm", "pyodide.asm.wasm.gz"}
    assert requested(visits) & large == set()


def damaged(path: Path, change: Callable[[bytes], bytes]) -> None:
    """Change a file and its twin alike."""
    content = change(path.read_bytes())
    path.write_bytes(content)
    Path(f"{path}.gz").write_bytes(gzip.compress(content))


def one_bit(content: bytes) -> bytes:
    """Turn one bit in the middle."""
    middle = len(content) // 2
    return content[:middle] + bytes([content[middle] ^ 1]) + content[middle + 1 :]


@pytest.mark.parametrize(
    "change",
    [one_bit, lambda content: content[:1000], lambda _: b"<!doctype html>", lambda _: b""],
    ids=["one bit", "cut off", "a page in its place", "empty"],
)
def test_a_damaged_image_is_refused(
    visits: Visits,
    site: Path,
    serve: Callable[..., str],
    change: Callable[[bytes], bytes],
) -> None:
    damaged(next(site.rglob("image.bin")), change)
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect_answer(page, "slow start")


def test_a_missing_image_is_told_in_a_quiet_word(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    for path in site.rglob("image.bin*"):
        path.unlink()
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect_answer(page, "slow start")
    assert all("404" in error for error in visits.take_errors())


def test_the_image_of_another_runtime_is_refused(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    """Words in the machine's own data differ from those of the machine that made the image."""
    (wasm,) = site.rglob("pyodide.asm.wasm")
    word = b"maximum recursion depth exceeded"
    assert word in wasm.read_bytes()
    damaged(wasm, lambda content: content.replace(word, word.upper()))
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect_answer(page, "slow start")


def test_a_known_calculation_that_comes_out_wrong_is_noticed(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    """Every way has to show that it works: here none can."""
    (path,) = site.rglob("pack.json")
    pack = json.loads(path.read_text(encoding="utf-8"))
    pack["known"]["answer"] = pack["known"]["answer"].replace("grains", "grams")
    path.write_text(json.dumps(pack), encoding="utf-8")
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect(page.locator("#setting .live-form__status")).to_contain_text(
        "The form is off, because Python could not work in this page: "
        "a known calculation came out wrong."
    )


def test_without_image_and_archive_python_starts_plainly(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    for name in ("image.bin", "compiled.zip"):
        damaged(next(site.rglob(name)), one_bit)
    page = visits.page(locale="de-DE")
    page.goto(serve(site))
    expect_answer(page, "slowest start")


def test_a_way_that_failed_is_not_tried_again_on_the_next_page(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    damaged(next(site.rglob("image.bin")), one_bit)
    page = visits.page(locale="de-DE")
    address = serve(site)
    page.goto(address)
    expect_answer(page, "slow start")
    visits.requests.clear()
    page.goto(address)
    expect_answer(page, "slow start")
    assert not any(name.startswith("image.bin") for name in requested(visits))


def test_an_image_that_never_comes_is_given_up(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    page.route("**/image.bin", lambda route: None)
    page.clock.install()
    with page.expect_request("**/image.bin"):  # from now on it is waited for
        page.goto(serve(site))
    expect(page.locator("#setting-hardness")).to_be_editable()
    with page.expect_request("**/compiled.zip"):
        page.clock.fast_forward(121_000)
    page.clock.resume()
    expect_answer(page, "slow start")


@pytest.mark.parametrize(
    ("refusal", "start"),
    [(NO_STORAGE, ""), (NO_DIGESTS, "slowest start")],
    ids=["storage", "digests, as on an address without a certificate"],
)
def test_what_a_browser_refuses_changes_no_answer(
    visits: Visits, site: Path, serve: Callable[..., str], refusal: str, start: str
) -> None:
    page = visits.page(locale="de-DE")
    page.route("**/worker.js", in_worker(refusal))
    page.goto(serve(site))
    expect_answer(page, start)


def test_without_webassembly_the_form_says_so(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    page.route("**/worker.js", in_worker(NO_WEBASSEMBLY))
    page.goto(serve(site))
    expect(page.locator("#setting .live-form__status")).to_have_text(
        "The form is off, because Python could not work in this page: WebAssembly is switched off "
        "here. The answer below stays right for the numbers named with it."
    )


def test_a_policy_without_webassembly_is_told_too(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    page.goto(serve(site, "script-src 'self'"))
    expect(page.locator("#setting .live-form__status")).to_contain_text("switched off here")
    assert all("Content Security Policy" in error for error in visits.take_errors())


def test_who_saves_data_gets_python_only_on_a_touch(
    visits: Visits, site: Path, serve: Callable[..., str]
) -> None:
    page = visits.page(locale="de-DE")
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
    )
    page.goto(serve(site))
    expect(page.locator("#setting-hardness")).to_be_editable()
    page.wait_for_timeout(500)
    assert "worker.js" not in requested(visits)
    with page.expect_request(re.compile("image")):
        page.locator("#setting-hardness").focus()
    expect_answer(page, "")


def test_one_worker_serves_every_form_of_a_page(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    expect_answer(page, "")
    page.locator("#leak-drips").fill("90")
    right = run("small-leak", {**EXAMPLES["leak"][1], "drips": "90"})
    name, value = next(iter(right["values"].items()))
    expect(page.locator(f"#leak [data-output={name}] strong")).to_have_text(value["shown"])
    assert len(page.workers) == 1
