"""How fast each calculator answers its example, in this Python and in the browser's.

Both take the inputs as JSON text and give the answer as JSON text, as a page's worker does. The
browser's Python is the handbook's own runtime, run by Node: the same WebAssembly engine as
Chromium's, without a page around it.
"""

from __future__ import annotations

import json
import subprocess
import tempfile
import time
from pathlib import Path
from statistics import median
from typing import Any

from build_tools.browser.runtime import runtime_files
from build_tools.set_up.failure import Failure
from calculators import CALCULATORS
from calculators.as_text import answer
from calculators.declare import Calculator

ROUNDS = 200
WARM_UP = 20


def measure(root: Path) -> list[dict[str, Any]]:
    """Return for each calculator the median time of an answer in both, and their ratio."""
    requests = {one.name: _request(one) for one in CALCULATORS.values()}
    here = {
        name: time_here(request, rounds=ROUNDS, warm_up=WARM_UP)
        for name, request in requests.items()
    }
    times = in_browser_runtime(root, requests, rounds=ROUNDS, warm_up=WARM_UP)
    browser = {name: median(each) for name, each in times.items()}
    return [
        {
            "calculator": name,
            "python_ms": round(here[name], 4),
            "browser_ms": round(browser[name], 4),
            "ratio": round(browser[name] / here[name], 1),
        }
        for name in requests
    ]


def table(rows: list[dict[str, Any]]) -> str:
    """Return the measured times as text, the slowest last."""
    lines = [f"{'median of an answer, ms':<24} {'Python':>8} {'browser':>8} {'ratio':>6}"]
    lines += [_line(row) for row in sorted(rows, key=lambda row: row["browser_ms"])]
    return "\n".join(lines)


def _line(row: dict[str, Any]) -> str:
    return (
        f"{row['calculator']:<24} {row['python_ms']:>8.3f} {row['browser_ms']:>8.3f} "
        f"{row['ratio']:>6.1f}"
    )


def _request(calculator: Calculator) -> str:
    """Return the question of the calculator's own example, as a page's worker gets it."""
    inputs = {one.name: text for one in calculator.inputs if (text := one.example_text("us"))}
    asked = {"work": "calculate", "calculator": calculator.name, "inputs": inputs, "units": "us"}
    return json.dumps(asked)


def time_here(request: str, *, rounds: int, warm_up: int) -> float:
    """Return the median time of an answer in milliseconds, in this Python."""
    times = []
    for _ in range(warm_up + rounds):
        start = time.perf_counter()
        answer(request)
        times.append(1000 * (time.perf_counter() - start))
    return median(times[warm_up:])


def in_browser_runtime(
    root: Path, requests: dict[str, str], *, rounds: int, warm_up: int
) -> dict[str, list[float]]:
    """Return the times in milliseconds of each request, again and again, in the browser's Python."""
    with tempfile.TemporaryDirectory() as site:
        folder = runtime_files(root).copy_to(Path(site))
        done = subprocess.run(
            ["node", Path(__file__).with_name("calculators.mjs"), folder],
            input=json.dumps({"requests": requests, "rounds": rounds, "warmUp": warm_up}),
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=False,
        )
    if done.returncode:
        raise Failure(f"The browser's Python could not be measured:\n{done.stderr.strip()}")
    return json.loads(done.stdout)
