"""The page of a unit of equipment: its figures, its settings, and what it should show."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.models import Equipment
from build_tools.content.unit_figures import WORKED_OUT
from build_tools.content.values import Values
from build_tools.pages.expected_tables import NOTHING
from build_tools.pages.render import Library, Texts, render
from calculators import CALCULATORS
from calculators.dose import DAYS_WITH_MUCH_IRON, DAYS_WITH_SOME_IRON, MUCH_IRON, SOME_IRON
from calculators.quantities import snap

#: The figures of the sheet by what they are about; those that nobody reads as figures are left out.
GROUPS = {
    "Control": (
        "control",
        "control_voltage",
        "control_current",
        "hardness_step",
        "meter_step",
        "refill_step",
    ),
    "Resin tank": (
        "resin_volume",
        "tank_diameter",
        "tank_height",
        "bed_depth",
        "resin_room",
        "service_flow",
        "valve_coefficient",
    ),
    "Brine tank": (
        "salt_per_regeneration",
        "brine_tank_diameter",
        "brine_well_diameter",
        "brine_grid_height",
        "water_left",
        "float_height",
        "refills",
    ),
    "Regeneration": (
        "backwash_time",
        "brine_time",
        "fast_rinse_time",
        "backwash_flow",
        "slow_rinse_flow",
        "brine_draw_flow",
        "flow_pressure",
        "refill_flow",
    ),
}
#: Where the words of a key are not enough.
LABELS = {
    "resin_room": "From the bottom of the resin to the top of the tank",
    "service_flow": "Rated service flow",
    "valve_coefficient": "Flow coefficient of the valve",
    "water_left": "Water left after the draw",
    "brine_time": "Brine and slow rinse time",
    "flow_pressure": "Pressure for slow rinse and brine draw",
    "refills": "Refills in the regeneration",
    "hardness_step": "Step of the hardness",
    "meter_step": "Step of the counter",
    "refill_step": "Step of the refill time",
}
SETTINGS = (
    "setting",
    "daily_water",
    "daily_load",
    "dose",
    "capacity",
    "interval",
    "counter",
    "refill_time",
    "salt_dissolved",
)
#: Positions of the valve: how long each takes and what then runs at the drain.
POSITIONS = {
    "Backwash": ("backwash_time", "backwash_flow"),
    "Brine draw": ("draw_time", "brine_draw_flow"),
    "Slow rinse": ("slow_rinse_time", "slow_rinse_flow"),
    "Fast rinse": ("fast_rinse_time", "backwash_flow"),
    "Refill": ("refill_time", ""),
}
#: Where the flow and the time of each position are worked out.
FLOWS, TIMES = "drain-flow", {"Brine draw": "brine-draw", "Slow rinse": "brine-draw"}
READINGS = (
    "refill_water",
    "brine",
    "level_after_refill",
    "water_left",
    "float_height",
    "room_to_float",
    "injector_draw",
    "brine_strength",
    "slow_rinse_bed_volumes",
    "bed_expansion",
    "pressure_loss",
    "control_voltage",
)
PICTURES = {
    "regeneration-timetable": "One regeneration at the drain",
    "brine-level": "The brine tank after a refill, in deep salt",
}
TIMETABLES = ("regeneration-timetable",)
#: The calculators of figures that the sheet tells itself.
CALCULATOR_OF = {
    "water_left": "brine-level",
    "float_height": "brine-level",
    "control_voltage": "supply-voltage",
}


def equipment_page(
    handbook: Handbook, values: Values, library: Library, entry: Entry[Equipment]
) -> str:
    """Return the page of a unit; all of it is in the unit's own units."""
    with values.showing.in_units_of(entry):
        return _Page(handbook, values, library, entry).written()


class _Page:
    def __init__(
        self, handbook: Handbook, values: Values, library: Library, entry: Entry[Equipment]
    ) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._entry = entry

    def written(self) -> str:
        home = self._handbook.shop.content.typical_home
        return render(
            "equipment",
            text=Texts(self._values, self._entry, self._entry),
            content=self._entry.content,
            groups=[
                {"title": title, "figures": [*self._figures(names)]}
                for title, names in GROUPS.items()
            ],
            home={
                "people": self._values.shop.of_home("people"),
                "hardness": self._values.showing.measure(home.hardness),
                "iron": self._values.showing.measure(home.iron),
            },
            settings=[*self._worked_out(SETTINGS), self._longest_interval()],
            positions=[*self._positions()],
            readings=[*self._worked_out(READINGS)],
            pictures=[*self._pictures()],
            pressure=self._usual("brine-draw", "pressure"),
            temperature=self._usual("service-pressure", "temperature"),
            warnings=self._warnings(),
            procedures=[
                self._library.link(self._entry.address, procedure.address)
                for procedure in self._handbook.procedures.values()
                if any(step.expect for step in procedure.content.steps)
            ],
        )

    def _figure(self, name: str) -> Any:
        return self._values.figures.of(self._entry, name)

    def _figures(self, names: Iterable[str]) -> Iterable[dict[str, str]]:
        for name in names:
            value = self._figure(name)
            if value is not None:
                yield {"id": name.replace("_", "-"), "label": _label(name), "shown": value}

    def _worked_out(self, names: Iterable[str]) -> Iterable[dict[str, str]]:
        """Yield each figure with its calculator; what the unit does not have is left out."""
        for name in names:
            shown = self._figure(name)
            if shown is None and name == "water_left":
                shown = self._usual("brine-level", name)
            if shown is None:
                continue
            if name in WORKED_OUT:
                worked = WORKED_OUT[name]
                label = CALCULATORS[worked.calculator].output(worked.output).label
            else:
                label = _label(name)
            if name == "pressure_loss":
                label = f"{label} at {self._figure('service_flow')}"
            yield self._row(label, shown, _calculator_of(name))

    def _longest_interval(self) -> dict[str, str]:
        """Return the longest interval for the typical home: with iron it is shorter."""
        name = "regeneration-interval"
        home = self._handbook.shop.content.typical_home
        iron = snap(home.iron.quantity.to("mg/L").number)
        shown = self._usual(name, "longest_interval")
        if iron >= SOME_IRON:
            days = DAYS_WITH_MUCH_IRON if iron > MUCH_IRON else DAYS_WITH_SOME_IRON
            shown = self._values.origins.because(
                f"{days} days", self._values.showing.measure(home.iron)
            )
        return self._row("Regenerate at least every", shown, name)

    def _positions(self) -> Iterable[dict[str, str]]:
        order = list(POSITIONS)
        if self._entry.content.refills == "first":
            order.insert(0, order.pop())
        for name in order:
            time, flow = POSITIONS[name]
            shown = self._figure(flow) if flow else NOTHING
            if name == "Backwash":
                low, high = (self._figure(f"backwash_{end}") for end in ("low", "high"))
                shown = f"{shown} ({low} to {high})"
            calculator = "brine-refill" if name == "Refill" else TIMES.get(name, FLOWS)
            row = self._row(name, shown, calculator)
            yield row | {"time": self._figure(time) or NOTHING}
        drained = self._figure("drained") or NOTHING
        row = self._row("In all", drained, WORKED_OUT["drained"].calculator)
        yield row | {"time": self._figure("regeneration_time") or NOTHING}

    def _pictures(self) -> Iterable[dict[str, str]]:
        """Yield what can be drawn of the unit; the timetable is that of a refill at the end."""
        for name, title in PICTURES.items():
            given = next((one.given for one in WORKED_OUT.values() if one.calculator == name), {})
            inputs = self._values.figures.inputs(self._entry, CALCULATORS[name], given)
            if name in TIMETABLES and self._entry.content.refills == "first":
                continue
            if not self._values.calculators.result(name, inputs)["problems"]:
                yield self._row(title, "", name) | {
                    "svg": self._values.calculators.picture(name, inputs)
                }

    def _row(self, label: str, shown: str, calculator: str) -> dict[str, str]:
        return {"label": label, "shown": shown, "link": f"../work-out/{calculator}.md"}

    def _usual(self, calculator: str, name: str) -> str:
        return CALCULATORS[calculator].input(name).default_text(self._values.showing.units)

    def _warnings(self) -> list[str]:
        """Return what calculators warn of or refuse, each sentence once; missing figures apart."""
        said: list[str] = []
        given = {one.calculator: one.given for one in WORKED_OUT.values()}
        for name, more in given.items():
            known = self._values.figures.inputs(self._entry, CALCULATORS[name])
            result: dict[str, Any] = self._values.figures.worked_out(self._entry, name, more)
            said += result["warnings"]
            said += [
                sentence
                for about, sentence in result["problems"].items()
                if about in known or about not in more and not _of_sheet(name, about)
            ]
        return self._values.origins.once(said)


def _of_sheet(calculator: str, name: str) -> bool:
    return bool(CALCULATORS[calculator].input(name).equipment)


def _label(name: str) -> str:
    return LABELS.get(name) or name.replace("_", " ").capitalize()


def _calculator_of(name: str) -> str:
    return WORKED_OUT[name].calculator if name in WORKED_OUT else CALCULATOR_OF[name]
