"""The handbooks that the benchmark of builds measures."""

from __future__ import annotations

import re
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config

from build_tools.benchmarks.build import our_handbook, plain_mkdocs
from build_tools.checks import check_handbook
from build_tools.content.handbook import load_handbook
from build_tools.content.values import Values

SIZE = 40
GLOSSARY_LINK = r'<a [^>]*class="term"[^>]*>(.*?)</a>'
#: What our plugin keeps beside a quantity: the same in the other unit system, and the marks of both.
OTHER_UNITS = r"<template\b.*?</template>|</?span\b[^>]*>"


def test_a_handbook_made_larger_has_no_problem(tmp_path: Path) -> None:
    docs = our_handbook(tmp_path, SIZE).parent / "docs_src"
    handbook = load_handbook(docs, tmp_path)
    assert len(list((docs / "procedures").glob("*.yaml"))) == SIZE
    assert check_handbook(handbook, Values(handbook)) == []


def test_plain_mkdocs_writes_the_same_words(tmp_path: Path) -> None:
    ours = our_handbook(tmp_path / "ours", SIZE)
    plain = plain_mkdocs(ours, tmp_path / "plain")
    assert words(plain, tmp_path / "plain site") == words(ours, tmp_path / "our site")


def words(config_file: Path, site: Path) -> dict[str, str]:
    """Build a site; return what each page says, without heading, edition and other languages."""
    config = load_config(str(config_file), site_dir=str(site))
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    found = {}
    for path in site.rglob("index.html"):
        (article,) = re.findall(r"<article.*</article>", path.read_text("utf-8"), re.DOTALL) or [""]
        article = re.sub(GLOSSARY_LINK, r"\1", article, flags=re.DOTALL)
        article = re.sub(OTHER_UNITS, "", article, flags=re.DOTALL)
        text = re.sub(
            r'<h1.*?</h1>|<p class="(?:edition|languages)\b.*?</p>|<[^>]*>',
            " ",
            article,
            flags=re.DOTALL,
        )
        found[path.relative_to(site).as_posix()] = " ".join(text.split())
    return found
