"""An edition names its day and the revision of its sources; a changed byte is another one."""

from __future__ import annotations

import datetime
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from build_tools.edition import Edition, edition_of
from tests.pages.conftest import SECOND

DAY = datetime.date(2026, 11, 25)


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the folder of a shop with one source, made on a known day; no git knows it."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795564800")
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    (tmp_path / "mkdocs.yml").write_text("site_name: Test\n", encoding="utf-8")
    (tmp_path / "docs_src").mkdir()
    (tmp_path / "docs_src" / "shop.yaml").write_text("name: One\n", encoding="utf-8")
    return tmp_path


def edition(shop: Path) -> Edition:
    """Return the edition of the shop as it is now."""
    return edition_of(shop / "mkdocs.yml", shop / "docs_src")


def git(folder: Path, *arguments: str) -> str:
    """Run git as somebody; return what it says."""
    somebody = ["-c", "user.name=Somebody", "-c", "user.email=somebody@handbook.example"]
    command = ["git", "-C", str(folder), *somebody, *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout.strip()


def commit(folder: Path) -> str:
    """Commit all files; return the hash."""
    git(folder, "init", "--quiet")
    git(folder, "add", "--all")
    git(folder, "commit", "--quiet", "--message", "All")
    return git(folder, "rev-parse", "HEAD")


def test_without_git_the_sources_tell_the_revision(shop: Path) -> None:
    before = edition(shop)
    assert before == Edition(DAY, before.revision, in_git=False)
    assert before.words == f"November 25, 2026, sources {before.revision}"
    assert edition(shop) == before
    (shop / "docs_src" / "shop.yaml").write_text("name: Two\n", encoding="utf-8")
    assert edition(shop).revision != before.revision


def test_a_commit_tells_the_revision(shop: Path) -> None:
    made = commit(shop)
    assert edition(shop) == Edition(DAY, made[:8])
    assert edition(shop).words == f"November 25, 2026, revision {made[:8]}"


@pytest.mark.parametrize(
    ("file", "is_told"), [("docs_src/shop.yaml", True), ("docs_src/new.md", True), ("note", False)]
)
def test_uncommitted_changes_of_the_sources_are_told(shop: Path, file: str, is_told: bool) -> None:
    made = commit(shop)
    (shop / file).write_text("changed", encoding="utf-8")
    assert edition(shop) == Edition(DAY, made[:8], changed=is_told)
    assert edition(shop).source.endswith("with uncommitted changes") == is_told


def test_a_folder_that_git_does_not_keep_has_no_commit(shop: Path) -> None:
    inner = shop / "inner"
    inner.mkdir()
    (inner / "mkdocs.yml").write_text("site_name: Inner\n", encoding="utf-8")
    (shop / ".gitignore").write_text("inner\n", encoding="utf-8")
    commit(shop)
    assert not edition_of(inner / "mkdocs.yml", inner).in_git


def test_pages_and_bare_pages_bear_the_edition(built: Callable[[Path], Path]) -> None:
    site = built(SECOND)
    made = edition_of(SECOND, SECOND.parent / "docs_src")
    for page in ("learn/the-spring", "embed/brine-refill", "work-out/brine-refill"):
        html = (site / page / "index.html").read_text(encoding="utf-8")
        assert f"{made.day}</time>, " in html
        assert f'<span class="edition-source">{made.source}</span>' in html
