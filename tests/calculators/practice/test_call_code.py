"""A code brings back the same call, and a text that is none is refused in a sentence."""

from __future__ import annotations

from copy import deepcopy

import pytest

from calculators.diagnosis import Knowledge
from calculators.practice.call_code import (
    ALPHABET,
    LENGTH,
    NUMBERS,
    CallCode,
    CodeProblem,
    edition_of,
    groups_of,
    read_code,
)
from tests.calculators.diagnosis.small_knowledge import DATA

KNOWLEDGE = Knowledge(DATA)
EDITION = edition_of(KNOWLEDGE)


@pytest.mark.parametrize(("scope", "number"), [(0, 0), (1, 1), (0, 12345), (1, NUMBERS - 1)])
def test_a_code_is_read_back_in_any_case_with_spaces_and_hyphens_or_without(
    scope: int, number: int
) -> None:
    text = CallCode(scope, number, EDITION).text
    for typed in (text, text.lower(), text.replace("-", " "), f" {text.replace('-', '')}\n"):
        code = read_code(typed, KNOWLEDGE)
        assert (code.scope, code.number, code.edition) == (scope, number, EDITION)
        assert code.text == text


def test_a_wrong_character_or_two_that_changed_places_are_noticed() -> None:
    signs = CallCode(0, 4711, EDITION).text.replace("-", "")
    wrong = [
        signs[:place] + other + signs[place + 1 :]
        for place in range(LENGTH)
        for other in ALPHABET
        if other != signs[place]
    ]
    wrong += [
        signs[:place] + signs[place + 1] + signs[place] + signs[place + 2 :]
        for place in range(LENGTH - 1)
        if signs[place] != signs[place + 1]
    ]
    assert len(wrong) > 240
    for text in wrong:
        with pytest.raises(CodeProblem) as problem:
            read_code(text, KNOWLEDGE)
        assert problem.value.sentence == (
            "This is no code: a character is wrong, or two have changed places."
        )


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "A code has 8 letters and digits, and this has 0."),
        ("22", "A code has 8 letters and digits, and this has 2."),
        ("2" * 500, "A code has 8 letters and digits, and this has 500."),
        ("ABCD-EFO2", "No code has the character “O”. Codes leave out 0, 1, I, L and O."),
        ("<b>12", "No code has the character “<”. Codes leave out 0, 1, I, L and O."),
        (None, "No code has the character “O”. Codes leave out 0, 1, I, L and O."),
        (12, "No code has the character “1”. Codes leave out 0, 1, I, L and O."),
    ],
)
def test_a_text_that_is_no_code_is_told(text: object, sentence: str) -> None:
    with pytest.raises(CodeProblem) as problem:
        read_code(text, KNOWLEDGE)
    assert problem.value.sentence == sentence


def test_a_code_of_another_edition_is_refused() -> None:
    data = deepcopy(DATA)
    data["faults"]["bridge"]["share_of_calls"] = 4
    with pytest.raises(CodeProblem) as problem:
        read_code(CallCode(0, 1, EDITION).text, Knowledge(data))
    assert problem.value.sentence == (
        "This code belongs to another edition of the handbook, where it stands for another call. "
        "Take a code of this edition."
    )


def test_a_better_word_keeps_the_codes() -> None:
    data = deepcopy(DATA)
    data["faults"]["bridge"]["title"] = "A crust over a hollow"
    data["checks"]["rod"]["results"][1]["label"] = "Crusty"
    assert edition_of(Knowledge(data)) == EDITION


def test_a_change_of_the_simulation_ends_the_codes() -> None:
    data = deepcopy(DATA)
    data["homes"] = {"results": {}, "faults": {}}
    before = edition_of(Knowledge(data))
    knowledge = Knowledge(data)
    knowledge.made_from = {"bridge": "0123"}
    assert edition_of(knowledge) != before


def test_a_group_that_is_not_there_is_told() -> None:
    with pytest.raises(CodeProblem) as problem:
        read_code(CallCode(len(groups_of(KNOWLEDGE)) + 1, 1, EDITION).text, KNOWLEDGE)
    assert problem.value.sentence == (
        "This code names a group of faults that this handbook does not have."
    )
