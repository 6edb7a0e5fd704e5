"""A picture block must name a picture that exists, and give it what it can draw."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

PAGE = "index.md"
LEVEL = """\
id: level
title: The level
calculate: brine-level
given: {brine: 2.8 gal, tank_diameter: 18 in}
note: The water of a refill stands here.
"""
WAY = """\
id: way
title: The way
drawing: water-way
given: {position: service}
note: Follow the arrows.
"""
CAUSES = """\
id: causes
title: The causes
drawing: causes
given:
  complaint: hard
  findings:
    salt-height: none
note: Look at the longest bar.
"""
#: Line 3 of the page opens the block, so its first line is line 4.
WRONG = [
    (
        LEVEL, "calculate: brine-level", "calculate: brine-levl",
        '6: there is no calculator "brine-levl" (expected one of: brine-level, brine-refill, '
        'resin-life, brine-draw, …; nearest: "brine-level")',
    ),
    (
        LEVEL, "calculate: brine-level", "calculate: air-tap",
        '6: there is no calculator "air-tap" (expected one of: air-gap, salt-for-capacity, '
        'exchange-tank, resin-capacity, …; nearest: "air-gap")',
    ),
    (
        LEVEL, "brine: 2.8 gal", "brin: 2.8 gal",
        '7: the calculator "brine-level" has no input "brin" (expected one of: brine, grid_height, '
        'voids, overflow_height, …; nearest: "brine")',
    ),
    (
        LEVEL, "brine: 2.8 gal", "brine: 2.8 lb",
        '7: picture "level", "brine": “2.8 lb” is a weight. Write a volume (gal, qt, pint, cup, '
        "fl oz, ft³, L, mL).",
    ),
    (
        LEVEL, "brine: 2.8 gal", "brine: {low: 2.8 gal}",
        '7: "brine" has several values (expected one, such as "18 gpg")',
    ),
    (
        LEVEL, "of a refill", "of 3.1 gal",
        '8: nothing backs the typed quantity "3.1 gal" (expected one of the block\'s own givens or '
        "answers; otherwise an expression: put the value in facts.yaml and write "
        "{{ fact.its_name }}, or compute it with {{ work_out(…) }} or a worked example)",
    ),
    (
        LEVEL, "note: The", "see: now\nnote: The",
        '8: unknown key "see" (expected one of: id, title, calculate, drawing, given, note)',
    ),
    (
        WAY, "drawing: water-way", "drawing: waterway",
        '6: there is no drawing "waterway" (expected one of: water-way, resin-bed, causes; nearest: '
        '"water-way")',
    ),
    (
        WAY, "drawing: water-way\n", "",
        '4: a picture needs either "calculate" or "drawing"',
    ),
    (
        WAY, "position: service", "positon: service",
        '7: the drawing "water-way" has no input "positon" (expected "position")',
    ),
    (
        WAY, "position: service", "position: servce",
        '7: picture "way", "position": “servce” is not a choice. Choose one of: service, backwash, '
        "brine draw, slow rinse, fast rinse, refill, one-handle bypass, three-valve bypass. The "
        "nearest is “service”.",
    ),
    (
        CAUSES, "complaint: hard", "complaint: hrd",
        '8: the check "complaint" has no result "hrd" (expected one of: hard, salt-unused; nearest: '
        '"hard")',
    ),
    (
        CAUSES, "  complaint: hard\n", "",
        '7: the drawing "causes" needs one complaint (expected one of: hard, salt-unused)',
    ),
    (
        CAUSES, "salt-height: none", "salt-heigt: none",
        '10: there is no check "salt-heigt" (expected one of: complaint, rod, salt-height; nearest: '
        '"salt-height")',
    ),
    (
        CAUSES, "salt-height: none", "salt-height: non",
        '10: the check "salt-height" has no result "non" (expected one of: above, none; nearest: '
        '"none")',
    ),
    (
        CAUSES, "  findings:\n    salt-height: none\n", "  findings: none\n",
        '9: "findings" is a text (expected lines of a check, a colon and its result)',
    ),
    (
        CAUSES, "  findings:", "  finding:",
        '9: the drawing "causes" has no input "finding" (expected one of: complaint, findings; '
        'nearest: "findings")',
    ),
]  # fmt: skip


def test_quantities_that_a_picture_is_given_may_stand_in_its_note(tmp_path: Path) -> None:
    block = LEVEL.replace("a refill", "2.8 gal")
    assert problems_of(tmp_path, with_blocks(block)) == []


def with_blocks(*blocks: str) -> dict[str, str]:
    """Return the small shop whose first page has these picture blocks after its first line."""
    fences = "".join(f"```picture\n{block}```\n\n" for block in blocks)
    return changed(PAGE, "\nStart", f"\n{fences}Start")


def test_pictures_without_a_fault_are_silent(tmp_path: Path) -> None:
    assert problems_of(tmp_path, with_blocks(LEVEL, WAY, CAUSES)) == []


@pytest.mark.parametrize(("block", "old", "new", "said"), WRONG)
def test_a_wrong_picture_is_told(tmp_path: Path, block: str, old: str, new: str, said: str) -> None:
    assert block.count(old) == 1
    files = with_blocks(block.replace(old, new))
    assert problems_of(tmp_path, files) == [f"docs_src/{PAGE}:{said}"]


def test_a_calculator_without_a_picture_is_told(tmp_path: Path) -> None:
    block = LEVEL.replace("brine-level", "brine-refill")
    said = problems_of(tmp_path, with_blocks(block))[0]
    assert said.startswith(
        f'docs_src/{PAGE}:6: the calculator "brine-refill" has no picture (expected one of: '
    )
    assert said.endswith('nearest: "brine-level")')


def test_inputs_for_which_nothing_is_drawn_are_told(tmp_path: Path) -> None:
    block = LEVEL.replace("brine-level", "weak-brine").replace(
        "brine: 2.8 gal, tank_diameter: 18 in",
        "known: salt and water levels, salt_depth: 4 in, water_depth: 10 in, salt: 9 lb, resin_volume: 1 ft3",
    )
    assert problems_of(tmp_path, with_blocks(block)) == [
        f'docs_src/{PAGE}:7: picture "level": the calculator draws nothing for these inputs '
        '(expected choices for which "salt_ratio" counts)'
    ]


def test_a_picture_and_a_worked_example_share_no_id(tmp_path: Path) -> None:
    files = with_blocks(WAY.replace("id: way", "id: gannet-lane"))
    assert problems_of(tmp_path, files) == [
        "docs_src/learn/hardness.md:19: a worked example and a picture have the id "
        f'"gannet-lane", the first in docs_src/{PAGE}, line 4 (expected each id once)'
    ]


def test_a_link_may_lead_to_a_picture(tmp_path: Path) -> None:
    files = with_blocks(WAY)
    files["learn/hardness.md"] = FILES["learn/hardness.md"].replace(
        "Go on", "See [the way](../index.md#way). Go on"
    )
    assert problems_of(tmp_path, files) == []
