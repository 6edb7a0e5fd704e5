"""Every line of the shop's record of finished calls must be one that can be counted."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem
from build_tools.diagnosis.knowledge_data import record_of


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each line of the record that cannot be read or names what is not there."""
    yield from record_of(handbook).problems
