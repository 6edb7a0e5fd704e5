"""The pages of exercises stand without scripts, and the handbook leads to them."""

from __future__ import annotations

import html
from pathlib import Path

import pytest

from build_tools.practice.printed import SEED
from calculators.practice.exercises import pose, solve
from tests.calculators.practice.shipped import exercises, knowledge
from tests.pages.conftest import Text


def words_of(site: Path, address: str) -> str:
    page = (site / address / "index.html").read_text(encoding="utf-8")
    return str(Text(page)).replace("\u00a0", " ")


@pytest.mark.parametrize(
    "name",
    [
        "counter-from-a-test",
        "since-the-water-turned-hard",
        "sheet-for-a-meter",
        "make-the-unit-safe-in-order",
        "evidence-of-flow-and-draw",
    ],
)
def test_a_page_prints_an_example_and_its_solution(shipped: Path, name: str) -> None:
    exercise = exercises()[name]
    library = knowledge() if exercise["kind"] == "evidence" else None
    question = pose(exercise, SEED, "us", library)
    solved = solve(exercise, SEED, "us", library)
    words = words_of(shipped, f"practise/{name}")
    told = [
        question["story"],
        *(row["shown"] for row in (*question["given"], *solved["answers"])),
        *(one["title"] for one in solved["solution"]),
        *(step["result"] for one in solved["solution"] for step in one["workings"]),
        *(text for one in solved["solution"] for text in one["ordered"]),
    ]
    for text in told:
        assert text.replace("\u00a0", " ") in words, text
    page = (shipped / "practise" / name / "index.html").read_text(encoding="utf-8")
    solution = page.partition("The solution of this example")[2].partition("</details>")[0]
    lists = ("workings", "ordered", "sentences")
    listed = sum(len(one[part]) for one in solved["solution"] for part in lists)
    assert solution.count("<li>") == listed
    assert solution.count("<p><strong>") == len(solved["answers"]) + len(solved["solution"])


def test_every_exercise_is_listed_in_its_family(shipped: Path) -> None:
    listed = (shipped / "practise" / "exercises" / "index.html").read_text(encoding="utf-8")
    for name, exercise in exercises().items():
        assert f'href="../{name}/"' in listed
        assert html.escape(exercise["title"], quote=False) in listed
    assert 'href="exercises/"' in (shipped / "practise" / "index.html").read_text(encoding="utf-8")


def test_lessons_and_calculators_lead_to_their_exercises(shipped: Path) -> None:
    for address, name in (
        ("learn/iron-and-the-setting", "setting-for-water-with-iron"),
        ("work-out/bucket-flow", "bucket-and-watch"),
        ("procedures/set-the-clock", "set-the-clock-in-order"),
    ):
        page = (shipped / address / "index.html").read_text(encoding="utf-8")
        assert f'href="../../practise/{name}/"' in page, address


def test_what_a_script_gets_holds_no_answer(shipped: Path) -> None:
    page = (shipped / "practise" / "counter-from-a-test" / "index.html").read_text(encoding="utf-8")
    (start,) = [line for line in page.splitlines() if 'class="exercise"' in line]
    data = html.unescape(start)
    (shown,) = solve(exercises()["counter-from-a-test"], SEED, "us")["answers"]
    assert shown["shown"].replace("\u00a0", " ") not in data.replace("\u00a0", " ")
    assert '"ask"' in data
