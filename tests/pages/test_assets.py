"""The folder of styles and scripts is named by what is in it."""

from __future__ import annotations

from build_tools.pages import assets
from build_tools.pages.assets import ICON, SCRIPT, STYLES, find_assets


def test_the_named_assets_are_there() -> None:
    found = find_assets()
    assert {*STYLES, SCRIPT, ICON} <= set(found.files)
    assert all(path.is_file() for path in found.files.values())
    assert found.address(ICON) == f"{found.folder_name}/icon.svg"


def test_the_folder_has_a_new_name_when_a_file_changes(monkeypatch, tmp_path) -> None:
    before = find_assets()
    for path in assets.THEME.iterdir():
        (tmp_path / path.name).write_bytes(path.read_bytes())
    monkeypatch.setattr(assets, "THEME", tmp_path)
    assert find_assets().folder_name == before.folder_name
    with (tmp_path / "handbook.css").open("a", encoding="utf-8") as style:
        style.write("/* changed */\n")
    assert find_assets().folder_name != before.folder_name
