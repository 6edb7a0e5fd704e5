"""The calculators answer alike in the build's Python and in the browser's."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from build_tools.browser.runtime import runtime_files
from build_tools.diagnosis.knowledge_data import knowledge_data
from calculators import CALCULATORS, run
from calculators.as_text import answer
from tests.calculators.practice.shipped import exercises, handbook
from tests.parity.cases import parity_cases

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def cases(thorough: bool) -> list[dict]:
    """Return what all calculators are asked."""
    return parity_cases(18_000 if thorough else 7_500)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a site's folder with the files of the browser's Python."""
    return runtime_files(ROOT).copy_to(tmp_path_factory.mktemp("site"))


@pytest.fixture(scope="module")
def of_the_image(folder: Path, cases: list[dict]) -> list[dict]:
    """Return the answers of the browser's Python under Node, started from its memory image."""
    return json.loads(_answers(folder, "image", cases))


def _answers(folder: Path, way: str, requests: list[dict]) -> str:
    programs = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    node = shutil.which("node", path=programs)
    done = subprocess.run(
        [node, Path(__file__).with_name("pyodide_run.mjs"), folder, way],
        input=json.dumps(requests),
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def pairs(cases: list[dict], of_the_image: list[dict]) -> list[tuple[dict, dict, dict]]:
    """Return each case with the answer of the Python here and that of the memory image.

    The two use different mathematics libraries, whose last digits differ.
    """
    here = [run(case["calculator"], case["inputs"], case["units"]) for case in cases]
    return list(zip(cases, json.loads(json.dumps(here)), of_the_image, strict=True))


def differences(here: object, there: object, where: str = "") -> list[str]:
    """Return where two answers differ: numbers by more than 1e-12 of themselves, texts at all."""
    if isinstance(here, dict) and isinstance(there, dict):
        if list(here) != list(there):
            return [f"{where}: {list(here)} or {list(there)}"]
        return [
            line for key in here for line in differences(here[key], there[key], f"{where}.{key}")
        ]
    if isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        pairs = enumerate(zip(here, there, strict=True))
        return [line for index, two in pairs for line in differences(*two, f"{where}[{index}]")]
    if isinstance(here, float) and isinstance(there, float):
        alike = abs(here - there) <= 1e-12 * max(abs(here), abs(there))
    else:
        alike = type(here) is type(there) and here == there
    return [] if alike else [f"{where}: {here!r} or {there!r}"]


def test_both_pythons_say_the_same(pairs: list[tuple[dict, dict, dict]]) -> None:
    found = [(case, differences(here, there)) for case, here, there in pairs]
    assert [(case, lines) for case, lines in found if lines] == []


@cache
def practice_requests() -> list[dict]:
    """Return requests for a question of every shipped exercise, and for its marking."""
    learn = {"work": "learn", "knowledge": json.dumps(knowledge_data(handbook()))}
    posed = [
        {"work": "pose", "exercise": one, "seed": "class 7", "units": "us"}
        for one in exercises().values()
    ]
    marked = [
        {**one, "work": "mark", "answers": {"counter": "1200 gal"}}
        for one in posed
        if one["exercise"]["kind"] == "number"
    ]
    return [learn, *posed, *marked]


def test_a_seed_gives_the_same_question_in_both_pythons(folder: Path) -> None:
    here = [json.loads(answer(json.dumps(one))) for one in practice_requests()]
    there = json.loads(_answers(folder, "image", practice_requests()))
    assert differences(here, there) == []
    assert all("problem" not in one for one in here[1:])


def test_every_way_to_start_python_gives_the_same_text(
    folder: Path, cases: list[dict], thorough: bool
) -> None:
    some = cases if thorough else cases[: 10 * len(CALCULATORS)]
    plain = _answers(folder, "plain", some)
    assert len(json.loads(plain)) == len(some)
    assert _answers(folder, "compiled", some) == plain
    assert _answers(folder, "image", some) == plain


def test_the_cases_reach_answers_warnings_and_problems_of_every_calculator(
    pairs: list[tuple[dict, dict, dict]], thorough: bool
) -> None:
    least = 20 if thorough else 8  # as many for so many cases
    answered, wrong = Counter(), Counter()
    for case, here, _ in pairs:
        answered[case["calculator"]] += bool(here["values"])
        wrong[case["calculator"]] += bool(here["problems"])
    assert min(answered[name] for name in CALCULATORS) >= least
    assert min(wrong[name] for name in CALCULATORS) >= least
    assert {case["units"] for case, here, _ in pairs if here["values"]} == {"us", "metric"}
    assert sum(bool(here["warnings"]) for _, here, _ in pairs) >= 100


def test_a_difference_is_seen() -> None:
    one = {"values": {"a": {"number": 1.0, "shown": "1"}}, "workings": [{"result": "1"}]}
    other = {"values": {"a": {"number": 1.0 + 1e-11, "shown": "2"}}, "workings": [{"result": "1"}]}
    assert differences(one, other) == [
        ".values.a.number: 1.0 or 1.00000000001",
        ".values.a.shown: '1' or '2'",
    ]
    assert differences({"a": 1.0}, {"a": 1.0 + 1e-14}) == []
    assert differences({"a": [1.0]}, {"a": [1.0, 2.0]}) != []
