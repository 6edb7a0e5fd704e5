"""What sources must not bring: scripts, and whatever else the pages' policy blocks."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

LESSON = "learn/hardness.md"
FIRST_LOOK = "procedures/drain-flow.yaml"
OWN = "pages run only the handbook's own scripts"
TEXT = f"does not work in a page (expected text, links and images: {OWN})"
ADDRESS = "(expected a path from this file, or one that begins with https:, http:, mailto:, tel:)"

WRONG = [
    (LESSON, "Go on to", "<script>alert(1)</script>\n\nGo on to", f"31: the tag <script> {TEXT}"),
    (
        LESSON, "Go on to", 'Go <script src="https://host.example/a.js"></script> on to',
        f"31: the tag <script> {TEXT}",
    ),
    (LESSON, "Go on to", "One\n<ScRiPt>alert(1)</ScRiPt>\nGo on to", f"32: the tag <script> {TEXT}"),
    (LESSON, "Go on to", '<iframe src="x"></iframe> Go on to', f"31: the tag <iframe> {TEXT}"),
    (LESSON, "Go on to", "<style>p { color: red }</style>\n\nGo on to", f"31: the tag <style> {TEXT}"),
    (
        LESSON, "Go on to", '<b onclick="alert(1)">Go</b> on to',
        f'31: the attribute "onclick" would run a script (expected none: {OWN})',
    ),
    (
        LESSON, "Go on to", '<p style="color: red">Red.</p>\n\nGo on to',
        '31: the attribute "style" does not work in a page (expected a class of the stylesheet)',
    ),
    (
        LESSON, "Go on to", 'Go on{: onclick="alert(1)" } to',
        f'31: the attribute "onclick" would run a script (expected none: {OWN})',
    ),
    (
        LESSON, "Go on to", "[Go](javascript:alert) on to",
        f'31: the link "javascript:alert" is no address of a page {ADDRESS}',
    ),
    (
        LESSON, "Go on to", '<a href="java&#115;cript:alert(1)">Go</a> on to',
        f'31: the link "javascript:alert(1)" is no address of a page {ADDRESS}',
    ),
    (
        FIRST_LOOK, "Put the drain line back.", "Put the <script>alert(1)</script> line back.",
        f"11: the tag <script> {TEXT}",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), WRONG)
def test_a_script_is_refused_with_its_line(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new)) == [f"docs_src/{name}:{said}"]


@pytest.mark.parametrize(
    "text",
    [
        "Write `<script>` so.",
        "Call [the shop](tel:+15550100), or [write](mailto:shop@host.example).",
        'A <abbr title="grains for each gallon">gpg</abbr> is a unit{: .aim }.',
        "Online, on time, on-site: onclick is a word here.",
    ],
)
def test_harmless_texts_stay_silent(tmp_path: Path, text: str) -> None:
    assert problems_of(tmp_path, changed(LESSON, "Go on to", f"{text}\n\nGo on to")) == []


@pytest.mark.parametrize("ending", ["html", "js", "XHTML"])
def test_a_file_that_could_run_scripts_is_refused(tmp_path: Path, ending: str) -> None:
    files = {**FILES, f"images/tool.{ending}": "alert(1)"}
    assert problems_of(tmp_path, files) == [
        (
            f'docs_src/images/tool.{ending}:1: a file ".{ending.lower()}" could run scripts in '
            "the handbook's name (expected no such file)"
        )
    ]


@pytest.mark.parametrize(
    ("inside", "tag"),
    [
        ("<script>alert(1)</script>", "script"),
        ('<g onload="alert(1)"/>', "g"),
        ('<a xlink:href="java\tscript:alert(1)"/>', "a"),
    ],
)
def test_a_drawing_that_runs_a_script_is_refused(tmp_path: Path, inside: str, tag: str) -> None:
    drawing = f"<svg>\n<style>g {{ fill: red }}</style>\n{inside}\n</svg>\n"
    assert problems_of(tmp_path, {**FILES, "images/bridge.svg": drawing}) == [
        f"docs_src/images/bridge.svg:3: the drawing's <{tag}> runs a script (expected none: {OWN})"
    ]


def test_a_drawing_may_have_its_own_styles(tmp_path: Path) -> None:
    drawing = '<svg><style>g { fill: red }</style><g style="fill: blue"/></svg>\n'
    assert problems_of(tmp_path, {**FILES, "images/bridge.svg": drawing}) == []


def test_half_a_tag_that_browsers_take_for_one_is_told(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", "<svg/onload=alert(1)> Start")) == [
        'docs_src/index.md:3: the attribute "onload" would run a script (expected none: pages run '
        "only the handbook's own scripts)"
    ]
