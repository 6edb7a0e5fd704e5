"""The folder of styles and scripts is named by what is in it, and has few files."""

from __future__ import annotations

import json
import re
from pathlib import Path

from build_tools.pages import assets
from build_tools.pages.assets import (
    EMBEDDED_SCRIPT,
    EMBEDDED_STYLE,
    EMBEDDED_STYLES,
    ICON,
    PAGE,
    SCHEME_SCRIPT,
    SCRIPT,
    SEARCH,
    STYLE,
    STYLES,
    find_assets,
)


def test_the_named_assets_are_there() -> None:
    found = find_assets()
    named = {STYLE, SCRIPT, ICON, EMBEDDED_STYLE, EMBEDDED_SCRIPT, SCHEME_SCRIPT}
    assert named <= set(found.files)
    assert all(path.is_file() for path in found.files.values())
    assert found.address(ICON) == f"{found.folder_name}/icon.svg"


def test_joined_files_ask_for_no_other_and_their_maps_show_every_source() -> None:
    found = find_assets().files
    shown: dict[Path, str] = {}
    for name, path in found.items():
        if name.endswith(".map"):
            joined = found[name.removesuffix(".map")].read_text(encoding="utf-8")
            assert f"sourceMappingURL={path.name}" in joined
            assert not re.search(r"(^|[;}\n])import[\s{*\"]|\bfrom\"|@import", joined), name
            told = json.loads(path.read_text(encoding="utf-8"))
            places = [(path.parent / source).resolve() for source in told["sources"]]
            shown |= dict(zip(places, told["sourcesContent"], strict=True))
    own = {*PAGE.rglob("*.js"), *SEARCH.glob("*.js"), *STYLES, *EMBEDDED_STYLES}
    own -= set(found.values())  # those that are no modules stand in the site as they are
    assert PAGE / "form.js" in own
    assert {path: shown.get(path) for path in own} == {
        path: path.read_text(encoding="utf-8") for path in own
    }


def test_the_folder_has_a_new_name_when_a_file_changes(monkeypatch, tmp_path) -> None:
    before = find_assets()
    changed = tmp_path / "handbook.css"
    source = STYLES[0].read_text(encoding="utf-8")
    monkeypatch.setattr(assets, "STYLES", (changed, *STYLES[1:]))
    changed.write_text(source, encoding="utf-8")
    same = find_assets().files[STYLE].read_bytes()
    assert same == before.files[STYLE].read_bytes()
    changed.write_text(f"{source}\n.changed {{ color: red }}\n", encoding="utf-8")
    assert find_assets().folder_name != before.folder_name
