"""Attacks on the pages, in a real browser: what is injected does not run, and text stays text."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Page, Route, expect

from calculators import run
from tests.browser.visits import Visits

PAGE = "work-out/hardness-setting/"
BARE = "embed/hardness-setting/"
FORM = "#hardness-setting"

# What a hostile text tries: whatever of it runs leaves its mark in `window.hits`.
MARKUP = '"><img src=x onerror="hits.push(1)"><script>hits.push(2)</script>{{7*7}}'

WATCH = """
  window.hits = [];
  window.blocked = [];
  document.addEventListener("securitypolicyviolation", (event) => blocked.push(event.effectiveDirective));
  window.untilBlocked = async (count) => {
    while (blocked.length < count) await new Promise((done) => setTimeout(done, 20));
    return blocked.splice(0);
  };
  // An attack may be blocked twice, and the second time be told only while the next one runs.
  window.untilBlockedBy = async (directive) => {
    while (!blocked.includes(directive)) await new Promise((done) => setTimeout(done, 20));
    return blocked.splice(0);
  };
  window.made = (tag, properties) => Object.assign(document.createElement(tag), properties);
  window.add = (html) => document.body.insertAdjacentHTML("beforeend", html);
"""

# Each attack begins in a task of its own: what a test tool evaluates may be free of the policy.
ATTACKS = {
    "an inline script": (
        "script-src-elem",
        "document.body.append(made('script', { textContent: 'hits.push(1)' }))",
    ),
    "an event handler": (
        "script-src-attr",
        "add('<p onclick=\"hits.push(1)\">'); document.querySelector('body > p').click()",
    ),
    "a javascript: link": (
        "script-src-elem",
        "made('a', { href: 'javascript:hits.push(1)' }).click()",
    ),
    "a script of another host": (
        "script-src-elem",
        "document.body.append(made('script', { src: 'http://localhost:9/a.js' }))",
    ),
    "a script from data": (
        "script-src-elem",
        "document.body.append(made('script', { src: 'data:,hits.push(1)' }))",
    ),
    "eval": ("script-src", "eval('hits.push(1)')"),
    "new Function": ("script-src", "new Function('hits.push(1)')()"),
    "a text for setTimeout": ("script-src", "setTimeout('hits.push(1)')"),
    "a frame": ("frame-src", "add('<iframe src=\"http://localhost:9/\"></iframe>')"),
    "a worker from a blob": ("worker-src", "new Worker(URL.createObjectURL(new Blob(['1'])))"),
    "a request to another host": (
        "connect-src",
        "fetch('http://localhost:9/').catch(() => {})",
    ),
    "an image of another host": ("img-src", "new Image().src = 'http://localhost:9/a.png'"),
    "a style": ("style-src-elem", "add('<style>h1 { display: none }</style>')"),
    "a style attribute": ("style-src-attr", "add('<p style=\"position: fixed\">')"),
    "another base": ("base-uri", "add('<base href=\"http://localhost:9/\">')"),
    "an embedded object": ("object-src", "add('<object data=\"/404.html\"></object>')"),
}


@pytest.fixture(scope="module")
def plain_host(serve: Callable[..., str], handbook_folder: Path) -> str:
    """Return the address of the handbook at a host that sends no headers."""
    return serve(handbook_folder)


def hits(page: Page) -> list[object]:
    return page.evaluate("window.hits")


def expect_the_form_answers(page: Page, hardness: str = "29 gpg") -> None:
    field = page.locator(f"{FORM} [data-input=hardness] input")
    field.fill(hardness)
    shown = run("hardness-setting", {"hardness": hardness, "iron": "0.3 mg/L"})["values"]
    expect(page.locator(f"{FORM} [data-output=setting] strong")).to_have_text(
        shown["setting"]["shown"]
    )


@pytest.mark.parametrize("address", [PAGE, BARE])
def test_the_policy_in_the_page_blocks_what_is_brought_into_it(
    visits: Visits, plain_host: str, address: str
) -> None:
    page = visits.page()
    page.add_init_script(WATCH)
    page.goto(plain_host + address)
    assert page.evaluate("blocked") == []
    told = set()
    for name, (directive, attack) in ATTACKS.items():
        page.evaluate(f"() => {{ setTimeout(() => {{ {attack} }}); }}")
        told |= set(page.evaluate("(directive) => untilBlockedBy(directive)", directive))
        assert hits(page) == [], name
    assert told == {directive for directive, _ in ATTACKS.values()}
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    expect_the_form_answers(page)
    assert visits.take_errors() != []


@pytest.mark.parametrize("address", [PAGE, BARE])
def test_no_form_is_sent_anywhere(visits: Visits, plain_host: str, address: str) -> None:
    page = visits.page()
    page.add_init_script(WATCH)
    page.goto(plain_host + address)
    blocked = page.evaluate(
        """() => {
          add('<form action="http://localhost:9/"></form>');
          document.querySelector("body > form").submit();
          return untilBlocked(1);
        }"""
    )
    assert blocked == ["form-action"]
    assert len(visits.take_errors()) == 1


@pytest.mark.parametrize("address", [PAGE, BARE, "404.html"])
def test_a_script_in_a_page_s_text_does_not_run(
    visits: Visits, plain_host: str, address: str
) -> None:
    def inject(route: Route) -> None:
        text = route.fetch().text()
        assert text.count("</h1>") == 1
        attack = '<script>hits.push(1)</script><p onclick="hits.push(2)">Press</p>'
        route.fulfill(body=text.replace("</h1>", f"</h1>{attack}"), content_type="text/html")

    page = visits.page()
    page.add_init_script(WATCH)
    page.route(plain_host + address, inject)
    page.goto(plain_host + address)
    page.get_by_text("Press", exact=True).click()
    assert sorted(page.evaluate("untilBlocked(2)")) == ["script-src-attr", "script-src-elem"]
    assert hits(page) == []
    assert len(visits.take_errors()) == 2


@pytest.mark.parametrize("address", [PAGE, BARE])
@pytest.mark.parametrize(
    "text", [MARKUP, "javascript:hits.push(1)", "9" * 15_000, "\u202e18 gpg\u0000"]
)
def test_hostile_text_in_a_link_stays_text(
    visits: Visits, handbook: str, address: str, text: str
) -> None:
    page = visits.page()
    page.add_init_script(WATCH)
    query = {f"hardness-setting.{name}": text for name in ("hardness", "__proto__", "constructor")}
    page.goto(f"{handbook}{address}?{urlencode(query)}")
    expect(page.locator(f"{FORM} [aria-invalid=true]")).to_have_count(1)
    expect(page.locator(f"{FORM} .live-form__problem:visible")).to_have_count(1)
    assert page.locator(f"{FORM} :is(img, script, iframe)").count() == 0
    assert (hits(page), page.evaluate("blocked")) == ([], [])
    expect_the_form_answers(page)


@pytest.mark.parametrize(
    "stored",
    [
        {"color": {"media": MARKUP, "scheme": MARKUP, "primary": MARKUP, "accent": MARKUP}},
        {"color": {"media": "", "scheme": "slate"}, "index": MARKUP},
        {"__proto__": {"color": MARKUP}, "constructor": MARKUP},
    ],
)
def test_hostile_stored_data_stays_text(visits: Visits, handbook: str, stored: object) -> None:
    page = visits.page(viewport={"width": 1280, "height": 900})
    page.add_init_script(WATCH)
    page.goto(handbook + PAGE)
    runtime = page.evaluate(
        "new URL(document.querySelector('.live-form').dataset.runtime, location.href).href"
    )
    page.evaluate(
        """([palette, key, text]) => {
          localStorage.setItem("/.__palette", palette);
          sessionStorage.setItem(key, text);
        }""",
        [json.dumps(stored), f"way to start {runtime}", MARKUP],
    )
    page.reload()
    expect_the_form_answers(page)
    assert (hits(page), page.evaluate("blocked")) == ([], [])
    assert page.locator("body img[src=x]").count() == 0
    # The theme's palette stumbles over a choice that it does not have; nothing else does.
    said = {error.removeprefix("TypeError: ").split(" (")[0] for error in visits.take_errors()}
    assert said <= {"Cannot read properties of undefined"}


def test_the_theme_s_own_scripts_work_under_the_policy(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport={"width": 1280, "height": 900}, color_scheme="light")
    page.add_init_script(WATCH)
    page.goto(handbook + PAGE)
    body = page.locator("body")
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    page.get_by_title("Switch to dark").click()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    page.reload()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    box = page.get_by_role("textbox", name="Search")
    box.click()
    box.press_sequentially("salt bridge")
    # What the first letters found may stand there yet: Enter leads to what is first.
    first = page.locator(".md-search-result__item").first
    expect(first.get_by_role("link").first).to_contain_text("Salt bridge")
    box.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Salt bridge")
    assert page.evaluate("blocked") == []


def test_pages_changed_without_loading_keep_to_the_first_page_s_policy(
    visits: Visits, instant: str
) -> None:
    page = visits.page(viewport={"width": 1280, "height": 900})
    page.add_init_script(WATCH)
    page.goto(instant)
    page.evaluate("window.isTheSame = true")
    page.get_by_role("link", name="Work it out").first.click()
    page.locator("article").get_by_role("link", name="Hardness setting with iron").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Hardness setting with iron")
    field = page.locator(f"{FORM} [data-input=hardness] input")
    field.fill("400 mg/L")
    expect(page.locator(f"{FORM} .live-form__for")).to_contain_text("400 mg/L")
    page.get_by_title("Switch to dark").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    assert page.evaluate("window.isTheSame")
    assert page.evaluate("blocked") == []


def test_only_bare_pages_can_be_framed(
    visits: Visits, handbook: str, serve: Callable[..., str], tmp_path: Path
) -> None:
    addresses = [PAGE, "", "404.html", BARE]
    frames = "".join(f'<iframe src="{handbook}{address}"></iframe>' for address in addresses)
    (tmp_path / "index.html").write_text(f'<link rel="icon" href="data:,">{frames}', "utf-8")
    page = visits.page()
    page.goto(serve(tmp_path).replace("127.0.0.1", "localhost"))
    page.frame_locator("iframe >> nth=3").get_by_role("heading", level=1).wait_for()
    refused = [frame.url for frame in page.frames[1:4]]
    assert refused == ["chrome-error://chromewebdata/"] * 3
    errors = visits.take_errors()
    assert len(errors) == 3
    assert all("frame-ancestors 'none'" in error for error in errors)
