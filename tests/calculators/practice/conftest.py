"""What the shipped handbook knows, loaded once for the tests of practice."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.diagnosis.knowledge_data import knowledge_data
from calculators.diagnosis import Knowledge

ROOT = Path(__file__).parents[3]


@pytest.fixture(scope="session")
def shipped_data() -> dict[str, Any]:
    """Return the shipped handbook's knowledge as pages get it."""
    return json.loads(json.dumps(knowledge_data(load_handbook(ROOT / "docs_src", ROOT))))


@pytest.fixture(scope="session")
def shipped(shipped_data: dict[str, Any]) -> Knowledge:
    """Return the shipped handbook's knowledge."""
    return Knowledge(shipped_data)
