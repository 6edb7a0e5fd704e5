"""A form in a real browser: what is typed is answered by Python, and what is wrong is said."""

from __future__ import annotations

import re
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
from playwright.sync_api import Locator, Page, expect

from calculators import CALCULATORS, run
from calculators.figures import curve_picture
from tests.browser.visits import EXAMPLES, Visits

# Holds back the first calculation on its way to the worker until the page says `release()`.
HOLD_FIRST_CALCULATION = """
  const send = Worker.prototype.postMessage;
  let held = null;
  Worker.prototype.postMessage = function (message) {
    if (message.request?.includes('"calculate"') && held === null) {
      document.documentElement.dataset.held = "first";
      held = () => new Promise((answered) => {
        this.addEventListener("message", answered, { once: true });
        send.call(this, message);
      });
      return;
    }
    send.call(this, message);
  };
  window.release = () => held();
"""


def field(page: Page, name: str, form: str = "setting") -> Locator:
    return page.locator(f"#{form}-{name}")


def shown(page: Page, output: str, form: str = "setting") -> Locator:
    return page.locator(f"#{form} [data-output={output}] strong")


def in_form(page: Page, part: str, form: str = "setting") -> Locator:
    return page.locator(f"#{form} .live-form__{part}")


def answer(form: str, output: str, **typed: str) -> str:
    """Return what Python here shows for a form's example with other texts typed in."""
    calculator, texts = EXAMPLES[form]
    return run(calculator, {**texts, **typed})["values"][output]["shown"]


def test_every_calculator_answers_its_own_example_as_the_build_did(
    visits: Visits, bare: str
) -> None:
    page = visits.page()
    page.goto(f"{bare}every.html")
    answered = {}
    for name, calculator in CALCULATORS.items():
        block = page.locator(f"#{name} .live-form__answer")
        built = block.inner_text()
        for one in calculator.inputs:
            if one.choices and one.example != one.default:  # a question about safety
                field(page, one.name, name).select_option(one.example)
        typed = page.locator(f"#{name} input:visible").first
        example = typed.input_value()
        typed.fill("no number")
        problem = in_form(page, "problem", name).filter(visible=True)
        expect(problem).to_contain_text("no number")
        typed.fill(example)
        expect(problem).to_have_count(0)
        expect(in_form(page, "for", name)).to_contain_text(re.compile("^For:"))
        answered[name] = (built, block.inner_text())
    assert {name: texts for name, texts in answered.items() if texts[0] != texts[1]} == {}


def test_the_picture_follows_the_answer(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    picture = page.locator("#capacity .live-form__picture svg")
    expect(picture).to_have_attribute("aria-label", re.compile(answer("capacity", "capacity")))
    field(page, "salt", "capacity").fill("15 lb")
    drawn = curve_picture("resin-capacity", {"salt": "15 lb", "resin_volume": "1.5 ft³"})
    words = re.search('aria-label="([^"]*)"', drawn)[1]
    expect(picture).to_have_attribute("aria-label", words)
    assert words.endswith(f"{answer('capacity', 'capacity', salt='15 lb')}.")
    field(page, "salt", "capacity").fill("15 gpg")
    expect(in_form(page, "problem", "capacity").first).to_be_visible()
    expect(picture).to_have_attribute("aria-label", words)
    page.locator("#capacity [data-action=example]").click()
    expect(picture).to_have_attribute("aria-label", re.compile(answer("capacity", "capacity")))


def test_a_slider_writes_into_its_field_and_the_picture_follows(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(f"{bare}every.html")
    form = "simulated-softener"
    text, slider = (
        field(page, "hardness", form),
        page.locator(f"#{form} [data-input=hardness] .live-form__slider"),
    )
    picture = page.locator(f"#{form} .live-form__picture svg")
    example = page.evaluate("document.querySelector('#simulated-softener-hardness').defaultValue")
    expect(slider).to_have_attribute("aria-valuetext", example)
    built = picture.get_attribute("aria-label")

    slider.focus()
    for _ in range(5):
        slider.press("ArrowRight")

    moved = f"{int(example.split()[0]) + 5} gpg"
    expect(text).to_have_value(moved)
    expect(in_form(page, "for", form)).to_contain_text(
        f"Hardness of the raw water: {moved}".replace(" gpg", "\u00a0gpg")
    )
    expect(picture).not_to_have_attribute("aria-label", built)
    assert slider.bounding_box()["height"] >= 44

    text.fill("8 gpg")
    expect(slider).to_have_attribute("aria-valuetext", "8 gpg")
    assert slider.input_value() == "4"
    text.fill("1,030.4")
    expect(slider).to_have_attribute("aria-valuetext", "1,030.4")
    assert slider.input_value() == "36"
    text.fill("10.3 gpg")
    expect(slider).to_have_attribute("aria-valuetext", "10.3 gpg")
    assert slider.input_value() == "6"
    page.locator(f"#{form} [data-action=example]").click()
    expect(slider).to_have_attribute("aria-valuetext", example)


def test_a_typed_number_is_answered_as_python_answers_it_here(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    field(page, "hardness").fill("25")
    expect(shown(page, "setting")).to_have_text(answer("setting", "setting", hardness="25"))
    field(page, "iron").fill("2 ppm")
    expected = answer("setting", "setting", hardness="25", iron="2 ppm")
    expect(shown(page, "setting")).to_have_text(expected)
    expect(in_form(page, "status")).to_contain_text(expected)
    expect(in_form(page, "for")).to_contain_text("For: Hardness of the raw water: 25 gpg")
    # What the worker fetches is seen too, or else the check for other hosts would prove little.
    assert any(url.endswith("/pack.json") for url in visits.requests)


def plain(html: str) -> str:
    """Return HTML without spaces, and without the namespace, whose place in a tag may differ."""
    return "".join(html.replace('xmlns="http://www.w3.org/2000/svg"', "").split())


def test_an_answer_has_the_shape_that_the_built_page_has(visits: Visits, bare: str) -> None:
    scriptless = visits.page(java_script_enabled=False)
    scriptless.goto(bare)
    page = visits.page()
    page.goto(bare)
    for form, name, other, text in [
        ("setting", "hardness", "19", "18 gpg"),
        ("leak", "drips", "61", "60 /min"),
    ]:
        built = in_form(scriptless, "answer", form).inner_html()
        field(page, name, form).fill(other)
        expect(in_form(page, "for", form)).to_contain_text(other)
        field(page, name, form).fill(text)
        expect(in_form(page, "for", form)).to_contain_text(text.split()[0])
        words = in_form(scriptless, "picture", form).locator("svg").get_attribute("aria-label")
        drawn = in_form(page, "picture", form).locator("svg")  # it follows the answer
        expect(drawn).to_have_attribute("aria-label", words)
        live = in_form(page, "answer", form).inner_html()
        assert plain(live) == plain(built)


def test_a_problem_stands_beside_its_field_and_the_old_answer_says_whose_it_is(
    visits: Visits, bare: str
) -> None:
    page = visits.page()
    page.goto(bare)
    before = shown(page, "setting").inner_text()
    sentence = run("hardness-setting", {"hardness": "18 psi"})["problems"]["hardness"]
    field(page, "hardness").fill("18 psi")
    expect(page.locator("#setting-hardness-problem")).to_have_text(sentence)
    expect(field(page, "hardness")).to_have_attribute("aria-invalid", "true")
    expect(field(page, "hardness")).to_have_accessible_description(
        f"From a test at a flushed raw tap. {sentence}"
    )
    expect(in_form(page, "status")).to_contain_text(sentence)
    expect(in_form(page, "for")).to_contain_text("Still for the earlier numbers:")
    expect(in_form(page, "for")).to_contain_text("18 gpg")
    expect(shown(page, "setting")).to_have_text(before)
    field(page, "hardness").fill("20 gpg")
    expect(page.locator("#setting-hardness-problem")).to_be_hidden()
    expect(field(page, "hardness")).not_to_have_attribute("aria-invalid", "true")
    expect(in_form(page, "for")).to_contain_text("For: Hardness of the raw water: 20 gpg")


def test_warnings_come_and_go(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    field(page, "iron").fill("9 mg/L")
    (warning, *_) = run("hardness-setting", {"hardness": "18", "iron": "9"})["warnings"]
    expect(in_form(page, "warnings").locator("li").first).to_have_text(f"Take note: {warning}")
    field(page, "iron").fill("0.1 mg/L")
    expect(in_form(page, "warnings").locator("li")).to_have_count(0)


def test_the_address_carries_the_inputs_and_a_link_restores_them(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(f"{bare}?kept=yes#setting")
    field(page, "hardness").fill("410 mg/L")
    expected = answer("setting", "setting", hardness="410 mg/L")
    expect(shown(page, "setting")).to_have_text(expected)
    query = parse_qs(urlsplit(page.url).query)
    assert query["kept"] == ["yes"]
    assert query["setting.hardness"] == ["410 mg/L"]
    friend = visits.page()
    friend.goto(page.url)
    expect(field(friend, "hardness")).to_have_value("410 mg/L")
    expect(field(friend, "iron")).to_have_value("0.3 mg/L")
    expect(shown(friend, "setting")).to_have_text(expected)
    field(page, "hardness").fill("18 gpg")
    expect(shown(page, "setting")).to_have_text(answer("setting", "setting"))
    assert parse_qs(urlsplit(page.url).query) == {"kept": ["yes"]}


def test_the_copied_link_names_every_number(visits: Visits, bare: str) -> None:
    page = visits.page(permissions=["clipboard-read", "clipboard-write"])
    page.goto(bare)
    field(page, "drips", "leak").fill("90")
    expect(in_form(page, "for", "leak")).to_contain_text("90")
    page.locator("#leak").get_by_role("button", name="Copy a link to these numbers").click()
    expect(in_form(page, "status", "leak")).to_have_text("The link is copied.")
    link = urlsplit(page.evaluate("navigator.clipboard.readText()"))
    assert link.fragment == "leak"
    copied = parse_qs(link.query, keep_blank_values=True)
    assert copied["leak.measured"] == ["drips"]
    assert copied["leak.drips"] == ["90"]
    assert copied["leak.drop_size"] == ["0.25 mL"]
    assert "leak.cistern_area" not in copied


def test_the_way_back_to_the_example(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    built = in_form(page, "answer").inner_html()
    field(page, "hardness").fill("40")
    expect(shown(page, "setting")).to_have_text(answer("setting", "setting", hardness="40"))
    field(page, "iron").fill("much")
    expect(page.locator("#setting-iron-problem")).to_be_visible()
    page.locator("#setting").get_by_role("button", name="Back to the example").click()
    expect(field(page, "hardness")).to_have_value("18 gpg")
    expect(page.locator("#setting-iron-problem")).to_be_hidden()
    assert in_form(page, "answer").inner_html() == built
    assert urlsplit(page.url).query == ""


HOSTILE = '<img src=x onerror="window.harmed = true"><script>window.harmed = true</script>'


@pytest.mark.parametrize("name", ["drips", "measured"])
def test_hostile_text_in_a_link_stays_text(visits: Visits, bare: str, name: str) -> None:
    page = visits.page()
    page.goto(f"{bare}?{urlencode({f'leak.{name}': HOSTILE})}")
    expect(field(page, name, "leak")).to_have_value(HOSTILE)
    expect(field(page, name, "leak")).to_have_attribute("aria-invalid", "true")
    problem = run("small-leak", {**EXAMPLES["leak"][1], name: HOSTILE})["problems"][name]
    expect(page.locator(f"#leak-{name}-problem")).to_have_text(problem)
    assert page.locator("img").count() == 0
    assert page.evaluate("window.harmed") is None


def test_inputs_that_do_not_count_are_out_of_sight(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.goto(bare)
    expect(field(page, "cistern_area", "leak")).to_be_hidden()
    field(page, "drips", "leak").fill("not a number")
    expect(page.locator("#leak-drips-problem")).to_be_visible()
    field(page, "measured", "leak").select_option("toilet cistern")
    expect(field(page, "drips", "leak")).to_be_hidden()
    expect(field(page, "cistern_area", "leak")).to_be_visible()
    field(page, "cistern_area", "leak").fill("96 in²")
    field(page, "fall", "leak").fill("1/2 in")
    field(page, "time", "leak").fill("20 min")
    texts = {"measured": "toilet cistern", "cistern_area": "96", "fall": "1/2 in", "time": "20"}
    (name, value), *_ = run("small-leak", texts)["values"].items()
    expect(shown(page, name, "leak")).to_have_text(value["shown"])
    field(page, "measured", "leak").select_option("drips")
    expect(field(page, "drips", "leak")).to_have_value("not a number")


def test_an_answer_that_comes_late_is_dropped(visits: Visits, bare: str) -> None:
    page = visits.page()
    page.add_init_script(HOLD_FIRST_CALCULATION)
    page.goto(bare)
    field(page, "hardness").fill("30")
    expect(page.locator("html")).to_have_attribute("data-held", "first")
    field(page, "hardness").fill("35")
    expected = answer("setting", "setting", hardness="35")
    expect(shown(page, "setting")).to_have_text(expected)
    page.evaluate("window.release()")
    expect(shown(page, "setting")).to_have_text(expected)
    expect(in_form(page, "for")).to_contain_text("For: Hardness of the raw water: 35 gpg")


def test_the_keyboard_alone_changes_a_number_and_reaches_the_answer(
    visits: Visits, bare: str
) -> None:
    page = visits.page()
    page.goto(bare)
    expect(field(page, "hardness")).to_be_editable()
    page.keyboard.press("Tab")
    expect(field(page, "hardness")).to_be_focused()
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type("33")
    expect(shown(page, "setting")).to_have_text(answer("setting", "setting", hardness="33"))
    expect(field(page, "hardness")).to_be_focused()
    page.keyboard.press("Enter")
    assert urlsplit(page.url).path == "/"
    field(page, "measured", "leak").focus()
    page.keyboard.press("ArrowUp")
    expect(field(page, "measured", "leak")).to_have_value("cup and watch")
    expect(field(page, "caught", "leak")).to_be_visible()


def test_every_field_has_a_label_and_every_target_is_large_enough(
    visits: Visits, bare: str
) -> None:
    page = visits.page()
    page.goto(bare)
    expect(field(page, "hardness")).to_be_editable()
    for control in page.locator("input:visible, select:visible, button:visible").all():
        expect(control).to_have_accessible_name(re.compile(r"\w{3}"))
        assert control.bounding_box()["height"] >= 44
