"""The settings of one unit of equipment for the shop's typical home, calculator by calculator."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from build_tools.content.entries import Entry
from build_tools.content.models import Equipment, Shop
from build_tools.content.values import Values, exact
from calculators import CALCULATORS


@dataclass(frozen=True)
class Setting:
    """One setting or expected figure and the calculator it comes from."""

    label: str
    shown: str
    calculator: str


class Settings:
    """Works out one unit's settings; each calculator takes the answers of those before it.

    settings: what came out. warnings: sentences about unusual answers, or why one is missing.
    """

    def __init__(self, values: Values, unit: Entry[Equipment], shop: Shop) -> None:
        self._values = values
        self.settings: list[Setting] = []
        self.warnings: list[str] = []
        self._unit = unit
        home = shop.typical_home
        setting = self._run(
            "hardness-setting",
            {"hardness": home.hardness.text, "iron": home.iron.text},
            ["setting"],
        )
        load = self._run(
            "household-load",
            {"people": str(home.people), "setting": setting.get("setting")},
            ["water", "load"],
        )
        capacity = self._run("resin-capacity", {}, ["dose", "capacity"])
        self._run(
            "regeneration-interval",
            {
                "capacity": capacity.get("capacity"),
                "setting": setting.get("setting"),
                "water": load.get("water"),
            },
            ["counter", "interval"],
        )
        self._run("brine-refill", {}, ["refill_time", "salt_dissolved"])

    def _run(self, name: str, given: dict[str, str | None], wanted: list[str]) -> dict[str, str]:
        """Add the wanted answers of a calculator; return all of them for the next one.

        The unit's own figures need not be given.
        """
        if None in given.values():
            return {}
        figures = self._values.equipment_inputs(CALCULATORS[name], self._unit)
        result: dict[str, Any] = self._values.result(name, {**figures, **given})
        for sentence in [*result["problems"].values(), *result["warnings"]]:
            if sentence not in self.warnings:
                self.warnings.append(sentence)
        for output in wanted:
            if value := result["values"].get(output):
                self.settings.append(Setting(value["label"], value["shown"], name))
        return {output: exact(value) for output, value in result["values"].items()}
