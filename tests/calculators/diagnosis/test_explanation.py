"""The reasons in plain words, word for word."""

from __future__ import annotations

from typing import Any

import pytest

from calculators.diagnosis import Knowledge, picture
from tests.calculators.diagnosis.small_knowledge import DATA, data


def explanation(given: dict[str, Any], of: dict[str, Any] = DATA) -> str:
    """Return the sentences in a row."""
    return " ".join(picture(Knowledge(of), given)["explanation"])


@pytest.mark.parametrize(
    ("given", "text"),
    [
        (
            {},
            (
                "Nothing is read yet. Of all calls, Salt bridge is the most common cause "
                "(about 5 in 10). Next: Lamp at the outlet, 1 minute."
            ),
        ),
        (
            {"complaint": "salty"},
            (
                "Plugged injector leads (about 6 in 10; about 3 in 10 before any reading). "
                "For it: What the customer says: salty. Against it: nothing yet. "
                "Second is Salt bridge (about 4 in 10). "
                "Next: Water in the well, 2 minutes: it has to come before Rod through the salt."
            ),
        ),
        (
            {"complaint": "hard", "readings": {"level": "high"}},
            (
                "Plugged injector leads (about 9 in 10; about 3 in 10 before any reading). "
                "For it: Water in the well: high. Against it: What the customer says: hard. "
                "Stop testing and repair it, then prove that it is cured."
            ),
        ),
        (
            {"complaint": "salty", "readings": {"level": "low", "rod": "crust", "lamp": "dark"}},
            (
                "Salt bridge leads (about 5 in 10; about 5 in 10 before any reading). "
                "For it: Water in the well: low; Rod through the salt: crust. "
                "Against it: Lamp at the outlet: dark. "
                "It may be something else altogether (about 5 in 10). "
                "These results do not fit one cause well: read again what is odd. "
                "Not yet explained: Lamp at the outlet: dark. "
                "No check left is worth its minutes: it is probably Salt bridge. "
                "Or repair and see: Salt bridge takes 10 minutes and may end the call at once."
            ),
        ),
    ],
)
def test_every_standing_is_told(given: dict[str, Any], text: str) -> None:
    assert explanation(given) == text


def test_causes_that_the_readings_do_not_tell_apart_look_the_same() -> None:
    of = data()
    of["faults"]["plugged"]["likelihoods"] = of["faults"]["bridge"]["likelihoods"]

    told = explanation({"readings": {"rod": "crust", "draw": "not done"}}, of)
    assert "Plugged injector would look the same so far." in told


def test_a_second_cause_explains_what_it_brings() -> None:
    of = data(plugged={"follows": ["bridge"]})

    told = explanation({"readings": {"rod": "crust", "draw": "stands"}}, of)
    assert "It has probably brought Plugged injector with it." in told
    assert "Not yet explained" not in told


def test_what_proves_the_cause_is_named() -> None:
    of = data(bridge={"proved_by": [{"check": "lamp", "result": "lit"}]})

    told = explanation({"readings": {"rod": "crust", "level": "low"}}, of)
    assert told.endswith("Stop searching. Prove it before the repair: Lamp at the outlet.")


def test_two_causes_that_only_an_open_check_could_tell_apart() -> None:
    """The valve stays open, and tells too little for its minutes where all else is done."""
    of = data()
    of["checks"]["valve"]["minutes"] = 90
    done = dict.fromkeys(
        [name for name in of["checks"] if name not in ("complaint", "valve")], "not done"
    )

    told = explanation({"complaint": "salty", "readings": done}, of)
    assert (
        "No check left is worth its minutes: it is probably Plugged injector or Salt bridge. "
        "Valve opened would tell them apart." in told
    )


def test_what_the_handbook_no_longer_has_is_named_and_left_out() -> None:
    call = {"readings": {"rod": "gone", "old-check": "odd"}, "excluded": ["old-fault"]}
    found = picture(Knowledge(DATA), call)

    assert found["problems"] == [
        'There is no fault "old-fault" in this handbook.',
        'There is no check "old-check" in this handbook.',
        'The check "rod" has no result "gone" in this handbook.',
    ]
    assert found["causes"] == picture(Knowledge(DATA), {})["causes"]
