"""The stages of a procedure: a step may begin with the word of the stage that it opens."""

from __future__ import annotations

import re

#: On a page of another language, what is in English stands in a tag that says so.
_STAGE = re.compile(r"(<[^>]*>|)\*\*(.+?)[.:]?\*\*\s*")


def split_stage(do: str) -> tuple[str, str]:
    """Return the stage that a step opens, or "", and what to do.

    >>> split_stage("**Water tests:** test the raw water.")
    ('Water tests', 'Test the raw water.')
    >>> split_stage("Test the raw water.")
    ('', 'Test the raw water.')
    """
    stage = _STAGE.match(do)
    if not stage:
        return "", do
    rest = do[stage.end() :]
    return stage[2], stage[1] + rest[:1].upper() + rest[1:]
