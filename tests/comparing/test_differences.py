"""Which block became which, and what differs between the two."""

from __future__ import annotations

from build_tools.comparing.block import Block
from build_tools.comparing.blocks import blocks
from build_tools.comparing.differences import NumberChange, TextChange, differences


def changes(old: str, new: str) -> list[tuple[str, ...]]:
    """Return what differs between two pages of Markdown: numbers as (old, new), texts in words."""
    made: list[tuple[str, ...]] = []
    for one in differences(blocks(old), blocks(new)):
        if isinstance(one, NumberChange):
            made.append(tuple(side[1].text if side else "" for side in (one.old, one.new)))
        else:
            made.append((one.what, one.block.kind, one.block.text))
    return made


def test_numbers_are_paired_by_place() -> None:
    assert changes("Set 3 or 4.", "Set 4 or 4.") == [("3", "4")]
    assert changes("Set 3.\n\nSet 4.", "Set 3.\n\nSet 5.") == [("4", "5")]


def test_a_row_that_came_in_moves_no_other_row() -> None:
    head = "| Hardness | Setting |\n| :-- | :-- |\n"
    old, new = head + "| 10 | 12 |\n| 20 | 22 |\n", head + "| 5 | 7 |\n| 10 | 11 |\n| 20 | 22 |\n"
    assert changes(old, new) == [
        ("added", "row", "5 | 7"),
        ("", "5"),
        ("", "7"),
        ("12", "11"),
    ]


def test_a_reworded_paragraph_keeps_its_numbers() -> None:
    found = changes("Wait about 10 min, then look.", "Wait for 12 min and look again.")
    assert found == [
        ("reworded", "paragraph", "Wait for 12 min and look again."),
        ("10", "12"),
    ]


def test_a_number_that_came_with_words() -> None:
    assert changes("Look at the bed.", "Look at the bed for 3 min.") == [
        ("reworded", "paragraph", "Look at the bed for 3 min."),
        ("", "3"),
    ]


def test_what_has_no_like_came_or_went() -> None:
    found = changes("One two three.\n\nSame.", "Same.\n\n- Quite another thing.\n- And more.")
    assert found == [
        ("removed", "paragraph", "One two three."),
        ("added", "item", "Quite another thing."),
        ("added", "item", "And more."),
    ]


def test_the_same_page_has_no_differences() -> None:
    text = "# Title\n\nA text of 3 lb.\n\n| A | B |\n| - | - |\n| 1 | 2 |\n"
    assert changes(text, text) == []


def test_a_heading_is_one() -> None:
    (only,) = differences(blocks("## Before 3 steps"), blocks("## After 3 steps"))
    assert isinstance(only, TextChange)
    assert isinstance(only.new, Block) and only.new.kind == "heading"
    assert only.parts == (("removed", "Before"), ("added", "After"), ("same", " 3 steps"))


def test_the_parts_of_a_reworded_text_give_both_texts_back() -> None:
    old, new = "Let it run for 2 min, then shut the tap.", "Let the tap run 3 min, and shut it."
    text = next(one for one in differences(blocks(old), blocks(new)) if isinstance(one, TextChange))
    assert "".join(words for sort, words in text.parts if sort != "added") == old
    assert "".join(words for sort, words in text.parts if sort != "removed") == new
