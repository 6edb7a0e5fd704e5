"""A step that calls for a caution which its page does not name is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.checks.cautions import _calls
from tests.content.small_shop import FILES, problems_of

CALLS = "  called_for_by: [hot tap, boil]\n"
WANTED = '(expected it under "cautions" of this page, or the item in other words)'


def shop(name: str, old: str, new: str) -> dict[str, str]:
    files = {**FILES, "cautions.yaml": FILES["cautions.yaml"] + CALLS}
    assert old in files[name]
    files[name] = files[name].replace(old, new, 1)
    return files


@pytest.mark.parametrize(
    ("name", "old", "line"),
    [("faults/no-salt.yaml", "Add salt", 9), ("checks/salt-height.yaml", "Lift the lid", 7)],
)
def test_words_that_call_for_a_caution_are_told(
    tmp_path: Path, name: str, old: str, line: int
) -> None:
    assert problems_of(tmp_path, shop(name, old, "Open a Hot tap")) == [
        f'docs_src/{name}:{line}: "Hot tap" calls for the caution "hot-water" {WANTED}'
    ]


def test_words_on_two_lines_are_found_on_the_first(tmp_path: Path) -> None:
    text = "- >-\n    Open the [hot\n    tap](no-salt.md)."
    files = shop("faults/no-salt.yaml", "- Add salt.", text)
    assert problems_of(tmp_path, files) == [
        f'docs_src/faults/no-salt.yaml:10: "hot tap" calls for the caution "hot-water" {WANTED}'
    ]


def test_each_caution_is_told_once_for_a_page(tmp_path: Path) -> None:
    files = shop("faults/no-salt.yaml", "- Add salt.", "- Boil it.\n  - Boil it again.")
    assert problems_of(tmp_path, files) == [
        f'docs_src/faults/no-salt.yaml:9: "Boil" calls for the caution "hot-water" {WANTED}'
    ]


@pytest.mark.parametrize("text", ["Boiling is no use.", "A shot tap.", "Look at the hot-tap."])
def test_parts_of_words_call_for_nothing(tmp_path: Path, text: str) -> None:
    assert problems_of(tmp_path, shop("faults/no-salt.yaml", "Add salt.", text)) == []


def test_a_page_that_names_the_caution_may_say_so(tmp_path: Path) -> None:
    files = shop("checks/rod.yaml", "Push the rod down to the floor.", "Boil the rod.")
    assert problems_of(tmp_path, files) == []


def test_only_what_is_to_be_done_calls_for_a_caution(tmp_path: Path) -> None:
    assert problems_of(tmp_path, shop("faults/no-salt.yaml", "An empty tank", "A hot tap")) == []


def test_a_step_of_a_procedure_calls_for_cautions(tmp_path: Path) -> None:
    files = shop("procedures/drain-flow.yaml", "Catch the water,", "Boil the water,")
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/drain-flow.yaml:9: "Boil" calls for the caution "hot-water" '
        '(expected it under "cautions" of this page, or the step in other words)'
    ]


@pytest.mark.parametrize(
    ("phrase", "text", "found"),
    [
        ("open/remove … cap*", "Remove the injector's caps now.", "Remove the injector's caps"),
        ("open/remove … cap*", "Open the cap.", "Open the cap"),
        ("saniti*", "It is sanitized.", "sanitized"),
        ("drain line/hose", "Clip the drain hose.", "drain hose"),
    ],
)
def test_a_phrase_may_leave_words_open(phrase: str, text: str, found: str) -> None:
    match = _calls((phrase,)).search(text)
    assert match is not None
    assert match[0] == found


@pytest.mark.parametrize(
    "text",
    ["Open the tap. Look at the cap.", "Open one or two or three more caps.", "Reopen a cap."],
)
def test_the_open_words_are_few_and_of_one_sentence(text: str) -> None:
    assert _calls(("open … cap*",)).search(text) is None


@pytest.mark.parametrize("there", ["[]", "[hot-water]"])
def test_a_decision_calls_for_a_caution_here_or_where_it_leads(tmp_path: Path, there: str) -> None:
    name = "procedures/first-look.yaml"
    files = shop(name, "then: Measure it.", "then: Boil it.")
    files[name] = files[name].replace("cautions:\n  - hot-water\n", "cautions: []\n")
    other = "procedures/drain-flow.yaml"
    files[other] = files[other].replace("cautions: []", f"cautions: {there}")
    said = [
        'docs_src/procedures/first-look.yaml:29: "Boil" calls for the caution "hot-water" '
        '(expected it under "cautions" of this page, or the decision in other words)'
    ]
    assert problems_of(tmp_path, files) == ([] if there != "[]" else said)


def test_the_proof_of_a_fault_calls_for_cautions(tmp_path: Path) -> None:
    files = shop("faults/no-salt.yaml", "confirm: ", "confirm: Boil it. ")
    [said] = problems_of(tmp_path, files)
    assert said.endswith("or the proof in other words)")
