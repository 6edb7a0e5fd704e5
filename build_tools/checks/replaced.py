"""What a shop puts in the place of the library's pages and entries, and what it leaves out."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, asking, choosing, shortened


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each replacement that shop.yaml does not name, and each idle name.

    So nothing shipped is hidden by the accident of a name, and a page that replaced one which has
    another name by now is told.
    """
    shop = handbook.shop
    if shop is None:
        return
    named = shop.content.replaces
    for name, one in handbook.replaced.items():
        if one.same:
            said = f'this says the same as the shipped "{name}"'
            wanted = 'a change, or neither it nor its line under "replaces" in shop.yaml'
            yield Problem(one.file, one.line, asking(said, wanted))
        elif name not in named:
            said = (
                f'this stands in the place of the shipped "{name}", and shop.yaml does not say so'
            )
            wanted = f'"- {name}" under "replaces" in shop.yaml, or another name here'
            yield Problem(one.file, one.line, asking(said, wanted))
    for key, names in (("replaces", named), ("left_out", shop.content.left_out)):
        for place, name in enumerate(names):
            if name not in handbook.shipped:
                said = f'nothing shipped is called "{shortened(name)}" (any more)'
                yield shop.problem((key, place), choosing(said, name, _alike(handbook, name)))
            elif name in names[:place] or (key == "left_out" and name in named):
                said = f'"{name}" is named twice (expected each once)'
                yield shop.problem((key, place), said)
            elif key == "replaces" and name not in handbook.replaced:
                said = f'nothing of the shop stands in the place of "{name}"'
                wanted = "a file or an entry of that name, or no such line"
                yield shop.problem((key, place), asking(said, wanted))


def _alike(handbook: Handbook, name: str) -> list[str]:
    """Return the shipped names of the group that a name seems to be of, or all."""
    group = f"{name.partition('/')[0]}/"
    every = sorted(handbook.shipped)
    return [one for one in every if one.startswith(group)] or every
