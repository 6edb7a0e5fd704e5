"""The printed pages: questions without answers, a key with all of them, the same bytes each time."""

from __future__ import annotations

import hashlib
import html
import re
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser

from build_tools.class_pack.pack import Pack, Wanted, write
from build_tools.class_pack.pdf import printed, without_chance
from build_tools.class_pack.sheets import in_style
from build_tools.content.handbook import Handbook
from build_tools.set_up.failure import Failure

SMALL = ["minutes-of-the-refill", "make-the-unit-safe-in-order"]


def plain(page: str) -> str:
    """Return the words of a page."""
    body = page[page.index("<body>") :]
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", body)).split())


def spaced(text: str) -> str:
    return " ".join(text.split())


@pytest.fixture(scope="module")
def pages(pack: Pack) -> dict[str, str]:
    return pack.pages()


def test_question_sheets_hold_every_question_and_no_answer(
    pack: Pack, pages: dict[str, str]
) -> None:
    words = plain(pages["questions.html"])
    for sheet in pack.sheets:
        for posed in sheet.exercises:
            assert spaced(posed.question["story"]) in words
            assert all(spaced(caution["text"]) in words for caution in posed.cautions)
            told = [
                *(field.also for field in posed.fields if field.also),
                *(slip.sentence for field in posed.fields for slip in field.slips),
                *(text for part in posed.solution for text in part.get("sentences", ())),
                *(step["result"] for part in posed.solution for step in part.get("workings", ())),
            ]
            given = {spaced(one["shown"]) for one in posed.question["given"]}
            for text in told:
                known = text in given or spaced(text) in spaced(posed.question["story"])
                assert known or f" {spaced(text)} " not in words, (posed.exercise["id"], text)
        for call in sheet.calls:
            assert call.code in words
            assert all(fault["title"] not in words for fault in call.debrief["faults"])


def test_all_of_a_metric_pack_is_metric(handbook: Handbook) -> None:
    names = ["set-the-clock-in-order", "clean-the-injector-in-order", "water-to-draw-until-soft"]
    words = plain(
        Pack(handbook, Wanted("7", exercises=names, units="metric")).pages()["questions.html"]
    )
    assert "stands above 5.5 bar at rest" in words
    assert "Water at 60 °C burns" in words
    assert "that is 2:00." in words
    assert not re.search(r"\d (psi|°F|gal|am|pm)\b", words)


def test_steps_to_order_do_not_stand_in_their_order(pack: Pack, pages: dict[str, str]) -> None:
    words = plain(pages["questions.html"])
    orders = [one for one in pack.sheets[0].exercises if one.fields[0].kind == "order"]
    for posed in orders:
        places = [words.index(spaced(one["text"])) for one in posed.exercise["items"]]
        assert places != sorted(places)
    assert orders


def test_the_key_holds_each_answer_its_working_and_what_slips_give(
    pack: Pack, pages: dict[str, str]
) -> None:
    words = plain(pages["key.html"])
    for sheet in pack.sheets:
        for posed in sheet.exercises:
            for field in posed.fields:
                if field.kind != "order":
                    assert f"{spaced(field.label)}: {spaced(field.shown)}" in words
                assert all(spaced(slip.sentence) in words for slip in field.slips)
            for part in posed.solution:
                texts = [*part.get("sentences", ()), *part.get("ordered", ())]
                texts += [step["numbers"] for step in part.get("workings", ())]
                assert texts
                assert all(spaced(text) in words for text in texts)
        for call in sheet.calls:
            assert all(fault["title"] in words for fault in call.debrief["faults"])
            assert all(reading["title"] in words for reading in call.readings)


def test_a_page_needs_no_other_file_and_bears_edition_and_seed(pages: dict[str, str]) -> None:
    for name, page in pages.items():
        loaded = re.findall(r'(?:src|href)="([^"]*)"', page)
        assert loaded == ["data:,"], name
        assert "url(" not in page
        assert "@import" not in page
        assert "<script" not in page
        for number in (1, 2):
            kind = "Sheet" if name == "questions.html" else "Key to sheet"
            foot = f'"{kind} {number} of 2, seed 7, edition of 2026-05-01"'
            assert f"@bottom-left {{ content: {foot}; }}" in page


def test_hostile_words_in_a_seed_stay_words(handbook: Handbook) -> None:
    seed = '"}</style><b>\\'
    pack = Pack(handbook, Wanted(seed, exercises=["bucket-and-watch"]))
    for page in pack.pages().values():
        assert page.count("</style>") == 1
        assert "<b>" not in page
        assert f"seed {in_style(seed)}, edition without a date" in page
        assert f"seed {html.escape(seed, quote=False)}" in page.replace("&#34;", '"')


def test_both_pages_fit_a_phone_and_open_from_the_disk(
    pages: dict[str, str], browser: Browser, tmp_path: Path
) -> None:
    asked: list[str] = []
    with browser.new_page(viewport={"width": 390, "height": 844}) as page:
        page.on("request", lambda request: asked.append(request.url))
        for name, text in pages.items():
            (tmp_path / name).write_text(text, "utf-8")
            page.goto((tmp_path / name).as_uri())
            assert page.evaluate("document.documentElement.scrollWidth") <= 390, name
    assert asked
    assert [one for one in asked if not one.startswith(("file:", "data:"))] == []


def files_of(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_what_the_browser_counts_and_when_it_prints_is_not_in_a_pdf():
    head = b"<</CreationDate (D:20261126095901+00'00')>> <</ID (node%08d)>> <</ID (node%08d)>>"
    one, other = (without_chance(head % pair, "2026-05-01") for pair in ((25, 31), (24, 30)))
    assert one == other
    assert len(one) == len(head % (25, 31))
    assert b"D:20260501000000" in one and one.index(b"node00000001") < one.index(b"node00000002")


def test_the_same_seed_makes_the_same_bytes_and_the_pdf_has_its_text(
    handbook: Handbook, browser_program: str, tmp_path: Path
) -> None:
    made = {}
    for name, seed in (("one", "7"), ("same", "7"), ("other", "8")):
        wanted = Wanted(seed, exercises=SMALL, people=2, edition="2026-05-01")
        said: list[str] = []
        pdf = browser_program if seed == "7" else None
        names = write(Pack(handbook, wanted), tmp_path / name, pdf, said.append)
        made[name] = files_of(tmp_path / name)
        assert sorted({*names, "class-pack.json"}) == sorted(made[name])
        line = "No PDF files: print questions.html and key.html from a browser."
        assert said == ([] if pdf else [line])
    assert made["one"] == made["same"]
    assert set(made["other"].values()).isdisjoint(made["one"].values())
    for name in ("questions", "key"):
        read = pypdf.PdfReader(tmp_path / "one" / f"{name}.pdf")
        assert read.metadata.creation_date.isoformat() == "2026-05-01T00:00:00+00:00"
        texts = [spaced(page.extract_text()) for page in read.pages]
        assert len(texts) >= 2
        for number, text in enumerate(texts, 1):
            assert f"Page {number} of {len(texts)}" in text
            assert "seed 7, edition of 2026-05-01" in text
        whole = " ".join(texts)
        assert "The minutes of the refill" in whole
        assert ("Slips, and what they give" in whole) == (name == "key")
        assert ("Name" in whole and "Date" in whole) == (name == "questions")
        assert "of 2, seed 7" in texts[-1]


def test_a_browser_that_prints_nothing_is_told(tmp_path: Path) -> None:
    page = tmp_path / "key.html"
    page.write_text("<p>Key", "utf-8")
    for browser in ("/bin/true", "/bin/false", str(tmp_path / "none")):
        with pytest.raises(Failure) as failure:
            printed(browser, page)
        assert str(failure.value) == (
            f"The browser {browser} made no PDF of key.html. Print that page from a browser of "
            "yours, or leave PDF files out with --no-pdf."
        )
