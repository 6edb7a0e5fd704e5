"""How well the diagnosis did when it was last measured, kept for the page that tells trainers."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

FILE = "measured_diagnosis.json"
#: The parts that the page shows; `benchmark diagnosis --json` prints all.
PARTS = ("calls", "seed", "policies", "groups", "complaints")


def keep(docs_folder: Path, measured: dict[str, Any]) -> None:
    """Write what `benchmark diagnosis` has measured beside the sources."""
    kept = {name: measured[name] for name in PARTS}
    text = json.dumps(kept, ensure_ascii=False, indent=1)
    (docs_folder / FILE).write_text(f"{text}\n", "utf-8", newline="\n")


def last_measured(docs_folder: Path) -> dict[str, Any] | None:
    """Return what was measured last, None where nothing was."""
    path = docs_folder / FILE
    return json.loads(path.read_text("utf-8")) if path.is_file() else None
