"""An edition lists what a phone keeps, and changes with every byte of it."""

from __future__ import annotations

import datetime
import hashlib
import json
from pathlib import Path

import pytest

from build_tools.edition import Edition
from build_tools.offline.edition import (
    WORKBOX_FOLDER,
    edition_line,
    kept_files,
    workbox_files,
    write_edition,
)
from build_tools.offline.web_manifest import ICONS, web_manifest

ROOT = Path(__file__).parents[2]
MADE = Edition(datetime.date(2026, 11, 25), "2b637838")
FILES = {
    "index.html": "home",
    "learn/salt/index.html": "a lesson",
    "404.html": "not found",
    "assets/handbook-1/page/form.js": "a script",
    "search/search_index.json": "{}",
    "runtime/pyodide-1/calculators-1/image.bin": "an image",
    "runtime/pyodide-1/calculators-1/image.bin.gz": "its twin",
    "runtime/pyodide-1/python_stdlib.zip": "for the slowest start",
    "embed/clock-error/index.html": "for frames",
    "_headers": "for hosts",
    "sitemap.xml.gz": "for search engines",
}


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """Write a tiny site."""
    for name, text in FILES.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path


def test_what_a_phone_needs_is_listed_with_size_and_hash(site: Path) -> None:
    files = {file.address: file for file in kept_files(site)}
    assert set(files) == {
        "",
        "learn/salt/",
        "404.html",
        "assets/handbook-1/page/form.js",
        "search/search_index.json",
        "runtime/pyodide-1/calculators-1/image.bin",
    }
    lesson = files["learn/salt/"]
    assert (lesson.size, lesson.sha256) == (8, hashlib.sha256(b"a lesson").hexdigest())
    assert [file.address for file in files.values() if file.is_part] == [
        "runtime/pyodide-1/calculators-1/image.bin"
    ]


def test_an_edition_is_written_and_lists_nothing_of_itself(site: Path) -> None:
    edition = write_edition(site, MADE, ["assets/workbox/core.js"])
    size = sum(file.size for file in kept_files(site))
    out = json.loads((site / "edition.json").read_text(encoding="utf-8"))
    source = "revision 2b637838"
    assert out == {"id": edition, "date": "2026-11-25", "size": size, "source": source}
    listed = json.loads((site / f"edition-{edition}.json").read_text(encoding="utf-8"))
    assert [address for address, *_ in listed] == [file.address for file in kept_files(site)]
    worker = (site / "service-worker.js").read_text(encoding="utf-8")
    assert worker.startswith(
        f"// Edition {edition}\n"
        'const WORKBOX = ["assets/workbox/core.js"];\n'
        'const ESSENTIAL = ["assets/handbook-1/page/form.js"];\n'
    )
    assert write_edition(site, MADE, ["assets/workbox/core.js"]) == edition


def test_any_changed_byte_makes_another_edition(site: Path) -> None:
    before = write_edition(site, MADE, [])
    (site / "learn/salt/index.html").write_text("a Lesson", encoding="utf-8")
    assert write_edition(site, MADE, []) != before


def test_the_library_is_there_in_the_version_that_its_folder_names() -> None:
    for path in workbox_files(ROOT):
        package = json.loads((path.parents[1] / "package.json").read_text(encoding="utf-8"))
        assert path.is_file()
        assert WORKBOX_FOLDER == f"assets/workbox-{package['version']}"


def test_the_line_of_a_page_names_its_edition_and_leads_to_keeping_it() -> None:
    assert edition_line(MADE, "learn/salt/", "assets/handbook-1") == (
        '\n<p class="edition" data-site="../../" data-assets="assets/handbook-1">Edition of '
        '<time datetime="2026-11-25">November 25, 2026</time>, '
        '<span class="edition-source">revision 2b637838</span><span class="not-on-paper"> · '
        '<a href="../../reference/on-this-phone/">Keep this handbook on this phone</a></span></p>\n'
    )
    assert 'data-site="./"' in edition_line(MADE, "", "assets/handbook-1")


def test_the_manifest_names_icons_that_are_there() -> None:
    manifest = json.loads(web_manifest("Service handbook", "assets/handbook-1"))
    assert manifest["name"] == "Service handbook"
    assert (manifest["start_url"], manifest["display"]) == ("./", "standalone")
    for icon in manifest["icons"]:
        folder, name = icon["src"].rsplit("/", 1)
        assert folder == "assets/handbook-1"
        width = int.from_bytes((ICONS / name).read_bytes()[16:20], "big")  # of a PNG file
        assert icon["sizes"] == f"{width}x{width}"
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}
