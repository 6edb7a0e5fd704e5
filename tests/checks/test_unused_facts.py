"""A fact that no text uses is told, unless a file that failed to load may use it."""

from __future__ import annotations

from pathlib import Path

from tests.content.small_shop import FILES, changed, problems_of

UNUSED = """\
spare:
  is: The spare bucket
  value: 2 gal
  basis: common practice
"""


def test_an_unused_fact_is_told(tmp_path: Path) -> None:
    files = {**FILES, "facts.yaml": FILES["facts.yaml"] + UNUSED}
    assert problems_of(tmp_path, files) == [
        'docs_src/facts.yaml:15: no text uses the fact "spare" (expected {{ fact.spare }} '
        "somewhere, or no such fact)"
    ]


def test_a_broken_file_may_use_it(tmp_path: Path) -> None:
    files = changed("faults/no-salt.yaml", "title:", "titel:")
    files["facts.yaml"] += UNUSED
    assert [line.split(":")[0] for line in problems_of(tmp_path, files)] == [
        "docs_src/faults/no-salt.yaml"
    ] * 2
