"""The page that tells trainers how well the diagnosis finds hidden faults."""

from __future__ import annotations

from typing import Any

from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.handbook import Handbook
from build_tools.diagnosis.measured import last_measured
from build_tools.pages.render import render

ADDRESS = "trainers/how-well-the-cause-is-found.md"
TITLE = "How well the cause is found"
NOTE = "How often and how soon the page “Find the cause” names the right one."
POLICIES = ("engine", "fixed order", "random order")
#: The figures of the page, and whether each is a share.
FIGURES = {
    "first at 5 minutes": ("True cause first after five minutes", True),
    "first three at 5 minutes": ("True cause among the first three", True),
    "declared right within 5 minutes": ("Found within five minutes", True),
    "mean minutes to the cause": ("Mean minutes to the true cause", False),
    "median minutes to the cause": ("Half of the calls take at most, minutes", False),
    "wrong declarations a call": ("Wrong repairs in a hundred calls", True),
    "calibration error at 5 minutes": ("How far chances lie from what is right", True),
}
_OF_PART = (
    ("engine", "first at 5 minutes"),
    ("engine", "first three at 5 minutes"),
    ("engine", "mean minutes to the cause"),
    ("fixed order", "mean minutes to the cause"),
)


def measured_page(handbook: Handbook) -> str:
    """Return the Markdown of the page."""
    measured = last_measured(handbook.docs_folder)
    if measured is None:
        return render("measured", measured=None)
    complaint = handbook.checks.get(COMPLAINT)
    labels = {one.name: one.label for one in complaint.content.results} if complaint else {}
    return render(
        "measured",
        measured=measured,
        rows=[
            {
                "name": title,
                "figures": [_shown(name, measured["policies"][one][name]) for one in POLICIES],
            }
            for name, (title, _) in FIGURES.items()
        ],
        parts=[
            _part("By group of faults", "Group", measured["groups"], {}),
            _part("By complaint", "Complaint", measured["complaints"], labels),
        ],
    )


def _part(title: str, first: str, parts: dict[str, Any], labels: dict[str, str]) -> dict[str, Any]:
    rows = []
    for name, of_part in parts.items():
        shown = [_shown(figure, of_part[policy][figure]) for policy, figure in _OF_PART]
        rows.append([labels.get(name, name), f"{of_part['engine']['calls']:.0f}", *shown])
    return {"title": title, "first": first, "rows": rows}


def _shown(name: str, value: float) -> str:
    if name == "wrong declarations a call":
        return f"{100 * value:.0f}"
    return f"{100 * value:.0f} %" if FIGURES[name][1] else f"{value:.0f}"
