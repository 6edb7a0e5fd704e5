"""Calculators in the pages of another site: another host and port, in a real browser."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import FrameLocator, Page, expect

from calculators import CALCULATORS, run
from tests.browser.visits import Visits
from tests.waiting import until

PHONE = {"width": 390, "height": 844}
NAMESPACE = "handbook-calculator/"
SETTING = ("hardness-setting", {"hardness": "18 gpg", "iron": "0.3 mg/L"})

# Keeps what the element tells by events, and what a frame says, as the author of a page would.
REMEMBER = """
  window.told = [];
  for (const kind of ["ready", "result", "problem"]) {
    document.addEventListener(`handbook-${kind}`, (event) => {
      window.told.push({ kind, from: event.target.id, ...event.detail });
    });
  }
  window.addEventListener("message", (event) => (window.messages ??= []).push(event.data));
"""


@pytest.fixture
def outer(serve: Callable[..., str], handbook: str, tmp_path: Path) -> Callable[[str], str]:
    """Return a function that puts HTML into a page of another origin and gives its address."""

    def page(body: str) -> str:
        (tmp_path / "index.html").write_text(
            '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Another site</title>'
            '<meta name="viewport" content="width=device-width"><link rel="icon" href="data:,">'
            f"<script>{REMEMBER}</script></head><body>{body}</body></html>",
            encoding="utf-8",
        )
        return serve(tmp_path).replace("127.0.0.1", "localhost")

    return page


def element(handbook: str, name: str, more: str = "") -> str:
    """Return the text to copy, as a calculator's page shows it, with an id to find it by."""
    return (
        f'<script src="{handbook}embed.js" async></script>'
        f'<handbook-calculator id="{name}" calculator="{name}" {more}>'
        f'<a href="{handbook}work-out/{name}/">{CALCULATORS[name].title}</a></handbook-calculator>'
    )


def frame(page: Page, name: str) -> FrameLocator:
    return page.frame_locator(f"#{name} iframe")


def told(page: Page, kind: str, name: str = "hardness-setting") -> dict[str, Any]:
    """Wait until the element has told of something; return the last of its kind."""
    found = (
        "([kind, from]) => window.told.findLast((one) => one.kind === kind && one.from === from)"
    )
    return until(page, found, [kind, name])


def send(page: Page, message: object, name: str = "hardness-setting") -> None:
    """Post a message to the page in the frame."""
    page.evaluate(
        """([name, message]) => {
          const host = document.getElementById(name);
          (host.shadowRoot ?? host).querySelector("iframe").contentWindow.postMessage(message, "*");
        }""",
        [name, message],
    )


def set_inputs(inputs: object) -> dict[str, object]:
    return {"type": f"{NAMESPACE}set-inputs", "version": 1, "inputs": inputs}


def test_the_text_to_copy_works_on_another_site(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    page.goto(f"{handbook}work-out/hardness-setting/")
    page.get_by_text("Put this calculator on another page").click()
    text = page.locator("details.embedding code").first.inner_text()
    assert text == (
        f'<script src="{handbook}embed.js" async></script>\n'
        '<handbook-calculator calculator="hardness-setting">\n'
        f'  <a href="{handbook}work-out/hardness-setting/">'
        "Hardness setting with iron and manganese</a>\n"
        "</handbook-calculator>\n"
    )
    page.goto(outer(text))
    inside = page.frame_locator("handbook-calculator iframe")
    inside.get_by_label("Hardness of the raw water").fill("31 gpg")
    expect(inside.locator("[data-output=setting] strong")).to_have_text(
        run("hardness-setting", {**SETTING[1], "hardness": "31 gpg"})["values"]["setting"]["shown"]
    )


def test_the_page_copies_the_text_by_a_button(visits: Visits, handbook: str) -> None:
    page = visits.page(permissions=["clipboard-read", "clipboard-write"])
    page.goto(f"{handbook}work-out/hardness-setting/")
    page.get_by_text("Put this calculator on another page").click()
    page.locator("details.embedding").get_by_role("button", name="Copy to clipboard").click()
    expect(page.get_by_text("Copied to clipboard")).to_be_visible()
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied.startswith(f'<script src="{handbook}embed.js" async></script>')


def test_without_scripts_the_text_to_copy_says_what_to_put_in(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(f"{handbook}work-out/hardness-setting/")
    page.get_by_text("Put this calculator on another page").click()
    expect(page.locator("details.embedding code").first).to_contain_text(
        '<script src="https://address-of-this-handbook.example/embed.js" async></script>'
    )


def test_inputs_are_preset_and_each_result_is_told(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    page.goto(outer(element(handbook, "hardness-setting", 'input-hardness="25 gpg"')))
    expected = run("hardness-setting", {**SETTING[1], "hardness": "25 gpg"})
    result = told(page, "result")
    assert result["version"] == 1
    assert result["type"] == "handbook-calculator/result"
    assert result["calculator"] == "hardness-setting"
    assert result["inputs"]["hardness"] == "25 gpg"
    assert result["values"] == {
        name: {part: value[part] for part in ("label", "number", "unit", "shown")}
        for name, value in expected["values"].items()
    }
    assert (result["warnings"], result["problems"]) == (expected["warnings"], {})
    assert told(page, "ready")["inputs"] == [
        one.name for one in CALCULATORS["hardness-setting"].inputs
    ]
    link = frame(page, "hardness-setting").get_by_role("link", name="Open in the handbook")
    expect(link).to_have_attribute("target", "_top")
    link.click()
    expect(page).to_have_url(re.compile(rf"^{handbook}work-out/hardness-setting/\?"))
    expect(page.get_by_label("Hardness of the raw water")).to_have_value("25 gpg")


def test_the_outer_page_sets_inputs_and_is_told_what_is_wrong_with_them(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    page.goto(outer(element(handbook, "hardness-setting")))
    page.evaluate(
        """async () => {
          await customElements.whenDefined("handbook-calculator");
          document.getElementById("hardness-setting").setInputs({ hardness: "40" });
        }"""
    )
    assert told(page, "result")["inputs"]["hardness"] == "40"
    expect(frame(page, "hardness-setting").get_by_label("Hardness of the raw")).to_have_value("40")
    page.evaluate("document.getElementById('hardness-setting').setInputs({ hardness: '5 psi' })")
    until(page, "Object.keys(window.told.at(-1).problems ?? {}).length")
    result = told(page, "result")
    problem = run("hardness-setting", {"hardness": "5 psi"})["problems"]["hardness"]
    assert result["problems"] == {"hardness": problem}
    assert result["values"] == {}


def test_the_frame_is_as_high_as_its_content_and_has_a_name(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(outer(element(handbook, "resin-capacity")))
    inside = frame(page, "resin-capacity")
    expect(inside.get_by_role("heading", level=1)).to_have_text(
        "Capacity of the resin for a salt dose"
    )
    expect(page.locator("#resin-capacity iframe")).to_have_attribute(
        "title", "Capacity of the resin for a salt dose"
    )
    heights = """() => {
      const frame = document.querySelector("#resin-capacity").shadowRoot.querySelector("iframe");
      const size = (window.messages ?? []).findLast(({ type }) => type.endsWith("/size"));
      return size && frame.offsetHeight === size.height && frame.offsetHeight;
    }"""
    narrow = until(page, heights)
    assert inside.locator("html").evaluate("(page) => page.scrollHeight") == narrow
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    page.set_viewport_size({"width": 1000, "height": 900})
    until(page, f"() => ({heights})() && ({heights})() < {narrow}")


def test_two_calculators_of_one_page_tell_apart(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    both = element(handbook, "hardness-setting") + element(handbook, "resin-capacity")
    page.goto(outer(both))
    told(page, "ready", "hardness-setting")
    page.locator("#resin-capacity").scroll_into_view_if_needed()
    told(page, "ready", "resin-capacity")
    page.evaluate("document.getElementById('resin-capacity').setInputs({ salt: '15 lb' })")
    assert told(page, "result", "resin-capacity")["inputs"]["salt"] == "15 lb"
    assert page.evaluate("window.told.filter(({ kind }) => kind === 'result').length") == 1
    expect(frame(page, "hardness-setting").get_by_label("Hardness of the raw")).to_have_value(
        re.compile("^18")
    )


#: What the frame is allowed in which a learning system shows a trainer's page.
USUAL_PERMISSIONS = "allow-scripts allow-same-origin allow-forms allow-popups"


def in_a_frame(body: str, permissions: str) -> str:
    """Return a page of a learning system that shows a trainer's page in a sandboxed frame."""
    inner = f'<meta charset="utf-8"><meta name="viewport" content="width=device-width">{body}'
    return (
        f'<h1>Unit 3</h1><iframe id="unit" sandbox="{permissions}" title="Unit 3" '
        f'style="width: 100%; height: 40rem" srcdoc="{html.escape(inner)}"></iframe>'
    )


@pytest.mark.parametrize("way", ["element", "frame"])
def test_in_a_learning_system_s_sandboxed_frame_a_calculator_answers(
    visits: Visits, handbook: str, outer: Callable[[str], str], way: str
) -> None:
    own = element(handbook, "hardness-setting", 'input-hardness="25 gpg"')
    if way == "frame":  # without our script, as where a system takes scripts out of what is typed
        address = f"{handbook}embed/hardness-setting/?hardness-setting.hardness=25+gpg"
        own = f'<iframe src="{address}" title="Hardness setting"></iframe>'
    page = visits.page()
    page.goto(outer(in_a_frame(own, USUAL_PERMISSIONS)))
    inside = page.frame_locator("#unit").frame_locator("iframe")
    shown = inside.locator("[data-output=setting] strong")
    answer = run("hardness-setting", {**SETTING[1], "hardness": "25 gpg"})["values"]["setting"]
    expect(shown).to_have_text(answer["shown"])
    inside.get_by_label("Hardness of the raw water").fill("31 gpg")
    answer = run("hardness-setting", {**SETTING[1], "hardness": "31 gpg"})["values"]["setting"]
    expect(shown).to_have_text(answer["shown"])


def test_in_a_frame_that_is_cut_off_from_its_own_host_the_example_and_a_sentence_stand(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    # The words stand before the browser refuses the script, and it says so twice.
    with (
        page.expect_console_message(
            lambda told: "from origin 'null' has been blocked" in told.text
        ),
        page.expect_console_message(lambda told: "net::ERR_FAILED" in told.text),
    ):
        page.goto(outer(in_a_frame(element(handbook, "hardness-setting"), "allow-scripts")))
    inside = page.frame_locator("#unit").frame_locator("iframe")
    expect(inside.locator(".live-form__status")).to_contain_text("The form is off")
    expect(inside.locator("[data-output=setting] strong")).to_be_visible()
    expect(inside.get_by_role("link", name="Open in the handbook")).to_be_visible()
    assert len(visits.take_errors()) == 2


def test_a_wrong_name_is_said_with_the_nearest_ones_and_the_link_stays(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    name = "hardnes-<b>seting"
    page.goto(
        outer(
            f'<script src="{handbook}embed.js" async></script><handbook-calculator id="x" '
            f'calculator="{name}"><a href="{handbook}work-out/">All calculators</a>'
            "</handbook-calculator>"
        )
    )
    sentence = page.locator("#x p")
    expect(sentence).to_contain_text(
        "The handbook has no calculator “hardnes-<b>seting”. The nearest: “hardness-setting”"
    )
    expect(page.get_by_role("link", name="All calculators")).to_be_visible()
    expect(page.locator("#x iframe")).to_have_count(0)


def test_without_scripts_a_link_stands_in_the_calculator_s_place(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(outer(element(handbook, "hardness-setting")))
    link = page.get_by_role("link", name="Hardness setting with iron and manganese")
    expect(link).to_have_attribute("href", f"{handbook}work-out/hardness-setting/")


WRONG_MESSAGES = [
    (
        {**set_inputs({"hardness": "1"}), "version": 2},
        "This page understands version 1 of the messages, not “2”.",
    ),
    (
        {"type": f"{NAMESPACE}eval", "version": 1},
        "There is no message “handbook-calculator/eval”; there is “handbook-calculator/set-inputs”.",
    ),
    (
        {"type": f"{NAMESPACE}set-inputs", "version": 1},
        "The message lacks its inputs: an object with a text for each input's name.",
    ),
    (
        set_inputs(["18"]),
        "The message lacks its inputs: an object with a text for each input's name.",
    ),
    (
        set_inputs({"hardness": "1", "hardnes": "<img src=x onerror=alert(1)>"}),
        (
            "There is no input “hardnes”; there are hardness, iron, manganese, iron_allowance, "
            "manganese_allowance, setting_step."
        ),
    ),
    (set_inputs({"iron": "1", "hardness": 18}), 'The input “hardness” takes a text, such as "18 gpg".'),
    (
        set_inputs({"iron": "1", "hardness": "9" * 201}),
        "The text for the input “hardness” has more than 200 characters.",
    ),
]  # fmt: skip


def test_a_wrong_message_is_answered_in_words_and_changes_nothing(
    visits: Visits, handbook: str, outer: Callable[[str], str]
) -> None:
    page = visits.page()
    page.goto(outer(element(handbook, "hardness-setting")))
    field = frame(page, "hardness-setting").get_by_label("Hardness of the raw water")
    told(page, "ready")
    for number, (message, sentence) in enumerate(WRONG_MESSAGES, 1):
        hardness = f"{number + 32} gpg"
        field.fill(hardness)
        send(page, message)
        problems = until(
            page,
            """(count) => {
              const found = window.told.filter(({ kind }) => kind === "problem");
              return found.length === count && found.map((one) => one.sentence);
            }""",
            number,
        )
        assert problems[-1] == sentence
        expect(field).to_have_value(hardness)
        send(page, set_inputs({"iron": f"{number} mg/L"}))
        until(page, "(iron) => window.told.at(-1).inputs?.iron === iron", f"{number} mg/L")
        assert told(page, "result")["inputs"]["hardness"] == hardness


def test_a_bare_page_fits_the_narrowest_phone_and_follows_the_reader_s_scheme(
    visits: Visits, handbook: str
) -> None:
    grounds = {}
    for scheme in ("light", "dark"):
        page = visits.page(viewport={"width": 320, "height": 600}, color_scheme=scheme)
        for name in ("hardness-setting", "resin-capacity", "regeneration-cost"):
            page.goto(f"{handbook}embed/{name}/")
            assert page.evaluate("document.documentElement.scrollWidth") <= 320
        grounds[scheme] = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert grounds == {"light": "rgb(252, 251, 247)", "dark": "rgb(16, 28, 27)"}


def test_a_bare_page_is_complete_without_scripts(visits: Visits, handbook: str) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(f"{handbook}embed/resin-capacity/")
    expect(page.locator("[data-output=capacity] strong")).to_be_visible()
    expect(page.locator(".live-form__cautions")).to_be_visible()
    expect(page.locator(".live-form__picture svg")).to_be_visible()
    expect(page.locator(".live-form__status")).to_contain_text("The form is off")
    expect(page.get_by_role("link", name="Open in the handbook")).to_be_visible()
