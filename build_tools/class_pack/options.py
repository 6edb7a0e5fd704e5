"""The options of the command class-pack, and what is wrong with them."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from urllib.parse import urlsplit

import click

from build_tools.set_up.failure import Failure

#: The most sheets of a pack, and the most letters of a seed: a sheet's number comes behind it.
MOST_PEOPLE, LONGEST_SEED = 99, 30
#: Options that take one word or several, up to the next option.
OF_SEVERAL = ("--exercises", "--family", "--calls")
A_DAY, A_SITE = "2026-05-01", "https://handbook.example/"


class Several(click.Command):
    """A command some of whose options take several words: `--exercises a b` is two exercises."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Give each word of such an option an option of its own."""
        return super().parse_args(ctx, one_by_one(args))


def one_by_one(arguments: Sequence[str]) -> list[str]:
    """Return arguments in which each word of an option of several has the option before it.

    >>> one_by_one(["--calls", "A", "B", "--seed", "7", "--family"])
    ['--calls', 'A', '--calls', 'B', '--seed', '7', '--family']
    """
    made: list[str] = []
    option, words = "", 0
    for one in [*arguments, "--"]:
        if not one.startswith("--"):
            made += [option, one] if option else [one]
            words += 1
            continue
        if option and not words:  # an option without a word is told as one
            made.append(option)
        option, words = one if one in OF_SEVERAL else "", 0
        if not option:
            made.append(one)
    return made[:-1]


def checked(seed: str, edition: str, address: str) -> None:
    """Raise Failure for a seed, a day or an address that is none."""
    if not seed.strip() or len(seed) > LONGEST_SEED or not seed.isprintable():
        raise Failure(f"A seed is a number or a short text of at most {LONGEST_SEED} letters.")
    if edition and not _is_day(edition):
        raise Failure(f"“{edition}” is no day of an edition: write it as “{A_DAY}”.")
    if address and not _is_site(address):
        raise Failure(f"“{address}” is no address of a site: write it as “{A_SITE}”.")


def _is_day(text: str) -> bool:
    try:
        return datetime.date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _is_site(text: str) -> bool:
    try:
        parts = urlsplit(text)
        return (
            parts.scheme in ("http", "https")
            and bool(parts.hostname)
            and not any(letter in text for letter in ' ?#"<>')
        )
    except ValueError:
        return False
