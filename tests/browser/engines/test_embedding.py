"""A calculator in a page of another origin, in the other browsers."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from build_tools.engines.engine import Engine
from calculators import run


def test_a_result_reaches_the_page_around_it(
    engine: Engine, serve: Callable[..., str], handbook: str, tmp_path: Path
) -> None:
    (tmp_path / "index.html").write_text(
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Another site</title>'
        '<script>document.addEventListener("handbook-result", (event) => {'
        " window.result = event.detail; });</script>"
        f'<script src="{handbook}embed.js" async></script>'
        '<handbook-calculator calculator="hardness-units" input-hardness="19 gpg">'
        "</handbook-calculator></html>",
        encoding="utf-8",
    )
    engine.visit(serve(tmp_path).replace("127.0.0.1", "localhost"))
    values = run("hardness-units", {"hardness": "19 gpg"})["values"]
    engine.wait_for(
        """() => Object.fromEntries(Object.entries(window.result?.values ?? {}).map(
          ([name, { shown }]) => [name, shown]))""",
        value={name: value["shown"] for name, value in values.items()},
    )
