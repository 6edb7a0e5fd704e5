"""Python starts in each way in each browser, and the answers are the same."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.engines.engine import Engine
from tests.browser.engines.forms import wait_for_answer


@pytest.mark.parametrize(
    ("lost", "word"),
    [
        ([], ""),
        (["image.bin*"], "slow start"),
        (["image.bin*", "compiled.zip*"], "slowest start"),
    ],
    ids=["image", "compiled", "plain"],
)
def test_the_fastest_way_whose_files_are_there_is_used(
    engine: Engine,
    bare_folder: Path,
    tmp_path: Path,
    serve: Callable[..., str],
    lost: list[str],
    word: str,
) -> None:
    site = shutil.copytree(bare_folder, tmp_path / "site")
    for name in lost:
        for path in site.rglob(name):
            path.unlink()
    engine.visit(serve(site))
    engine.type("#setting-hardness", "29")
    wait_for_answer(engine, "#setting")
    assert engine.text("#setting .live-form__start") == word


def test_a_damaged_image_gives_no_answer(
    engine: Engine, bare_folder: Path, tmp_path: Path, serve: Callable[..., str]
) -> None:
    site = shutil.copytree(bare_folder, tmp_path / "site")
    (image,) = site.rglob("image.bin")
    content = bytearray(image.read_bytes())
    content[len(content) // 2] ^= 1
    image.write_bytes(content)
    image.with_name("image.bin.gz").unlink()
    engine.visit(serve(site))
    engine.type("#setting-hardness", "29")
    wait_for_answer(engine, "#setting")
    assert engine.text("#setting .live-form__start") == "slow start"
