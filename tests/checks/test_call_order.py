"""Checks stand in places of their own, after what they need."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

ROD, HEIGHT = "checks/rod.yaml", "checks/salt-height.yaml"
WRONG = [
    (
        ROD, "order: 2", "order: 1",
        'salt-height.yaml:3: the check "rod" has the same place, 1 in the stage "salt and brine" '
        "(expected a place of its own)",
    ),
    (
        ROD, "name: hollow", "name: loose",
        'rod.yaml:16: "loose" is here twice (expected each name once)',
    ),
    (
        ROD, "name: hollow", "name: A hollow",
        'rod.yaml:16: the name "A hollow" cannot stand in a fault (expected lower case letters, '
        'digits and "-")',
    ),
    (
        ROD, "erases: [salt-height]", "erases: [rod]",
        "rod.yaml:22: the check erases its own evidence (expected another check)",
    ),
    (
        ROD, "result: above", "result: abov",
        'rod.yaml:21: the check "salt-height" has no result "abov" (expected one of: above, none; '
        'nearest: "above")',
    ),
    (
        ROD, "check: salt-height", "check: salt-heigt",
        'rod.yaml:20: there is no check "salt-heigt" (expected one of: complaint, rod, salt-height; '
        'nearest: "salt-height")',
    ),
    (
        ROD, "    result: above", "    result: above\n  - check: rod\n    result: loose",
        "rod.yaml:19: the check needs itself first, by way of others (expected a way that begins)",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), WRONG)
def test_a_check_out_of_order_is_told(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    said = f"docs_src/checks/{said}"
    found = problems_of(tmp_path, changed(name, old, new))
    assert said in found
    assert all("checks/" in one or "likelihoods" in one or "no result" in one for one in found)


def test_a_circle_of_needs_is_told_at_each_of_its_checks(tmp_path: Path) -> None:
    needs = "needs:\n  - check: rod\n    result: loose\ncautions: []"
    assert problems_of(tmp_path, changed(HEIGHT, "cautions: []", needs)) == [
        "docs_src/checks/rod.yaml:19: the check needs itself first, by way of others (expected a "
        "way that begins)",
        "docs_src/checks/salt-height.yaml:16: the check needs itself first, by way of others "
        "(expected a way that begins)",
    ]


def test_what_proves_a_fault_is_a_result_of_a_check(tmp_path: Path) -> None:
    files = changed("faults/no-salt.yaml", "    result: none", "    result: nothing")
    assert problems_of(tmp_path, files) == [
        'docs_src/faults/no-salt.yaml:20: the check "salt-height" has no result "nothing" '
        "(expected one of: above, none)"
    ]


def test_the_same_order_in_another_stage_is_another_place(tmp_path: Path) -> None:
    assert FILES[HEIGHT].count("order: 1") == FILES["checks/complaint.yaml"].count("order: 1") == 1
    assert problems_of(tmp_path, FILES) == []
