"""What pages show of the diagnosis: the chances it works with, and what each rests on."""

from __future__ import annotations

from typing import Any

from build_tools.content.handbook import Handbook
from build_tools.diagnosis.knowledge_data import knowledge, knowledge_data

#: A counted result rarer than this is not shown: in so few homes it is chance.
LEAST = 0.02
#: A counted check that reads normal more often than this is shown only where the file names it.
MOSTLY_NORMAL = 0.9


def shown_chances(handbook: Handbook) -> dict[str, Any]:
    """Return the plain data of the diagnosis with the likelihoods that it works with.

    A check that was simulated with a fault has the chances counted in the fault's simulated homes;
    "counted" of a fault names these checks. The others have the judged chances of its file.
    """
    data = knowledge_data(handbook)
    known = knowledge(handbook)
    homes = data["homes"].get("faults", {})
    for name, fault in data["faults"].items():
        fault["counted"] = []
        place = known.hypotheses.index((name,))
        for check in homes.get(name, {}).get("readings", {}):
            row = dict(zip(known.results[check], known.tables[check][place], strict=True))
            if check not in fault["likelihoods"] and next(iter(row.values())) > MOSTLY_NORMAL:
                continue
            fault["counted"].append(check)
            fault["likelihoods"][check] = {
                result: chance for result, chance in row.items() if chance >= LEAST
            }
    return data
