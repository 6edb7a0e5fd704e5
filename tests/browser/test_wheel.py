"""The calculators' wheel: only the calculators, and the same bytes each time."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path

import pytest

from build_tools.browser import BrowserFilesError
from build_tools.browser.wheel import build_wheel

CALCULATORS = Path(__file__).parents[2] / "calculators"


def test_it_holds_the_calculators_and_nothing_else_for_any_python(tmp_path: Path) -> None:
    wheel = build_wheel(CALCULATORS, tmp_path)
    assert wheel.name == "calculators-1.0.0-py3-none-any.whl"
    packed = zipfile.ZipFile(wheel).namelist()
    sources = {f"calculators/{path.relative_to(CALCULATORS)}" for path in CALCULATORS.rglob("*.py")}
    assert {name for name in packed if ".dist-info/" not in name} == sources


def test_it_is_the_same_to_the_byte_when_made_again_from_newer_files(tmp_path: Path) -> None:
    package = tmp_path / "calculators"
    package.mkdir()
    (package / "__init__.py").write_text("CALCULATORS = {}\n")
    (tmp_path / "first").mkdir()
    first = build_wheel(package, tmp_path / "first").read_bytes()
    os.utime(package / "__init__.py", (2_000_000_000, 2_000_000_000))
    (tmp_path / "second").mkdir()
    assert build_wheel(package, tmp_path / "second").read_bytes() == first


def test_a_failure_says_what_the_packing_tool_said(tmp_path: Path) -> None:
    occupied = tmp_path / "occupied"
    occupied.write_text("A file where the folder should be.")
    with pytest.raises(BrowserFilesError, match=r"could not be packed(.|\n)*occupied"):
        build_wheel(CALCULATORS, occupied)
