"""Pages written with marks are the pages without them, and nothing is worked out again."""

from __future__ import annotations

from pathlib import Path

from build_tools.comparing.marks import unmarked
from build_tools.comparing.record import record_of, shortened
from build_tools.comparing.tracing import Tracing
from build_tools.content import shop_calculators
from build_tools.content.handbook import Handbook, load_handbook
from build_tools.content.values import Values
from build_tools.edition import Edition
from build_tools.pages.site import write_site
from tests.comparing.shops import DAY, compared
from tests.pages.conftest import SECOND
from tests.shops.small_library import SHOP, place


def test_marked_pages_are_the_pages() -> None:  # those of the shipped one: test_whole_handbook.py
    marked_as_they_are(load_handbook(SECOND.parent / "docs_src", SECOND.parent))


def test_a_shop_that_draws_on_the_library_names_its_files_in_every_folder_alike(
    tmp_path: Path,
) -> None:
    handbooks = [place(tmp_path / name / "deep", SHOP).load() for name in ("one", "two")]
    marked_as_they_are(handbooks[0])
    old, new = (record_of(one, Edition(DAY, "2b637838")) for one in handbooks)
    assert old["files"] == new["files"]
    assert {"docs_src/shop.yaml", "library/facts.yaml"} <= set(old["files"])
    assert not [name for name in old["files"] if name.startswith(("..", "/"))]
    assert compared(old, new).is_empty


def marked_as_they_are(handbook: Handbook) -> None:
    """Hold the marked pages of a handbook to its pages."""
    plain = write_site(handbook, Values(handbook), "runtime", None)
    worked_out = shop_calculators._result.cache_info().misses
    values = Values(handbook, Tracing(handbook))
    marked = write_site(handbook, values, "runtime", None)
    assert shop_calculators._result.cache_info().misses == worked_out
    assert {page: shortened(unmarked(text)) for page, text in marked.pages.items()} == {
        page: shortened(text) for page, text in plain.pages.items()
    }
    assert values.problems == []
