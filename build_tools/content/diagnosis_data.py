"""What the diagnosis works with: faults and checks as plain values, close to their files' keys."""

from __future__ import annotations

from typing import Any

from build_tools.content.diagnosis_models import STAGES, Check, Fault, Finding
from build_tools.content.entries import Entry
from build_tools.content.fields import Measure
from build_tools.content.handbook import Handbook
from build_tools.content.severity import severity
from build_tools.content.values import Values
from build_tools.content.yaml_file import KeyPath


def diagnosis_data(handbook: Handbook) -> dict[str, Any]:
    """Return the faults and checks of a handbook without problems, ready for JSON.

    Shares and chances are numbers from 0 to 1, minutes are minutes, and what a fault changes is in
    the simulation's units. Checks stand in their running order. Of texts only titles, labels, parts,
    dangers and what customers say are here: pages have the others.
    """
    values = Values(handbook)
    checks = sorted(handbook.checks.values(), key=lambda one: place(one.content))
    return {
        "faults": {
            one.id: {
                "title": _filled(values, one, ("title",), one.content.title),
                "customer_says": [
                    _filled(values, one, ("customer_says", index), said)
                    for index, said in enumerate(one.content.customer_says)
                ],
                "parts": [
                    _filled(values, one, ("parts", index), part)
                    for index, part in enumerate(one.content.parts)
                ],
            }
            | _fault(one.content)
            for one in handbook.faults.values()
        },
        "checks": {
            one.id: {"title": _filled(values, one, ("title",), one.content.title)}
            | _check(one.content)
            | {"results": _results(values, one)}
            | {
                "stop_if": [
                    _filled(values, one, ("stop_if", index), danger)
                    for index, danger in enumerate(one.content.stop_if)
                ]
            }
            for one in checks
        },
    }


def _filled(values: Values, entry: Entry[Any], path: KeyPath, text: str) -> str:
    return " ".join(values.fill(entry.passage(path, text)).split())


def _results(values: Values, entry: Entry[Check]) -> list[dict[str, Any]]:
    return [
        {
            "name": one.name,
            "label": _filled(values, entry, ("results", index, "label"), one.label),
            "only_for": one.only_for,
        }
        for index, one in enumerate(entry.content.results)
    ]


def place(check: Check) -> tuple[int, int]:
    """Return the place of a check in the running order: its stage from 0, and its order there."""
    return STAGES.index(check.stage), check.order


def share(chance: Measure) -> float:
    """Return a chance as a number from 0 to 1."""
    return round(chance.quantity.number / 100, 12)


def _fault(fault: Fault) -> dict[str, Any]:
    return {
        "group": fault.group,
        "share_of_calls": share(fault.share_of_calls),
        "minutes": fault.minutes,
        "homes": {name: share(one) for name, one in fault.homes.items()},
        "mistaken_for": [one.fault for one in fault.mistaken_for],
        "proved_by": _findings(fault.proved_by),
        "follows": fault.follows,
        "repair_opens": fault.repair_opens,
        "procedures": fault.procedures,
        "simulation": [
            {
                "change": one.change,
                "from": severity(one.change, one.low),
                "to": severity(one.change, one.high),
                "spread": one.spread,
                "grows_per_day": severity(one.change, one.grows_per_day),
            }
            for one in fault.simulation
        ],
        "likelihoods_from": fault.likelihoods_from,
        "likelihoods": {
            name: {result: share(one) for result, one in chances.items()}
            for name, chances in fault.likelihoods.items()
        },
    }


def _check(check: Check) -> dict[str, Any]:
    stage, order = place(check)
    return {
        "stage": stage,
        "order": order,
        "minutes": check.minutes,
        "overlaps_minutes": check.overlaps_minutes,
        "kind": check.kind,
        "only_for": check.only_for,
        "needs": _findings(check.needs),
        "erases": check.erases,
        "opens": check.opens,
    }


def _findings(findings: list[Finding]) -> list[dict[str, Any]]:
    return [{"check": one.check, "result": one.result} for one in findings]
