"""All that the diagnosis knows, as plain data: the handbook's content, homes, the shop's record."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path
from typing import Any

from build_tools.content.diagnosis_data import diagnosis_data
from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.handbook import Handbook
from build_tools.diagnosis import finished_calls, simulated_homes
from calculators.diagnosis import Knowledge
from calculators.diagnosis.shares import updated_shares


def knowledge_data(handbook: Handbook) -> dict[str, Any]:
    """Return what `calculators.diagnosis.Knowledge` takes, of a handbook without problems.

    The judged shares of calls are moved by the shop's own finished calls.
    """
    data = diagnosis_data(handbook)
    judged = {name: fault["share_of_calls"] for name, fault in data["faults"].items()}
    for name, share in updated_shares(judged, record_of(handbook).counts).items():
        data["faults"][name]["share_of_calls"] = share
    return {**data, "homes": kept_homes(handbook)}


def knowledge(handbook: Handbook) -> Knowledge:
    """Return the diagnosis of a handbook; the same data gives the same one again."""
    return _knowledge(json.dumps(knowledge_data(handbook)))


@lru_cache(maxsize=2)
def _knowledge(data: str) -> Knowledge:
    return Knowledge(json.loads(data))


def kept_homes(handbook: Handbook) -> dict[str, Any]:
    """Return the simulated homes as they are kept, {} for a shop without them.

    A shop's own stand over those of the library that it draws on. Raises ValueError for a file that
    is no JSON.
    """
    shipped, own = shipped_homes(handbook), _homes_in(handbook.docs_folder)
    if not (shipped and own):
        return shipped or own
    return {**own, "faults": shipped["faults"] | own["faults"]}


def shipped_homes(handbook: Handbook) -> dict[str, Any]:
    """Return the simulated homes of the library that a shop draws on, {} where it draws on none."""
    return _homes_in(handbook.library) if handbook.library else {}


def _homes_in(folder: Path) -> dict[str, Any]:
    path = folder / simulated_homes.FILE
    return json.loads(path.read_text("utf-8")) if path.is_file() else {}


def record_of(handbook: Handbook) -> finished_calls.Record:
    """Return the shop's record of finished calls."""
    path = handbook.docs_folder / finished_calls.FILE
    complaint = handbook.checks.get(COMPLAINT)
    complaints = [one.name for one in complaint.content.results] if complaint else []
    return finished_calls.read_record(
        path, handbook.file_name(path), complaints, sorted(handbook.names("faults"))
    )
