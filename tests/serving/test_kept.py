"""What builds keep from each other: after every kind of edit the site is that of a whole build."""

from __future__ import annotations

import hashlib
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from build_tools.pages import assets
from build_tools.serving.server import Live
from tests.serving.shop import contents, copied, live

PROCEDURE = "procedures/set-the-cabinet.yaml"
NEW = "procedures/rinse-the-cabinet.yaml"


@pytest.fixture(scope="module")
def styles(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Our styles, of which the first may be changed."""
    first, *others = assets.STYLES
    copy = Path(shutil.copy(first, tmp_path_factory.mktemp("theme")))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(assets, "STYLES", (copy, *others))
        yield copy


@pytest.fixture(scope="module")
def shop(styles: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Live]:
    """Hold one shop, built once, for all edits in turn."""
    folder = tmp_path_factory.mktemp("shop")
    with live(copied(folder), folder / "served") as made:
        made.build()
        assert made.state.told == []
        yield made


def replaced(docs: Path, name: str, old: str, new: str) -> None:
    """Change a text in a source."""
    text = (docs / name).read_text("utf-8")
    assert old in text
    (docs / name).write_text(text.replace(old, new), "utf-8")


def add_a_procedure(docs: Path) -> None:
    """Write a procedure, a link to it, and a file that is copied."""
    (docs / "list.csv").write_text("a,b\n", "utf-8")
    text = (docs / PROCEDURE).read_text("utf-8")
    (docs / NEW).write_text(text.replace("Set the cabinet softener", "Rinse the cabinet"), "utf-8")
    replaced(
        docs, "index.md", "Start with", "Or [rinse](procedures/rinse-the-cabinet.md).\n\nStart with"
    )


def remove_it_again(docs: Path) -> None:
    """Undo `add_a_procedure`."""
    (docs / NEW).unlink()
    (docs / "list.csv").unlink()
    replaced(docs, "index.md", "Or [rinse](procedures/rinse-the-cabinet.md).\n\n", "")


EDITS: dict[str, Callable[[Path], None]] = {
    "a step": lambda docs: replaced(docs, PROCEDURE, "Enter the hardness.", "Enter its hardness."),
    "a fact": lambda docs: replaced(docs, "facts.yaml", "500 mL", "400 mL"),
    "a title in navigation and links": lambda docs: replaced(
        docs, PROCEDURE, "title: Set the cabinet softener", "title: Set up the cabinet softener"
    ),
    "a new page and a new file": add_a_procedure,
    "both removed": remove_it_again,
    "the name of the site": lambda docs: (docs.parent / "mkdocs.yml").write_text(
        (docs.parent / "mkdocs.yml").read_text("utf-8") + "site_name: Another name\n", "utf-8"
    ),
    "nothing": lambda docs: None,
}


@pytest.fixture(scope="module")
def whole(
    shop: Live, styles: Path, tmp_path_factory: pytest.TempPathFactory
) -> Callable[[], dict[str, bytes]]:
    """Return what a build that knows of no earlier one makes of the sources as they are now.

    An edit that is undone gives sources of which there is such a site already.
    """
    made: dict[str, dict[str, bytes]] = {}
    config = Path(shop.config.config_file_path)

    def site() -> dict[str, bytes]:
        sources = (contents(config.parent / "docs_src"), config.read_bytes(), styles.read_bytes())
        digest = hashlib.sha256(repr(sources).encode()).hexdigest()
        if digest not in made:
            with live(config, tmp_path_factory.mktemp("whole") / "site") as fresh:
                fresh.build()
                assert fresh.state.told == []
                made[digest] = contents(fresh.folders.shown)
        return made[digest]

    return site


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    """Return the names of what is not the same in both."""
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


@pytest.mark.parametrize("edit", EDITS)
def test_an_edit_gives_the_site_of_a_whole_build(
    shop: Live, edit: str, whole: Callable[[], dict[str, bytes]]
) -> None:
    before = contents(shop.folders.shown)
    EDITS[edit](Path(shop.config.docs_dir))
    shop.build()
    assert shop.state.told == []
    after = contents(shop.folders.shown)
    assert bool(differing(before, after)) == (edit != "nothing")
    assert differing(after, whole()) == []


def test_a_style_gives_the_site_of_a_whole_build(
    shop: Live, styles: Path, whole: Callable[[], dict[str, bytes]]
) -> None:
    before = contents(shop.folders.shown)
    with styles.open("a", encoding="utf-8") as style:
        style.write("\n.new { color: inherit; }\n")
    shop.build()
    after = contents(shop.folders.shown)
    assert "index.html" in differing(before, after)  # it names the style's new address
    assert differing(after, whole()) == []


def test_pages_that_an_edit_does_not_touch_are_not_written(shop: Live) -> None:
    def times() -> dict[str, int]:
        pages = shop.folders.work.rglob("index.html")
        return {str(path.relative_to(shop.folders.work)): path.stat().st_mtime_ns for path in pages}

    shop.build()
    before = times()
    replaced(Path(shop.config.docs_dir), PROCEDURE, "Drop-count kit", "A drop-count kit")
    shop.build()
    after = times()
    assert after.keys() == before.keys()
    changed = {name for name, time in after.items() if time != before[name]}
    assert changed == {"procedures/set-the-cabinet/index.html"}
    assert "A drop-count kit" in (
        shop.folders.shown / "procedures/set-the-cabinet/index.html"
    ).read_text("utf-8")


def test_after_a_failure_in_the_middle_all_is_made_anew(
    shop: Live, whole: Callable[[], dict[str, bytes]]
) -> None:
    """A build that ends when some pages are written may not count for the next one."""
    config = Path(shop.config.config_file_path)
    text = config.read_text("utf-8")
    good = contents(shop.folders.shown)
    replaced(Path(shop.config.docs_dir), PROCEDURE, "A drop-count kit", "Another kit")
    config.write_text(text + "extra_templates: [nothing.html]\n", "utf-8")
    shop.build()
    assert [one.what for one in shop.state.told] == [
        "Template skipped: 'nothing.html' not found in docs_dir."
    ]
    assert contents(shop.folders.shown) == good
    config.write_text(text, "utf-8")
    shop.build()
    assert shop.state.told == []
    after = contents(shop.folders.shown)
    assert differing(after, whole()) == []
