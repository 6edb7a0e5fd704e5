"""Links, anchors and images must lead somewhere, and images must have words."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

LESSON = "learn/hardness.md"
BRIDGE = "faults/salt-bridge.yaml"
WRONG = [
    (
        LESSON, "../reference/units.md", "../reference/unit.md",
        '14: there is no page "../reference/unit.md" (expected one of: ../reference/units.md, '
        '../reference/index.md, ../reference/cautions.md, ../reference/tables.md, …; nearest: '
        '"../reference/units.md")',
    ),
    (
        LESSON, "salt-bridge.md#seen", "salt-bridge.md#sean",
        '31: the page "faults/salt-bridge.md" has no anchor "sean" (expected one of: seen, '
        'simulation, mistaken-for, prevent, …; nearest: "seen")',
    ),
    (
        "procedures/drain-flow.yaml", "#a-setting", "#settings",
        '9: the page "learn/hardness.md" has no anchor "settings" (expected one of: a-setting, '
        'capacity-by-salt, gannet-lane, hardness; nearest: "a-setting")',
    ),
    (
        "index.md", "first-look.md#step-1", "first-look.md#step-2",
        '3: the page "procedures/first-look.md" has no anchor "step-2" (expected one of: step-1, '
        'steps, title, close, …; nearest: "step-1")',
    ),
    (
        LESSON, "(../reference/units.md)", "(/reference/units.md)",
        '14: the link "/reference/units.md" begins with "/" (expected a path from this file, "../…")',
    ),
    (
        BRIDGE, "bridge.svg", "brige.svg",
        '6: there is no image "../images/brige.svg" (expected "../images/bridge.svg")',
    ),
    (
        BRIDGE, "![A bridge of salt]", "![]",
        '6: the image "../images/bridge.svg" has no alternative text (expected what it shows, '
        "between the square brackets)",
    ),
    (
        BRIDGE, "../images/bridge.svg", "https://host.example/bridge.svg",
        '6: the image "https://host.example/bridge.svg" is on another host (expected a file here)',
    ),
    (
        LESSON, "Go on to", '<img src="../images/bridge.svg">\nGo on to',
        '31: the image "../images/bridge.svg" has no alternative text (expected what it shows, '
        "between the square brackets)",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), WRONG)
def test_a_link_or_image_that_is_wrong_is_told(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new)) == [f"docs_src/{name}:{said}"]


@pytest.mark.parametrize(
    "link",
    [
        "https://host.example/page",
        "mailto:trainer@host.example",
        "#a-setting",
        "../faults/no-salt.md#customer-says",
        "../work-out/brine-refill.md",
        "../equipment/meter-unit.md#tank-height",
        "../reference/numbers.md#bucket",
        "../images/bridge.svg",
        "../procedures/index.md",
    ],
)
def test_a_link_that_is_right_is_no_problem(tmp_path: Path, link: str) -> None:
    assert problems_of(tmp_path, changed(LESSON, "Go on to", f"[See]({link}). Go on to")) == []


def test_a_link_in_code_is_no_link(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed(LESSON, "Go on to", "`[a](b.md)` Go on to")) == []


def test_anchors_of_a_page_that_failed_to_load_are_not_doubted(tmp_path: Path) -> None:
    files = changed(BRIDGE, "title: Salt bridge", "titel: Salt bridge")
    found = problems_of(tmp_path, files)
    assert [line.split(": ")[0] for line in found] == ["docs_src/faults/salt-bridge.yaml:1"] * 2
    assert FILES[LESSON].count("salt-bridge.md#seen") == 1


@pytest.mark.parametrize(
    ("words", "told"), [("", 1), (' aria-label=""', 1), (' aria-label="A tank"', 0)]
)
def test_a_drawing_has_words(tmp_path: Path, words: str, told: int) -> None:
    drawing = f'<svg viewBox="0 0 1 1"{words}></svg>\n\nStart with'
    said = [
        'docs_src/index.md:3: the drawing <svg> has no alternative text (expected aria-label="…")'
    ]
    assert problems_of(tmp_path, changed("index.md", "Start with", drawing)) == said * told


def test_a_link_without_an_address_is_told(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", "[Start]()")) == [
        "docs_src/index.md:3: the link has no address (expected a path from this file between the "
        "brackets)"
    ]
