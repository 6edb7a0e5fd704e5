"""A step with two actions, or with a sentence that nobody can keep in mind, is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.checks.steps import action_verbs, second_action, sentences
from build_tools.content.handbook import Handbook, load_handbook
from tests.content.small_shop import FILES, changed, problems_of, write


@pytest.fixture(scope="module")
def verbs(tmp_path_factory: pytest.TempPathFactory) -> frozenset[str]:
    folder = tmp_path_factory.mktemp("shop")
    handbook: Handbook = load_handbook(write(folder, FILES), folder)
    return action_verbs(handbook)


def second(text: str, verbs: frozenset[str]) -> str | None:
    """Return the text from the second action on."""
    for number, (start, sentence) in enumerate(sentences(text)):
        found = second_action(sentence, first=number == 0, verbs=verbs)
        if found is not None:
            return text[start + found :]
    return None


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Open the cap, then take out the screen.", "take out the screen."),
        ("Open the cap and take out the screen.", "take out the screen."),
        ("Open the cap, and then clean the screen.", "clean the screen."),
        ("Open the cap; take out the screen.", "take out the screen."),
        ("Fill the vial to its line, and swirl.", "swirl."),
        ("Open the cap. Take out the screen.", "Take out the screen."),
        ("Clean it. Rinse with plain water.", "Rinse with plain water."),
        ("Fill a bucket, and time it.", "time it."),
        ("If there is paste, bail the brine and scoop out the rest.", "scoop out the rest."),
        ("Reset the breaker. If it trips again, leave it off.", "leave it off."),
        ("See that the float works, and lift it.", "lift it."),
        ("Cut the power, drain the top, and lift the head.", "lift the head."),
        ("Look at the [seal](x.md), and put it back.", "put it back."),
        ("Open the cap, take out the screen.", "take out the screen."),
        ("Open the cap: take out the screen.", "take out the screen."),
        ("Open the cap – take out the screen.", "take out the screen."),
        ("Open the cap (take out the screen).", "take out the screen)."),
        ("Open the cap & take out the screen.", "take out the screen."),
        ("Open the cap plus take out the screen.", "take out the screen."),
        ("Open the cap and gently lift out the screen.", "lift out the screen."),
        ("Open the cap and, with a pick, clear the bore.", "clear the bore."),
        ("Open the cap. Now rinse the screen.", "rinse the screen."),
        ("Open the cap. Also, carefully rinse the screen.", "rinse the screen."),
        ("You open the cap and you take out the screen.", "take out the screen."),
    ],
)
def test_a_second_action_is_found(text: str, expected: str, verbs: frozenset[str]) -> None:
    assert second(text, verbs) == expected


@pytest.mark.parametrize(
    "text",
    [
        "Turn the bypass to service.",
        "Stop the watch when the water reaches the mark.",
        "Look at stem, seat and seal.",
        "Look again at clock, plug, float and drain.",
        "Compare time and water.",
        "Renew seals and spacers in their order.",
        "Press and hold the key until the display blinks.",
        "Tell the customer to shut the tap and call the shop.",
        "Ask whoever may do it to turn the heater off and shut its feed.",
        "See that the seals move and return freely.",
        "Test the cold water. It should be soft.",
        "Lift the lid. Touch nothing yet.",
        "Break the crust gently. Never lean on the stick.",
        "Set the day. Some dials mark it by an arrow.",
        "If backwash was low, make the unit safe.",
        "Rinse it, or renew it with one of the same rating.",
        "Regenerate now, and again the next night.",
        "Write down all three counts with the name of each tap.",
        "Measure the draw. Water and salt come back to the mark.",
        "Watch the level. Time tells whether it stands.",
        "Hold the nut while you turn the pipe.",
        "Lower the end, shorten the run, or take a wider line.",
        "With the bypass shut, take the cap off.",
        "Ask about new showers, baths, toilets and filters.",
        "Ask openly: what has changed, and at which taps?",
        "Tell the customer the cause: the screen was full.",
    ],
)
def test_what_is_no_second_action_stays_silent(text: str, verbs: frozenset[str]) -> None:
    assert second(text, verbs) is None


def test_the_verbs_are_the_first_words_of_the_steps(tmp_path: Path) -> None:
    files = changed("faults/no-salt.yaml", "Add salt.", "Unwrap the salt.")
    verbs = action_verbs(load_handbook(write(tmp_path, files), tmp_path))
    assert "unwrap" in verbs
    assert "if" not in verbs
    assert second("Lift the bag and unwrap it.", verbs) == "unwrap it."


def test_two_actions_in_a_remedy_are_told(tmp_path: Path) -> None:
    old = "Break the bridge."
    files = changed("faults/salt-bridge.yaml", f"  - {old}", f"  - {old[:-1]}, then fill the tank.")
    assert problems_of(tmp_path, files) == [
        'docs_src/faults/salt-bridge.yaml:12: a second action in one item: "fill the tank." '
        "(expected one action, and this in an item of its own)"
    ]


def test_two_actions_in_a_check_are_told_with_their_own_line(tmp_path: Path) -> None:
    files = changed(
        "checks/rod.yaml",
        "  - Push the rod down to the floor.",
        "  - >-\n    Push the rod down to the floor,\n    and look at {{ fact.bucket }} of it.",
    )
    assert problems_of(tmp_path, files) == [
        'docs_src/checks/rod.yaml:10: a second action in one item: "look at … of it." '
        "(expected one action, and this in an item of its own)"
    ]


def test_a_long_sentence_is_told(tmp_path: Path) -> None:
    thirty = "Break the bridge " + "with the rod " * 8 + "very gently today"
    assert len(thirty.split()) == 30
    at_most = changed("faults/salt-bridge.yaml", "Break the bridge", thirty)
    assert problems_of(tmp_path, at_most) == []
    longer = changed("faults/salt-bridge.yaml", "Break the bridge", f"{thirty} again")
    assert problems_of(tmp_path, longer) == [
        "docs_src/faults/salt-bridge.yaml:12: a sentence of 31 words: "
        '"Break the bridge with the rod with the r…" (expected at most 30)'
    ]


@pytest.mark.parametrize(
    ("name", "old"),
    [("procedures/first-look.yaml", "The flow is low."), ("faults/no-salt.yaml", "An empty tank")],
)
def test_a_long_sentence_beside_the_steps_is_told(tmp_path: Path, name: str, old: str) -> None:
    long = "It is so " + "here and there " * 10
    [said] = problems_of(tmp_path, changed(name, old, f"{long}and so on. {old}"))
    assert "a sentence of 36 words" in said


def test_the_word_of_a_stage_is_no_action(tmp_path: Path) -> None:
    old = "Run a raw tap for {{ fact.flush_time }}."
    new = "'**Water tests:** run a raw tap for {{ fact.flush_time }}.'"
    files = changed("procedures/first-look.yaml", old, new)
    assert problems_of(tmp_path, files) == []


def test_two_actions_in_a_step_of_a_procedure_are_told(tmp_path: Path) -> None:
    old = "Run a raw tap for {{ fact.flush_time }}."
    files = changed("procedures/first-look.yaml", old, f"{old[:-1]} and fill a vial.")
    assert problems_of(tmp_path, files) == [
        'docs_src/procedures/first-look.yaml:12: a second action in one step: "fill a vial." '
        "(expected one action, and this in a step of its own)"
    ]
