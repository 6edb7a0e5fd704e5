"""The list of hashes: as sha256sum writes it and reads it, of every file but itself."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.publishing.hash_list import (
    NAME,
    BrokenList,
    files_of,
    hash_of,
    read_list,
    write_list,
)
from tests.pages.conftest import SECOND
from tests.publishing.site import tiny_site

SHA256SUM = "sha256sum"


def test_a_built_site_has_the_list_of_all_its_files(built: Callable[[Path], Path]) -> None:
    site = built(SECOND)
    listed = read_list((site / NAME).read_text("utf-8"))
    assert list(listed) == [name for name, _ in files_of(site)]
    assert {"_headers", "index.html", "edition.json", "service-worker.js"} < listed.keys()
    assert listed["_headers"] == hash_of(site / "_headers")
    assert f"/{NAME}\n" in (site / "_headers").read_text("utf-8")


@pytest.mark.skipif(sys.platform != "linux", reason="other systems have no sha256sum of their own")
def test_sha256sum_checks_it_also_with_names_that_it_escapes(tmp_path: Path) -> None:
    site = tiny_site(tmp_path)
    (site / "back\\slash and\nline").write_text("odd", "utf-8")
    write_list(site)
    command = [SHA256SUM, "--check", "--strict", "--quiet", NAME]
    assert subprocess.run(command, cwd=site, check=False).returncode == 0
    listed = read_list((site / NAME).read_text("utf-8"))
    assert list(listed) == [name for name, _ in files_of(site)]
    made = subprocess.run(
        [SHA256SUM, *listed], cwd=site, check=True, capture_output=True, text=True
    )
    assert made.stdout == (site / NAME).read_text("utf-8")


def test_a_changed_file_is_hashed_again(tmp_path: Path) -> None:
    path = tmp_path / "file"
    path.write_bytes(b"one")
    first = hash_of(path)
    path.write_bytes(b"another")
    assert hash_of(path) != first


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "it is empty"),
        ("<!doctype html>\n", "line 1 is no hash of 64 digits with a file after it"),
        (f"{'0' * 64}  a\n{'0' * 63}  b\n", "line 2 is no hash"),
    ],
)
def test_what_is_no_list_is_refused(text: str, why: str) -> None:
    with pytest.raises(BrokenList, match=why):
        read_list(text)
