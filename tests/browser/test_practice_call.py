"""A practice call in a real browser, as learners work through it."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.knowledge_data import knowledge_data
from calculators.diagnosis import Knowledge
from calculators.practice.calls import Calls
from tests.browser.conftest import ROOT
from tests.browser.modules import BLANK, MODULES
from tests.browser.visits import Visits

ADDRESS = "practise/a-call/"
PHONE = {"width": 390, "height": 844}
WORDS = (
    "I found the salt stuck together above the water and broke it up. Please look at it every "
    "month, and call me if the water is hard again."
)


@pytest.fixture(scope="session")
def calls() -> Calls:
    """Return the shipped handbook's practice calls, as Python here makes them."""
    data = knowledge_data(load_handbook(ROOT / "docs_src", ROOT))
    return Calls(Knowledge(json.loads(json.dumps(data))))


def code_of(calls: Calls, fault: str) -> str:
    """Return the code of a call that hides a fault alone, without a danger."""
    for seed in range(100):
        code = calls.new("", fault, seed)["code"]
        moves = [{"do": "give-up"}]
        told = calls.debrief(code, moves, "us", [])
        if [one["fault"] for one in told["faults"]] == [fault] and not told["danger"]:
            return code
    raise AssertionError(f"No code hides {fault} alone.")


def opened(visits: Visits, handbook: str, query: str = "", **options: Any) -> Page:
    """Return the page where nothing is kept, on a phone."""
    page = visits.page(**options)
    page.set_viewport_size(PHONE)
    page.goto(f"{handbook}{BLANK}")
    page.evaluate("localStorage.removeItem('handbook-practice-call')")
    page.evaluate("localStorage.removeItem('handbook-record')")
    page.goto(f"{handbook}{ADDRESS}{query}")
    return page


def part(page: Page, name: str) -> Locator:
    """Return a part of the call."""
    return page.locator(f".practice-call [data-part={name}]").first


def status(page: Page) -> Locator:
    """Return what the bar says."""
    return page.locator(".practice-call .call__bar [data-part=status]")


def begin(page: Page, code: str) -> None:
    """Open a call by its code."""
    page.get_by_label("Or a code, such as one from your trainer").fill(code.lower())
    page.get_by_role("button", name="Open this call").click()
    expect(part(page, "code")).to_have_text(code)


def make(page: Page, check: str) -> Locator:
    """Make a check, and return its block."""
    block = page.locator(f".practice-call details[data-check={check}]")
    block.locator("> summary").click()
    block.get_by_role("button", name="Make this check").click()
    expect(block.locator("> summary [data-part=answer]")).not_to_be_empty()
    return block


def kept(page: Page, key: str) -> Any:
    """Return what the browser keeps."""
    return json.loads(page.evaluate("(key) => localStorage.getItem(key)", key))


def close(page: Page, cause: str, sure: str, proof: str) -> None:
    """Name a cause, repair it, prove it and tell the customer."""
    page.get_by_label("The cause", exact=True).select_option(cause)
    page.get_by_label("How sure you are, in percent").fill(sure)
    page.get_by_role("button", name="Name it").click()
    page.get_by_label("The repair as the handbook has it for").select_option(cause)
    page.get_by_role("button", name="Repair", exact=True).click()
    page.get_by_label("The closing test").select_option(proof)
    page.get_by_role("button", name="Make the closing test").click()
    expect(part(page, "proofs").locator("> li")).to_have_count(1)
    page.get_by_label("What you found, what you did").fill(WORDS)
    page.get_by_role("button", name="Tell it, and end the call").click()


def test_a_call_is_worked_through_with_the_keyboard_alone(
    visits: Visits, handbook: str, calls: Calls
) -> None:
    code = code_of(calls, "out-of-salt")
    page = opened(visits, handbook)

    def press(target: Locator, *keys: str) -> None:
        target.focus()
        for key in keys:
            page.keyboard.press(key)

    press(page.get_by_label("Or a code, such as one from your trainer"))
    page.keyboard.type(code)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(part(page, "code")).to_have_text(code)
    expect(part(page, "customer")).to_be_focused()
    block = page.locator(".practice-call details[data-check=salt-height]")
    press(block.locator("> summary"), "Enter")
    press(block.get_by_role("button", name="Make this check"), "Enter")
    expect(status(page)).to_contain_text("0.2 min on the clock. Salt height against the water:")
    expect(block.locator("> summary")).to_be_focused()
    press(page.get_by_role("button", name="Name the cause"), "Enter")
    expect(page.locator("#name-the-cause")).to_be_focused()
    press(page.get_by_label("The cause", exact=True))
    page.keyboard.type("Out of salt")
    press(page.get_by_label("How sure you are, in percent"))
    page.keyboard.type("90 %")
    press(page.get_by_role("button", name="Name it"), "Space")
    expect(part(page, "named")).to_have_text("Out of salt, 90 % sure")
    press(page.get_by_label("The repair as the handbook has it for"))
    page.keyboard.type("Out of salt")
    press(page.get_by_role("button", name="Repair", exact=True), "Enter")
    expect(part(page, "remedies")).to_contain_text("Out of salt")
    press(page.get_by_label("The closing test"))
    page.keyboard.type("Salt height")
    press(page.get_by_role("button", name="Make the closing test"), "Enter")
    expect(part(page, "proofs").locator("> li")).to_contain_text("Salt height")
    press(page.get_by_label("What you found, what you did"))
    page.keyboard.insert_text(WORDS)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    heading = part(page, "debrief").get_by_role("heading", level=2)
    expect(heading).to_be_visible()
    moves = kept_moves(page)
    told = calls.debrief(code, moves, "us", [])
    assert told["score"] >= 90
    expect(heading).to_have_text(f"The debrief: {told['score']} of 100 points")
    expect(part(page, "debrief").locator("svg")).to_be_visible()
    expect(status(page)).to_have_text(f"The call is over: {told['score']} of 100 points.")
    [attempt] = kept(page, "handbook-record")["attempts"]
    assert attempt["item"] == "call: Salt and brine"
    assert attempt["code"] == code
    assert (attempt["right"], attempt["sure"], attempt["critical"]) == (True, True, False)
    assert attempt["score"] == told["score"] / 100


def kept_moves(page: Page) -> list[dict[str, Any]]:
    """Return the moves that the browser keeps."""
    return kept(page, "handbook-practice-call")["moves"]


def test_a_wrong_call_with_a_reload_in_its_middle(
    visits: Visits, handbook: str, calls: Calls
) -> None:
    code = code_of(calls, "injector-plugged")
    page = opened(visits, handbook)
    begin(page, code)
    shown = make(page, "cold-and-hot-pair").locator("[data-part=shown]").inner_text()
    assert "gpg" in shown
    make(page, "injector-opened")
    expect(part(page, "safety")).to_contain_text("opened under pressure")
    make(page, "toilet-dye")
    expect(page.get_by_role("button", name="Wait for a result")).to_be_visible()
    page.get_by_label("What you found, what you did").evaluate("field => field.value = 'half a'")
    page.get_by_label("How sure you are, in percent").fill("7")
    text = part(page, "readings").inner_text()
    minutes = status(page).inner_text().split(" min")[0]

    page.reload()

    expect(status(page)).to_contain_text(f"{minutes} min on the clock.")
    expect(part(page, "code")).to_have_text(code)
    assert part(page, "readings").inner_text() == text
    expect(page.get_by_label("How sure you are, in percent")).to_have_value("7")
    page.get_by_role("button", name="Wait for a result").click()
    expect(page.get_by_role("button", name="Wait for a result")).to_be_hidden()
    page.get_by_role("button", name="Name it").click()
    expect(part(page, "name-problem")).to_have_text(
        "Choose one of the list first."
    )
    close(page, "salt-bridge", "95", "cold-and-hot-pair")
    debrief = part(page, "debrief")
    expect(debrief.locator(".call__danger")).to_contain_text("before the unit was made safe")
    expect(debrief).to_contain_text("Repaired what was not at fault: Salt bridge.")
    expect(debrief).to_contain_text("Injector or its screen plugged")
    expect(debrief.locator("svg")).to_be_visible()
    for old in (False, True):
        if old:
            page.reload()  # the debrief stays, and the record has the call once
            expect(debrief.locator("svg")).to_be_visible()
        [attempt] = kept(page, "handbook-record")["attempts"]
        assert (attempt["right"], attempt["critical"]) == (False, True)
    assert not page.evaluate("document.documentElement.scrollWidth > innerWidth")


def test_a_code_brings_the_same_call_to_another_browser(
    visits: Visits, handbook: str, calls: Calls
) -> None:
    code = code_of(calls, "brine-valve-leaks-by")
    seen = []
    for options in ({}, {"color_scheme": "dark"}):
        page = opened(visits, handbook, f"?code={code}", **options)
        expect(page.get_by_label("Or a code, such as one from your trainer")).to_have_value(code)
        begin(page, code)
        for check in ("brine-level", "settings-and-counters"):
            make(page, check)
        seen.append((part(page, "customer").inner_text(), part(page, "readings").inner_text()))
    assert seen[0] == seen[1]


def test_python_in_the_browser_shows_what_python_here_shows(
    visits: Visits, handbook: str, calls: Calls
) -> None:
    page = opened(visits, handbook)
    section = page.locator(".practice-call")
    expect(section).to_be_visible()
    asked = []
    for seed in range(24):
        code = calls.new("", "", seed)["code"]
        known = [one["check"] for one in calls.answer(code, [], "us")["checks"]]
        moves = [{"do": "check", "check": check} for check in known]
        asked.append({"work": "practice call", "code": code, "moves": moves, "units": "us"})
    answers = page.evaluate(
        """async ([modules, asked]) => {
            const { CalculatorClient } = await import(`${modules}calculator_client.js`);
            const { runtime, knowledge } = document.querySelector(".practice-call").dataset;
            const client = new CalculatorClient(new URL(runtime, location).href);
            const text = await (await fetch(new URL(knowledge, location))).text();
            const answers = [];
            for (const one of asked) {
                answers.push(await client.consult(text, one));
            }
            return answers;
        }""",
        [f"/{MODULES}", asked],
    )
    for one, there in zip(asked, answers, strict=True):
        here = calls.answer(one["code"], one["moves"], "us")
        assert json.loads(json.dumps(here)) == there


def test_what_was_kept_and_what_is_asked_may_be_anything(visits: Visits, handbook: str) -> None:
    page = opened(visits, handbook, "?code=%3Cscript%3E&family=none&fault=none")
    for junk in ("{", '{"code": 5, "moves": "x"}', '{"code": "<img>", "moves": [1]}'):
        page.evaluate("(text) => localStorage.setItem('handbook-practice-call', text)", junk)
        page.reload()
        expect(page.get_by_role("button", name="Open this call")).to_be_visible()
    expect(part(page, "code-problem")).to_have_text(
        "No code has the character “<”. Codes leave out 0, 1, I, L and O."
    )
    page.get_by_label("The kind of fault").select_option("Power and clock")
    page.get_by_role("button", name="Begin a new call").click()
    expect(part(page, "customer")).to_be_visible()
    expect(part(page, "code-problem")).to_be_hidden()
