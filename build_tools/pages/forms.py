"""Calculator forms on pages: of a calculator's own page and of a worked example."""

from __future__ import annotations

from mkdocs.utils import get_relative_url

from build_tools.browser.form import form_html
from build_tools.content.entries import Example
from build_tools.content.values import Values
from build_tools.language.speaking import drawn_in_words
from calculators import CALCULATORS
from calculators.declare import Calculator


class Forms:
    """Writes forms that know where the site keeps the browser's Python."""

    def __init__(self, values: Values, runtime_folder: str) -> None:
        self._values = values
        self._runtime_folder = runtime_folder

    def of_calculator(self, calculator: Calculator, address: str) -> str:
        """Return the form of a calculator's own page, filled with the shop's values."""
        units = self._values.handbook.own_units
        shop = self._values.shop.defaults(calculator)
        texts = {
            one.name: shop.get(one.name) or one.example_text(units) for one in calculator.inputs
        }
        return self._form(calculator, texts, calculator.name, address, level=2)

    def of_example(self, example: Example) -> str:
        """Return the form of a worked example, filled with what the example is given."""
        content = example.content
        calculator = CALCULATORS[content.calculate]
        form_id = f"{example.id}-form"
        given = self._values.calculators.given(example)
        return self._form(calculator, given, form_id, example.address, level=4, folded=True)

    def _form(
        self,
        calculator: Calculator,
        texts: dict[str, str],
        form_id: str,
        address: str,
        *,
        level: int,
        folded: bool = False,
    ) -> str:
        counting = {name: text for name, text in texts.items() if text}
        shown, exact = self._shown(calculator, texts)
        return form_html(
            calculator,
            self._values.calculators.result(calculator.name, counting),
            carried={
                unit.content.title: figures
                for unit in self._values.handbook.carried
                if (figures := self._values.figures.for_form(unit, calculator))
            },
            picture=drawn_in_words(self._values.calculators.picture(calculator.name, counting)),
            form_id=form_id,
            texts=shown,
            exact=exact,
            units=self._values.handbook.units,
            runtime_url=get_relative_url(self._runtime_folder, page_url(address)),
            level=level,
            folded=folded,
        )

    def _shown(
        self, calculator: Calculator, texts: dict[str, str]
    ) -> tuple[dict[str, str], dict[str, str]]:
        """Return the texts of the fields; and for readers of the other system, what they mean."""
        own, units = self._values.handbook.own_units, self._values.handbook.units
        if own == units:
            return texts, {}
        usual = {
            one.name: one.example_text(own) if one.default is None else one.default_text(own)
            for one in calculator.inputs
            if one.kind != "choice"
        }
        meant = self._values.showing.complete(calculator.inputs, usual | texts)
        shown = self._values.showing.texts(calculator.inputs, meant)
        changed = {name for name, text in shown.items() if text != meant[name]}
        return (
            {name: shown[name] for name in shown if name in changed or name in texts},
            {name: meant[name].replace("\u00a0", " ") for name in changed},
        )


def page_url(address: str) -> str:
    """Return the address of a page in the site, from that of its source."""
    return "" if address == "index.md" else address.removesuffix(".md").removesuffix("index") + "/"
