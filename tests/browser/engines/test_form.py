"""A form in the other browsers: it answers as Python here does, and says what is wrong."""

from __future__ import annotations

import re

from build_tools.engines.engine import Engine
from calculators import run
from calculators.figures import curve_picture
from tests.browser.engines.forms import wait_for_answer

HOSTILE = '<img src=x onerror="window.harmed = true">'


def test_typed_numbers_are_answered_as_python_answers_them_here(
    engine: Engine, bare: str
) -> None:
    engine.visit(bare)
    for typed in ("25", "410 mg/L", "1 1/2 gpg"):
        engine.type("#setting-hardness", typed)
        wait_for_answer(engine, "#setting")


def test_a_problem_stands_beside_its_field(engine: Engine, bare: str) -> None:
    engine.visit(bare)
    for typed in ("18 psi", HOSTILE):
        before = engine.text("#setting [data-part=values]")
        engine.type("#setting-hardness", typed)
        sentence = run("hardness-setting", {"hardness": typed})["problems"]["hardness"]
        engine.wait_for_text("#setting-hardness-problem", sentence)
        assert engine.text("#setting [data-part=for-label]") == "Still for the earlier numbers:"
        assert engine.text("#setting [data-part=values]") == before
        assert engine.script("() => document.images.length") == 0
        assert engine.script("() => window.harmed ?? null") is None
        engine.type("#setting-hardness", "20 gpg")
        wait_for_answer(engine, "#setting")


def test_the_picture_follows_the_answer(engine: Engine, bare: str) -> None:
    engine.visit(bare)
    engine.type("#capacity-salt", "15 lb")
    drawn = curve_picture("resin-capacity", {"salt": "15 lb", "resin_volume": "1.5 ft³"})
    engine.wait_for(
        """() => document.querySelector("#capacity .live-form__picture svg")
          .getAttribute("aria-label")""",
        value=re.search('aria-label="([^"]*)"', drawn)[1],
    )
    height = "() => document.querySelector('#capacity svg').getBoundingClientRect().height"
    assert engine.script(height) > 100


def test_the_handbook_s_form_takes_other_numbers(engine: Engine, handbook: str) -> None:
    engine.visit(f"{handbook}work-out/hardness-setting/")
    built = engine.text("section.live-form [data-part=values]")
    engine.type("section.live-form input[id$=-hardness]", "51")
    wait_for_answer(engine, "section.live-form")
    assert engine.text("section.live-form [data-part=values]") != built


def test_a_page_s_text_is_complete_before_scripts(engine: Engine, handbook: str) -> None:
    """Its HTML as it came is read into a document in which no script ever runs."""
    engine.visit(f"{handbook}faults/salt-bridge/")
    assert engine.script(
        """async () => {
          const html = await (await fetch(location.href)).text();
          const still = new DOMParser().parseFromString(html, "text/html").querySelector("article");
          const words = (article) => article.textContent.replace(/\\s+/g, " ").trim();
          return words(still) === words(document.querySelector("article"));
        }"""
    )
