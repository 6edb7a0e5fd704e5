"""The calculators as the shop uses them: what they are not given, the shop tells where it can."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from build_tools.content.entries import Entry, Example
from build_tools.content.origins import Origins
from build_tools.content.shop_values import ShopValues
from build_tools.content.showing import Showing
from calculators import CALCULATORS, run
from calculators.figures import picture
from calculators.figures.drawings import DRAWINGS, drawing

# While authors work, the handbook is made anew after each change, and most inputs are the same
# again. The process ends when the calculators change: see serving/code.py.


@cache
def _result(name: str, inputs: tuple[tuple[str, str], ...], units: str) -> dict[str, Any]:
    return run(name, dict(inputs), units)


@cache
def _picture(name: str, inputs: tuple[tuple[str, str], ...], units: str) -> str:
    return picture(name, dict(inputs), units) or ""


class ShopCalculators:
    """Runs calculators by their name, for those to whom values are shown."""

    def __init__(self, shop: ShopValues, showing: Showing, origins: Origins) -> None:
        self._shop = shop
        self._showing = showing
        self._origins = origins

    def result(self, name: str, given: Mapping[str, str]) -> dict[str, Any]:
        """Return the result structure of a calculator."""
        inputs, units = self._inputs(name, given), self._showing.units
        found = _result(name, self._plain(inputs), units)
        return self._origins.result(name, inputs, units, found)

    def picture(self, name: str, given: Mapping[str, str]) -> str:
        """Return the curve of a calculator at the same inputs as SVG, or nothing without one."""
        inputs = self._inputs(name, given)
        svg = _picture(name, self._plain(inputs), self._showing.units)
        return self._origins.picture(name, inputs, svg)

    def drawing(self, name: str, given: Mapping[str, str]) -> tuple[str | None, dict[str, str]]:
        """Return a drawing without a calculator as SVG, and a sentence for each wrong input."""
        declared = DRAWINGS[name].inputs if name in DRAWINGS else ()
        inputs = self._showing.complete(declared, self._origins.plain(dict(given)))
        svg, problems = drawing(name, inputs, self._showing.units)
        return svg and self._origins.drawing(given, svg), problems

    def answers(self, example: Example) -> dict[str, Any]:
        """Return the result structure of a worked example."""
        return self.result(example.content.calculate, self.given(example))

    def given(self, entry: Entry[Any]) -> dict[str, Any]:
        """Return what a worked example, a picture or a table states for its calculator."""
        stated = self._origins.stated
        return {name: stated(entry, name, text) for name, text in entry.content.given.items()}

    def _inputs(self, name: str, given: Mapping[str, str]) -> dict[str, str]:
        calculator = CALCULATORS[name]
        inputs = {**self._shop.defaults(calculator), **given}
        return dict(sorted(self._showing.complete(calculator.inputs, inputs).items()))

    def _plain(self, inputs: dict[str, str]) -> tuple[tuple[str, str], ...]:
        return tuple(self._origins.plain(inputs).items())
