"""How long a simulated home takes for a month, in this Python and in the browser's.

Two things: the days alone, as the build lives through thousands of sampled homes, and a whole
answer of the calculator with thirty days, as a page's worker gives it.
"""

from __future__ import annotations

import json
import time
from pathlib import Path
from random import Random
from statistics import mean, median
from typing import Any

from build_tools.benchmarks.calculators import in_browser_runtime, time_here
from calculators.simulation.clock import DAY
from calculators.simulation.home import sampled_home
from calculators.simulation.story import Story

DAYS = 30
HOMES = 60
PEOPLE = (1, 2, 3, 4, 5, 6)
ROUNDS = 20
WARM_UP = 3


def measure(root: Path) -> list[dict[str, Any]]:
    """Return the times of a home-month: sampled homes, and answers by the number of people."""
    requests = {str(people): _request(people) for people in PEOPLE}
    browser = in_browser_runtime(root, requests, rounds=ROUNDS, warm_up=WARM_UP)
    rows: list[dict[str, Any]] = [
        {"month": "sampled homes, days alone", "python_ms": round(_sampled(), 2)}
    ]
    rows += [
        {
            "month": f"answer, {people} {'person' if people == 1 else 'people'}",
            "python_ms": round(time_here(requests[str(people)], rounds=ROUNDS, warm_up=WARM_UP), 2),
            "browser_ms": round(median(browser[str(people)]), 2),
        }
        for people in PEOPLE
    ]
    return rows


def table(rows: list[dict[str, Any]]) -> str:
    """Return the measured times as text."""
    lines = [f"{f'{DAYS} days of a home, ms':<28} {'Python':>8} {'browser':>8}"]
    for row in rows:
        browser = f"{row['browser_ms']:>8.1f}" if "browser_ms" in row else f"{'':>8}"
        lines.append(f"{row['month']:<28} {row['python_ms']:>8.1f} {browser}")
    return "\n".join(lines)


def _request(people: int) -> str:
    inputs = {
        "people": people,
        "hardness": "20 gpg",
        "resin_volume": "1.5 ft³",
        "salt": "9 lb",
        "days": f"{DAYS} days",
    }
    asked = {"work": "calculate", "calculator": "simulated-softener"}
    return json.dumps({**asked, "inputs": inputs, "units": "us"})


def _sampled() -> float:
    """Return the mean time of a sampled home's days in milliseconds."""
    times = []
    for seed in range(WARM_UP + HOMES):
        story = Story(sampled_home(Random(seed)), seed)
        start = time.perf_counter()
        story.run(DAYS * DAY)
        times.append(1000 * (time.perf_counter() - start))
    return mean(times[WARM_UP:])
