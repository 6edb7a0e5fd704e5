"""The pages derived from the calculators' declarations."""

from __future__ import annotations

from build_tools.content.handbook import Handbook
from build_tools.embedding.files import snippet_html
from build_tools.language.speaking import say
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
            sentences = [say("One of: {choices}.", choices=", ".join(one.choices))]
        else:
            sentences = [self._range(say("Takes"), one, one.low, one.high)]
            sentences.append(self._range(say("Usually"), one, one.usual_low, one.usual_high))
        sentences.append(self._left_out(one))
        return {"label": one.label, "limits": " ".join(filter(None, sentences))}

    def _range(self, word: str, one: Input, low: float | None, high: float | None) -> str:
        units = self._handbook.units
        if low is not None and high is not None:
            lowest, highest = one.shown_limit(low, units), one.shown_limit(high, units)
            return say("{word} {low} to {high}.", word=word, low=lowest, high=highest)
        if high is not None:
            return say("{word} up to {high}.", word=word, high=one.shown_limit(high, units))
        if low is not None:
            return say("{word} from {low}.", word=word, low=one.shown_limit(low, units))
        return ""

    def _left_out(self, one: Input) -> str:
        if one.optional:
            return say("May be left empty.")
        if one.shop:
            return say("If left out, the shop's value.")
        if one.default is None:
            return say("Must be given.")
        default = one.default if one.choices else one.default_text(self._handbook.units)
        return say("If left out, {default}.", default=default)
