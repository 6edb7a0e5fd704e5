"""How long the handbook takes to build, beside plain MkDocs with the same rendered pages.

Plain MkDocs gets what our plugin hands to it: the Markdown of every page, finished, and every file
that is copied; theme, extensions and navigation are the same, and of the plugins only the search.
Larger handbooks are made from the shipped one by copying its procedures.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import yaml
from mkdocs.config import load_config
from mkdocs.structure.files import get_files
from mkdocs.structure.pages import Page

from build_tools.benchmarks import rebuild
from build_tools.benchmarks.table import PLAIN, Row
from build_tools.content.unit_marks import own
from build_tools.set_up.failure import Failure
from build_tools.set_up.start import ROOT

OURS = "handbook"
SIZES = (200, 1000)


def measure(rounds: int) -> Iterator[Row]:
    """Yield the medians at the shipped size and at each larger one."""
    shipped = len(_procedures(ROOT / "docs_src"))
    for size in (shipped, *SIZES):
        with tempfile.TemporaryDirectory() as temporary:
            folder = Path(temporary)
            configs = {OURS: our_handbook(folder / OURS, size)}
            configs[PLAIN] = plain_mkdocs(configs[OURS], folder / PLAIN)
            times = [{name: _build(one) for name, one in configs.items()} for _ in range(rounds)]
            words = f"{size:,} procedures"
            yield Row.of_medians("whole build", words, "ms", times)
            rebuilt = [_rebuilt(configs[PLAIN], configs[OURS]) for _ in range(rounds)]
            yield Row.of_medians("after one saved file", words, "ms", rebuilt)


def enlarge(docs: Path, size: int) -> None:
    """Copy the procedures of a folder of sources until there are `size`.

    Each is linked from a page, and belongs to the skill of its original.
    """
    originals = _procedures(docs)
    skills = (docs / "skills.yaml").read_text(encoding="utf-8")
    links = []
    for number in range(len(originals), size):
        original = originals[number % len(originals)]
        name = f"{original.stem}-{number}"
        title, rest = original.read_text(encoding="utf-8").split("\n", 1)
        (docs / "procedures" / f"{name}.yaml").write_text(f"{title} {number}\n{rest}", "utf-8")
        skills = re.sub(rf"\b{original.stem}(?=[,\]])", f"{original.stem}, {name}", skills)
        skills = re.sub(
            rf"^( *- ){original.stem}$", rf"\g<0>\n\g<1>{name}", skills, flags=re.MULTILINE
        )
        links.append(f"- [Copy {number}](procedures/{name}.md)\n")
    (docs / "skills.yaml").write_text(skills, encoding="utf-8")
    with (docs / "using-this-handbook.md").open("a", encoding="utf-8") as page:
        page.write("\n" + "".join(links))


def _procedures(docs: Path) -> list[Path]:
    return sorted((docs / "procedures").glob("*.yaml"))


def our_handbook(folder: Path, size: int) -> Path:
    """Return the configuration of the handbook at a size."""
    docs = folder / "docs_src"
    shutil.copytree(ROOT / "docs_src", docs)
    enlarge(docs, size)
    config = folder / "mkdocs.yml"
    config.write_text(f"INHERIT: {ROOT / 'mkdocs.yml'}\ndocs_dir: docs_src\n", encoding="utf-8")
    return config


def plain_mkdocs(ours: Path, folder: Path) -> Path:
    """Return a configuration of MkDocs alone, with the pages that our plugin made."""
    config = load_config(str(ours), site_dir=str(folder / "unused"))
    config.plugins.on_startup(command="build", dirty=False)
    config = config.plugins.on_config(config)
    files = config.plugins.on_files(get_files(config), config=config)
    for file in files:
        place = folder / "docs_src" / file.src_uri
        place.parent.mkdir(parents=True, exist_ok=True)
        if file.is_documentation_page():
            page = Page(None, file, config)
            text = config.plugins.on_page_markdown("", page=page, config=config, files=files)
            place.write_text(own(text), encoding="utf-8")
        else:
            place.write_bytes(file.content_bytes)
    settings = {
        "INHERIT": str(ROOT / "mkdocs.yml"),
        "docs_dir": "docs_src",
        "nav": config.nav,
        "plugins": ["search"],
        "extra_css": [str(style) for style in config.extra_css],
        "extra_javascript": [
            {"path": one.path, "type": one.type} for one in config.extra_javascript
        ],
    }
    made = folder / "mkdocs.yml"
    made.write_text(yaml.safe_dump(settings, allow_unicode=True, sort_keys=False), "utf-8")
    return made


def _build(config: Path) -> float:
    """Return the milliseconds of a whole build in a process of its own."""
    start = time.perf_counter()
    _run(["-m", "mkdocs", "build", "--quiet", "-f", str(config), "-d", str(config.parent / "site")])
    return 1000 * (time.perf_counter() - start)


def _rebuilt(plain: Path, ours: Path) -> dict[str, float]:
    """Return the milliseconds of builds after one saved file, as in a process that serves.

    Beside them that of the handbook made whole in the same process, where nothing is kept.
    """
    made = {
        name: json.loads(_run(["-m", "build_tools.benchmarks.rebuild", str(config)]))
        for name, config in ((PLAIN, plain), (OURS, ours))
    }
    return {
        PLAIN: made[PLAIN][rebuild.SAVED],
        OURS: made[OURS][rebuild.SAVED],
        f"{OURS} whole": made[OURS][rebuild.WHOLE],
    }


def _run(arguments: list[str]) -> str:
    done = subprocess.run(
        [sys.executable, *arguments], capture_output=True, text=True, encoding="utf-8", check=False
    )
    if done.returncode:
        raise Failure(f"The build to be measured failed:\n{done.stderr.strip()[-2000:]}")
    return done.stdout
