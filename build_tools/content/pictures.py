"""What a picture block is drawn from, and what is wrong with what it is given."""

from __future__ import annotations

from build_tools.content.entries import Entry
from build_tools.content.page_models import Picture
from build_tools.content.values import Values
from calculators.declare import Input
from calculators.figures.drawings import DRAWINGS

#: The drawing that takes its numbers from the diagnosis, and what it is given.
CAUSES, CAUSES_GIVEN = "causes", ("complaint", "findings")
#: The names of all drawings.
NAMES = (*DRAWINGS, CAUSES)


def drawn(values: Values, entry: Entry[Picture]) -> tuple[str, dict[str, str]]:
    """Return a picture as SVG, and a sentence for each input that has a problem.

    entry: of a calculator, or of a drawing other than the causes. There is no SVG with a problem,
    nor where the calculator draws nothing for these inputs.
    """
    content = entry.content
    given = values.calculators.given(entry)
    if content.calculate:
        problems = values.calculators.result(content.calculate, given)["problems"]
        svg = "" if problems else values.calculators.picture(content.calculate, given)
        return svg, problems
    svg, problems = values.calculators.drawing(content.drawing, given)
    return svg or "", problems


def inputs_of(content: Picture) -> tuple[Input, ...]:
    """Return what a drawing without a calculator may be given; nothing for one of no name."""
    return DRAWINGS[content.drawing].inputs if content.drawing in DRAWINGS else ()
