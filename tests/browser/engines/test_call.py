"""A call in the other browsers: each tap ranks the causes as Python here does."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.knowledge_data import knowledge_data
from build_tools.engines.engine import Engine
from calculators.diagnosis import Knowledge, picture
from tests.browser.conftest import ROOT

READINGS = {"brine-level": "high", "rod-through-salt": "loose"}
FORGET = "() => localStorage.removeItem('call in /')"


@pytest.fixture
def no_call(engine: Engine, handbook: str) -> Iterator[None]:
    """Begin without a call, and leave none to the tests that share the browser's profile."""
    engine.visit(f"{handbook}faults/")
    engine.script(FORGET)
    yield
    engine.script(FORGET)


@pytest.mark.usefixtures("no_call")
def test_each_tap_ranks_as_python_here_does(engine: Engine, handbook: str) -> None:
    knowledge = Knowledge(knowledge_data(load_handbook(ROOT / "docs_src", ROOT)))
    engine.visit(f"{handbook}faults/")
    engine.wait_for("() => document.querySelectorAll('.call__causes > li').length > 0", value=True)
    call = {"complaint": "tank-overfull", "readings": {}}
    tap(engine, "complaint", "tank-overfull")
    for check, result in READINGS.items():
        tap(engine, check, result)
        call["readings"][check] = result
        leader = picture(knowledge, call)["causes"][0]
        title = knowledge.faults[leader["fault"]]["title"]
        engine.wait_for(
            "() => document.querySelector('.call__bar [data-part=status]').textContent",
            value=f"{title}, {leader['words']}",
        )


def tap(engine: Engine, check: str, result: str) -> None:
    """Choose a result."""
    engine.script(
        """(check, result) => document.querySelector(
          `[data-check="${check}"] input[value="${result}"]`).click()""",
        check,
        result,
    )
