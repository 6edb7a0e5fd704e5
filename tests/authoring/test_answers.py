"""Stated answers are rewritten in place, and nothing else is."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.authoring.answers import renew
from build_tools.checks import find_problems
from build_tools.content.handbook import load_handbook
from build_tools.set_up.failure import Failure
from tests.content.small_shop import FILES, write

LESSON = "learn/hardness.md"


def _renewed(folder: Path, *changes: tuple[str, str]) -> tuple[list[str], str, Path]:
    files = dict(FILES)
    for old, new in changes:
        (name,) = [one for one, text in files.items() if old in text]
        files[name] = files[name].replace(old, new)
    docs = write(folder, files)
    told = [str(one) for one in renew(load_handbook(docs, folder), folder)]
    return told, (docs / LESSON).read_text("utf-8"), docs


def test_right_answers_stay_as_they_are(tmp_path: Path) -> None:
    told, text, _ = _renewed(tmp_path)
    assert told == []
    assert text == FILES[LESSON]


def test_after_another_allowance_the_answers_are_renewed_in_the_units_they_state(
    tmp_path: Path,
) -> None:
    told, text, docs = _renewed(tmp_path, ("\niron_allowance: 4 gpg", "\niron_allowance: 1 gpg"))
    assert told == [
        'docs_src/learn/hardness.md:27: "setting" of "gannet-lane": 20 gpg -> 19 gpg',
        # 18.5 gpg of 17.118 mg/L each
        'docs_src/learn/hardness.md:28: "compensated" of "gannet-lane": 342 mg/L -> 317 mg/L',
    ]
    assert text == FILES[LESSON].replace("setting: 20 gpg", "setting: 19 gpg").replace(
        "compensated: 342 mg/L", "compensated: 317 mg/L"
    )
    assert find_problems(docs, tmp_path) == []


@pytest.mark.parametrize(
    ("stated", "written"),
    [
        ('"19 gpg"  # to be looked at', "20 gpg  # to be looked at"),
        ("'19 gpg'", "20 gpg"),
        ("about twenty", "20 gpg"),
        ("20 lb", "20 gpg"),
    ],
)
def test_what_is_stated_in_another_way_is_replaced_whole(
    tmp_path: Path, stated: str, written: str
) -> None:
    _, text, docs = _renewed(tmp_path, ("setting: 20 gpg", f"setting: {stated}"))
    assert text == FILES[LESSON].replace("setting: 20 gpg", f"setting: {written}")
    assert find_problems(docs, tmp_path) == []


def test_answers_on_one_line_are_left_with_a_sentence_and_no_file_is_changed(
    tmp_path: Path,
) -> None:
    on_one_line = "answers: {setting: 19 gpg, compensated: 342 mg/L}"
    stated = "answers:\n  setting: 20 gpg\n  compensated: 342 mg/L"
    with pytest.raises(Failure) as failure:
        _renewed(tmp_path, (stated, on_one_line))
    assert str(failure.value) == (
        'docs_src/learn/hardness.md:26: "setting" of "gannet-lane" does not stand on a line of its '
        "own, so it is left: write 20 gpg there yourself. No file was changed."
    )
    assert on_one_line in (tmp_path / "docs_src" / LESSON).read_text("utf-8")


def test_sources_that_cannot_be_read_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Failure, match="^Some sources could not be read: the command check tells"):
        _renewed(tmp_path, ("name: Wren Lane Water", "name: [Wren"))
