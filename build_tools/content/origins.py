"""Where values come from: what Values and its parts tell about each value that they pass on.

For pages it is of no account: Origins leaves every value as it is. `comparing/tracing.py` takes its
place to mark each number with what it rests on.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, Any

from build_tools.content.entries import Entry
from build_tools.content.fields import Format, Measure
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment

if TYPE_CHECKING:
    from build_tools.content.showing import Shown


class Origins:
    """Is told of each value, and returns what goes on in its place: here, the same."""

    def of_translation(self, handbook: Handbook) -> Origins:
        """Return the origins for a translation of the handbook."""
        return self

    # Values of the sources

    def measure(self, measure: Measure, shown: Shown) -> Shown:
        """Return how a quantity of a source file is shown."""
        return shown

    def fact(self, shown: Shown) -> Shown:
        """Return a fact, whose quantities have been through `measure`."""
        return shown

    def shop(self, content: Format, name: str, value: Any) -> Any:
        """Return a value of the shop, or of its typical home, that is no quantity."""
        return value

    def unit_figure(self, unit: Entry[Equipment], name: str, value: Any) -> Any:
        """Return a figure of a unit's sheet, or what stands for one that is left out."""
        return value

    def stated(self, entry: Entry[Any], name: str, text: Any) -> Any:
        """Return what an entry itself states for the input `name` of a calculator."""
        return text

    # Answers of calculators

    def plain(self, data: Any) -> Any:
        """Return texts without their origins, as calculators and scripts take them."""
        return data

    def result(
        self, name: str, inputs: Mapping[str, str], units: str, found: dict[str, Any]
    ) -> dict[str, Any]:
        """Return the result of a calculator at these inputs for readers in these units."""
        return found

    def picture(self, name: str, inputs: Mapping[str, str], svg: str) -> str:
        """Return the picture of a calculator at these inputs."""
        return svg

    def drawing(self, given: Mapping[str, str], svg: str) -> str:
        """Return a drawing without a calculator."""
        return svg

    # What pages make of values

    def because(self, text: str, *of: Any) -> str:
        """Return a text that a page makes itself out of other values."""
        return text

    def once(self, sentences: Iterable[str]) -> list[str]:
        """Return sentences of several results, each once."""
        return list(dict.fromkeys(sentences))

    def made_from(self, data: dict[str, Any], make: Callable[[dict[str, Any]], Any]) -> Any:
        """Return what `make` makes of the plain data of an exercise."""
        return make(data)
