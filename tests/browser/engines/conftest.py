"""Firefox and WebKitGTK, as far as they are installed: what reaches readers of other browsers."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from build_tools.engines.engine import Engine
from build_tools.engines.firefox import Firefox
from build_tools.engines.webkit import WebKit
from build_tools.set_up.engines import missing


@pytest.fixture(scope="session", params=[Firefox, WebKit], ids=lambda kind: kind.name)
def engine(request: pytest.FixtureRequest) -> Iterator[Engine]:
    """Start each browser once; its tests share one profile."""
    kind = request.param
    if kind.name in missing():
        pytest.skip(f"{kind.name} is not installed: its tests are left out")
    engine = kind()
    yield engine
    engine.close()
