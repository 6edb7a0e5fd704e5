"""Which page leads to which, and how."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.handbook import load_handbook
from build_tools.content.leads import By, leads, pages_by_calculator
from tests.content.small_shop import FILES, changed, write


@pytest.fixture
def found(tmp_path: Path) -> set[tuple[str, str, By]]:
    write(tmp_path, FILES)
    return set(leads(load_handbook(tmp_path / "docs_src", tmp_path)))


@pytest.mark.parametrize(
    ("base", "target", "how"),
    [
        ("faults/salt-bridge.md", "procedures/drain-flow.md", By.NAME),
        ("procedures/first-look.md", "procedures/drain-flow.md", By.NAME),
        ("checks/rod.md", "learn/hardness.md", By.NAME),
        ("procedures/drain-flow.md", "learn/hardness.md", By.LINK),
        ("index.md", "procedures/first-look.md", By.LINK),
        ("learn/hardness.md", "work-out/hardness-setting.md", By.USE),
        ("procedures/first-look.md", "work-out/brine-refill.md", By.USE),
        ("faults/salt-bridge.md", "work-out/brine-refill.md", By.USE),
    ],
)
def test_a_lead(found: set[tuple[str, str, By]], base: str, target: str, how: By) -> None:
    assert (base, target, how) in found


def test_the_index_of_a_section_leads_nowhere(tmp_path: Path) -> None:
    files = FILES | {"learn/index.md": "# Learn\n\n[Hardness](hardness.md)\n"}
    write(tmp_path, files)
    found = leads(load_handbook(tmp_path / "docs_src", tmp_path))
    assert "learn/index.md" not in {base for base, _, _ in found}


def test_a_misspelled_name_leads_to_the_nearest(tmp_path: Path) -> None:
    write(tmp_path, changed("faults/salt-bridge.yaml", "  - drain-flow", "  - drain-flw"))
    found = set(leads(load_handbook(tmp_path / "docs_src", tmp_path)))
    assert ("faults/salt-bridge.md", "procedures/drain-flow.md", By.NAME) in found


def test_the_pages_of_a_calculator(tmp_path: Path) -> None:
    write(tmp_path, FILES)
    used = pages_by_calculator(load_handbook(tmp_path / "docs_src", tmp_path))
    assert used == {
        "hardness-setting": {"learn/hardness.md"},
        "resin-capacity": {"learn/hardness.md"},
        "brine-refill": {"procedures/first-look.md", "faults/salt-bridge.md"},
    }
