"""What the command class-pack says to what it is given."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.class_pack.options import one_by_one
from build_tools.class_pack.pack import SIGN, Pack, Wanted, write
from build_tools.commands import run
from build_tools.content.handbook import Handbook
from build_tools.set_up.failure import Failure

SEED = ["--seed", "7"]


def said(capsys: pytest.CaptureFixture[str], folder: Path, *options: str) -> str:
    """Run the command, which must fail and write nothing; return what it says."""
    before = sorted(folder.rglob("*"))
    assert run(["class-pack", "--output", str(folder), *options]) == 1
    assert sorted(folder.rglob("*")) == before
    told = capsys.readouterr()
    assert told.out == ""
    return told.err.rstrip("\n")


@pytest.mark.parametrize(
    ("options", "sentence"),
    [
        (
            [*SEED, "--exercises", "bucket-and-watch", "minuts-of-the-refill"],
            (
                'There is no exercise "minuts-of-the-refill" (expected one of: minutes-of-the-refill, '
                "level-after-the-refill, depth-of-the-bed, fall-of-the-salt, …; nearest: "
                '"minutes-of-the-refill").'
            ),
        ),
        (["--seed", " "], "A seed is a number or a short text of at most 30 letters."),
        (["--seed", "7" * 31], "A seed is a number or a short text of at most 30 letters."),
        (
            [*SEED, "--edition", "20260501"],
            "“20260501” is no day of an edition: write it as “2026-05-01”.",
        ),
        (
            [*SEED, "--address", "javascript:alert(1)"],
            (
                "“javascript:alert(1)” is no address of a site: write it as "
                "“https://handbook.example/”."
            ),
        ),
        ([*SEED, "--exercises"], "Option '--exercises' requires an argument."),
        ([*SEED, "--people", "0"], "Invalid value for '--people': 0 is not in the range 1<=x<=99."),
        ([], "Missing option '--seed'."),
    ],
)
def test_what_is_wrong_is_said_in_a_sentence(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, options: list[str], sentence: str
) -> None:
    assert said(capsys, tmp_path, *options) == sentence


@pytest.mark.parametrize(
    ("chosen", "sentence"),
    [
        (
            {"families": ["setings"]},
            (
                'There is no family "setings" (expected one of: settings, cleaning, '
                'finding-the-cause, safe-work, …; nearest: "settings").'
            ),
        ),
        (
            {"calls": ["2222-222"]},
            'The code "2222-222": A code has 8 letters and digits, and this has 7.',
        ),
        (
            {"calls": ["2222-2223"]},
            (
                'The code "2222-2223": This is no code: a character is wrong, or two have changed '
                "places."
            ),
        ),
    ],
)
def test_what_the_handbook_does_not_have_is_said(
    handbook: Handbook, chosen: dict[str, list[str]], sentence: str
) -> None:
    with pytest.raises(Failure) as failure:
        Pack(handbook, Wanted("7", **chosen))
    assert str(failure.value) == sentence


def test_a_folder_that_holds_something_else_is_left_alone(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "letter.txt").write_text("Dear Dan", "utf-8")
    assert said(capsys, tmp_path, *SEED, "--exercises", "bucket-and-watch", "--no-pdf") == (
        f"The folder {tmp_path} holds something other than a class pack, and a pack writes over "
        "what it finds: name a new or an empty one."
    )


def test_a_file_in_the_place_of_the_folder_is_told(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    file = tmp_path / "letter.txt"
    file.write_text("Dear Dan", "utf-8")
    assert said(capsys, file, *SEED, "--exercises", "bucket-and-watch", "--no-pdf") == (
        f"{file} is a file: name a folder."
    )


def small(handbook: Handbook, folder: Path, people: int = 1) -> None:
    """Write a small pack, without PDF files."""
    wanted = Wanted("7", exercises=["bucket-and-watch"], people=people)
    write(Pack(handbook, wanted), folder, None, lambda line: None)


def test_a_pack_takes_the_place_of_an_older_one_and_touches_nothing_else(
    handbook: Handbook, tmp_path: Path
) -> None:
    small(handbook, tmp_path, people=3)
    (tmp_path / "notes.txt").write_text("Room 2 at nine", "utf-8")
    small(handbook, tmp_path)
    assert sorted(path.name for path in tmp_path.rglob("*") if path.is_file()) == [
        SIGN,
        "index.html",
        "key.html",
        "notes.txt",
        "questions.html",
        "sheet-01.zip",
    ]


def test_a_broken_list_of_files_reaches_nothing_outside(handbook: Handbook, tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("Keep me", "utf-8")
    folder = tmp_path / "pack"
    folder.mkdir()
    sign = folder / SIGN
    sign.write_text('{"files": ["../outside.txt", 7]}', "utf-8")
    small(handbook, folder)
    assert outside.read_text("utf-8") == "Keep me"
    sign.write_text("{", "utf-8")
    with pytest.raises(Failure) as failure:
        small(handbook, folder)
    assert str(failure.value) == f"{sign} cannot be read: name another folder."


def test_an_option_of_several_words_ends_at_the_next_option() -> None:
    given = ["--exercises", "a", "b", "--seed", "7", "--calls", "C", "D", "--no-pdf"]
    assert one_by_one(given) == [
        *("--exercises", "a", "--exercises", "b", "--seed", "7"),
        *("--calls", "C", "--calls", "D", "--no-pdf"),
    ]
