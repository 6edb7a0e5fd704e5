"""The pages derived from the calculators' declarations."""

from __future__ import annotations

from build_tools.content.handbook import Handbook
from build_tools.embedding.files import snippet_html
from build_tools.pages.forms import Forms
from build_tools.pages.reference_pages import source_title
from build_tools.pages.render import Library, render
from calculators import CALCULATORS
from calculators.declare import Calculator, Input


class CalculatorPages:
    """Writes the page of each calculator.

    site_url: the site's address, where the build knows it.
    """

    def __init__(
        self,
        handbook: Handbook,
        library: Library,
        forms: Forms,
        site_url: str | None,
    ) -> None:
        self._handbook = handbook
        self._library = library
        self._forms = forms
        self._site_url = site_url
        for calculator in CALCULATORS.values():
            library.name(f"work-out/{calculator.name}.md", calculator.title)

    def page(self, calculator: Calculator) -> str:
        """Return the page of a calculator."""
        address = f"work-out/{calculator.name}.md"
        return render(
            "calculator",
            calculator=calculator,
            form=self._forms.of_calculator(calculator, address),
            inputs=[self._input(one) for one in calculator.inputs],
            sources=[
                {
                    "words": source_title(self._handbook, key),
                    "link": f"../reference/sources.md#{key}",
                    "note": "",
                }
                for key in calculator.sources
            ],
            snippet=snippet_html(calculator, self._handbook.units, self._site_url),
        )

    def _input(self, one: Input) -> dict[str, str]:
        if one.choices:
            sentences = [f"One of: {', '.join(one.choices)}."]
        else:
            sentences = [self._range("Takes", one, one.low, one.high)]
            sentences.append(self._range("Usually", one, one.usual_low, one.usual_high))
        sentences.append(self._left_out(one))
        return {"label": one.label, "limits": " ".join(filter(None, sentences))}

    def _range(self, word: str, one: Input, low: float | None, high: float | None) -> str:
        units = self._handbook.units
        if low is not None and high is not None:
            return f"{word} {one.shown_limit(low, units)} to {one.shown_limit(high, units)}."
        if high is not None:
            return f"{word} up to {one.shown_limit(high, units)}."
        return f"{word} from {one.shown_limit(low, units)}." if low is not None else ""

    def _left_out(self, one: Input) -> str:
        if one.optional:
            return "May be left empty."
        if one.shop:
            return "If left out, the shop's value."
        if one.default is None:
            return "Must be given."
        default = one.default if one.choices else one.default_text(self._handbook.units)
        return f"If left out, {default}."
