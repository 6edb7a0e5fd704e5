"""What differs between two written pages: numbers that changed, and texts.

Blocks of the two pages are paired: first those that say the same, then those that say the same with
other numbers, then those that are alike. Only the last are reworded; what has no pair was added or
removed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import groupby

from build_tools.comparing.block import Block, Number

#: Blocks that share at least so much of their words are one block, reworded.
ALIKE = 0.5
_TOKEN = re.compile(r"\s+|\w+|[^\w\s]")


@dataclass(frozen=True)
class NumberChange:
    """A number that is another one now; old or new is None where it was added or removed."""

    old: tuple[Block, Number] | None
    new: tuple[Block, Number] | None

    @property
    def block(self) -> Block:
        """The block it stands in, or stood in."""
        return (self.new or self.old)[0]

    @property
    def number(self) -> Number:
        """The number as it is, or as it was."""
        return (self.new or self.old)[1]


@dataclass(frozen=True)
class TextChange:
    """A block that was added, removed or reworded: parts of its text, each with what became of it.

    parts: ("same" | "removed" | "added", text) in order.
    """

    old: Block | None
    new: Block | None
    parts: tuple[tuple[str, str], ...]

    @property
    def what(self) -> str:
        """What became of the block."""
        if self.old is None:
            return "added"
        return "removed" if self.new is None else "reworded"

    @property
    def block(self) -> Block:
        """The block as it is, or as it was."""
        return self.new or self.old


Change = NumberChange | TextChange


def differences(old: list[Block], new: list[Block]) -> Iterator[Change]:
    """Yield the differences of two pages in the order of the new one."""
    for before, after in pairs(old, new):
        yield from _between(before, after)


def pairs(old: list[Block], new: list[Block]) -> list[tuple[Block | None, Block | None]]:
    """Return which block became which, in order; None stands for no block."""
    found = []
    for before, after in _runs(old, new, lambda one: (one.kind, one.text)):
        if len(before) == len(after) and all(map(_same, before, after)):
            found += zip(before, after, strict=True)
            continue
        for some, others in _runs(before, after, _words):
            if len(some) == len(others) and all(
                _words(a) == _words(b) for a, b in zip(some, others, strict=True)
            ):
                found += zip(some, others, strict=True)
            else:
                found += _alike(some, others)
    return found


def likeness(old: str, new: str) -> float:
    """Return from 0 to 1 how much of their words two texts share."""
    words = re.findall(r"\w+|#", old), re.findall(r"\w+|#", new)
    return SequenceMatcher(None, *words, autojunk=False).ratio()


def _same(old: Block, new: Block) -> bool:
    return (old.kind, old.text) == (new.kind, new.text)


def _words(block: Block) -> tuple[str, ...]:
    return (block.kind, block.words, block.label)


def _runs(old: list[Block], new: list[Block], key) -> Iterator[tuple[list[Block], list[Block]]]:
    """Yield in order runs of blocks with equal keys, and between them what is left of each side."""
    matcher = SequenceMatcher(None, [*map(key, old)], [*map(key, new)], autojunk=False)
    for _, start, end, new_start, new_end in matcher.get_opcodes():
        yield old[start:end], new[new_start:new_end]


def _alike(old: list[Block], new: list[Block]) -> list[tuple[Block | None, Block | None]]:
    """Pair blocks of one kind that share words, in order; the others stay alone."""
    if len(old) == len(new) == 1 and old[0].kind == new[0].kind:
        return [(old[0], new[0])]
    found: list[tuple[Block | None, Block | None]] = []
    left = list(old)
    for block in new:
        place = _likest(left, block)
        if place is None:
            found.append((None, block))
            continue
        found += [(one, None) for one in left[:place]]
        found.append((left[place], block))
        left = left[place + 1 :]
    return found + [(one, None) for one in left]


def _likest(old: list[Block], block: Block) -> int | None:
    best = max(
        (
            (likeness(one.words, block.words), -place)
            for place, one in enumerate(old)
            if one.kind == block.kind
        ),
        default=(0.0, 0),
    )
    return -best[1] if best[0] >= ALIKE else None


def _between(old: Block | None, new: Block | None) -> Iterator[Change]:
    if old is None or new is None:
        only = new or old
        yield TextChange(old, new, (("added" if old is None else "removed", only.text),))
        for number in only.numbers:
            yield NumberChange(old and (old, number), new and (new, number))
        return
    if old.words == new.words:
        for before, after in zip(old.numbers, new.numbers, strict=True):
            if before.text != after.text:
                yield NumberChange((old, before), (new, after))
        return
    parts, numbers = _reworded(old, new)
    yield TextChange(old, new, tuple(parts))
    yield from numbers


def _tokens(block: Block) -> list[tuple[str, Number | None]]:
    """Return a block as words, the spaces between them, and its numbers."""
    made: list[tuple[str, Number | None]] = []
    done = 0
    for number in block.numbers:
        made += [(one, None) for one in _TOKEN.findall(block.text[done : number.start])]
        made.append((number.text, number))
        done = number.start + len(number.text)
    return made + [(one, None) for one in _TOKEN.findall(block.text[done:])]


def _reworded(old: Block, new: Block) -> tuple[list[tuple[str, str]], list[NumberChange]]:
    before, after = _tokens(old), _tokens(new)
    masks = [["#" if number else text for text, number in side] for side in (before, after)]
    parts: list[tuple[str, str]] = []
    numbers: list[NumberChange] = []
    matcher = SequenceMatcher(None, *masks, autojunk=False)
    for what, start, end, new_start, new_end in matcher.get_opcodes():
        some, others = before[start:end], after[new_start:new_end]
        if what == "equal":
            for (text, number), (other, its) in zip(some, others, strict=True):
                parts += (
                    [("same", text)] if text == other else [("removed", text), ("added", other)]
                )
                if number and its and text != other:
                    numbers.append(NumberChange((old, number), (new, its)))
            continue
        parts += [("removed", text) for text, _ in some] + [("added", text) for text, _ in others]
        numbers += [NumberChange((old, number), None) for _, number in some if number]
        numbers += [NumberChange(None, (new, number)) for _, number in others if number]
    return _joined(parts), numbers


def _joined(parts: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return neighbors of one sort as one part; a space between two changes does not part them."""
    made: list[tuple[str, str]] = []
    changed, space = {"removed": "", "added": ""}, ""
    for sort, text in [*parts, ("same", "")]:
        if sort == "same" and text.isspace() and all(changed.values()):
            space += text
        elif sort == "same":
            made += [(name, words) for name, words in changed.items() if words]
            made.append(("same", space + text))
            changed, space = {"removed": "", "added": ""}, ""
        else:
            changed = {name: words + space for name, words in changed.items()}
            changed[sort] += text
            space = ""
    groups = groupby((part for part in made if part[1]), key=lambda part: part[0])
    return [(sort, "".join(text for _, text in some)) for sort, some in groups]
