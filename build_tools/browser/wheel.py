"""Pack the calculators, and nothing else, as a wheel that any Python can install."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from build_tools.browser import BrowserFilesError

PROJECT_FILE = Path(__file__).with_name("calculators_wheel.toml")

# Every file in the wheel gets this date (1 January 2020), so that the same source gives the
# same bytes on every machine.
FIXED_DATE = "1577836800"


def source_files(calculators: Path) -> list[Path]:
    """Return the Python files of the package, in an order that no file system changes."""
    return sorted(calculators.rglob("*.py"))


def build_wheel(calculators: Path, folder: Path) -> Path:
    """Pack the package in the folder `calculators` into `folder` and return the wheel's path."""
    with tempfile.TemporaryDirectory() as temporary:
        project = Path(temporary)
        shutil.copy(PROJECT_FILE, project / "pyproject.toml")
        for source in source_files(calculators):
            target = project / "calculators" / source.relative_to(calculators)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(source, target)
        command = [sys.executable, "-m", "build", "--wheel", "--no-isolation"]
        done = subprocess.run(
            [*command, "--outdir", str(folder), str(project)],
            env={**os.environ, "SOURCE_DATE_EPOCH": FIXED_DATE},
            capture_output=True,
            text=True,
            check=False,
        )
    if done.returncode:
        raise BrowserFilesError(
            f"The calculators could not be packed for the browser; the packing tool said:\n"
            f"{done.stderr}"
        )
    (wheel,) = folder.glob("*.whl")
    return wheel
