"""The calculator that follows a home through days, and its picture."""

import re
import xml.etree.ElementTree as ElementTree

import pytest

from calculators import CALCULATORS, run, understood
from calculators.figures import course_picture, curve_picture, picture
from calculators.figures.course import course_drawing
from calculators.figures.shapes import WIDTH
from calculators.simulated_softener import FAULTS, changes_of, follow
from calculators.simulation.changes import CHANGES
from tests.calculators.test_every_calculator import usable_inputs

NAME = "simulated-softener"
HOME = {"people": 4, "hardness": 20, "resin_volume": 1.5, "salt": 9}
SVG = "{http://www.w3.org/2000/svg}"


def numbers(**given):
    result = run(NAME, {**HOME, **given})
    assert result["problems"] == {}
    return {name: value["number"] for name, value in result["values"].items()}


def test_a_sound_home_stays_soft_and_regenerates_as_planned():
    found = numbers(days=21, stock=300)

    assert found["hardest_hot"] < 1
    assert found["passed"] < 2
    assert 3 <= found["regenerations"] <= 5
    assert found["salt_used"] == pytest.approx(9 * found["regenerations"], rel=0.02)


@pytest.mark.parametrize("fault", [one for one in FAULTS if one != "clock behind"])
def test_each_fault_at_its_worst_shows(fault):
    days = {"days": 25, "stock": 300}
    sound = numbers(**days)
    worst = numbers(fault=fault, severity=100, **days)

    harder = worst["passed"] > sound["passed"] + 1.5
    more_salt = worst["salt_used"] > 1.3 * sound["salt_used"]
    assert harder or more_salt


def test_a_clock_behind_lets_raw_water_through_at_breakfast():
    worst = numbers(fault="clock behind", severity=50, onset=0, days=25)

    assert worst["hardest_cold"] == pytest.approx(20)
    assert worst["hardest_hot"] > 1


@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_is_made_of_known_changes_within_their_ranges(fault):
    for severity in (0.0, 0.5, 1.0):
        for name, value, _ in changes_of(fault, severity):
            assert CHANGES[name].low <= value <= CHANGES[name].high


@pytest.mark.parametrize("fault", [one for one in FAULTS if one != "no regeneration"])
def test_no_severity_is_no_fault(fault):
    assert numbers(fault=fault, severity=0) == pytest.approx(numbers(), rel=1e-9)


def test_before_its_onset_a_fault_does_nothing():
    assert numbers(fault="worn seals", onset=30, days=14) == numbers(days=14)


@pytest.mark.parametrize(
    ("control", "sentence", "shown"),
    [
        (
            "delayed meter",  # 29,978 grains of 20 gpg are 1,498.9 gal, less the 240 of a day
            "The counter was set to the water that the bed lasts for, less the reserve of this "
            "kind of control.",
            "1,250 gal",
        ),
        (
            "time clock",  # 1,498.9 gal last 6.2 days of 240
            "The clock was set to whole days that the bed lasts.",
            "6 days",
        ),
        (
            "twin tank",
            "The counter was set to the water that the bed lasts for, less the reserve of this "
            "kind of control.",
            "1,490 gal",
        ),
    ],
)
def test_the_plan_is_told_first(control, sentence, shown):
    steps = run(NAME, {**HOME, "control": control})["workings"]

    assert [step["result"].replace("\u00a0", " ") for step in steps[:3]] == [
        "29,978 grains", "240 gal/day", shown,
    ]  # fmt: skip
    assert steps[2]["sentence"] == sentence


def test_the_same_number_is_the_same_household():
    assert numbers(seed=4) == numbers(seed=4)
    assert numbers(seed=4) != numbers(seed=5)


def test_the_course_ends_where_the_answer_does():
    given = {**HOME, "days": 12, "fault": "refill plugged", "severity": 80}
    course, answer = follow(understood(NAME, given)), numbers(**given)
    hardness, _, level, _ = (lines for _, _, _, lines in course["panels"])

    assert course["times"][-1] == 12
    assert len(course["marks"]) == answer["regenerations"]
    assert max(hardness[0][1]) == pytest.approx(answer["hardest_cold"], rel=1e-3)
    assert max(hardness[1][1]) == pytest.approx(answer["hardest_hot"], rel=1e-3)
    assert level[0][1][-1] == pytest.approx(answer["level"], abs=0.02)


def drawn(units="us", **given):
    return ElementTree.fromstring(picture(NAME, {**HOME, **given}, units))


def test_the_picture_has_a_plane_for_each_and_marks_the_regenerations():
    tree = drawn(days=14)
    curves = [one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-curve"]
    uprights = [one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-here"]
    words = {one.text for one in tree.iter(f"{SVG}text")}

    assert len([one for one in curves if one.get("d").count("L") > 50]) == 5
    assert len(uprights) == 4 * numbers(days=14)["regenerations"]
    assert {"Hardness, gpg", "Capacity left, grains", "Brine level, in", "Salt in the tank, lb",
            "Cold", "Hot", "Days"} <= words  # fmt: skip


def test_the_words_of_the_picture_say_what_its_lines_do():
    words = drawn(days=14, fault="worn seals", severity=50, onset=0).get("aria-label")

    assert words.startswith("14 days with ")
    assert re.search(r"Cold: from .* to .*, at least .*, at most 4\.1\d?\xa0gpg\.", words)
    assert "Salt in the tank: from" in words


def test_a_metric_reader_sees_metric_planes():
    words = {one.text for one in drawn("metric", hardness="20 gpg", resin_volume="42 L",
                                       salt="4 kg").iter(f"{SVG}text")}  # fmt: skip

    assert {"Hardness, mg/L", "Brine level, mm", "Salt in the tank, kg"} <= words


def test_the_picture_stays_within_its_frame(random_homes=40):
    import random

    chance = random.Random("pictures")
    for _ in range(random_homes):
        svg = picture(NAME, usable_inputs(chance, CALCULATORS[NAME]))
        tree = ElementTree.fromstring(svg)
        height = float(tree.get("viewBox").split()[3])
        assert "nan" not in svg and "inf" not in svg
        for path in tree.iter(f"{SVG}path"):
            for x, y in re.findall(r"[ML]([\d.-]+) ([\d.-]+)", path.get("d")):
                assert 0 <= float(x) <= WIDTH
                assert 0 <= float(y) <= height


def test_a_problem_has_no_picture():
    assert picture(NAME, {**HOME, "people": "9 gpg"}) is None


def test_a_calculator_without_days_has_no_course_and_this_one_no_curve():
    assert course_picture("resin-capacity", {"salt": "9 lb", "resin_volume": "1.5 ft³"}) is None
    assert curve_picture(NAME, HOME) is None


def test_what_the_eye_cannot_see_is_told_as_none():
    lines = [("Capacity left", [20000.0, 2e-7])]
    course = {
        "times": [0, 1],
        "marks": [],
        "panels": [("Capacity", "capacity", "grains", lines)],
    }
    told = course_drawing(course).replace("\u00a0", " ")
    assert "from 20,000 grains to 0 grains, at least 0 grains" in told
