"""The pages of the diagnosis: faults, checks, and the table from complaint to cause and check."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from build_tools.content.diagnosis_data import place
from build_tools.content.diagnosis_models import COMPLAINT, Change, Check, Fault, Finding, Result
from build_tools.content.entries import Entry
from build_tools.content.fields import Measure, parse_any
from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.diagnosis.shown_chances import shown_chances
from build_tools.pages.chances import how_long, how_often, of_ten, percent
from build_tools.pages.render import Library, Texts, render
from build_tools.pages.standing_cautions import in_full
from calculators.diagnosis.by_complaint import likely_causes, telling_results
from calculators.diagnosis.numbers import NUMBERS
from calculators.quantities import QuantityError
from calculators.simulation.changes import CHANGES

#: How many likely causes a complaint names, and how many findings each of them.
CAUSES, FINDINGS = 8, 3
#: A result speaks for the faults that show it at least so often.
SPEAKS_FROM = 0.1
#: What a page of a fault offers at its head, and the anchors.
_FAULT_PARTS = (
    ("Confirm", "confirm"),
    ("What to do", "remedy"),
    ("Prevent", "prevent"),
    ("What checks show", "likelihoods"),
)
_READ_BY = {"look": "by looking", "instrument": "with an instrument", "feel": "by feel"}


class DiagnosisPages:
    """Writes the Markdown of the pages about faults and checks."""

    def __init__(self, handbook: Handbook, values: Values, library: Library) -> None:
        self._handbook = handbook
        self._values = values
        self._library = library
        self._data = shown_chances(handbook)

    def fault(self, entry: Entry[Fault]) -> str:
        """Return the page of a fault."""
        text = Texts(self._values, entry)
        content = entry.content
        return render(
            "fault",
            text=text,
            content=content,
            share=percent(self._data["faults"][entry.id]["share_of_calls"]),
            time=how_long(content.minutes),
            homes=[
                f"{name}: {self._values.showing.measure(one)} as often"
                for name, one in content.homes.items()
            ],
            cautions=in_full(self._handbook, self._values, content.cautions),
            lookalikes=[
                self._library.link(entry.address, f"faults/{one.fault}.md", text(one.tell))
                for one in content.mistaken_for
            ],
            proofs=self._findings(entry, content.proved_by),
            rows=[
                self._library.link(
                    entry.address, f"checks/{name}.md", self._chances(entry.id, name)
                )
                | {"counted": name in self._data["faults"][entry.id]["counted"]}
                for name in self._data["checks"]
                if name in self._data["faults"][entry.id]["likelihoods"]
            ],
            changes=[self._change(one) for one in content.simulation],
            follows=self._links(entry, "faults", content.follows),
            procedures=self._links(entry, "procedures", content.procedures),
            lessons=self._links(entry, "learn", content.learn),
            jump=_FAULT_PARTS,
        )

    def check(self, entry: Entry[Check]) -> str:
        """Return the page of a check."""
        text = Texts(self._values, entry)
        content = entry.content
        overlaps = content.overlaps_minutes
        return render(
            "check",
            text=text,
            content=content,
            stage=content.stage.capitalize(),
            time=how_long(content.minutes),
            while_waiting=how_long(overlaps) if overlaps is not None else "",
            read_by=_READ_BY[content.kind],
            complaint=entry.id == COMPLAINT,
            numbers=[one.label for one in NUMBERS[entry.id].inputs] if entry.id in NUMBERS else [],
            cautions=in_full(self._handbook, self._values, content.cautions),
            needs=self._findings(entry, content.needs),
            erases=self._links(entry, "checks", content.erases),
            results=[
                {
                    "id": one.name,
                    "label": text(one.label),
                    "means": text(one.means),
                    "only_for": ", ".join(one.only_for or []),
                    "faults": [
                        self._library.link(entry.address, address, f"shows it {how_often(chance)}")
                        for address, chance in self.spoken_for(entry, one)
                    ],
                }
                for one in content.results
            ],
            procedures=self._links(entry, "procedures", content.procedures),
            lessons=self._links(entry, "learn", content.learn),
        )

    def find_the_cause(self, base: str, body: str, call: str) -> str:
        """Return the page that leads from complaints to causes and checks.

        body: how it begins. call: the same for a page whose script runs.
        """
        complaint = self._handbook.checks.get(COMPLAINT)
        return render(
            "find_the_cause",
            body=body,
            call=call,
            complaints=[
                {
                    "id": one.name,
                    "label": self._label(complaint, one),
                    "means": Texts(self._values, complaint)(one.means),
                    "causes": self._causes(base, one.name),
                }
                for one in (complaint.content.results if complaint else [])
            ],
            stages=[
                {"title": stage.capitalize(), "checks": [self._row(base, one) for one in members]}
                for stage, members in groupby(
                    checks_in_order(self._handbook), key=lambda one: one.content.stage
                )
            ],
        )

    def _causes(self, base: str, complaint: str) -> list[dict[str, str]]:
        causes = likely_causes(self._data["faults"], complaint)[:CAUSES]
        return [
            {
                **self._library.link(base, f"faults/{name}.md"),
                "share": of_ten(part),
                "shown_by": self._shown_by(base, name),
            }
            for name, part in causes
        ]

    def _shown_by(self, base: str, fault: str) -> str:
        """Return the results that speak loudest for a fault, in the order of reading."""
        order = list(self._data["checks"])
        telling = [
            (order.index(check), check, self._result(check, name))
            for check, name in telling_results(self._data["faults"], fault)
        ]
        abnormal = [one for one in telling if one[2] is not self._result(one[1])]
        made = []
        for _, check, result in sorted(abnormal[:FINDINGS], key=lambda one: one[0]):
            entry = self._handbook.checks[check]
            link = self._library.link(base, entry.address)
            label = self._label(entry, result)
            made.append(f"[{link['words']}]({link['link']}#{result.name}): {label.lower()}")
        return "; ".join(made)

    def _result(self, check: str, name: str | None = None) -> Result:
        """Return a result of a check by its name, or the normal one."""
        content = self._handbook.checks[check].content
        return content.result(name) if name else content.results[0]

    def _row(self, base: str, entry: Entry[Check]) -> dict[str, str]:
        labels = [self._label(entry, one) for one in entry.content.results]
        return {
            **self._library.link(base, entry.address),
            "time": how_long(entry.content.minutes),
            "results": "; ".join(labels),
        }

    def spoken_for(self, entry: Entry[Check], result: Result) -> list[tuple[str, float]]:
        """Return the pages of the faults that a result speaks for, the likeliest first.

        With each stands how likely it shows the result.
        """
        if result is entry.content.results[0] and entry.id != COMPLAINT:
            return []
        found = []
        for name, fault in self._data["faults"].items():
            chance = fault["likelihoods"].get(entry.id, {}).get(result.name, 0)
            if chance >= SPEAKS_FROM:
                found.append((-fault["share_of_calls"] * chance, name, chance))
        return [(f"faults/{name}.md", chance) for _, name, chance in sorted(found)]

    def _chances(self, fault: str, check: str) -> str:
        entry = self._handbook.checks[check]
        chances = self._data["faults"][fault]["likelihoods"][check]
        ordered = sorted(chances, key=lambda name: -chances[name])
        return "; ".join(
            f"{how_often(chances[name])}: {self._label(entry, entry.content.result(name)).lower()}"
            for name in ordered
            if chances[name] > 0
        )

    def _label(self, entry: Entry[Check], result: Result) -> str:
        return Texts(self._values, entry)(result.label)

    def _findings(self, base: Entry[Any], findings: list[Finding]) -> list[dict[str, str]]:
        made = []
        for one in findings:
            entry = self._handbook.checks[one.check]
            labels = [self._label(entry, entry.content.result(name)) for name in one.result]
            made.append(self._library.link(base.address, entry.address, " or ".join(labels)))
        return made

    def _links(self, entry: Entry[Any], folder: str, names: list[str]) -> list[dict[str, str]]:
        return [self._library.link(entry.address, f"{folder}/{name}.md") for name in names]

    def _change(self, change: Change) -> str:
        meaning = CHANGES[change.change].meaning
        low, high, growth = map(self._amount, (change.low, change.high, change.grows_per_day))
        written = low if low == high else f"{low} to {high}"
        grows = "" if growth == "0" else f", growing by {growth} a day"
        return f"{meaning}: {written}{grows}"

    def _amount(self, text: str) -> str:
        """Return a bare number as it is, and a quantity in the units of the readers."""
        try:
            return self._values.showing.measure(Measure(text, parse_any(text)))
        except QuantityError:
            return text


def checks_in_order(handbook: Handbook) -> list[Entry[Check]]:
    """Return the checks in their running order."""
    return sorted(handbook.checks.values(), key=lambda one: place(one.content))
