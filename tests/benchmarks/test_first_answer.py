"""The page that measures, in a Chromium that nobody steers. What it measures is not judged here."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from build_tools.benchmarks.bench import REQUEST, STARTS, Bench
from build_tools.set_up.failure import Failure
from calculators.as_text import answer

ROOT = Path(__file__).parents[2]


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    """Make the site that is measured."""
    return Bench(ROOT, tmp_path, rounds=1)


def test_every_start_gives_the_answer_of_python_here(bench: Bench) -> None:
    with bench.host("gzip") as host:
        for name in STARTS:
            begun = []
            told = bench.in_chromium(
                host,
                bench.address(host, name, withServiceWorker=False),
                when_it_begins=lambda begun=begun: begun.append(host.bytes_sent),
            )
            assert told["answer"] == answer(REQUEST)
            assert bench.milliseconds(told, name) > 0
            assert len(begun) == 1


def test_a_profile_under_a_service_worker_asks_the_host_for_nothing(
    bench: Bench, tmp_path: Path
) -> None:
    sent = []
    with bench.host("gzip") as host:
        for _ in range(2):
            before = host.bytes_sent
            bench.in_chromium(
                host,
                bench.address(host, "image", withServiceWorker=True),
                profile=tmp_path / "profile",
            )
            sent.append(host.bytes_sent - before)
    assert sent[0] > 1_000_000
    assert sent[1] < 10_000


def test_a_start_that_fails_is_told(bench: Bench) -> None:
    with bench.host("gzip") as host:
        address = bench.address(host, "image", way="bicycle")
        with pytest.raises(Failure, match="The page that measures says: "):
            bench.in_chromium(host, address)


def test_another_answer_is_told(bench: Bench) -> None:
    told = {"milliseconds": 1.0, "answer": json.dumps({"values": {}})}
    assert bench.milliseconds(told, "plain") == 1.0
    with pytest.raises(Failure, match="The start 'image' gives another answer: {}"):
        bench.milliseconds({"milliseconds": 1.0, "answer": "{}"}, "image")
