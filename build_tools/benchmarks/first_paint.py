"""How soon a procedure page shows something: as it is, and with the theme's own scripts alone."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config

from build_tools.benchmarks.bench import SLOW_LINKS, Bench, say
from build_tools.benchmarks.host import Host
from build_tools.benchmarks.table import PLAIN, Row

PAGE = "procedures/measure-drain-flow/"
OUR_SCRIPTS = re.compile(r'<script[^>]*\bsrc="[^"]*assets/handbook-[^>]*></script>')
TELLS = Path(__file__).parent / "page" / "first_paint.js"


def first_paint(bench: Bench) -> Iterator[Row]:
    """Measure both pages in Chromium with new profiles, in turns."""
    sites = {PLAIN: bench.new_folder(), "ours": bench.new_folder()}
    _build(bench.root, sites["ours"])
    _let_tell(sites["ours"])
    shutil.copytree(sites["ours"], sites[PLAIN], dirs_exist_ok=True)
    _without_our_scripts(sites[PLAIN] / PAGE / "index.html")
    for setting, link in {"no limit": None, **SLOW_LINKS}.items():
        say(f"First paint, {setting} ...")
        with (
            bench.host("gzip", link, sites[PLAIN]) as plain,
            bench.host("gzip", link, sites["ours"]) as ours,
        ):
            hosts = {PLAIN: plain, "ours": ours}
            measured = [
                {name: _visit(bench, host) for name, host in hosts.items()} for _ in bench.rounds
            ]
        yield Row.of_medians("first paint of a procedure", setting, "ms", measured)


def _build(root: Path, site: Path) -> None:
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(site))
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    config.plugins.on_shutdown()


def _let_tell(site: Path) -> None:
    """Let the page tell when it has painted."""
    shutil.copy(TELLS, site)
    page = site / PAGE / "index.html"
    html, found = re.subn(
        "</body>",
        f'<script type="module" src="/{TELLS.name}"></script></body>',
        page.read_text(encoding="utf-8"),
    )
    if not found:
        raise ValueError(f"{page} has no body that ends")
    page.write_text(html, encoding="utf-8")


def _without_our_scripts(page: Path) -> None:
    html, found = OUR_SCRIPTS.subn("", page.read_text(encoding="utf-8"))
    if not found:
        raise ValueError(f"{page} has no script of ours to take away")
    page.write_text(html, encoding="utf-8")


def _visit(bench: Bench, host: Host) -> float:
    return bench.in_chromium(host, f"{host.address}{PAGE}")["milliseconds"]
