"""The shipped handbook, and one pack of it."""

from __future__ import annotations

import pytest

from build_tools.class_pack.pack import Pack, Wanted
from build_tools.content.handbook import Handbook
from build_tools.shops.place import here


@pytest.fixture(scope="session")
def handbook() -> Handbook:
    return here().load_sound()


@pytest.fixture(scope="session")
def pack(handbook: Handbook) -> Pack:
    """A mixed pack for two people."""
    return Pack(handbook, Wanted("7", people=2, edition="2026-05-01"))
