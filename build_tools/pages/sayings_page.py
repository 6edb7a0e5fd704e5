"""The page of all that customers say, complaint by complaint, each saying with its fault."""

from __future__ import annotations

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.handbook import Handbook
from build_tools.content.values import Values
from build_tools.pages.render import Library, Texts, render
from calculators.diagnosis.heard import Heard
from calculators.diagnosis.knowledge import Knowledge

SAYINGS = "faults/what-customers-say.md"
TITLE = "What customers say"


def sayings_page(handbook: Handbook, values: Values, library: Library) -> str:
    """Return the page: under each complaint the sayings that it is heard in, by the alphabet.

    A saying stands under the complaint that its words speak for most, of those that its fault
    makes; a saying that speaks for none stands under the one that its fault makes most.
    """
    heard = Heard(Knowledge(diagnosis_data(handbook)))
    complaint = handbook.checks[COMPLAINT]
    label = Texts(values, complaint)
    sayings: dict[str, list[dict[str, str]]] = {one.name: [] for one in complaint.content.results}
    for entry in handbook.faults.values():
        text = Texts(values, entry)
        chances = entry.content.likelihoods[COMPLAINT]
        made = sorted(chances, key=lambda one: -chances[one].quantity.number)
        for said in map(text, entry.content.customer_says):
            spoken = [one["complaint"] for one in heard.complaints_for(said)]
            under = next((one for one in spoken if one in made), made[0])
            sayings[under].append(library.link(SAYINGS, entry.address) | {"said": said})
    return render(
        "sayings",
        title=TITLE,
        complaints=[
            {
                "id": one.name,
                "label": label(one.label),
                "sayings": sorted(sayings[one.name], key=lambda row: row["said"].lower()),
            }
            for one in complaint.content.results
            if sayings[one.name]
        ],
        words=[
            {"word": word, "said": ", ".join(entry.content.said)}
            for word, entry in sorted(handbook.search_words.items())
        ],
    )
