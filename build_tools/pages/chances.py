"""Chances, shares and minutes in the words of the pages."""

from __future__ import annotations

from calculators.quantities import plain, significant, with_unit

#: The least chance of each word, from the top.
_WORDS = (
    (0.9, "almost always"),
    (0.65, "mostly"),
    (0.35, "often"),
    (0.1, "sometimes"),
    (0.0, "seldom"),
)


def how_often(chance: float) -> str:
    """Return a chance from 0 to 1 in a plain word."""
    return next(word for least, word in _WORDS if chance >= least)


def of_ten(share: float) -> str:
    """Return a share from 0 to 1 as a person says it."""
    tenths = round(share * 10)
    if tenths >= 10:
        return "nearly all"
    if tenths >= 1:
        return f"about {tenths} of 10"
    return "about 1 of 20" if share >= 0.025 else "fewer than 1 of 40"


def percent(share: float) -> str:
    """Return a share from 0 to 1 in percent, to two digits."""
    return with_unit(plain(significant(100 * share, 2)), "%")


def how_long(minutes: float) -> str:
    """Return a time as a watch would be read: seconds below a minute."""
    if minutes == 0:
        return "no time"
    if minutes < 1:
        return with_unit(f"{round(minutes * 60 / 5) * 5}", "s")
    return with_unit(plain(significant(minutes, 2)), "min")
