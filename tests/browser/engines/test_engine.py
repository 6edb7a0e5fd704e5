"""The browsers themselves do what the tests and measurements ask of them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.benchmarks.bench import STARTS, Bench
from build_tools.engines.engine import Engine, ScriptError


@pytest.fixture
def page(engine: Engine, tmp_path: Path, serve: Callable[..., str]) -> Engine:
    """Open a page with one field, which can be edited a moment later."""
    (tmp_path / "index.html").write_text(
        '<!doctype html><link rel="icon" href="data:,"><p>one <b>two</b></p>'
        '<input value="18 gpg" readonly>'
        "<script>setTimeout(() => (document.querySelector('input').readOnly = false), 200)</script>"
    )
    engine.visit(serve(tmp_path))
    return engine


def test_a_script_s_value_comes_back(page: Engine) -> None:
    assert page.script("async (a, b) => ({ sum: [await a, b] })", "½", None) == {"sum": ["½", None]}
    assert page.script("() => undefined") is None


def test_what_a_script_throws_is_told(page: Engine) -> None:
    with pytest.raises(ScriptError, match="TypeError: no"):
        page.script("() => { throw new TypeError('no'); }")


def test_typing_takes_the_place_of_what_was_there(page: Engine) -> None:
    page.type("input", "1½ ft³")
    assert page.script("() => document.querySelector('input').value") == "1½ ft³"
    assert page.text("p") == "one two"


def test_it_measures_every_start(engine: Engine, tmp_path: Path) -> None:
    bench = Bench(Path(__file__).parents[3], tmp_path, 1)
    with bench.host("gzip") as host:
        engine.visit(host.address)
        for name in STARTS:
            told = engine.script("(given) => globalThis.firstAnswer(given)", bench.given(name))
            assert bench.milliseconds(told, name) > 0
        engine.script("() => globalThis.takeServiceWorker()")
        sent = []
        for _ in range(2):
            before = host.bytes_sent
            engine.script("(given) => globalThis.firstAnswer(given)", bench.given("image"))
            sent.append(host.bytes_sent - before)
    assert sent[1] < 10_000  # no more than a look for a newer service worker
