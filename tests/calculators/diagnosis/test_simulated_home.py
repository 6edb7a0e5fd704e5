"""One simulated home of a fault, as an exercise takes it."""

from __future__ import annotations

import json

from calculators.diagnosis.home_codes import unpack
from tests.calculators.practice.shipped import ROOT, knowledge

KEPT = json.loads((ROOT / "docs_src" / "simulated_homes.json").read_text(encoding="utf-8"))


def test_a_home_is_told_as_it_was_simulated() -> None:
    known, fault, number = knowledge(), "salt-bridge", 7
    kept = KEPT["faults"][fault]
    control, water, shown = known.simulated_home(fault, number)
    assert (control[0], water[0]) == (kept["control"][number], kept["water"][number])
    for check in ("rod-through-salt", "brine-level"):
        counts = unpack(kept["readings"][check])[number]
        told = dict(zip(known.results[check], shown[check], strict=True))
        for result, count in zip(KEPT["results"][check], counts, strict=True):
            assert told[result] == count / sum(counts)


def test_every_simulated_fault_has_its_homes_and_a_judged_one_none() -> None:
    known = knowledge()
    for fault in known.faults:
        kept = KEPT["faults"].get(fault, {"control": ""})
        assert known.homes_of(fault) == len(kept["control"])
