"""The reader's switch between the unit systems, in a real browser."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from calculators import run
from tests.browser.visits import Visits

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1280, "height": 900}
US_WORDS = re.compile(r"\d\s(gpg|gal|lb|psi|gpm|in)\b")


def switch(page: Page) -> None:
    page.locator(".units-switch button").click()


@pytest.fixture
def phone(visits: Visits) -> Page:
    """A phone that has chosen nothing yet."""
    return visits.page(viewport=PHONE)


def test_the_choice_is_remembered_on_every_page(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}learn/salt-and-brine/")
    button = phone.locator(".units-switch button")
    box = button.bounding_box()
    assert box["width"] >= 44 and box["height"] >= 44
    expect(button).to_have_text("US")
    expect(button).to_have_accessible_name("Units: US customary. Change to metric units.")
    button.focus()
    phone.keyboard.press("Enter")
    expect(button).to_have_text("Metric")
    expect(phone.locator(".units-switch [role=status]")).to_have_text(
        "Quantities are now in metric units."
    )
    assert "kg" in phone.locator("article").inner_text()
    picture = phone.locator("figure.picture svg").first
    expect(picture).to_have_attribute("aria-label", re.compile(r"\d\smm"))
    phone.reload()
    expect(button).to_have_text("Metric")
    phone.goto(f"{handbook}learn/flow-pressure-and-the-injector/")
    expect(phone.locator("section.live-form").first).to_have_attribute("data-units", "metric")
    assert not US_WORDS.search(phone.locator("article").inner_text())


def test_the_choice_lives_on_where_the_theme_changes_pages_without_loading(
    visits: Visits, instant: str
) -> None:
    page = visits.page(viewport=DESK)
    page.goto(instant)
    page.evaluate("window.isTheSame = true")
    switch(page)
    page.get_by_role("link", name="Work it out").first.click()
    page.locator("article").get_by_role("link", name="Hardness setting with iron").click()
    expect(page.locator("#hardness-setting-hardness")).to_have_value("18.1 gpg")
    expect(page.locator(".units-switch button")).to_have_text("US")
    field = page.locator("#hardness-setting-hardness")
    field.fill("20")
    expect(page.locator(".live-form__for")).to_contain_text("20\u00a0gpg")
    switch(page)
    expect(field).to_have_value("20 gpg")
    assert page.evaluate("window.isTheSame")


def test_what_is_typed_keeps_its_meaning(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}work-out/hardness-setting/")
    hardness = phone.locator("#hardness-setting-hardness")
    iron = phone.locator("#hardness-setting-iron")
    hardness.fill("18")
    iron.fill("0.5 ppm")
    setting = phone.locator("[data-output=setting] strong")
    right = {"hardness": "18 gpg", "iron": "0.5 ppm"}
    expect(setting).to_have_text(run("hardness-setting", right)["values"]["setting"]["shown"])
    switch(phone)
    expect(hardness).to_have_value("18 gpg")
    expect(iron).to_have_value("0.5 ppm")
    expect(setting).to_have_text(re.compile("mg/L$"))
    switch(phone)
    expect(hardness).to_have_value("18 gpg")
    expect(setting).to_have_text(run("hardness-setting", right)["values"]["setting"]["shown"])


def test_the_example_is_the_same_example_in_metric(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}work-out/brine-refill/?units=metric")
    form = phone.locator("section.live-form")
    salt = phone.locator("#brine-refill-salt")
    assert re.fullmatch(r"[\d.]+ kg", salt.input_value())
    built = form.locator("[data-part=values]").inner_text()
    example = salt.input_value()
    salt.fill("5 kg")
    expect(form.locator("[data-part=for]")).to_contain_text("5 kg")
    salt.fill(example)
    expect(form.locator("[data-part=for]")).to_contain_text(example.replace(" ", "\u00a0"))
    assert form.locator("[data-part=values]").inner_text() == built


def test_a_link_with_a_number_alone_means_the_shop_s_unit(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}work-out/hardness-setting/?units=metric&hardness-setting.hardness=20")
    expect(phone.locator("#hardness-setting-hardness")).to_have_value("20 gpg")


def test_paper_and_a_copy_have_one_system(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}learn/what-a-resin-bed-does/?units=metric")
    phone.emulate_media(media="print")
    assert phone.locator(".units-switch").is_hidden()
    copied = phone.evaluate(
        "() => { getSelection().selectAllChildren(document.querySelector('article'));"
        " return getSelection().toString(); }"
    )
    assert not US_WORDS.search(copied)
    assert phone.locator("template[data-other-block] svg").count() == 0


def test_the_search_shows_the_chosen_units(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=DESK)
    page.goto(f"{handbook}?units=metric")
    box = page.get_by_role("textbox", name="Search")
    box.click()
    box.press_sequentially("scalding water burns deeply")
    found = page.locator(".md-search-result__list")
    expect(found).to_contain_text("°C")
    expect(found.locator("[data-other]").first).to_be_visible()
    assert "°F" not in found.inner_text()


def test_a_call_keeps_its_numbers(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}faults/")
    field = phone.locator("#call-raw-hardness-raw")
    phone.locator("details[data-check=raw-hardness] summary").click()
    field.fill("17")
    switch(phone)
    expect(field).to_have_value("17 gpg")
    expect(phone.locator("label[for=call-raw-hardness-raw]")).to_contain_text("(mg/L)")
    phone.reload()
    expect(field).to_have_value("17 gpg")


def test_an_exercise_is_the_same_question(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}practise/water-of-a-household/?seed=7")
    question = phone.locator("section.exercise [data-part=question]")
    answer = phone.locator("section.exercise input[type=text]")
    expect(question).to_contain_text("gal/day")
    answer.fill("300 gal/day")
    switch(phone)
    expect(question).to_contain_text("L/day")
    assert "gal" not in question.inner_text()
    expect(answer).to_have_value("300 gal/day")


def test_a_bare_page_has_the_switch_and_takes_an_attribute(phone: Page, handbook: str) -> None:
    phone.goto(f"{handbook}embed/brine-refill/?units=metric")
    expect(phone.locator(".live-form__unit").first).to_have_text("(kg)")
    switch(phone)
    expect(phone.locator(".live-form__unit").first).to_have_text("(lb)")


@pytest.fixture
def without_scripts(visits: Visits) -> Iterator[BrowserContext]:
    """A browser that runs no scripts."""
    context = visits.browser.new_context(java_script_enabled=False)
    yield context
    context.close()


def test_without_scripts_the_shops_system_stands_alone(
    without_scripts: BrowserContext, handbook: str
) -> None:
    page = without_scripts.new_page()
    page.goto(f"{handbook}learn/salt-and-brine/")
    assert page.locator(".units-switch").is_hidden()
    text = page.locator("article").inner_text()
    assert " lb" in text.replace("\u00a0", " ") and "kg" not in text
