"""Spanish in a browser: a form's answers, the search, and the choice that is remembered."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.visits import Visits

PHONE = {"width": 390, "height": 844}
LESSON = "learn/testing-water-honestly/"
FORM = "#ropewalk-yard-double-form"


def _field(form: Locator, name: str) -> Locator:
    return form.locator(f'[data-input="{name}"] input')


def test_a_form_answers_and_asks_back_in_the_language_of_its_page(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}es/{LESSON}")
    form = page.locator(FORM)
    status = form.locator(".live-form__status")
    drops = _field(form, "drops")
    drops.fill("4")
    expect(status).to_have_text(re.compile(r"^Respuesta\. Como se lee en el oficio: 2\.0\sgpg"))
    expect(form.locator(".live-form__workings li").first).to_contain_text(
        "En el oficio se cuenta cada gota completa."
    )
    drops.fill("1,5")
    expect(form.locator(".live-form__problem:visible")).to_have_text(
        "“1,5” se puede leer de dos maneras. Escriba un punto decimal (1.5) o ninguna coma."
    )
    assert form.locator('[lang="en"]').count() == 0


def test_a_unit_that_is_typed_in_spanish_is_understood(visits: Visits, handbook: str) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(f"{handbook}es/{LESSON}")
    form = page.locator("#ropewalk-yard-flush-form")
    _field(form, "length").fill("80 pies")
    _field(form, "bore").fill("0.75 pulgadas")
    expect(form.locator('[data-output="held"]')).to_contain_text("1.84")
    expect(form.locator(".live-form__problem:visible")).to_have_count(0)


def test_the_language_that_was_chosen_is_kept_for_the_next_page(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(handbook + LESSON)
    page.get_by_role("link", name="Esta página en español").click()
    expect(page).to_have_url(f"{handbook}es/{LESSON}")
    page.goto(f"{handbook}procedures/test-the-water/?x=1#steps")
    expect(page).to_have_url(f"{handbook}es/procedures/test-the-water/?x=1#steps")
    page.get_by_role("link", name="This page in English").click()
    expect(page).to_have_url(f"{handbook}procedures/test-the-water/")
    page.goto(handbook + LESSON)
    page.wait_for_load_state("networkidle")
    assert page.url == handbook + LESSON


@pytest.mark.parametrize(
    ("language", "question", "found"),
    [
        ("es/", "dureza del agua", "/es/learn/what-hardness-is/"),
        ("es/", "valvula principal inundacion", "/es/"),
        ("", "salt bridge", "/faults/salt-bridge/"),
        ("", "hardness", "/"),
    ],
)
def test_the_search_finds_pages_of_the_language_alone(
    visits: Visits, handbook: str, language: str, question: str, found: str
) -> None:
    page = visits.page()
    page.goto(handbook + language)
    page.locator(".md-search__input").click()
    page.locator(".md-search__input").press_sequentially(question)
    results = page.locator("a.md-search-result__link")
    expect(results.and_(page.locator(f"[href*='{found}']")).first).to_be_visible()
    addresses = results.evaluate_all("(links) => links.map((one) => one.getAttribute('href'))")
    assert all(("/es/" in one) is bool(language) for one in addresses)


@pytest.mark.parametrize("address", ["es/", f"es/{LESSON}", "es/procedures/arrival-check/"])
def test_a_page_fits_a_phone_and_its_switch_a_finger(
    visits: Visits, handbook: str, address: str
) -> None:
    page = visits.page(viewport=PHONE)
    page.goto(handbook + address)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.evaluate("document.documentElement.lang") == "es"
    switch = page.get_by_role("link", name="This page in English")
    assert switch.bounding_box()["height"] >= 44
    assert switch.get_attribute("lang") == "en"
    assert (
        page.locator("article :is(a, button):visible").evaluate_all(
            "all => all.filter((one) => !(one.textContent.trim() || one.ariaLabel)).length"
        )
        == 0
    )
