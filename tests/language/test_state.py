"""What is translated, stale and missing, told with file and line."""

from __future__ import annotations

import re

from build_tools.language import files
from build_tools.language.source_texts import digest
from build_tools.language.state import rows, table
from tests.language.conftest import CAUTIONS, LESSON, PROCEDURE, Shop

_STEP = "  - do: Enter the hardness."


def test_a_file_that_was_just_translated_has_nothing_open(shop: Shop) -> None:
    assert shop.problems == []
    assert shop.open == []


def test_a_changed_english_text_makes_its_translation_stale(shop: Shop) -> None:
    shop.change("procedures/set-the-cabinet.yaml", _STEP, "  - do: Enter the new hardness.")
    line = _line(shop, PROCEDURE, "steps.1.do @")
    assert shop.open == [
        'docs_src/procedures/set-the-cabinet.yaml:11: "steps.1.do" has changed since it was '
        f"translated (expected steps.1.do @{digest('Enter the new hardness.')} in "
        f"docs_src/es/procedures/set-the-cabinet.yaml:{line})"
    ]
    assert shop.problems == []


def test_a_new_english_text_is_missing_and_the_others_keep_their_translation(shop: Shop) -> None:
    new = f"  - do: Close the lid.\n{_STEP}"
    shop.change("procedures/set-the-cabinet.yaml", _STEP, new)
    assert shop.open == [
        'docs_src/procedures/set-the-cabinet.yaml:11: "steps.1.do" is not translated (expected '
        f"steps.1.do @{digest('Close the lid.')} in docs_src/es/procedures/set-the-cabinet.yaml)"
    ]


def test_a_translation_of_what_is_gone_is_told(shop: Shop) -> None:
    shop.change("procedures/set-the-cabinet.yaml", "  - Drop-count kit\n", "  []\n")
    shop.change("procedures/set-the-cabinet.yaml", "tools:\n  []", "tools: []")
    line = _line(shop, PROCEDURE, "tools.1 @")
    assert shop.open == [
        f'docs_src/es/procedures/set-the-cabinet.yaml:{line}: "tools.1" translates no English text '
        "any more (expected to be removed)"
    ]


def test_a_changed_section_and_a_changed_block_are_told_by_themselves(shop: Shop) -> None:
    shop.change("learn/the-spring.md", "Everyone in", "Everybody in")
    shop.change("learn/the-spring.md", "A reading at the harbor", "One reading at the harbor")
    told = [re.sub(r" \(.*", "", one) for one in shop.open]
    assert told == [
        'docs_src/learn/the-spring.md:18: "#start" has changed since it was translated',
        'docs_src/learn/the-spring.md:24: "harbor-flat-reading.title" has changed since it was '
        "translated",
        'docs_src/learn/the-spring.md:25: "harbor-flat-reading.story" has changed since it was '
        "translated",
    ]


def test_texts_that_were_compared_take_the_digests_of_the_english_ones(shop: Shop) -> None:
    shop.change("procedures/set-the-cabinet.yaml", _STEP, "  - do: Enter the new hardness.")
    shop.change("learn/the-spring.md", "Everyone in", "Everybody in")
    assert files.compared(shop.handbook, f"docs_src/{PROCEDURE}") == 1
    assert files.compared(shop.handbook, f"docs_src/{LESSON}") == 1
    assert shop.open == []


def test_a_stale_caution_fails_the_check(shop: Shop) -> None:
    shop.change("cautions.yaml", "Pull the plug", "Always pull the plug")
    [problem] = shop.problems
    assert re.sub(r"@\w{8}", "@…", problem) == (
        'docs_src/es/cautions.yaml:2: the caution "dry-hands.text" translates an English text that '
        "has changed: docs_src/cautions.yaml:4 (expected dry-hands.text @…)"
    )


def test_a_missing_caution_fails_the_check(shop: Shop) -> None:
    path = shop.docs / CAUTIONS
    path.write_text(path.read_text("utf-8").splitlines()[0] + "\n", encoding="utf-8")
    [problem] = shop.problems
    assert re.sub(r"@\w{8}", "@…", problem) == (
        'docs_src/es/cautions.yaml:1: the caution "dry-hands.text" is not translated: '
        "docs_src/cautions.yaml:4 (expected dry-hands.text @…)"
    )
    path.unlink()
    assert shop.problems == [
        "docs_src/es/cautions.yaml:1: the file is missing (expected the cautions of the pages)"
    ]


def test_the_table_has_a_row_for_each_file_and_whole_shares_only_where_nothing_is_open(
    shop: Shop,
) -> None:
    shop.change("procedures/set-the-cabinet.yaml", _STEP, "  - do: Enter the new hardness.")
    lines = table(list(rows(shop.handbook))).splitlines()
    assert lines[0].split() == ["File", "Texts", "Translated", "Stale", "Missing", "Share"]
    by_file = {line.split()[0]: line.split()[1:] for line in lines[1:]}
    assert by_file["docs_src/es/cautions.yaml"] == ["2", "2", "0", "0", "100", "%"]
    texts, translated, stale, missing, share, _ = by_file[f"docs_src/{PROCEDURE}"]
    assert (int(texts), stale, missing) == (int(translated) + 1, "1", "0")
    assert int(share) < 100


def _line(shop: Shop, place: str, start: str) -> int:
    lines = (shop.docs / place).read_text("utf-8").splitlines()
    return next(number for number, line in enumerate(lines, 1) if line.startswith(start))
