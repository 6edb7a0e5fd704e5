"""An example that nobody made true is told, whatever kind of value it is."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import changed, problems_of

WRONG = [
    (
        "procedures/drain-flow.yaml", "goal: Know the flow at the drain.",
        "goal: Know the flow at the drain.  # example",
        'procedures/drain-flow.yaml:2: "goal" is still an example (expected what is achieved when '
        'it is done; then take "# example" away)',
    ),
    (
        "facts.yaml", "value: 5 gal", "value: 5 gal # example",
        'facts.yaml:3: "value" is still an example (expected such as "140 °F"; then take '
        '"# example" away)',
    ),
    (
        "checks/rod.yaml", "  - A blunt rod", "  - A blunt rod  #example",
        'checks/rod.yaml:11: item 1 of "tools" is still an example (expected a list of tools, or '
        '[] for none; then take "# example" away)',
    ),
    (
        "faults/salt-bridge.yaml", "  rod: {hollow: 95 %, loose: 5 %}",
        "  rod: {hollow: 95 %, loose: 5 %}  # example",
        'faults/salt-bridge.yaml:26: "loose" is still an example (expected lines of a check and '
        'the chance of each result, "complaint" among them; then take "# example" away)',
    ),
    (
        "learn/hardness.md", "  hardness: 18 gpg", "  hardness: 18 gpg  # example",
        'learn/hardness.md:24: "hardness" is still an example (expected what the calculator is '
        'given; then take "# example" away)',
    ),
    (
        "learn/hardness.md", "## A setting", "<!-- example -->\n\n## A setting",
        "learn/hardness.md:16: this is still an example (expected your own words; then take "
        '"<!-- example -->" away)',
    ),
]


@pytest.mark.parametrize(("file", "old", "new", "said"), WRONG)
def test_a_marked_line_is_told(tmp_path: Path, file: str, old: str, new: str, said: str) -> None:
    assert problems_of(tmp_path, changed(file, old, new)) == [f"docs_src/{said}"]


def test_other_comments_are_free(tmp_path: Path) -> None:
    files = changed("facts.yaml", "value: 5 gal", "value: 5 gal  # for example")
    files["learn/hardness.md"] += "\nAn example <!-- example --> within a line, # example\n"
    assert problems_of(tmp_path, files) == []
