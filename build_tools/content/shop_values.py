"""The values of shop.yaml: those of the shop, and those of its typical home."""

from __future__ import annotations

from typing import Any

from build_tools.content.expressions import ToldElsewhere, ValueProblem
from build_tools.content.fields import Format, Measure, keys
from build_tools.content.handbook import Handbook
from build_tools.content.models import Shop, TypicalHome
from build_tools.content.origins import Origins
from build_tools.content.problems import expected
from build_tools.content.showing import Showing, typed
from calculators.declare import Calculator

_PRICES = ("salt_bag_price", "water_price", "sewer_price")


class ShopValues:
    """Values of the shop as readers see them, and as calculators take them by default."""

    def __init__(self, handbook: Handbook, showing: Showing, origins: Origins) -> None:
        self._handbook = handbook
        self._showing = showing
        self._origins = origins

    def value(self, name: str) -> Any:
        """Return a value of the shop itself; a price has its currency."""
        shop = self._shop()
        if name in _PRICES:
            price = getattr(shop, name)
            gap = " " if shop.currency[-1].isalnum() else ""
            shown = f"{shop.currency}{gap}{price:,.2f}".removesuffix(".00")
            return self._origins.shop(shop, name, shown)
        known = [one for one in keys(Shop) if not isinstance(getattr(shop, one), (list, Format))]
        if name not in known:
            raise ValueProblem(f'there is no shop value "{name}" {expected(name, known)}')
        return self._field(shop, name)

    def of_home(self, name: str) -> Any:
        """Return a value of the shop's typical home."""
        home = self._shop().typical_home
        if name not in keys(TypicalHome):
            raise ValueProblem(
                f'the typical home has no "{name}" {expected(name, keys(TypicalHome))}'
            )
        return self._field(home, name)

    def defaults(self, calculator: Calculator) -> dict[str, str]:
        """Return the shop's values for the inputs of a calculator that the shop decides."""
        if self._handbook.shop is None:
            return {}
        shop = self._handbook.shop.content
        return {
            one.name: typed(self._field(shop, one.shop)) for one in calculator.inputs if one.shop
        }

    def _shop(self) -> Shop:
        if self._handbook.shop is None:
            raise ToldElsewhere
        return self._handbook.shop.content

    def _field(self, content: Format, name: str) -> Any:
        value = getattr(content, name)
        if isinstance(value, Measure):
            return self._showing.measure(value)
        return self._origins.shop(content, name, value)
