"""The call on the page "Find the cause", as a technician goes through it."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.knowledge_data import knowledge_data
from calculators.diagnosis import Knowledge, picture
from tests.browser.conftest import ROOT
from tests.browser.host import hosted
from tests.browser.modules import BLANK
from tests.browser.visits import Visits

ADDRESS = "faults/"
PHONE = {"width": 390, "height": 844}


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    """Return what the shipped handbook knows."""
    return Knowledge(knowledge_data(load_handbook(ROOT / "docs_src", ROOT)))


@pytest.fixture
def page(visits: Visits, handbook: str) -> Page:
    """Return the page on a phone, with no call kept."""
    return opened(visits, handbook, {})


def opened(visits: Visits, handbook: str, kept: object) -> Page:
    """Return the page where something is kept of a call: a text, or what JSON makes one of."""
    page = visits.page()
    page.set_viewport_size(PHONE)
    page.goto(f"{handbook}{BLANK}")
    text = kept if isinstance(kept, str) else json.dumps(kept)
    page.evaluate("(text) => localStorage.setItem('call in /', text)", text)
    page.goto(handbook + ADDRESS)
    expect(causes(page).first).to_be_visible()
    return page


def causes(page: Page) -> Locator:
    """Return the ranked causes."""
    return page.locator(".call__causes > li")


def status(page: Page) -> Locator:
    """Return what the bar says of the call."""
    return page.locator(".call__bar [data-part=status]")


def check(page: Page, name: str) -> Locator:
    """Return the block of a check, opened."""
    block = page.locator(f"details[data-check={name}]")
    if block.get_attribute("open") is None:
        block.locator("summary").click()
    return block


def tap(page: Page, name: str, result: str) -> None:
    """Answer a check with one tap."""
    check(page, name).locator(f"input[value='{result}']").check()


def complain(page: Page, complaint: str) -> None:
    """Choose a complaint from the list."""
    page.locator("[data-part=complaints] summary").click()
    page.locator(f"[data-check=complaint] input[value={complaint}]").check()


def expect_standing(page: Page, knowledge: Knowledge, call: dict[str, object]) -> None:
    """Check that the page ranks as Python here does."""
    told = picture(knowledge, call)
    for sentence in told["explanation"]:
        expect(page.locator("[data-part=explanation]")).to_contain_text(sentence)
    leader = told["causes"][0]
    title = knowledge.faults[leader["fault"]]["title"]
    expect(causes(page).first).to_contain_text(f"{title} {leader['words']}")
    expect(status(page)).to_have_text(f"{title}, {leader['words']}")


def test_each_tap_ranks_as_python_here_does(page: Page, knowledge: Knowledge) -> None:
    call = {"complaint": "salt-unused", "readings": {}}
    complain(page, "salt-unused")
    expect_standing(page, knowledge, call)
    for name, result in (("brine-level", "high"), ("rod-through-salt", "loose")):
        tap(page, name, result)
        call["readings"][name] = result
        expect_standing(page, knowledge, call)


def test_anything_can_be_changed_later(page: Page, knowledge: Knowledge) -> None:
    complain(page, "hard-everywhere")
    tap(page, "bypass-position", "bypassed")
    expect(causes(page).first).to_contain_text("Bypass left open")
    tap(page, "bypass-position", "in-service")
    tap(page, "salt-height", "empty")
    call = {
        "complaint": "hard-everywhere",
        "readings": {"bypass-position": "in-service", "salt-height": "empty"},
    }
    expect_standing(page, knowledge, call)
    check(page, "salt-height").get_by_role("button", name="Take the answer back").click()
    del call["readings"]["salt-height"]
    expect_standing(page, knowledge, call)
    check(page, "bypass-position").get_by_label("I did not see it well").check()
    call["readings"]["bypass-position"] = {"result": "in-service", "sure": False}
    expect_standing(page, knowledge, call)
    tap(page, "outlet-and-plug", "not sure")
    tap(page, "clock-reading", "not done")
    call["readings"] |= {"outlet-and-plug": "not sure", "clock-reading": "not done"}
    expect_standing(page, knowledge, call)


def test_the_unit_and_the_water_count(page: Page, knowledge: Knowledge) -> None:
    complain(page, "stain")
    page.get_by_label("The unit", exact=True).select_option("time-clock-softener")
    page.get_by_label("The water", exact=True).select_option("well")
    home = {"control": "time clock", "water": "well"}
    expect_standing(page, knowledge, {"complaint": "stain", "home": home})
    expect(causes(page).first.get_by_role("link", name="The unit’s numbers")).to_have_attribute(
        "href", "../equipment/time-clock-softener/"
    )


def test_a_locked_phone_loses_nothing(page: Page) -> None:
    complain(page, "tank-overfull")
    page.get_by_label("In the customer’s own words").fill("the tank is <b>full</b>")
    tap(page, "brine-level", "high")
    check(page, "raw-hardness").get_by_label("Raw hardness today").fill("18 g")
    page.get_by_label("Advice to the customer").fill("Keep the lid on.")
    leader = status(page).inner_text()
    page.reload()
    expect(status(page)).to_have_text(leader)
    expect(page.get_by_label("In the customer’s own words")).to_have_value(
        "the tank is <b>full</b>"
    )
    expect(check(page, "brine-level").locator("input[value=high]")).to_be_checked()
    expect(check(page, "raw-hardness").get_by_label("Raw hardness today")).to_have_value("18 g")
    expect(page.get_by_label("Advice to the customer")).to_have_value("Keep the lid on.")


def test_a_new_call_begins_empty(page: Page) -> None:
    complain(page, "tank-overfull")
    tap(page, "brine-level", "high")
    page.on("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Begin a new call").click()
    expect(status(page)).to_have_text("Choose what the customer says.")
    expect(page.locator(".call input:checked")).to_have_count(0)
    assert json.loads(page.evaluate("localStorage['call in /']"))["answers"] == {}


def test_customers_words_find_the_complaint(page: Page) -> None:
    page.get_by_label("In the customer’s own words").fill("there are stains in the toilet")
    page.locator("[data-part=heard]").get_by_role("button", name="Stains").click()
    expect(page.locator("[data-for=complaint]")).to_have_text("Stains")
    expect(page.locator(".call__next")).to_have_text(re.compile("^(Next|Prove it): "))


def test_words_that_nobody_knows_are_told(page: Page) -> None:
    page.get_by_label("In the customer’s own words").fill("xyzzy")
    expect(page.locator("[data-part=heard]")).to_have_text(
        "No complaint is known by these words: choose from the list."
    )


def test_the_next_check_is_one_tap_away(page: Page, knowledge: Knowledge) -> None:
    complain(page, "salt-unused")
    following = picture(knowledge, {"complaint": "salt-unused"})["next"]["check"]
    button = page.locator(".call__next")
    expect(button).to_have_text(f"Next: {knowledge.checks[following]['title']}")
    button.click()
    block = page.locator(f"details[data-check={following}]")
    expect(block).to_have_attribute("open", "")
    expect(block.locator("summary")).to_be_focused()
    expect(block.locator("summary")).to_be_in_viewport()


def test_a_cause_that_is_found_is_proved_next(page: Page, knowledge: Knowledge) -> None:
    found = next(
        one
        for one in knowledge.results["complaint"]
        if (picture(knowledge, {"complaint": one})["stop"] or {}).get("prove")
    )
    complain(page, found)
    (proof,) = picture(knowledge, {"complaint": found})["stop"]["prove"]
    button = page.locator(".call__next")
    expect(button).to_have_text(f"Prove it: {knowledge.checks[proof]['title']}")
    button.click()
    expect(page.locator(f"details[data-check={proof}] summary")).to_be_focused()


def test_numbers_become_a_result(page: Page) -> None:
    complain(page, "tank-overfull")
    block = check(page, "brine-level")
    block.get_by_label("Height of the water").fill("tall")
    expect(block.locator(".call__number .call__problem").first).to_have_text(
        "“tall” does not start with a number. Write one, such as 12 or 3/4."
    )
    block.get_by_label("Height of the water").fill("14 in")
    block.get_by_label("Height expected now").fill("20 cm")
    expect(block.locator("[data-part=read]")).to_have_text("This shows: Too high.")
    expect(block.locator("input[value=high]")).to_be_checked()
    expect(block.locator("summary")).to_contain_text("Too high")


def test_a_danger_stops_the_call(page: Page) -> None:
    block = check(page, "brine-level")
    danger = block.locator("[data-danger]").first
    danger.check()
    expect(page.locator(".call__next")).to_have_text("Why")
    page.locator(".call__next").click()
    expect(page.locator(".call__standing")).to_be_focused()
    expect(page.locator(".call__danger")).to_contain_text("Stop here")
    expect(page.locator(".call__danger")).to_contain_text("Make the place safe")
    expect(status(page)).to_have_text("Stop here: make the place safe.")
    danger.uncheck()
    expect(page.locator(".call__danger")).to_be_hidden()


def test_cautions_stand_before_the_steps_they_are_for(page: Page) -> None:
    late = page.evaluate(
        """() => [...document.querySelectorAll(".call__how")]
          .filter((how) => how.querySelector(".call__caution") && !how.firstElementChild.matches(".call__caution"))
          .map((how) => how.textContent.slice(0, 40))"""
    )
    assert late == []
    assert page.locator(".call__how > .call__caution:first-child").count() > 10


def test_a_check_that_destroys_evidence_names_what_comes_first(page: Page) -> None:
    complain(page, "salt-unused")
    note = check(page, "rod-through-salt").locator("[data-part=note]")
    expect(note).to_contain_text("Make these first: ")
    expect(note).to_contain_text("Water height in the brine well")
    tap(page, "brine-level", "expected")
    expect(note).not_to_contain_text("Water height in the brine well")


def test_a_repair_that_was_not_it_rules_a_cause_out(page: Page) -> None:
    complain(page, "salt-unused")
    expect(status(page)).to_contain_text("in 10")
    first = causes(page).first.get_by_role("link").first.inner_text()
    causes(page).first.get_by_role("button", name="Repaired, and it was not this").click()
    expect(page.locator(".call__out")).to_contain_text(f"{first}: ruled out by a repair.")
    expect(causes(page).first).not_to_contain_text(first)
    page.locator(".call__out").get_by_role("button", name="Consider it again").click()
    expect(causes(page).first).to_contain_text(first)


def test_the_record_is_printed_copied_and_saved(page: Page, tmp_path: Path) -> None:
    complain(page, "salt-unused")
    tap(page, "rod-through-salt", "bridge")
    page.get_by_label("Work done and parts").fill("Broke the bridge")
    page.get_by_label("Settings as found").fill("20 gpg")
    page.get_by_label("The cause that was found").select_option("salt-bridge")
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.get_by_role("button", name="Copy").click()
    expect(page.locator("[data-part=told]")).to_have_text("The record is copied.")
    text = page.evaluate("navigator.clipboard.readText()")
    for line in (
        "- What the customer complains of: Salt does not go down",
        "Cause: Salt bridge",
        "Work done and parts: Broke the bridge",
        "Settings as found: 20 gpg",
    ):
        assert line in text.splitlines()
    assert re.search(r"^- Rod through the salt: .+", text, re.MULTILINE)
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as a file").click()
    saved.value.save_as(tmp_path / "record.txt")
    assert (tmp_path / "record.txt").read_text("utf-8") == text
    assert re.fullmatch(r"visit-record-\d{4}-\d\d-\d\d\.txt", saved.value.suggested_filename)
    page.emulate_media(media="print")
    expect(page.locator(".call__paper")).to_be_visible()
    expect(page.locator("h1")).to_be_hidden()
    expect(page.get_by_label("Work done and parts")).to_be_hidden()


def test_a_page_without_a_call_prints_its_tables(page: Page) -> None:
    page.emulate_media(media="print")
    expect(page.get_by_role("heading", name="By what the customer says")).to_be_visible()
    expect(page.locator(".call")).to_be_hidden()


def test_it_works_without_a_network(
    visits: Visits, handbook_folder: Path, tmp_path: Path, knowledge: Knowledge
) -> None:
    with hosted(shutil.copytree(handbook_folder, tmp_path / "site")) as host:
        page = visits.page(service_workers="allow", viewport=PHONE)
        page.goto(host.address + "reference/on-this-phone/")
        page.get_by_role("button", name="Keep this handbook on this phone").click()
        expect(page.locator("[data-part=status]")).to_contain_text("Done.")
        host.has_network = False
        page.goto(host.address + ADDRESS)
        complain(page, "salt-unused")
        tap(page, "brine-level", "high")
        call = {"complaint": "salt-unused", "readings": {"brine-level": "high"}}
        expect_standing(page, knowledge, call)
        page.close()
        visits.take_errors()


def test_where_nothing_is_kept_the_call_goes_on(visits: Visits, handbook: str) -> None:
    page = visits.page()
    page.add_init_script(
        """Object.defineProperty(window, "localStorage", {
          get() { throw new DOMException("refused", "SecurityError"); },
        });"""
    )
    page.goto(handbook + ADDRESS)
    complain(page, "salt-unused")
    expect(page.locator("[data-part=storage]")).to_have_text(
        "This browser keeps nothing: when this page is closed, the call is lost."
    )
    expect(status(page)).to_contain_text("in 10")
    assert set(visits.take_errors()) == {"refused"}  # the theme's own wishes


@pytest.mark.parametrize(
    "kept",
    [
        "{",
        "null",
        "[]",
        '{"answers": 7, "dangers": {}, "kept": null}',
        '{"answers": {"no-such-check": "x", "salt-height": "<img src=x onerror=alert(1)>"}}',
        '{"kept": {"unit": "no-such-unit", "water": "none"}, "record": {"cause": "no-such-fault"}}',
    ],
)
def test_damaged_memory_never_stops_the_page(visits: Visits, handbook: str, kept: str) -> None:
    page = opened(visits, handbook, kept)
    complain(page, "salt-unused")
    expect(status(page)).to_contain_text("in 10")


def test_python_waits_for_a_touch_where_data_is_saved(visits: Visits, handbook: str) -> None:
    page = visits.page()
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
    )
    page.goto(handbook + ADDRESS)
    expect(page.locator("section.call")).to_be_visible()
    page.wait_for_timeout(500)
    assert not any("knowledge" in url or "page/worker.js" in url for url in visits.requests)
    page.get_by_label("In the customer’s own words").focus()
    expect(causes(page).first).to_be_visible()


def test_a_danger_that_the_handbook_no_longer_names_does_not_stop_for_ever(
    visits: Visits, handbook: str
) -> None:
    kept = {"answers": {"complaint": "salt-unused"}, "dangers": ["Of an old edition."]}
    page = opened(visits, handbook, kept)
    expect(status(page)).to_contain_text("in 10")


def test_without_scripts_the_tables_stand_in_order(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE, java_script_enabled=False)
    page.goto(handbook + ADDRESS)
    expect(page.locator("section.call")).to_be_hidden()
    headings = page.locator(".find-the-cause :is(h2, h3)").all_inner_texts()
    assert headings[0].startswith("By what the customer says")
    assert [one.strip("#\n ") for one in headings].index("The checks in order") > 10


def test_it_fits_a_thumb(page: Page) -> None:
    complain(page, "salt-unused")
    for block in page.locator("details.call__check").all()[:12]:
        block.evaluate("(block) => { block.open = true; }")
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    small = page.evaluate(
        """() => [...document.querySelectorAll(
          '.call button, .call summary, .call__causes a, .call__choice, .call select, .call textarea, .call__number input',
        )].filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44)
          .map((one) => one.outerHTML.slice(0, 80))"""
    )
    assert small == []
    nameless = page.evaluate(
        """() => [...document.querySelectorAll('.call :is(input, select, textarea)')]
          .filter((one) => !one.labels?.length).map((one) => one.outerHTML.slice(0, 80))"""
    )
    assert nameless == []
