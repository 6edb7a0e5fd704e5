"""An exercise in a real browser: worked right and wrong, by keyboard, on a phone."""

from __future__ import annotations

import json
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from calculators.practice import evidence, number
from calculators.practice.exercises import solve
from calculators.practice.mistakes import SENTENCES, mistakes_in
from calculators.practice.worked import accepted
from tests.browser.modules import BLANK
from tests.browser.visits import Visits
from tests.calculators.practice.shipped import exercises, knowledge

PHONE = {"width": 390, "height": 844}
COUNTER = "counter-of-a-delayed-meter"


@pytest.fixture
def page(visits: Visits, handbook: str) -> Page:
    """Return a phone with nothing in its record."""
    visits.everyday.grant_permissions(["clipboard-read", "clipboard-write"])
    page = visits.page()
    page.set_viewport_size(PHONE)
    page.goto(f"{handbook}{BLANK}")
    page.evaluate("localStorage.removeItem('handbook-record')")
    return page


def opened(page: Page, handbook: str, name: str, seed: str = "CLASS7") -> Page:
    """Return the page of an exercise with the question of a seed."""
    page.goto(f"{handbook}practise/{name}/?seed={seed}")
    expect(mark(page)).to_be_visible()
    return page


def expect_to_fit_a_thumb(page: Page) -> None:
    """Check that nothing stands beside the screen and that what is touched is large enough."""
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    touched = page.locator(".exercise :is(button, input[type=text], .exercise__choice)")
    for box in (one.bounding_box() for one in touched.all() if one.is_visible()):
        assert min(box["height"], box["width"]) >= 43.9


def mark(page: Page, sure: str = "sure") -> Locator:
    """Return the button that has the answers marked."""
    return page.locator(f".exercise button[value={sure}]")


def word(page: Page) -> Locator:
    """Return the word on the marked answers."""
    return page.locator(".exercise__word")


def attempts(page: Page) -> list[dict]:
    """Return the answers in the record."""
    kept = page.evaluate("localStorage.getItem('handbook-record')")
    return json.loads(kept)["attempts"] if kept else []


def test_a_number_is_refused_without_its_unit_then_recognized_then_right(
    page: Page, handbook: str
) -> None:
    opened(page, handbook, COUNTER)
    exercise = exercises()[COUNTER]
    worked = accepted(exercise, "CLASS7", "us")
    story = number.pose(exercise, "CLASS7", "us")["story"]
    expect(page.locator("[data-part=question]")).to_contain_text(story)
    field = page.get_by_label("Set the counter to")
    expect_to_fit_a_thumb(page)

    field.fill("900")
    mark(page).click()
    problem = page.locator("#answer-counter-problem")
    expect(problem).to_have_text(
        "“900” has no unit. Write 900 gal, or the unit you mean: gal, qt, pint, cup or fl oz."
    )
    expect(field).to_be_focused()
    expect(field).to_have_value("900")
    assert attempts(page) == []

    (way,) = mistakes_in(exercise)["no-reserve"]
    field.fill(worked.wrong_values((way,), exercise["ask"][0])[0]["shown"])
    mark(page, "unsure").click()
    expect(page.locator("#answer-counter-said")).to_have_text(SENTENCES["no-reserve"])
    expect(problem).to_be_hidden()
    expect(word(page)).to_have_text("Not yet.")
    (first,) = attempts(page)
    assert {key: first[key] for key in ("item", "family", "skill", "right", "sure", "seed")} == {
        "item": COUNTER,
        "family": "settings",
        "skill": "controls-and-settings",
        "right": False,
        "sure": False,
        "seed": "CLASS7",
    }

    right = solve(exercise, "CLASS7", "us")
    field.fill(right["answers"][0]["shown"])
    mark(page).click()
    expect(word(page)).to_have_text("Right.")
    last = right["solution"][0]["workings"][-1]
    expect(page.locator(".exercise__solution")).to_contain_text(last["sentence"])
    expect(page.locator(".exercise__result")).to_contain_text("Only the first answer")
    page.reload()
    field.fill(right["answers"][0]["shown"])
    mark(page).click()
    expect(page.locator(".exercise__result")).to_contain_text("Only the first answer")
    assert attempts(page) == [first]


def test_another_question_has_an_address_of_its_own(page: Page, handbook: str) -> None:
    opened(page, handbook, COUNTER)
    story = page.locator("[data-part=question]").inner_text()
    page.get_by_role("button", name="Another question").click()
    expect(page.locator("[data-part=question]")).not_to_have_text(story)
    expect(page.locator("[data-part=seed]")).not_to_have_text("Question CLASS7")
    other = page.locator("[data-part=question]").inner_text()
    page.get_by_role("button", name="Copy the link").click()
    expect(page.locator("[data-part=status]")).to_have_text("The link is copied.")
    link = page.evaluate("navigator.clipboard.readText()")
    assert link == page.url
    page.goto(link)
    expect(mark(page)).to_be_visible()
    assert page.locator("[data-part=question]").inner_text() == other


def test_a_hostile_seed_stays_text(page: Page, handbook: str) -> None:
    opened(page, handbook, COUNTER, "%3Cimg%20src%3Dx%3E")
    expect(page.locator("[data-part=seed]")).to_have_text("Question <img src=x>")
    assert page.locator(".exercise img").count() == 0


def test_a_slip_that_is_not_known_asks_for_the_first_number(page: Page, handbook: str) -> None:
    opened(page, handbook, "counter-from-a-test", "x" * 50)  # too long to be a seed
    expect(page.locator("[data-part=seed]")).to_have_text(re.compile(r"Question \w{6}"))
    page.get_by_label("Set the counter to").fill("77 gal")
    mark(page).click()
    first = page.get_by_label("First: enter in the control")
    first.fill("1 gpg")
    mark(page).click()
    expect(page.locator("#answer-counter-said")).to_contain_text("The first number is off already")
    expect(page.get_by_label("Set the counter to")).to_have_value("77 gal")


def names(rows: Locator) -> list[str]:
    """Return the names of the steps in their present order."""
    return rows.evaluate_all("all => all.map((one) => one.dataset.name)")


def test_a_dangerous_order_is_told_first_and_mended_by_keyboard_alone(
    page: Page, handbook: str
) -> None:
    name = "make-the-unit-safe-in-order"
    opened(page, handbook, name)
    expect_to_fit_a_thumb(page)
    rows = page.locator(".exercise__items > li")

    def up(step: str, place: int) -> None:
        button = page.locator(f"li[data-name={step}]").get_by_role("button", name="Up:")
        button.focus()
        while names(rows).index(step) > place:
            page.keyboard.press("Enter")
            expect(button).to_be_focused()

    up("work", 0)
    expect(page.locator("[data-part=status]")).to_contain_text("Step 1 of 10: Do the work")
    mark(page).focus()
    page.keyboard.press("Enter")
    expect(word(page)).to_have_text("Not like this: somebody could get hurt.")
    expect(page.locator(".exercise__result li").first).to_contain_text("This can hurt somebody:")
    assert [(one["critical"], one["score"]) for one in attempts(page)] == [(True, 0)]
    for place, one in enumerate(exercises()[name]["items"]):
        up(one["name"], place)
    mark(page).focus()
    page.keyboard.press("Enter")
    expect(word(page)).to_have_text("Right.")


def test_evidence_is_marked_as_python_here_marks_it(page: Page, handbook: str) -> None:
    name = "evidence-around-the-brine-tank"
    opened(page, handbook, name)
    expect_to_fit_a_thumb(page)
    right = evidence.solve(exercises()[name], "CLASS7", "us", knowledge())["answers"]
    for row in right:
        group = page.get_by_role("group", name=row["label"])
        group.get_by_label(row["shown"], exact=True).check()
    mark(page).click()
    expect(word(page)).to_have_text("Right.")


def test_without_scripts_the_example_stands_with_its_solution(
    visits: Visits, handbook: str
) -> None:
    page = visits.page(java_script_enabled=False)
    page.goto(f"{handbook}practise/{COUNTER}/")
    expect(page.locator("section.exercise")).to_be_hidden()
    solved = solve(exercises()[COUNTER], "printed", "us")
    page.get_by_text("The solution of this example").click()
    expect(page.locator("details")).to_contain_text(
        solved["answers"][0]["shown"].replace("\u00a0", " ")
    )
