"""Pages written with marks are the pages without them, and nothing is worked out again."""

from __future__ import annotations

from build_tools.comparing.marks import unmarked
from build_tools.comparing.record import shortened
from build_tools.comparing.tracing import TracedValues
from build_tools.content import values as values_module
from build_tools.content.handbook import load_handbook
from build_tools.content.values import Values
from build_tools.pages.site import write_site
from tests.pages.conftest import SECOND


def test_marked_pages_are_the_pages() -> None:  # those of the shipped one: test_whole_handbook.py
    handbook = load_handbook(SECOND.parent / "docs_src", SECOND.parent)
    plain = write_site(handbook, Values(handbook), "runtime", None)
    worked_out = values_module._result.cache_info().misses
    values = TracedValues(handbook)
    marked = write_site(handbook, values, "runtime", None)
    assert values_module._result.cache_info().misses == worked_out
    assert {page: shortened(unmarked(text)) for page, text in marked.pages.items()} == {
        page: shortened(text) for page, text in plain.pages.items()
    }
    assert values.problems == []
