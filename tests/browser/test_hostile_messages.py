"""Attacks by messages: on the page in a frame, and on the page around it."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.visits import Visits
from tests.waiting import until

MARKUP = '"><img src=x onerror="hits.push(1)"><script>hits.push(2)</script>{{7*7}}'


# The outer page of another origin holds a calculator and a stranger's frame, of a third origin.
def _outer(handbook: str, stranger: str) -> str:
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Outer</title>'
        f'<link rel="icon" href="data:,"><script src="{handbook}embed.js"></script>'
        '<handbook-calculator id="x" calculator="hardness-setting"></handbook-calculator>'
        f'<iframe id="stranger" src="{stranger}"></iframe>'
    )


@pytest.fixture
def beside_a_stranger(
    visits: Visits, handbook: str, serve: Callable[..., str], tmp_path: Path
) -> Page:
    """Return an outer page whose calculator is ready, with a stranger's frame beside it."""
    for name in ("stranger", "outer"):
        (tmp_path / name).mkdir()
    (tmp_path / "stranger" / "index.html").write_text("<title>Stranger</title>", "utf-8")
    (tmp_path / "outer" / "index.html").write_text(
        _outer(handbook, serve(tmp_path / "stranger")), "utf-8"
    )
    page = visits.page()
    page.add_init_script(
        "window.told = []; for (const kind of ['ready', 'result', 'problem']) "
        "document.addEventListener(`handbook-${kind}`, ({ detail }) => told.push(detail));"
    )
    page.goto(serve(tmp_path / "outer").replace("127.0.0.1", "localhost"))
    until(page, "told.length")
    return page


def test_a_stranger_s_messages_reach_neither_the_form_nor_the_outer_page(
    beside_a_stranger: Page,
) -> None:
    page = beside_a_stranger
    stranger = next(
        frame for frame in page.frames if frame.name == "" and frame.title() == "Stranger"
    )
    before = page.locator("#x iframe").evaluate("(frame) => frame.style.height")
    stranger.evaluate(
        """() => {
          const base = { version: 1, calculator: "hardness-setting" };
          const bare = [...Array(parent.frames.length).keys()].map((at) => parent.frames[at]);
          for (const frame of bare) {
            frame.postMessage({ ...base, type: "handbook-calculator/set-inputs", inputs: { hardness: "66" } }, "*");
          }
          parent.postMessage({ ...base, type: "handbook-calculator/size", height: 9 }, "*");
          parent.postMessage({ ...base, type: "handbook-calculator/result", values: { setting: 1 } }, "*");
        }"""
    )
    told = page.evaluate(
        """async () => {
          // An answer to a message sent after the stranger's: they have all been dealt with by then.
          document.getElementById("x").setInputs({ iron: "1 mg/L" });
          while (!told.some(({ inputs }) => inputs?.iron)) await new Promise((done) => setTimeout(done, 20));
          return told;
        }"""
    )
    assert [one["type"] for one in told] == [
        "handbook-calculator/ready",
        "handbook-calculator/result",
    ]
    assert told[-1]["inputs"]["hardness"] != "66"
    assert page.locator("#x iframe").evaluate("(frame) => frame.style.height") != "9px"
    assert before != "9px"


def test_another_page_in_the_calculator_s_frame_is_not_listened_to(
    beside_a_stranger: Page, visits: Visits
) -> None:
    page = beside_a_stranger
    stranger = page.locator("#stranger").get_attribute("src")
    page.locator("#x iframe").evaluate("(frame, src) => { frame.src = src; }", stranger)
    inside = page.frame_locator("#x iframe")
    inside.locator("title").wait_for(state="attached")
    page.evaluate("told.length = 0; addEventListener('message', () => (window.heard = true))")
    inside.locator("html").evaluate(
        """() => {
          const message = { version: 1, calculator: "hardness-setting", height: 9 };
          for (const kind of ["ready", "result", "size", "problem"]) {
            parent.postMessage({ ...message, type: `handbook-calculator/${kind}` }, "*");
          }
        }"""
    )
    until(page, "window.heard")
    assert page.evaluate("told") == []
    assert page.locator("#x iframe").evaluate("(frame) => frame.style.height") != "9px"


def test_a_message_cannot_change_what_objects_are(beside_a_stranger: Page) -> None:
    page = beside_a_stranger
    for inputs in ('{"__proto__": {"hit": "1"}}', '{"constructor": "1"}'):
        page.evaluate(
            """(inputs) => {
              told.length = 0;
              const frame = document.getElementById("x").shadowRoot.querySelector("iframe");
              const message = { type: "handbook-calculator/set-inputs", version: 1 };
              frame.contentWindow.postMessage({ ...message, inputs: JSON.parse(inputs) }, "*");
            }""",
            inputs,
        )
        until(page, "told.at(-1)?.sentence")
        (name,) = json.loads(inputs)
        sentence = page.evaluate("told.at(-1).sentence")
        assert sentence.startswith(f"There is no input “{name}”; there are hardness, iron, ")
        inside = page.frame_locator("#x iframe").locator("html")
        assert inside.evaluate("() => ({}).hit ?? null") is None


def test_markup_in_a_message_stays_text(beside_a_stranger: Page) -> None:
    page = beside_a_stranger
    page.evaluate("(text) => document.getElementById('x').setInputs({ hardness: text })", MARKUP)
    inside = page.frame_locator("#x iframe")
    expect(inside.locator("[data-input=hardness] input")).to_have_value(MARKUP)
    expect(inside.locator("[data-input=hardness] .live-form__problem")).to_contain_text("<img")
    until(page, "told.at(-1).problems")
    assert page.evaluate("told.at(-1).inputs.hardness") == MARKUP
    assert inside.locator("img[src=x], main script").count() == 0
