"""Decisions lead on and never round in a circle."""

from __future__ import annotations

from pathlib import Path

from tests.content.small_shop import FILES, changed, problems_of


def test_a_decision_that_leads_back_to_its_own_page_is_told(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml", "go_to: procedures/drain-flow", "go_to: procedures/first-look"
    )
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/first-look.yaml:31: "go_to" leads round in a circle: first-look → '
        "first-look (expected a way that ends)"
    ]


def test_a_ring_of_procedures_is_told_where_it_closes(tmp_path: Path) -> None:
    back = "decide:\n  - if: Still low.\n    then: Look again.\n    go_to: procedures/first-look\nclose:"
    files = changed("procedures/drain-flow.yaml", "close:", back)
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/first-look.yaml:31: "go_to" leads round in a circle: drain-flow → '
        "first-look → drain-flow (expected a way that ends)"
    ]


def test_two_ways_to_one_procedure_are_no_circle(tmp_path: Path) -> None:
    files = changed(
        "procedures/first-look.yaml", "go_to: faults/salt-bridge", "go_to: procedures/drain-flow"
    )
    assert problems_of(tmp_path, files) == []


def test_a_long_way_is_walked_to_its_end(tmp_path: Path) -> None:
    step = "decide:\n  - if: So.\n    then: On.\n    go_to: procedures/p{}\nclose:"
    files = dict(FILES)
    for number in range(1500):
        text = FILES["procedures/drain-flow.yaml"]
        files[f"procedures/p{number}.yaml"] = text.replace("close:", step.format(number + 1))
    files["procedures/p1500.yaml"] = FILES["procedures/drain-flow.yaml"]
    files["index.md"] += "\n[On](procedures/p0.md)\n"
    assert problems_of(tmp_path, files) == []
