"""The policy in every page and the file of headers, as they are in the built sites."""

from __future__ import annotations

import hashlib
import re
from base64 import b64encode
from html.parser import HTMLParser
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import PluginError

from build_tools.pages.security import with_policy
from tests.browser.headers_file import headers_by_path, rules_of
from tests.pages.conftest import SECOND

FOR_EVER = "public, max-age=31536000, immutable"


class Scripts(HTMLParser):
    """What of a page the policy is about: its own policy, inline scripts and forbidden attributes."""

    def __init__(self, page: Path) -> None:
        super().__init__()
        self.policies: list[str] = []
        self.inline: list[str] = []
        self.attributes: list[str] = []
        self.loaded_before_policy = 0
        self._inside = False
        self.feed(page.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if given.get("http-equiv") == "Content-Security-Policy":
            self.policies.append(given["content"])
        elif tag in ("script", "link", "style", "img") and not self.policies:
            self.loaded_before_policy += 1
        self.attributes += [name for name in given if name.startswith("on") or name == "style"]
        self._inside = tag == "script" and not {"src", "type"} & given.keys()
        if self._inside:
            self.inline.append("")

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.inline[-1] += data

    def handle_endtag(self, tag: str) -> None:
        self._inside = False


def pages(site: Path) -> dict[str, Scripts]:
    return {
        path.relative_to(site).as_posix(): Scripts(path) for path in sorted(site.rglob("*.html"))
    }


def sources(policy: str, directive: str) -> list[str]:
    found = {name: rest for name, *rest in (part.split() for part in policy.split("; "))}
    return found[directive]


def source_of(script: str) -> str:
    return f"'sha256-{b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"


def test_every_page_has_one_policy_before_all_that_it_is_about(site: Path) -> None:
    for name, page in pages(site).items():
        assert len(page.policies) == 1, name
        assert page.loaded_before_policy == 0, name
        html = (site / name).read_bytes()
        assert html.index(b'<meta charset="utf-8">') < 1000, name


def test_the_theme_s_pages_share_a_policy_that_names_just_the_theme_s_scripts(site: Path) -> None:
    of_theme = {name: page for name, page in pages(site).items() if not name.startswith("embed/")}
    assert "404.html" in of_theme
    (policy,) = {page.policies[0] for page in of_theme.values()}
    named = sources(policy, "script-src")
    written = {script for page in of_theme.values() for script in page.inline}
    assert named[:2] == ["'self'", "'wasm-unsafe-eval'"]
    assert set(named[2:]) == {source_of(script) for script in written}
    assert "unsafe-inline" not in policy
    assert sources(policy, "default-src") == ["'self'"]
    assert sources(policy, "object-src") == ["'none'"]


def test_bare_pages_have_no_script_of_their_own_and_a_policy_without_hashes(site: Path) -> None:
    bare = [page for name, page in pages(site).items() if name.startswith("embed/")]
    assert len(bare) >= 40
    for page in bare:
        assert page.inline == []
        assert sources(page.policies[0], "script-src") == ["'self'", "'wasm-unsafe-eval'"]


def test_no_page_needs_what_the_policy_forbids(site: Path) -> None:
    assert {name: page.attributes for name, page in pages(site).items() if page.attributes} == {}


def test_columns_are_aligned_without_styles(shipped: Path) -> None:
    html = (shipped / "reference" / "tables" / "index.html").read_text(encoding="utf-8")
    assert 'align="right"' in html


def test_a_page_without_a_place_for_the_policy_fails_the_build() -> None:
    with pytest.raises(PluginError, match='the theme\'s pages have no <meta charset="utf-8"> any'):
        with_policy("<html><head></head></html>", "default-src 'none'")


def test_pages_are_asked_for_each_time_and_only_bare_ones_may_be_framed(site: Path) -> None:
    headers_for = headers_by_path(site)
    for name, page in pages(site).items():
        headers = headers_for(f"/{name}")
        assert headers == headers_for(f"/{name.removesuffix('index.html')}?x=1"), name
        assert headers["Cache-Control"] == "no-cache", name
        assert headers["X-Content-Type-Options"] == "nosniff", name
        framing = "" if name.startswith("embed/") else "; frame-ancestors 'none'"
        assert headers["Content-Security-Policy"] == page.policies[0] + framing, name


def test_just_what_is_named_by_its_content_is_kept_for_ever(site: Path) -> None:
    headers_for = headers_by_path(site)
    kept, asked = set(), set()
    for path in site.rglob("*"):
        if path.is_file():
            name = path.relative_to(site).as_posix()
            (kept if headers_for(f"/{name}").get("Cache-Control") == FOR_EVER else asked).add(name)
    named = re.compile(
        r"runtime/pyodide-[\d.]+/|runtime/knowledge-[0-9a-f]{16}\.json$|assets/handbook-[0-9a-f]{16}/|assets/workbox-[\d.]+/|assets/\S+\.[0-9a-f]{8}\.min\.(js|css)$"
    )
    assert [name for name in kept if not named.match(name)] == []
    assert [name for name in asked if named.match(name)] == []
    assert {"index.html", "embed.js", "sitemap.xml", "search/search_index.json"} <= asked


def test_the_rules_stay_within_what_hosts_read(site: Path) -> None:
    rules = rules_of(site)
    assert len(rules) <= 100
    assert max(len(line) for line in (site / "_headers").read_text("utf-8").splitlines()) <= 2000
    assert all(path.find("*") in (-1, len(path) - 1) for path in rules)


def test_a_site_in_a_folder_of_its_host_has_rules_for_that_folder(tmp_path: Path) -> None:
    config = load_config(
        str(SECOND), site_dir=str(tmp_path), site_url="https://host.example/shop/", strict=True
    )
    build(config)
    assert all(path.startswith("/shop/") for path in rules_of(tmp_path))
    html = (tmp_path / "404.html").read_text(encoding="utf-8")
    assert '__md_scope=new URL("/shop/",location)' in html
    assert {source_of(script) for script in Scripts(tmp_path / "404.html").inline} <= set(
        sources(Scripts(tmp_path / "404.html").policies[0], "script-src")
    )
    snippet = (tmp_path / "work-out" / "hardness-setting" / "index.html").read_text("utf-8")
    assert '&lt;script src="https://host.example/shop/embed.js" async&gt;' in snippet
