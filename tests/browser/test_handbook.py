"""The demo shop's handbook in a real browser, as a reader meets it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.visits import Visits

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1280, "height": 900}

# One page of each kind, with every element that a page of its kind may have.
KINDS_OF_PAGE = (
    "",
    "procedures/",
    "procedures/arrival-check/",
    "procedures/measure-drain-flow/",
    "faults/",
    "faults/salt-bridge/",
    "checks/backwash-flow/",
    "learn/iron-and-the-setting/",
    "work-out/",
    "work-out/hardness-setting/",
    "equipment/time-clock-softener/",
    "equipment/apartment-softener/",
    "reference/numbers/",
    "reference/pocket-sheet/",
)


def luminance(page: Page, selector: str, css_property: str) -> float:
    """Return how light the computed color of an element is, from 0 for black to 1 for white."""
    color = page.locator(selector).first.evaluate(
        "(element, property) => getComputedStyle(element)[property]", css_property
    )
    red, green, blue = (float(part) for part in re.findall(r"[\d.]+", color)[:3])
    return (0.2126 * red + 0.7152 * green + 0.0722 * blue) / 255


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", KINDS_OF_PAGE)
def test_no_page_scrolls_sideways_on_a_phone_or_at_a_desk(
    visits: Visits, handbook: str, address: str, scheme: str
) -> None:
    page = visits.page(color_scheme=scheme)
    for viewport in (PHONE, DESK):
        page.set_viewport_size(viewport)
        page.goto(handbook + address)
        assert page.evaluate("document.documentElement.scrollWidth") <= viewport["width"]
    text, ground = (
        luminance(page, "article", "color"),
        luminance(page, "body", "backgroundColor"),
    )
    assert (ground > text) is (scheme == "light")


@pytest.mark.parametrize("name", ["hardness-setting", "resin-capacity", "regeneration-cost"])
def test_a_calculator_s_page_answers_its_own_example_as_the_build_did(
    visits: Visits, handbook: str, name: str
) -> None:
    page = visits.page()
    page.goto(f"{handbook}work-out/{name}/")
    form = page.locator("section.live-form")
    built = form.locator(".live-form__answer").inner_text()
    field = form.locator("input:visible").first
    example = field.input_value()
    field.fill("no number")
    expect(form.locator(".live-form__problem:visible")).to_contain_text("no number")
    field.fill(example)
    expect(form.locator(".live-form__problem:visible")).to_have_count(0)
    expect(form.locator(".live-form__for")).to_contain_text(re.compile("^For:"))
    assert form.locator(".live-form__answer").inner_text() == built


def test_a_unit_of_the_shop_fills_its_figures_in(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}work-out/brine-refill/")
    form = page.locator("section.live-form")
    salt, answer = form.get_by_label("Salt wanted"), form.locator("[data-output=water] strong")
    example = salt.input_value(), answer.inner_text()
    salt.fill("20 lb")
    expect(answer).not_to_have_text(example[1])
    form.get_by_label("Fill in the figures of a unit").select_option(
        "Time-clock softener, cottage size"
    )
    expect(salt).to_have_value("6 lb")
    expect(form.locator(".live-form__for")).to_contain_text(
        "For: Salt wanted for one regeneration: 6 lb"
    )
    form.get_by_role("button", name="Back to the example").click()
    assert (salt.input_value(), answer.inner_text()) == example
    expect(form.get_by_label("Fill in the figures of a unit")).to_have_value("")


def test_a_worked_example_takes_the_reader_s_own_numbers(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}learn/iron-and-the-setting/")
    form = page.locator("section.live-form").first
    hardness = form.get_by_label("Hardness of the raw water")
    before = form.locator("[data-output=setting] strong").inner_text()
    hardness.fill("51")
    expect(form.locator("[data-output=setting] strong")).not_to_have_text(before)
    expect(form.locator(".live-form__for")).to_contain_text("Hardness of the raw water: 51 gpg")


@pytest.mark.parametrize(
    ("said", "title"),
    [
        ("hisses in the bathroom", "Running toilet or other small leak"),
        ("soap does not lather", "Out of salt"),
    ],
)
def test_search_finds_a_fault_by_what_the_customer_says(
    visits: Visits, handbook: str, said: str, title: str
) -> None:
    page = visits.page(viewport=DESK)
    page.goto(handbook)
    box = page.get_by_role("textbox", name="Search")
    box.click()
    box.press_sequentially(said)  # the theme searches on keys, which a filled-in text has none of
    first = page.locator(".md-search-result__item").first
    expect(first.locator("h1, h2").first).to_have_text(title)


def test_a_page_asks_for_few_files_of_ours(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=DESK)
    page.goto(f"{handbook}work-out/hardness-setting/", wait_until="networkidle")
    asked = [url for url in visits.requests if "/assets/handbook-" in url]
    names = {re.sub(r".*/assets/handbook-[0-9a-f]+/", "", url) for url in asked}
    search = {"search/theme_worker.js", "search/worker.js"}
    scripts = {"page/handbook.js", "page/units.js", "page/worker.js"}
    assert names == {"handbook.css", "icon.svg", *scripts, *search}


def test_the_drawer_of_a_phone_leads_to_every_section_and_through_the_open_one(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}procedures/arrival-check/")
    drawer = page.locator(".md-nav--primary")
    open_drawer = page.locator("label[for=__drawer].md-header__button")
    open_drawer.click()
    for list_around in ("On every call", "Procedures"):
        drawer.locator("label.md-nav__title").get_by_text(list_around, exact=True).click()
    for title in ("Home", "Learn", "Find the cause", "Work it out", "Practise", "Reference"):
        link = drawer.locator("> ul > li > a", has_text=title)
        expect(link).to_be_visible()
        assert link.bounding_box()["height"] >= 44, title
    link = drawer.locator("> ul > li > a", has_text="Learn")
    link.focus()
    page.keyboard.press("Enter")
    expect(page).to_have_url(f"{handbook}learn/")
    expect(page.get_by_role("heading", level=1)).to_have_text("Learn")
    open_drawer.click()
    drawer.get_by_role("link", name="What hardness is").click()
    expect(page).to_have_url(f"{handbook}learn/what-hardness-is/")


def test_without_scripts_every_kind_of_page_has_its_text(visits: Visits, handbook: str) -> None:
    page = visits.page(java_script_enabled=False)
    for address in KINDS_OF_PAGE:
        page.goto(handbook + address)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
    page.goto(f"{handbook}work-out/hardness-setting/")
    expect(page.locator("[data-output=setting] strong")).to_have_text(re.compile(r"^\d+\sgpg$"))
    expect(page.locator(".live-form__status")).to_contain_text("The form is off")


def test_paper_shows_the_computed_example_and_no_buttons(visits: Visits, handbook: str) -> None:
    page = visits.page()
    page.goto(f"{handbook}work-out/hardness-setting/")
    page.emulate_media(media="print")
    expect(page.locator("[data-output=setting] strong")).to_be_visible()
    expect(page.locator(".live-form__workings")).to_be_visible()
    expect(page.get_by_role("button", name="Back to the example")).to_be_hidden()


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_sheets_to_carry_have_their_number_of_pages(
    visits: Visits, handbook: str, paper: str
) -> None:
    page = visits.page()
    for address, pages in (
        ("reference/tables/", 1),
        ("reference/conversions/", 1),
        ("reference/pocket-sheet/", 2),
        ("equipment/immediate-meter-softener/", 1),
        ("equipment/apartment-softener/", 1),
    ):
        page.goto(handbook + address)
        assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper))) == pages, address


def test_a_technician_sees_the_readings_of_one_unit_alone(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}procedures/check-the-refill/")
    rows = page.locator("td[data-unit]")
    farmhouse = page.locator("td[data-unit=farmhouse-softener]")
    choice = page.get_by_label("Readings for")
    expect(choice).to_have_value("")
    expect(page.locator("article").get_by_role("status")).to_be_empty()
    units, tables = len(choice.locator("option").all()) - 1, len(farmhouse.all())
    expect(rows.filter(visible=True)).to_have_count(units * tables)

    choice.focus()
    page.keyboard.type("Delayed-meter softener, farm")
    expect(choice).to_have_value("farmhouse-softener")
    expect(rows.filter(visible=True)).to_have_count(tables)
    expect(farmhouse.first).to_be_visible()
    expect(page.locator("article").get_by_role("status")).to_contain_text(
        "of this unit only: Delayed-meter"
    )

    page.goto(f"{handbook}procedures/measure-drain-flow/")
    expect(choice).to_have_value("farmhouse-softener")
    expect(farmhouse.first).to_be_visible()
    expect(page.locator("td[data-unit=twin-tank-softener]").first).to_be_hidden()
    page.emulate_media(media="print")
    expect(page.locator("td[data-unit=twin-tank-softener]").first).to_be_visible()
    expect(choice).to_be_hidden()
    page.emulate_media(media="screen")
    choice.select_option("")
    expect(page.locator("td[data-unit=twin-tank-softener]").first).to_be_visible()


def test_a_unit_that_the_shop_no_longer_carries_is_no_choice(visits: Visits, handbook: str) -> None:
    page = visits.page()
    page.goto(f"{handbook}procedures/measure-drain-flow/")
    page.evaluate(
        "localStorage.setItem(`unit in ${new URL('../..', location.href).pathname}`, 'x')"
    )
    page.reload()
    expect(page.get_by_label("Readings for")).to_have_value("")
    expect(page.locator("td[data-unit=twin-tank-softener]").first).to_be_visible()
    page.evaluate("localStorage.clear()")


def test_without_scripts_every_unit_s_readings_are_there(visits: Visits, handbook: str) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(f"{handbook}procedures/measure-drain-flow/")
    expect(page.locator("#unit-choice")).to_be_hidden()
    expect(page.locator("td[data-unit=twin-tank-softener]").first).to_be_visible()
    expect(page.locator("td[data-unit=apartment-softener]").first).to_be_visible()


def test_a_unit_chosen_in_the_call_is_chosen_in_the_procedures(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}faults/")
    page.get_by_label("The unit", exact=True).select_option("twin-tank-softener")
    page.goto(f"{handbook}procedures/repair-the-drain-line/")
    expect(page.get_by_label("Readings for")).to_have_value("twin-tank-softener")
    page.get_by_label("Readings for").select_option("apartment-softener")
    page.goto(f"{handbook}faults/")
    expect(page.get_by_label("The unit", exact=True)).to_have_value("apartment-softener")


def test_from_a_fault_a_call_is_one_tap_away(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    back = page.get_by_role("link", name="Back to the call")
    page.goto(f"{handbook}faults/salt-bridge/")
    expect(page.locator(".way")).to_contain_text("Find the cause")
    expect(back).to_have_count(0)
    page.goto(f"{handbook}faults/")
    page.locator("summary", has_text="Choose the complaint").click()
    page.locator("[data-check=complaint] label").first.click()
    page.goto(f"{handbook}faults/salt-bridge/")
    back.click()
    expect(page.get_by_role("heading", name="Where the call stands")).to_be_in_viewport()


def test_steps_that_are_done_stay_marked_for_the_day(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}procedures/arrival-check/")
    told = page.locator(".step-marks")
    expect(told).to_contain_text("Tap a number to mark its step done")
    second = page.get_by_role("button", name="Step 2 done")
    second.focus()
    page.keyboard.press("Enter")
    expect(second).to_have_attribute("aria-pressed", "true")
    page.reload()
    expect(second).to_have_attribute("aria-pressed", "true")
    expect(told).to_contain_text(re.compile(r"1 of \d+ steps done"))
    page.get_by_role("link", name="Go on at step 3").click()
    expect(page.locator("#step-3")).to_be_in_viewport()
    page.emulate_media(media="print")
    expect(second).to_be_hidden()
    expect(told).to_be_hidden()
    page.emulate_media(media="screen")
    page.get_by_role("button", name="Clear the marks").click()
    expect(second).to_have_attribute("aria-pressed", "false")
    second.click()
    page.evaluate(
        """() => {
          const [key] = Object.keys(localStorage).filter((one) => one.startsWith("steps done"));
          localStorage.setItem(key, JSON.stringify({ ...JSON.parse(localStorage[key]), day: "" }));
        }"""
    )
    page.reload()
    expect(second).to_have_attribute("aria-pressed", "false")


def test_no_table_of_a_procedure_is_cut_off_on_a_phone(
    visits: Visits, handbook: str, handbook_folder: Path
) -> None:
    page = visits.page(viewport=PHONE)
    for one in sorted((handbook_folder / "procedures").glob("*/")):
        page.goto(f"{handbook}procedures/{one.name}/", wait_until="domcontentloaded")
        cut = page.evaluate(
            """[...document.querySelectorAll(".md-typeset__scrollwrap")]
            .filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.innerText)"""
        )
        assert cut == [], one.name
