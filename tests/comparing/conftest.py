"""A shop to change, and its record before."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.comparing.shops import ShopFolder, copy_of_second_shop


@pytest.fixture
def shop(tmp_path: Path) -> ShopFolder:
    """Return a copy of the second shop."""
    return copy_of_second_shop(tmp_path / "shop")


@pytest.fixture(scope="session")
def before(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """Return the record of the second shop as it is."""
    return copy_of_second_shop(tmp_path_factory.mktemp("before") / "shop").record()
