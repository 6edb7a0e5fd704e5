"""What a comparison of a copy with a list finds."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass
class Findings:
    """problems: a line for each file that is not as it should be. warnings: sentences."""

    problems: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
