"""What a field names must exist, and a list names it once."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.problems import expected
from calculators import CALCULATORS
from calculators.sources import SOURCES
from tests.content.small_shop import FILES, changed, problems_of

LOOK = "procedures/first-look.yaml"
NAMES_OF_NOTHING = [
    (LOOK, "  - hot-water", "  - hot-watr", '6: there is no caution "hot-watr" (expected "hot-water")'),
    (LOOK, "  - hardness", "  - hardnes", '39: there is no lesson "hardnes" (expected "hardness")'),
    (
        LOOK, "calculate: brine-refill", "calculate: brine-refil",
        f'20: there is no calculator "brine-refil" {expected("brine-refil", sorted(CALCULATORS))}',
    ),
    (
        "faults/salt-bridge.yaml", "fault: no-salt", "fault: no-sal",
        '8: there is no fault "no-sal" (expected one of: no-salt, salt-bridge; nearest: "no-salt")',
    ),
    (
        "faults/salt-bridge.yaml", "  - drain-flow", "  - drain-flo",
        '16: there is no procedure "drain-flo" (expected one of: drain-flow, first-look; nearest: '
        '"drain-flow")',
    ),
    (
        "facts.yaml", "source: burn-leaflet", "source: burn-leaflt",
        '9: there is no source "burn-leaflt" '
        f'{expected("burn-leaflt", sorted({"burn-leaflet", *SOURCES}))}',
    ),
    (
        "shop.yaml", "  - clock-unit", "  - clok-unit",
        '25: there is no unit of equipment "clok-unit" (expected one of: clock-unit, meter-unit; '
        'nearest: "clock-unit")',
    ),
    (
        "learn/hardness.md", "calculate: hardness-setting", "calculate: hardness-settin",
        '22: there is no calculator "hardness-settin" '
        f'{expected("hardness-settin", sorted(CALCULATORS))}',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), NAMES_OF_NOTHING)
def test_a_name_of_nothing_is_told_with_the_nearest(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new)) == [f"docs_src/{name}:{said}"]


def test_a_go_to_must_lead_to_a_page(tmp_path: Path) -> None:
    files = changed(LOOK, "go_to: procedures/drain-flow", "go_to: drain-flow")
    pages = {
        "procedures/drain-flow", "procedures/first-look", "faults/no-salt", "faults/salt-bridge",
        "learn/hardness", *(f"work-out/{name}" for name in CALCULATORS),
    }  # fmt: skip
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/first-look.yaml:31: there is no page "drain-flow" '
        f"{expected('drain-flow', sorted(pages))}"
    ]


@pytest.mark.parametrize("target", ["work-out/brine-refill", "learn/hardness", "faults/no-salt"])
def test_a_go_to_may_lead_to_any_kind_of_page(tmp_path: Path, target: str) -> None:
    assert (
        problems_of(tmp_path, changed(LOOK, "go_to: faults/salt-bridge", f"go_to: {target}")) == []
    )


def test_a_fact_may_rest_on_a_source_of_the_calculators(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("facts.yaml", "burn-leaflet", "unit-definitions")) == []


def test_a_name_listed_twice_is_told(tmp_path: Path) -> None:
    files = changed("shop.yaml", "  - clock-unit", "  - clock-unit\n  - meter-unit")
    files[LOOK] = FILES[LOOK].replace("  - hot-water", "  - hot-water\n  - hot-water")
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/first-look.yaml:7: the caution "hot-water" is listed twice (expected '
        "each once)",
        'docs_src/shop.yaml:26: the unit of equipment "meter-unit" is listed twice (expected each '
        "once)",
    ]


def test_a_page_that_failed_to_load_still_exists_for_the_others(tmp_path: Path) -> None:
    files = changed("procedures/drain-flow.yaml", "title: Drain flow", "title: [Drain flow")
    files["cautions.yaml"] = "hot-water:\n  title: Hot\n"
    assert problems_of(tmp_path, files) == [
        'docs_src/cautions.yaml:1: the key "text" is missing (expected the caution in full)',
        "docs_src/procedures/drain-flow.yaml:2: the YAML does not parse: while parsing a flow "
        "sequence did not find expected ',' or ']' (expected a closing \"]\", or quotes around a "
        'text that begins with "[")',
    ]


def test_names_are_not_doubted_where_their_file_cannot_be_read(tmp_path: Path) -> None:
    assert problems_of(tmp_path, {**FILES, "cautions.yaml": "hot-water\n"}) == [
        'docs_src/cautions.yaml:1: this is a text without keys (expected lines "key: value")'
    ]


def test_every_source_a_calculator_cites_is_one_of_the_calculators_sources() -> None:
    for calculator in CALCULATORS.values():
        assert set(calculator.sources) <= SOURCES.keys(), calculator.name
