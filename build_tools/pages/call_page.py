"""The live call on the page "Find the cause": what its script brings to life."""

from __future__ import annotations

import hashlib
import json
from itertools import groupby
from typing import Any, get_args

from mkdocs.utils import get_relative_url

from build_tools.content.addresses import link_to
from build_tools.content.diagnosis_models import COMPLAINT, WATERS, Check
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.models import Control
from build_tools.content.values import Values
from build_tools.diagnosis.knowledge_data import knowledge_data
from build_tools.pages.chances import how_long
from build_tools.pages.diagnosis_pages import checks_in_order
from build_tools.pages.forms import page_url
from build_tools.pages.render import Library, Texts, render
from build_tools.pages.standing_cautions import in_full
from calculators.diagnosis.numbers import NUMBERS
from calculators.quantities import display_unit

#: What a technician writes into the visit record beside the readings.
RECORD_FIELDS = {
    "customer": "Customer, address and unit",
    "work": "Work done and parts",
    "before": "Settings as found",
    "after": "Settings as left",
    "advice": "Advice to the customer",
}


class CallPage:
    """Writes the part of the page that a script needs, and the knowledge that it hands to Python."""

    def __init__(
        self, handbook: Handbook, values: Values, library: Library, runtime_folder: str
    ) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._runtime_folder = runtime_folder
        self.data = knowledge_data(handbook)
        self.knowledge = json.dumps(self.data, separators=(",", ":"))
        digest = hashlib.sha256(self.knowledge.encode()).hexdigest()[:16]
        self.knowledge_address = f"runtime/knowledge-{digest}.json"

    def section(self, base: str) -> str:
        """Return the call as it stands in the page `base`, "" for a handbook without complaints."""
        if COMPLAINT not in self._handbook.checks:
            return ""
        url = page_url(base)
        return render(
            "call",
            runtime=get_relative_url(self._runtime_folder, url),
            knowledge=get_relative_url(self.knowledge_address, url),
            units=self._handbook.units,
            causes={name: self._cause(base, name) for name in self._handbook.faults},
            complaints=self._results(self._handbook.checks[COMPLAINT]),
            softeners=[
                {
                    "id": unit.id,
                    "title": self._library.title(unit.address),
                    "control": unit.content.control,
                    "link": _link(base, unit.address),
                }
                for unit in self._handbook.carried
            ],
            controls=get_args(Control),
            waters=WATERS,
            stages=self.stages(base),
            record_fields=RECORD_FIELDS,
        )

    def stages(self, base: str) -> list[dict[str, Any]]:
        """Return the stages of a call with their checks, as the page `base` shows them."""
        ordered = [one for one in checks_in_order(self._handbook) if one.id != COMPLAINT]
        return [
            {
                "title": stage.capitalize(),
                "checks": [self._check(base, one) for one in members],
            }
            for stage, members in groupby(ordered, key=lambda one: one.content.stage)
        ]

    def _check(self, base: str, entry: Entry[Check]) -> dict[str, Any]:
        text = Texts(self._values, entry)
        content = entry.content
        cautions = in_full(self._handbook, self._values, content.cautions)
        return {
            "id": entry.id,
            "title": text(content.title),
            "time": how_long(content.minutes),
            "how": [text(step) for step in content.how],
            "say": text(content.say) if content.say else "",
            "cautions": cautions,
            "dangers": [text(one) for one in content.stop_if],
            "link": link_to(base, entry.address),
            "numbers": self._numbers(entry.id),
            "results": self._results(entry),
        }

    def _numbers(self, check: str) -> list[dict[str, str]]:
        if check not in NUMBERS:
            return []
        units = self._handbook.units
        return [
            {
                "name": one.name,
                "label": one.label,
                "unit": "" if one.kind == "time of day" else display_unit(one.unit, units),
            }
            for one in NUMBERS[check].inputs
        ]

    def _results(self, entry: Entry[Check]) -> list[dict[str, str]]:
        text = Texts(self._values, entry)
        return [
            {"id": one.name, "label": text(one.label), "means": text(one.means)}
            for one in entry.content.results
        ]

    def _cause(self, base: str, name: str) -> dict[str, Any]:
        """Return a cause's title and where the page's script links to."""
        entry = self._handbook.faults[name]
        procedures = (f"procedures/{one}.md" for one in entry.content.procedures)
        return {
            "title": self._library.title(entry.address),
            "link": _link(base, entry.address),
            "procedures": [
                {"title": self._library.title(one), "link": _link(base, one)} for one in procedures
            ],
        }


def _link(base: str, address: str) -> str:
    """Return a link that a script writes, which MkDocs does not see."""
    return get_relative_url(page_url(address), page_url(base))
