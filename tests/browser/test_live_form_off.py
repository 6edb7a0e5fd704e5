"""A form whose Python cannot work says so in one sentence and leaves the example readable."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from calculators import run
from tests.browser.modules import MODULES
from tests.browser.visits import EXAMPLES, Visits

BUILT = run(*EXAMPLES["setting"])
REASSURANCE = "The answer below stays right for the numbers named with it."

# Lets a test end the page's worker behind the page's back, as a phone short of memory does.
KEEP_WORKERS = """
  window.workers = [];
  const Original = window.Worker;
  window.Worker = class extends Original {
    constructor(...given) {
      super(...given);
      window.workers.push(this);
    }
  };
"""


def expect_the_example(page: Page) -> None:
    """Check that the computed example stands in the page, and for which numbers it is."""
    form = page.locator("#setting")
    expect(form.locator(".live-form__for")).to_contain_text("Hardness of the raw water: 18 gpg")
    for name, value in BUILT["values"].items():
        expect(form.locator(f"[data-output={name}] strong")).to_have_text(value["shown"])
    expect(form.locator("li strong").last).to_contain_text(BUILT["workings"][-1]["result"])


def test_without_scripts_the_example_is_complete_and_the_form_is_off(
    visits: Visits, bare: str
) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(bare)
    expect_the_example(page)
    expect(page.locator("#setting .live-form__status")).to_contain_text("The form is off")
    expect(page.locator("#setting-hardness")).not_to_be_editable()
    expect(page.locator("#leak-measured")).to_be_disabled()
    expect(page.get_by_role("button")).to_have_count(0)


def test_a_page_opened_as_a_file_says_why_its_form_is_off(
    visits: Visits, bare_folder: Path
) -> None:
    page = visits.page()
    page.goto((bare_folder / "index.html").as_uri())
    expect_the_example(page)
    expect(page.locator("#setting .live-form__status")).to_contain_text(
        "the page was opened as a file and not from a web address"
    )
    expect(page.locator("#setting-hardness")).not_to_be_editable()
    assert all("CORS" in error or "Failed to load" in error for error in visits.take_errors())


@pytest.fixture
def broken(
    bare_folder: Path, tmp_path: Path, serve: Callable[..., str]
) -> Callable[[str], tuple[str, Path]]:
    """Serve a copy of the page without one file; gives the address and where the file was."""

    def start(name: str) -> tuple[str, Path]:
        folder = tmp_path / "site"
        shutil.copytree(bare_folder, folder)
        (missing,) = folder.rglob(name)
        missing.unlink()
        return serve(folder), missing

    return start


@pytest.mark.parametrize(
    ("name", "reason"),
    [
        ("pack.json", "the file pack.json is not there (404)"),
        ("pyodide.asm.mjs", "the file pyodide.asm.mjs is not there (404)"),
        ("pyodide.asm.wasm", "the file pyodide.asm.wasm is not there (404)"),
        ("worker.js", "the script that runs it could not be loaded"),
    ],
)
def test_with_a_missing_file_one_sentence_says_why_and_the_example_stays(
    visits: Visits, broken: Callable[[str], tuple[str, Path]], name: str, reason: str
) -> None:
    address, _ = broken(name)
    page = visits.page()
    page.goto(address)
    status = page.locator("#setting .live-form__status")
    expect(status).to_contain_text("The form is off, because Python could not work in this page: ")
    expect(status).to_contain_text(f"{reason}. {REASSURANCE}")
    expect_the_example(page)
    visits.take_errors()


def test_try_again_answers_once_the_cause_is_gone_and_nothing_typed_is_lost(
    visits: Visits,
    broken: Callable[[str], tuple[str, Path]],
    bare_folder: Path,
) -> None:
    address, missing = broken("pyodide.asm.wasm")
    page = visits.page()
    page.goto(address)
    page.locator("#setting-hardness").fill("27 gpg")
    expect(page.locator("#setting .live-form__status")).to_contain_text("The form is off")
    expect(page.locator("#setting .live-form__for")).to_contain_text("Still for the earlier")
    expect_the_example(page)
    shutil.copy(next(bare_folder.rglob(missing.name)), missing)
    page.locator("#setting").get_by_role("button", name="Try again").click()
    texts = {**EXAMPLES["setting"][1], "hardness": "27 gpg"}
    expect(page.locator("#setting [data-output=setting] strong")).to_have_text(
        run("hardness-setting", texts)["values"]["setting"]["shown"]
    )
    expect(page.locator("#setting-hardness")).to_have_value("27 gpg")
    expect(page.locator("#setting").get_by_role("button", name="Try again")).to_be_hidden()
    visits.take_errors()


def test_a_worker_that_dies_in_silence_is_replaced(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.add_init_script(KEEP_WORKERS)
    page.clock.install()
    page.goto(bare)
    form = page.locator("#setting")
    page.locator("#setting-hardness").fill("22")
    page.clock.run_for(200)
    first = run("hardness-setting", {**EXAMPLES["setting"][1], "hardness": "22"})
    expect(form.locator("[data-output=setting] strong")).to_have_text(
        first["values"]["setting"]["shown"]
    )
    page.evaluate("window.workers[0].terminate()")
    page.locator("#setting-hardness").fill("44")
    page.clock.run_for(200)
    page.clock.fast_forward(11_000)
    expect(form.locator(".live-form__start")).to_have_text("slow start")
    second = run("hardness-setting", {**EXAMPLES["setting"][1], "hardness": "44"})
    expect(form.locator("[data-output=setting] strong")).to_have_text(
        second["values"]["setting"]["shown"]
    )
    assert page.evaluate("window.workers.length") == 2


def test_a_start_that_never_ends_is_given_up_in_words(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.add_init_script("Worker.prototype.postMessage = () => {};")
    page.clock.install()
    page.goto(bare)
    expect(page.locator("#setting-hardness")).to_be_editable()
    for _ in ("image", "compiled", "plain"):
        page.clock.fast_forward(121_000)
    expect(page.locator("#setting .live-form__status")).to_contain_text(
        "it took longer than 120 seconds"
    )
    expect_the_example(page)


def test_an_unknown_message_is_refused_on_both_sides(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    said = page.evaluate(
        """async (modules) => {
          const { messageToPage, messageToWorker } = await import(`${modules}messages.js`);
          const sentences = [];
          for (const [read, message] of [
            [messageToWorker, { type: "answer", id: 1, answer: "{}" }],
            [messageToPage, { type: "toString", id: 1 }],
            [messageToPage, { type: "ready" }],
            [messageToWorker, { type: "ask", id: 1, request: null }],
          ]) {
            try { read(message); } catch (problem) { sentences.push(problem.message); }
          }
          return sentences;
        }""",
        f"/{MODULES}",
    )
    assert said == [
        "There is no message “answer”; there are start, ask.",
        "There is no message “toString”; there are progress, ready, answer, failed.",
        "The message “ready” lacks its id.",
        "The message “ask” lacks its request.",
    ]
    died = page.evaluate(
        """() => new Promise((resolve) => {
          const worker = new Worker("worker.js", { type: "module" });
          worker.addEventListener("error", (event) => { event.preventDefault(); resolve(event.message); });
          worker.postMessage({ type: "stop", id: 1 });
        })"""
    )
    assert "There is no message “stop”" in died
