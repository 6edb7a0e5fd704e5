"""A learner's record in a real browser: kept, carried in files, signed off, and of a whole crew."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, expect

from calculators.practice.record import MOST_ATTEMPTS, read_record
from tests.browser.modules import BLANK
from tests.browser.visits import Visits
from tests.calculators.practice.records import attempt, call, record, seen

PHONE = {"width": 390, "height": 844}
MINE, TODAY = "practise/my-record/", "practise/today/"
SHEET, CREW = "trainers/sign-off/", "trainers/crew/"
SKILL = {"skill": "controls-and-settings", "family": "settings"}
ANA = record(*(attempt(at, "sheet-for-a-meter", **SKILL) for at in (0, 4, 20)))
KEEP = "(text) => localStorage.setItem('handbook-record', text)"
ADD = """async (answers) => {
  const { addAttempt } = await import(document.querySelector("script[src*='page/handbook.js']").src);
  return Promise.all(answers.map(addAttempt));
}"""
#: Saves the tests that ask Python nothing the time of its start.
SAVES_DATA = "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });"
ANSWER = {
    "item": "sheet-for-a-meter", **SKILL, "right": True, "sure": True, "score": 1, "critical": False
}  # fmt: skip


def opened(visits: Visits, handbook: str, address: str, kept: Any = None) -> Page:
    """Return a page in a profile of its own, in which a record (or any text) is kept."""
    page = visits.page(viewport=PHONE, accept_downloads=True)
    page.goto(f"{handbook}{BLANK}")
    if kept is not None:
        text = kept if isinstance(kept, str) else json.dumps(kept)
        page.evaluate(KEEP, text)
    page.goto(handbook + address)
    return page


def saving_data(visits: Visits) -> Page:
    """Return a blank page that starts no Python by itself."""
    page = visits.page(viewport=PHONE, accept_downloads=True)
    page.add_init_script(SAVES_DATA)
    return page


def kept_in(page: Page) -> str:
    return page.evaluate("() => localStorage.getItem('handbook-record')") or ""


def answer(page: Page, *seeds: str) -> list[dict[str, Any]]:
    return page.evaluate(ADD, [{**ANSWER, "seed": seed} for seed in seeds])


def load(page: Page, *files: tuple[str, str]) -> None:
    page.locator("section.record input[type=file]").set_input_files(
        [
            {"name": name, "mimeType": "application/json", "buffer": text.encode()}
            for name, text in files
        ]
    )


def saved(page: Page, button: str) -> tuple[str, str]:
    """Return the name and the text of the file that a button saves."""
    with page.expect_download() as downloading:
        page.get_by_role("button", name=button, exact=True).click()
    path = Path(downloading.value.path())
    return downloading.value.suggested_filename, path.read_text(encoding="utf-8-sig")


def told(page: Page) -> Any:
    return page.locator("section.record p[data-part=told]")


def count(page: Page) -> Any:
    return page.locator("[data-part=count]")


def test_an_answer_is_kept_over_a_reload_and_carried_to_another_phone(
    visits: Visits, handbook: str
) -> None:
    page = opened(visits, handbook, MINE)
    expect(count(page)).to_have_text(
        "Nothing is in it yet. It fills by itself when you do exercises and practice calls."
    )
    page.get_by_label("Whose record this is").fill(" Ana\u202e  Bee ")
    page.get_by_label("Whose record this is").press("Tab")
    expect(told(page)).to_have_text("The name is kept.")
    assert answer(page, "a") == [{"kept": True, "sentence": ""}]
    expect(count(page)).to_have_text("It holds 1 answer and 0 observations.")
    page.reload()
    expect(count(page)).to_have_text("It holds 1 answer and 0 observations.")
    controls = page.locator(".record__skills > li", has_text="Controls and settings")
    expect(controls.locator("small")).to_have_text(
        "Level 0; 1 of the last 1 answer right; 0 practice calls passed"
    )
    name, text = saved(page, "Save as a file")
    assert name.startswith("practice-record-ana-bee-20")
    assert name.endswith(".json")
    got = read_record(text)
    assert got["name"] == "Ana Bee"
    assert [one["seed"] for one in got["attempts"]] == ["a"]

    other = opened(visits, handbook, MINE)
    expect(count(other)).to_contain_text("Nothing is in it yet.")
    load(other, (name, text))
    expect(told(other)).to_have_text("The file brought 1 entry that was not here yet.")
    expect(count(other)).to_have_text("It holds 1 answer and 0 observations.")
    assert read_record(kept_in(other)) == got
    load(other, (name, text))
    expect(told(other)).to_have_text("All of the file was here already.")
    assert read_record(kept_in(other)) == got
    expect_refusals(other, text)


def expect_refusals(page: Page, text: str) -> None:
    """Load files that are no records, and find the old record as it was after each."""
    before = kept_in(page)
    damaged = "The file is damaged, or it is no record: it cannot be read."
    for wrong, said in (
        (text[:-20], damaged),
        (
            json.dumps({**json.loads(text), "version": 2}),
            "The file is of a newer edition of the handbook: it is version 2 of the record, and "
            "this edition knows version 1. Open the newest edition first.",
        ),
        ("[" * 300_000, damaged),
        ("", "The file is empty."),
    ):
        load(page, ("some.json", wrong))
        expect(told(page)).to_have_text(f"{said} Your record is as it was.")
        assert kept_in(page) == before


def test_a_kept_record_that_cannot_be_read_is_left_until_it_is_deleted(
    visits: Visits, handbook: str
) -> None:
    torn = json.dumps(ANA)[:-7]
    page = saving_data(visits)
    page.goto(f"{handbook}{BLANK}")
    page.evaluate(KEEP, torn)
    page.goto(handbook + MINE)
    problem = page.locator("[data-part=problem]")
    said = (
        "The record in this browser cannot be read by this edition of the handbook. It is left as "
        "it is: save it as a file from “My record” before you delete it."
    )
    expect(problem).to_have_text(said)
    assert answer(page, "a") == [{"kept": False, "sentence": said}]
    assert kept_in(page) == torn
    assert saved(page, "Save as a file")[1] == torn
    page.get_by_role("button", name="Delete the record").click()
    page.get_by_role("button", name="Keep it").click()
    expect(told(page)).to_have_text("The record is kept.")
    assert kept_in(page) == torn
    page.get_by_role("button", name="Delete the record").click()
    page.get_by_role("button", name="Delete it for good").click()
    expect(told(page)).to_have_text("The record is deleted.")
    expect(problem).to_be_hidden()
    expect(count(page)).to_contain_text("Nothing is in it yet.")
    assert kept_in(page) == ""


def test_two_pages_lose_nothing_of_each_other(visits: Visits, handbook: str) -> None:
    page = saving_data(visits)
    page.goto(f"{handbook}{BLANK}")
    page.evaluate(KEEP, json.dumps(ANA))
    other = page.context.new_page()
    other.add_init_script(SAVES_DATA)
    for one in (page, other):
        one.goto(handbook + MINE)
    for one in (page, other):
        expect(count(one)).to_have_text("It holds 3 answers and 0 observations.")
    answer(page, *"abcde")
    answer(other, *"fghij")
    answer(page, *"klm")
    for one in (page, other):
        expect(count(one)).to_have_text("It holds 16 answers and 0 observations.")
    got = read_record(kept_in(page))
    assert [one["seed"] for one in got["attempts"][3:]] == list("abcdefghijklm")


def test_what_another_page_wrote_over_is_added_anew(visits: Visits, handbook: str) -> None:
    page = saving_data(visits)
    page.goto(handbook + MINE)
    answer(page, "a", "b")
    before = kept_in(page)
    answer(page, "c")
    other = page.context.new_page()
    other.goto(f"{handbook}{BLANK}")
    other.evaluate(KEEP, before)
    expect(count(page)).to_have_text("It holds 3 answers and 0 observations.")
    assert [one["seed"] for one in read_record(kept_in(page))["attempts"]] == ["a", "b", "c"]
    other.evaluate("() => localStorage.removeItem('handbook-record')")
    expect(count(page)).to_contain_text("Nothing is in it yet.")
    other.evaluate(KEEP, json.dumps(ANA))
    expect(count(page)).to_have_text("It holds 3 answers and 0 observations.")
    assert read_record(kept_in(page)) == read_record(json.dumps(ANA))


def test_where_nothing_is_kept_a_sentence_says_so_and_the_file_holds_it(
    visits: Visits, handbook: str
) -> None:
    page = saving_data(visits)
    page.add_init_script(
        "for (const name of ['getItem', 'setItem']) { const own = Storage.prototype[name];"
        "Storage.prototype[name] = function (key, ...more) {"
        "if (key === 'handbook-record') { throw new DOMException('refused'); }"
        "return own.call(this, key, ...more); }; }"
    )
    page.goto(handbook + MINE)
    expect(count(page)).to_contain_text("Nothing is in it yet.")
    (written,) = answer(page, "a")
    assert written == {
        "kept": False,
        "sentence": "This browser keeps nothing for this site, or has no room left: save your "
        "record as a file from “My record” before you close this page.",
    }
    answer(page, "b")
    expect(count(page)).to_have_text("It holds 2 answers and 0 observations.")
    got = read_record(saved(page, "Save as a file")[1])
    assert [one["seed"] for one in got["attempts"]] == ["a", "b"]


def test_a_record_that_is_full_takes_no_more(visits: Visits, handbook: str) -> None:
    page = saving_data(visits)
    page.goto(f"{handbook}404.html")
    full = json.dumps(record(*[attempt(0)] * MOST_ATTEMPTS))
    page.evaluate(KEEP, full)
    assert answer(page, "a") == [
        {
            "kept": False,
            "sentence": "Your record is full: save it as a file from “My record”, delete it there, "
            "and begin a new one.",
        }
    ]
    assert kept_in(page) == full
    page.evaluate(KEEP, json.dumps(record(*[attempt(0)] * (MOST_ATTEMPTS - 1))))
    assert answer(page, "a") == [{"kept": True, "sentence": ""}]


def test_what_is_due_is_listed_with_its_link_and_goes_when_it_is_done(
    visits: Visits, handbook: str
) -> None:
    page = opened(visits, handbook, TODAY, ANA)
    due = page.locator(".record__due > li")
    expect(due).to_have_count(3)
    met = due.filter(has_not_text="; new")
    expect(met).to_have_count(1)
    expect(met).to_contain_text("due for")
    answer(page, "a")
    expect(met).to_have_count(0)
    expect(page.locator("[data-part=after]")).to_contain_text("1 item is done today.")
    link = due.first.locator("a")
    title = link.inner_text()
    link.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text(title.partition(":")[0])


def test_a_sheet_is_filled_and_what_was_seen_is_added(visits: Visits, handbook: str) -> None:
    page = opened(visits, handbook, SHEET, ANA)
    page.get_by_role("button", name="Fill it from the record on this device").click()
    expect(page.locator("[data-sheet=name]")).to_have_text("Ana Bee")
    page.get_by_label("Skill", exact=True).select_option("The brine side")
    page.get_by_label("System").fill("3 Gannet Lane")
    page.get_by_role("textbox", name="Observer").fill("ana bee")
    page.get_by_role("button", name="Add", exact=True).click()
    expect(page.locator("[data-part=wrong]")).to_have_text(
        "Nobody signs off their own work. Write the name of the person who watched."
    )
    expect(page.get_by_label("System")).to_have_value("3 Gannet Lane")
    page.get_by_role("textbox", name="Observer").fill("Marta Quill")
    page.get_by_role("textbox", name="Day").fill("2026-03-09")
    page.get_by_role("button", name="Add", exact=True).click()
    expect(told(page)).to_have_text("It is added to the record on this device.")
    first = page.locator("[data-sheet='brine-side first']")
    expect(first).to_have_text("2026-03-09, 3 Gannet Lane, Marta Quill (3)")
    brine = {"skill": "brine-side", "day": "2026-03-09", "level": 3}
    assert read_record(kept_in(page))["observed"] == [
        {**brine, "observer": "Marta Quill", "system": "3 Gannet Lane"}
    ]

    li = record(seen(2, "2 Quay", skill="brine-side"), name="Li")
    load(page, ("li.json", json.dumps(li)))
    expect(page.locator("[data-sheet=name]")).to_have_text("Li")
    expect(first).to_have_text("2026-03-04, 2 Quay, Marta Quill (3)")
    load(page, ("li.json", '{"version": 2}'))
    expect(told(page)).to_contain_text("The sheet is as it was.")
    expect(first).to_have_text("2026-03-04, 2 Quay, Marta Quill (3)")
    page.get_by_role("button", name="Make it blank").click()
    expect(first).to_have_text("")
    assert read_record(kept_in(page))["name"] == "Ana Bee"


def test_a_crew_of_three_is_shown_and_saved_as_a_table(visits: Visits, handbook: str) -> None:
    page = opened(visits, handbook, CREW)
    jonas = record(*(attempt(at, right=at > 3, **SKILL) for at in range(8)), name="Jonas Wick")
    li = record(seen(1, "2 Quay", skill="brine-side"), call(2, "QA", 0.9), name="=Li <b>")
    load(page, ("ana.json", json.dumps(ANA)), ("jonas.json", json.dumps(jonas)))
    load(page, ("li.json", json.dumps(li)), ("torn.json", "{"))
    expect(page.locator("[data-part=status]")).to_have_text("3 people are in the tables.")
    expect(page.locator("[data-part=refused] li")).to_have_text(
        "torn.json: The file is damaged, or it is no record: it cannot be read."
    )
    assert page.locator("[data-part=stands-head] th").all_inner_texts() == [
        "Skill", "=Li <b>", "Ana Bee", "Jonas Wick", "Signed off",
    ]  # fmt: skip
    heat = page.locator("[data-part=heat] tr", has_text="Controls and settings").locator("td")
    assert [" ".join(text.split()) for text in heat.all_inner_texts()] == [
        "100 % 1 of 1", "100 % 3 of 3", "50 % 4 of 8", "67 % 8 of 12",
    ]  # fmt: skip
    stands = page.locator("[data-part=stands] tr", has_text="The brine side").locator("td")
    assert " ".join(stands.first.inner_text().split()) == "Level 3 not yet"
    name, text = saved(page, "Save as a table file")
    assert name.endswith(".csv")
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert len(rows) == 1 + 3 * 9
    assert {row[0] for row in rows[1:]} == {"'=Li <b>", "Ana Bee", "Jonas Wick"}
    assert kept_in(page) == ""
    page.get_by_role("button", name="Take away ana.json").click()
    expect(page.locator("[data-part=status]")).to_have_text("2 people are in the tables.")
    assert page.evaluate("() => document.documentElement.scrollWidth") <= PHONE["width"]


def test_without_scripts_the_sheet_and_the_rules_are_there(visits: Visits, handbook: str) -> None:
    page = visits.page(java_script_enabled=False, viewport=PHONE)
    page.goto(handbook + SHEET)
    expect(page.get_by_role("row")).to_have_count(1 + 9)
    expect(page.get_by_role("heading", name="What signs a skill off")).to_be_visible()
    expect(page.locator("section.record")).to_be_hidden()
    page.goto(handbook + TODAY)
    expect(page.get_by_text("comes back after 1, 3, 7, 16, 35, 90 days")).to_be_visible()
