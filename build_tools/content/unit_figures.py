"""The figures of a unit of equipment: those of its sheet, and those worked out from them.

Expressions name both alike: `unit.refill_flow`, `unit.refill_time`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.fields import Measure, keys
from build_tools.content.models import Equipment
from build_tools.content.origins import Origins
from build_tools.content.shop_calculators import ShopCalculators
from build_tools.content.shop_values import ShopValues
from build_tools.content.showing import Showing, Shown, typed
from calculators import CALCULATORS
from calculators.bed_depth import bed_depth
from calculators.declare import Calculator
from calculators.quantities import Quantity, plain, significant
from calculators.units import METRIC

#: In which unit readers in US units see a figure of a kind whose sheet is metric.
_US = {
    "flow": "gpm",
    "flow coefficient": "gpm/√psi",
    "hardness": "gpg",
    "length": "in",
    "mass": "lb",
    "pressure": "psi",
    "volume": "gal",
}


@dataclass(frozen=True)
class WorkedOut:
    """A figure that a calculator answers for a unit.

    given: what it takes beside the unit's own figures, by input: the names of other figures of the
    unit ("unit.brine") or of the typical home ("home.people").
    """

    calculator: str
    output: str
    given: dict[str, str] = field(default_factory=dict)


_HOME_WATER = {"people": "home.people", "setting": "unit.setting"}
_INTERVAL = {
    "capacity": "unit.capacity",
    "setting": "unit.setting",
    "water": "unit.daily_water",
}
_BRINE = {"brine": "unit.brine"}

#: Settings for the typical home, and the readings that are expected of a unit in good order.
WORKED_OUT = {
    "setting": WorkedOut(
        "hardness-setting", "setting", {"hardness": "home.hardness", "iron": "home.iron"}
    ),
    "daily_water": WorkedOut("household-load", "water", _HOME_WATER),
    "daily_load": WorkedOut("household-load", "load", _HOME_WATER),
    "dose": WorkedOut("resin-capacity", "dose"),
    "capacity": WorkedOut("resin-capacity", "capacity"),
    "interval": WorkedOut("regeneration-interval", "interval", _INTERVAL),
    "counter": WorkedOut("regeneration-interval", "counter", _INTERVAL),
    "refill_time": WorkedOut("brine-refill", "refill_time"),
    "refill_water": WorkedOut("brine-refill", "water"),
    "brine": WorkedOut("brine-refill", "brine"),
    "salt_dissolved": WorkedOut("brine-refill", "salt_dissolved"),
    "level_after_refill": WorkedOut("brine-level", "height", _BRINE),
    "rise_of_level": WorkedOut("brine-level", "rise", _BRINE),
    "room_to_float": WorkedOut("brine-level", "room_to_float", _BRINE),
    "draw_time": WorkedOut("brine-draw", "draw_time", _BRINE),
    "slow_rinse_time": WorkedOut("brine-draw", "slow_rinse_time", _BRINE),
    "slow_rinse_bed_volumes": WorkedOut("brine-draw", "bed_volumes", _BRINE),
    "injector_draw": WorkedOut("brine-draw", "suction", _BRINE),
    "brine_strength": WorkedOut("brine-draw", "strength", _BRINE),
    "backwash_low": WorkedOut("drain-flow", "backwash_low"),
    "backwash_high": WorkedOut("drain-flow", "backwash_high"),
    "bed_expansion": WorkedOut("bed-expansion", "expansion"),
    "pressure_loss": WorkedOut("service-pressure", "softener_loss"),
    "regeneration_time": WorkedOut("regeneration-timetable", "minutes"),
    "drained": WorkedOut("regeneration-timetable", "drained"),
}
#: What an expression may name after "unit.".
NAMES = (*keys(Equipment), *WORKED_OUT)
#: Figures that a sheet may leave out; a reading of one is left out with it.
OPTIONAL = frozenset(
    name
    for name, one in Equipment.model_fields.items()
    if not one.is_required() and name not in ("meter_step", "refills")
)


class UnitFigures:
    """Figures of units as readers see them, and as calculators take them."""

    def __init__(
        self, shop: ShopValues, calculators: ShopCalculators, showing: Showing, origins: Origins
    ) -> None:
        self._shop = shop
        self._calculators = calculators
        self._showing = showing
        self._origins = origins

    def of(self, unit: Entry[Equipment], name: str) -> Any:
        """Return a figure of a unit, or None: its sheet leaves it out, or a calculator does."""
        if name in WORKED_OUT:
            worked = WORKED_OUT[name]
            result = self.worked_out(unit, worked.calculator, worked.given)
            value = result["values"].get(worked.output)
            return value and Shown.of_answer(value)
        value = _of_sheet(unit.content, name)
        if isinstance(value, Measure):
            value = self._shown(name, value)
        return None if value is None else self._origins.unit_figure(unit, name, value)

    def _shown(self, name: str, value: Measure) -> Shown:
        if self._showing.units == "us" and not self._showing.is_other:
            return Shown.of(_in_us_units(name, value).shown("us"), value.text)
        return self._showing.measure(value)

    def worked_out(
        self, unit: Entry[Equipment], name: str, more: Mapping[str, str]
    ) -> dict[str, Any]:
        """Run a calculator with the figures of a unit: see `inputs`."""
        return self._calculators.result(name, self.inputs(unit, CALCULATORS[name], more))

    def inputs(
        self, unit: Entry[Equipment], calculator: Calculator, more: Mapping[str, str] | None = None
    ) -> dict[str, str]:
        """Return what a unit gives to a calculator; a figure that is missing is not given.

        more: the names of further figures by input, as in `WORKED_OUT`.
        """
        figures = {
            one.name: self.of(unit, one.equipment) for one in calculator.inputs if one.equipment
        }
        for about, named in (more or {}).items():
            group, _, part = named.partition(".")
            value = self._shop.of_home(part) if group == "home" else self.of(unit, part)
            if value is not None:
                figures[about] = value
        return {name: typed(value) for name, value in figures.items() if value is not None}

    def for_form(self, unit: Entry[Equipment], calculator: Calculator) -> dict[str, str]:
        """Return what a unit fills into a form: where its sheet tells nothing, the usual or ""."""
        usual = {
            one.name: "" if one.default is None else one.example_text(self._showing.units)
            for one in calculator.inputs
            if one.equipment and getattr(unit.content, one.equipment) is None
        }
        own = self.inputs(unit, calculator)
        filled = usual | self._showing.texts(calculator.inputs, own)
        texts = {name: text.replace("\u00a0", " ") for name, text in filled.items()}
        return self._origins.plain(texts)


def _of_sheet(unit: Equipment, name: str) -> Measure | str | None:
    """Return a figure of a unit's sheet, or what stands for it where the sheet leaves it out."""
    value = getattr(unit, name)
    if name == "short_title":
        return value or unit.title
    if name == "bed_depth" and value is None:
        return _depth(unit)
    return value


def _in_us_units(name: str, measure: Measure) -> Quantity:
    """Return a figure of a sheet for readers in US units, also where the sheet is metric."""
    quantity = measure.quantity
    if quantity.unit not in METRIC.values():
        return quantity
    unit = "ft³" if name == "resin_volume" else _US[quantity.kind]
    return Quantity(significant(quantity.to(unit).number, 3), unit, quantity.kind)


def _depth(unit: Equipment) -> Measure:
    """Return the depth of the bed by its volume, with as many digits as a sheet would have."""
    volume = unit.resin_volume.quantity.to("ft³").number
    diameter = unit.tank_diameter.quantity
    inches = Quantity(bed_depth(volume, diameter.to("in").number), "in", "length")
    number = significant(inches.to(diameter.unit).number, 3)
    return Measure(f"{plain(number)} {diameter.unit}", Quantity(number, diameter.unit, "length"))
