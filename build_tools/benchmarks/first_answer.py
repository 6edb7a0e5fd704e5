"""How long a page waits for Python's first answer, and what has to travel for it.

The handbook's fast starts are measured beside a plain start of Pyodide, in turns and in the same
run, so that whatever else this machine does meets all of them. Every start must give the same
answer.
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from build_tools.benchmarks.bench import SLOW_LINKS, STARTS, Bench, say
from build_tools.benchmarks.first_paint import first_paint
from build_tools.benchmarks.host import Host
from build_tools.benchmarks.slow_processor import quota
from build_tools.benchmarks.table import Row
from build_tools.engines.engine import Engine
from build_tools.engines.firefox import Firefox
from build_tools.engines.webkit import WebKit
from build_tools.set_up.engines import missing

HOSTS = {"brotli": "br", "gzip": "gzip", "no compression": ""}

# A browser compiles for its next visits what it has used in a few, some seconds after the use.
VISITS_BEFORE = 3
SECONDS_TO_SETTLE = 3

# Of one processor, for all that a browser does.
SLOW_PROCESSOR = 0.25


def measure(root: Path, rounds: int) -> list[Row]:
    """Return the medians of that many rounds, in each browser that is installed."""
    with tempfile.TemporaryDirectory(prefix="first-answer-", ignore_cleanup_errors=True) as folder:
        bench = Bench(root, Path(folder), rounds)
        rows = []
        for part in PARTS:
            for row in part(bench):
                say(row.as_text())
                rows.append(row)
        return rows


def next_visits(bench: Bench) -> Iterator[Row]:
    """Measure new processes of Chromium, with profiles that have been here before."""
    with bench.host() as host:
        yield _next_visit(bench, host, "next visit")
        yield _next_visit(bench, host, "next visit, service worker", with_service_worker=True)
        with quota() as group:
            if group is None:
                say("Left out: a slow processor needs root, and Linux's control groups.")
                return
            program = group.launcher(bench.program, bench.new_folder() / "chromium")
            setting = f"next visit, {SLOW_PROCESSOR} processor"
            yield _next_visit(bench, host, setting, program=program, limit=group.limit)


def _next_visit(
    bench: Bench,
    host: Host,
    setting: str,
    *,
    with_service_worker: bool = False,
    program: Path | None = None,
    limit: Callable[[float | None], None] = lambda _: None,
) -> Row:
    say(f"Chromium, {setting} ...")
    profiles = {name: bench.new_folder() for name in STARTS}
    addresses = {
        name: bench.address(host, name, withServiceWorker=with_service_worker) for name in STARTS
    }

    def visit(name: str) -> float:
        told = bench.in_chromium(
            host,
            addresses[name],
            profile=profiles[name],
            program=program,
            when_it_begins=lambda: limit(SLOW_PROCESSOR),
            afterwards=lambda: limit(None),
        )
        return bench.milliseconds(told, name)

    for _ in range(VISITS_BEFORE):
        for name in STARTS:
            bench.in_chromium(
                host,
                addresses[name],
                profile=profiles[name],
                program=program,
                afterwards=lambda: time.sleep(SECONDS_TO_SETTLE),
            )
    measured = [{name: visit(name) for name in STARTS} for _ in bench.rounds]
    return Row.of_medians("first answer in Chromium", setting, "ms", measured)


def first_visits(bench: Bench) -> Iterator[Row]:
    """Measure Chromium with new profiles: over any speed, then over slow links."""
    for setting, link in {"first visit": None, **SLOW_LINKS}.items():
        say(f"Chromium, {setting} ...")
        with bench.host(link=link) as host:
            measured = [
                {name: _first_visit(bench, host, name)[0] for name in STARTS} for _ in bench.rounds
            ]
        yield Row.of_medians("first answer in Chromium", setting, "ms", measured)


def bytes_sent(bench: Bench) -> Iterator[Row]:
    """Count what a host sends before the first answer.

    Over a link, because without one a host has sent much of a file before a page turns away.
    """
    for setting, encoding in HOSTS.items():
        say(f"Bytes, {setting} ...")
        with bench.host(encoding, SLOW_LINKS["9 Mbit/s, 60 ms"]) as host:
            sent = {name: _first_visit(bench, host, name)[1] for name in STARTS}
        yield Row("before the first answer", setting, "bytes", sent)


def _first_visit(bench: Bench, host: Host, name: str) -> tuple[float, int]:
    """Return the milliseconds to the first answer, and the bytes that had been sent by then."""
    counts = []
    told = bench.in_chromium(
        host,
        bench.address(host, name),
        when_it_begins=lambda: counts.append(host.bytes_sent),
        afterwards=lambda: counts.append(host.bytes_sent),
    )
    before, after = counts
    return bench.milliseconds(told, name), after - before


def other_browsers(bench: Bench) -> Iterator[Row]:
    """Measure workers that are started anew, in one process of each other browser.

    The service worker makes it fair: WebKitGTK keeps large files in no other way while it is
    steered.
    """
    for kind in (Firefox, WebKit):
        if kind.name in missing():
            say(f"Left out: {kind.name} is not installed.")
            continue
        say(f"{kind.name} ...")
        engine = kind()
        try:
            with bench.host() as host:
                engine.visit(host.address)
                yield _new_workers(bench, engine, "new worker")
                engine.script("() => globalThis.takeServiceWorker()")
                yield _new_workers(bench, engine, "new worker, service worker")
        finally:
            engine.close()


def _new_workers(bench: Bench, engine: Engine, setting: str) -> Row:
    def start(name: str) -> float:
        told = engine.script("(given) => globalThis.firstAnswer(given)", bench.given(name))
        time.sleep(SECONDS_TO_SETTLE)
        engine.script("() => globalThis.endWorker()")
        return bench.milliseconds(told, name)

    for _ in range(VISITS_BEFORE):
        for name in STARTS:
            start(name)
    measured = [{name: start(name) for name in STARTS} for _ in bench.rounds]
    return Row.of_medians(f"first answer in {engine.name}", setting, "ms", measured)


PARTS: tuple[Callable[[Bench], Iterator[Row]], ...] = (
    next_visits,
    other_browsers,
    first_visits,
    bytes_sent,
    first_paint,
)
