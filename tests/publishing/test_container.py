"""What a container is made from; the image itself needs a base image, which tests have not."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.publishing.container import write
from build_tools.publishing.server_settings import PORT, server_settings
from build_tools.set_up.failure import Failure
from tests.publishing.site import tiny_site


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*.*")}


def test_the_folder_holds_the_site_the_settings_and_the_file(tmp_path: Path) -> None:
    site = tiny_site(tmp_path / "site", root="/handbook/")
    output = tmp_path / "container"
    write(site, output)
    (site / "edition.json").unlink()
    write(site, output)  # again, over its own
    assert {path.name for path in output.iterdir()} == {"Containerfile", "Caddyfile", "site"}
    assert contents(output / "site") == contents(site)
    assert (output / "Caddyfile").read_text("utf-8") == server_settings(site)
    instructions = [
        line.split(maxsplit=1)
        for line in (output / "Containerfile").read_text("utf-8").splitlines()
        if line[:1].isupper()
    ]
    assert instructions[:2] == [["ARG", "BASE"], ["FROM", "${BASE}"]]  # none is assumed
    named = dict(instructions)
    assert named["USER"] == "10001:10001"
    assert named["EXPOSE"] == str(PORT)
    assert f":{PORT}/handbook/edition.json" in (output / "Containerfile").read_text("utf-8")
    copied = [words for name, words in instructions if name == "COPY"]
    assert copied == ["Caddyfile /srv/Caddyfile", "site /srv/site"]


def test_a_folder_with_something_else_stays_as_it_is(tmp_path: Path) -> None:
    site = tiny_site(tmp_path / "site")
    (tmp_path / "other").mkdir()
    (tmp_path / "other" / "letter").write_text("mine", "utf-8")
    with pytest.raises(Failure, match="holds something else"):
        write(site, tmp_path / "other")
    with pytest.raises(Failure, match="run the command build first"):
        write(tmp_path / "other", tmp_path / "container")


def test_a_header_that_the_settings_cannot_hold_is_refused(tmp_path: Path) -> None:
    site = tiny_site(tmp_path / "site")
    headers = site / "_headers"
    headers.write_text(headers.read_text("utf-8").replace("nosniff", "no`sniff"), "utf-8")
    with pytest.raises(ValueError, match="cannot hold the sign `"):
        server_settings(site)
