"""Skills: what they name exists, and together they cover the work."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, problems_of

SKILLS = """\
look-and-listen:
  title: Look and listen
  procedures: [first-look]
  seen:
    - Every reading is on paper before anything is altered.
  faults: [Brine]
drain:
  title: The drain
  procedures: [drain-flow]
  seen:
    - The flow is measured twice.
  faults: [Brine]
  heavy: true
"""
WRONG = [
    (
        "[first-look]", "[first-lok]",
        ["skills.yaml:3: there is no procedure \"first-lok\" (expected one of: drain-flow, "
         "first-look; nearest: \"first-look\")",
         'procedures/first-look.yaml:1: no skill has this procedure (expected its name under '
         '"procedures" of one)'],
    ),
    (
        "[first-look]", "[drain-flow]",
        ['procedures/first-look.yaml:1: no skill has this procedure (expected its name under '
         '"procedures" of one)'],
    ),
    (
        "faults: [Brine]\ndrain", "faults: [Brin]\ndrain",
        ['skills.yaml:6: there is no group of faults "Brin" (expected "Brine")'],
    ),
    (
        "  heavy: true", "  heavy: yes, very",
        ['skills.yaml:13: "heavy" is "yes, very" (expected true or false)'],
    ),
    (
        "  seen:\n    - The flow is measured twice.\n", "",
        ['skills.yaml:7: the key "seen" is missing (expected a list of what an observer must see)'],
    ),
    (
        "measured twice", "measured for 7 min",
        ['skills.yaml:11: nothing backs the typed quantity "7 min" (expected an expression: put '
         "the value in facts.yaml and write {{ fact.its_name }}, or compute it with "
         "{{ work_out(…) }} or a worked example)"],
    ),
]  # fmt: skip


def shop(skills: str) -> dict[str, str]:
    return {**FILES, "skills.yaml": skills}


def test_a_shop_with_skills_and_one_without_are_silent(tmp_path: Path) -> None:
    assert problems_of(tmp_path / "with", shop(SKILLS)) == []
    assert problems_of(tmp_path / "without", FILES) == []


@pytest.mark.parametrize(("old", "new", "problems"), WRONG)
def test_what_is_wrong_with_skills(
    tmp_path: Path, old: str, new: str, problems: list[str]
) -> None:
    assert SKILLS.count(old) >= 1
    found = problems_of(tmp_path, shop(SKILLS.replace(old, new, 1)))
    assert sorted(found) == sorted(f"docs_src/{one}" for one in problems)


def test_a_group_of_faults_without_a_skill_is_told_once(tmp_path: Path) -> None:
    files = shop(SKILLS)
    for name in ("faults/salt-bridge.yaml", "faults/no-salt.yaml"):
        files[name] = files[name].replace("group: Brine", "group: Wires")
    found = problems_of(tmp_path, files)
    group = [one for one in found if "Wires" in one and "no skill" in one]
    assert len(group) == 1
    assert 'no skill has the group "Wires" (expected it under "faults" of one)' in group[0]
