"""Syllables and the reading grade, beside a pronouncing dictionary and a count by hand."""

from __future__ import annotations

import pytest

from build_tools.content.reading_grade import reading_of, syllables

#: The syllables of the Carnegie Mellon Pronouncing Dictionary for words of the trade.
DICTIONARY = {
    1: "salt brine the valve valves used rinse rinsed lines hours plugged stopped through drain "
    "leaked flushed taste once size bridge hold seal closed known safe least",
    2: "water hardness resin softened tested every bypass gallon people little outlet minute "
    "changes rinses being needed handle measured washes table settings copper",
    3: "calcium regular regulate injector area sodium usual remedy minimum pressurized procedure "
    "average quality unsoftened",
    4: "capacity operation electrician particular temperature magnesium",
    5: "regeneration manufacturer possibility electricity",
}
#: Where the rules are one off; the sum over a text hardly moves.
MISSED = {"electrician"}


@pytest.mark.parametrize("count", DICTIONARY)
def test_syllables_agree_with_a_dictionary(count: int) -> None:
    found = {word: syllables(word) for word in DICTIONARY[count].split() if word not in MISSED}
    assert found == dict.fromkeys(found, count)


def test_a_number_or_an_expression_counts_as_two() -> None:
    assert syllables("1,200") == syllables("\ue000\ue000") == 2


def test_the_grade_is_the_published_formula() -> None:
    reading = reading_of(["The salt is low. Water without salt is no brine at all."])
    assert reading is not None
    # 12 words, 2 sentences, 14 syllables
    assert reading.grade == pytest.approx(0.39 * 12 / 2 + 11.8 * 14 / 12 - 15.59)
    assert (reading.longest, reading.words) == ("Water without salt is no brine at all.", 8)


def test_what_is_no_sentence_does_not_count() -> None:
    assert reading_of(["A heading", "a cell", ""]) is None
