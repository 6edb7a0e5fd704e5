"""Marks inside texts on their way through Markdown: a passage in both unit systems as one.

A pair stands as OPEN own BETWEEN other CLOSE. What stays the same in both though it has a unit
stands between KEPT and its END. An attribute that only one system has is ABSENT in the other. All
are characters of the private use area, which no text has.
"""

from __future__ import annotations

import re

OPEN, BETWEEN, CLOSE, KEPT, END, ABSENT = "\ue000\ue001\ue002\ue003\ue004\ue005"
PAIR = re.compile(f"{OPEN}([^{BETWEEN}]*){BETWEEN}([^{CLOSE}]*){CLOSE}")
_LEFT_OUT = re.compile(f""" [^\\s"'=<>]+=["']{ABSENT}["']""")
_ALL = re.compile(f"[{OPEN}{BETWEEN}{CLOSE}{KEPT}{END}]")


def pair(own: str, other: str) -> str:
    """Return a text in both systems as one."""
    return f"{OPEN}{own}{BETWEEN}{other}{CLOSE}"


def kept(text: str) -> str:
    """Return a text that names a unit in both systems."""
    return f"{KEPT}{text}{END}"


def own(text: str) -> str:
    """Return a text with marks as readers of the shop's own system see it."""
    return _ALL.sub("", _LEFT_OUT.sub("", PAIR.sub(r"\1", text)))


def other(text: str) -> str:
    """Return a text with marks as readers of the other system see it."""
    return _ALL.sub("", _LEFT_OUT.sub("", PAIR.sub(r"\2", text)))


def without_kept(text: str) -> str:
    """Return a text without the marks around what is kept."""
    return text.replace(KEPT, "").replace(END, "")
