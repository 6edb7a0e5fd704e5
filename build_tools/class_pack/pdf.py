"""A printed page as a PDF file, made by a browser that is at hand."""

from __future__ import annotations

import re
import subprocess
import tempfile
from pathlib import Path

from build_tools.engines.chromium import QUIET_FLAGS
from build_tools.set_up.failure import Failure

#: Longer than the longest pack takes on a slow machine [s].
LONGEST = 300
#: When a PDF was made, by itself, and the names that the browser gives to heads of tables: they
#: count what else it has done so far. Without them the same pack has the same bytes.
_MADE = re.compile(rb"/(CreationDate|ModDate) \(D:\d{14}")
_NAME = re.compile(rb"\(node\d{8}\)")
NO_DAY = "20000101"


#: What else a class pack can do where the browser fails.
WITHOUT = "Print that page from a browser of yours, or leave PDF files out with --no-pdf."


def printed(
    browser: str, page: Path, day: str = "", longest: float = LONGEST, otherwise: str = WITHOUT
) -> bytes:
    """Return a page as a PDF with its headings as bookmarks.

    day: the edition's, as "2026-05-01", which the file then bears. Raises Failure where the browser
    makes none in the longest time [s]; otherwise: what that sentence advises.
    """
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "page.pdf"
        command = [
            browser,
            "--headless",
            *QUIET_FLAGS,
            f"--user-data-dir={folder}/user",
            "--no-pdf-header-footer",
            "--generate-pdf-document-outline",
            f"--print-to-pdf={made}",
            page.resolve().as_uri(),
        ]
        try:
            subprocess.run(
                command,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                timeout=longest,
                check=True,
            )
            data = made.read_bytes()
        except (OSError, subprocess.SubprocessError) as error:
            raise Failure(
                f"The browser {browser} made no PDF of {page.name}. {otherwise}"
            ) from error
    return without_chance(data, day)


def without_chance(data: bytes, day: str) -> bytes:
    """Return a PDF of the browser that bears a day, and nothing that is another in each run.

    All of its places stay where they are: its table of them holds.
    """
    stamp = (day.replace("-", "") or NO_DAY).encode() + b"000000"
    dated = _MADE.sub(lambda found: b"/" + found[1] + b" (D:" + stamp, data)
    names = sorted(set(_NAME.findall(dated)))
    counted = {name: b"(node%08d)" % number for number, name in enumerate(names, 1)}
    return _NAME.sub(lambda found: counted[found[0]], dated)
