"""The command build: the folder it writes, and those that it never empties."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.commands import ROOT, run

#: A shop whose site is built in a moment.
SMALL = str(ROOT / "tests" / "second_shop")


def test_a_folder_with_other_things_in_it_is_never_emptied(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(b"dear to someone")
    assert run(["build", "--output", str(tmp_path)]) == 1
    assert photo.read_bytes() == b"dear to someone"
    assert capsys.readouterr().err == (
        f"The folder {tmp_path} holds something other than a built handbook, and a build empties "
        "its folder: name a new or an empty one.\n"
    )


def test_build_writes_a_site_and_writes_it_again(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    for _ in range(2):
        assert run(["build", "--shop", SMALL, "--output", str(site)]) == 0
        assert capsys.readouterr().out == f"The handbook is in {site}\n"
        assert (site / "index.html").is_file()
        assert not (site / "left-over.html").exists()
        (site / "left-over.html").write_text("from an earlier edition")
