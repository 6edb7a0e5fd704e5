"""What faults say of the checks fits the checks, and tells something."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed, problems_of

BRIDGE, EMPTY = "faults/salt-bridge.yaml", "faults/no-salt.yaml"
ROW = "  rod: {hollow: 95 %, loose: 5 %}"
WRONG = [
    (
        BRIDGE, ROW, f"{ROW}\n  rodd: {{hollow: 5 %}}",
        '27: there is no check "rodd" (expected one of: complaint, rod, salt-height; nearest: "rod")',
    ),
    (
        BRIDGE, ROW, "  rod: {hollow: 95 %, lose: 5 %}",
        '26: the check "rod" has no result "lose" (expected one of: loose, hollow; nearest: "loose")',
    ),
    (
        BRIDGE, ROW, "  rod: {hollow: 95 %, loose: 5.5 %}",
        '26: the chances of "rod" make 100.5 % (expected at most 100 % together)',
    ),
    (
        BRIDGE, ROW, f"{ROW}\n  salt-height: {{}}",
        '27: "salt-height" is empty (expected a result and its chance)',
    ),
    (
        EMPTY, "  complaint: {hard: 97 %}\n", "",
        '27: the fault says of no complaint how likely it is (expected a line "complaint" with its '
        "chances)",
    ),
    (
        BRIDGE, "95 %, loose: 5 %", "0.95, loose: 5 %",
        '26: "hollow": this is no share. Write it with its sign, such as "65 %".',
    ),
    (
        BRIDGE, "95 %, loose: 5 %", "195 %",
        '26: "hollow": a share lies between "0 %" and "100 %".',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), WRONG)
def test_a_row_that_fits_no_check_is_told(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new)) == [f"docs_src/{name}:{said}"]


def test_a_fault_that_no_check_can_tell_is_told(tmp_path: Path) -> None:
    changes = "simulation:\n  - change: salt_left\n    from: 0\n    to: 5 lb\n"
    files = changed(EMPTY, changes, "simulation: []\n")
    assert problems_of(tmp_path / "judged", files) == []
    files[EMPTY] = files[EMPTY].replace("salt-height: {none: 97 %}", "salt-height: {above: 97 %}")
    files[BRIDGE] += "  salt-height: {none: 1 %}\n"
    assert problems_of(tmp_path / "untold", files) == [
        "docs_src/faults/no-salt.yaml:24: no check can tell this fault (expected a change under "
        '"simulation", or the chance of an abnormal result of some check)'
    ]


def test_a_check_that_no_fault_speaks_of_is_told(tmp_path: Path) -> None:
    files = {**FILES, "checks/lid.yaml": FILES["checks/rod.yaml"].replace("order: 2", "order: 3")}
    assert problems_of(tmp_path, files) == [
        "docs_src/checks/lid.yaml:1: no fault expects an abnormal result of this check (expected "
        'its chance under "likelihoods" of a fault)'
    ]


def test_a_fault_that_failed_to_load_may_expect_anything(tmp_path: Path) -> None:
    found = problems_of(tmp_path, changed(BRIDGE, "minutes: 20", "minutes: long"))
    assert found == ['docs_src/faults/salt-bridge.yaml:18: "minutes" is "long" (expected a number)']
