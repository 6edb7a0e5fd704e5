"""Hardness from calcium and magnesium, and what a sheet's own total says."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators import run
from calculators.laboratory import CALCIUM, MAGNESIUM, hardness_of_ions


def readings(low, high):
    """Numbers as people read them off: two decimals."""
    return st.decimals(low, high, places=2).map(float)


CALCIUM_READING = readings(0, 1000)
MAGNESIUM_READING = readings(0, 500)


def warnings(**inputs):
    result = run("hardness-from-ions", inputs)
    assert result["problems"] == {}
    return " ".join(result["warnings"])


@given(CALCIUM_READING, MAGNESIUM_READING)
def test_the_two_ions_add_up(answer, calcium, magnesium):
    both = answer("hardness-from-ions", "total", calcium=calcium, magnesium=magnesium)
    alone = [
        answer("hardness-from-ions", "total", calcium=calcium, magnesium=0),
        answer("hardness-from-ions", "total", calcium=0, magnesium=magnesium),
    ]

    assert both == pytest.approx(sum(alone), abs=1e-9)


@given(readings(0, 300), readings(0, 300))
def test_as_carbonate_the_figures_are_only_added(answer, calcium, magnesium):
    inputs = {"reported": "as calcium carbonate", "calcium": calcium, "magnesium": magnesium}

    assert answer("hardness-from-ions", "total", **inputs) == pytest.approx(calcium + magnesium)


@given(st.floats(0.1, 300), st.floats(0.1, 300))
def test_both_ways_to_report_one_water_agree(answer, calcium, magnesium):
    as_ions = answer("hardness-from-ions", "hardness", calcium=calcium, magnesium=magnesium)
    as_carbonate = answer(
        "hardness-from-ions",
        "hardness",
        reported="as calcium carbonate",
        calcium=f"{calcium * 100.0869 / CALCIUM:.9f}",
        magnesium=f"{min(500, magnesium * 100.0869 / MAGNESIUM):.9f}",
    )

    if magnesium * 100.0869 / MAGNESIUM <= 500:
        assert as_carbonate == pytest.approx(as_ions)
    else:
        assert as_carbonate < as_ions


@given(CALCIUM_READING, MAGNESIUM_READING, st.floats(0.1, 50))
def test_more_of_either_ion_is_harder(calcium, magnesium, more):
    before = hardness_of_ions(calcium, magnesium)

    assert hardness_of_ions(calcium + more, magnesium) > before
    assert hardness_of_ions(calcium, magnesium + more) > before


@given(st.floats(0.1, 1000), MAGNESIUM_READING)
def test_the_share_of_calcium_is_its_part_of_the_hardness(answer, calcium, magnesium):
    share = answer("hardness-from-ions", "calcium_share", calcium=calcium, magnesium=magnesium)
    total = hardness_of_ions(calcium, magnesium)

    assert share * total / 100 == pytest.approx(hardness_of_ions(calcium, 0))


def test_a_sheet_without_either_ion_is_of_softened_water():
    result = run("hardness-from-ions", {"calcium": 0, "magnesium": 0})

    assert "softened or distilled" in result["warnings"][0]
    assert "calcium_share" not in result["values"]
    assert result["values"]["hardness"]["number"] == 0


def test_a_sheet_of_hard_water_without_ions_is_not_called_soft():
    text = warnings(calcium=0, magnesium=0, sheet_total="17 gpg")

    assert "softened" not in text
    assert "Ask the laboratory" in text


@pytest.mark.parametrize(
    ("inputs", "told"),
    [
        ({"calcium": 250, "magnesium": 90}, False),
        ({"calcium": 250, "magnesium": 100}, True),
        ({"calcium": 250, "magnesium": 100, "sheet_total": "1036 mg/L"}, False),
        ({"calcium": 950, "magnesium": 400, "reported": "as calcium carbonate"}, False),
    ],
)
def test_ions_of_a_water_too_hard_to_be_usual_are_questioned(inputs, told):
    assert ("Few waters" in warnings(**inputs)) == told


@pytest.mark.parametrize(
    ("sheet", "told"),
    [
        ("298 mg/L", ""),
        ("272 mg/L", ""),
        ("331 mg/L", ""),
        ("271 mg/L", "Ask the laboratory"),
        ("333 mg/L", "Ask the laboratory"),
        ("104 mg/L", "given as calcium carbonate"),
        ("17.4 mg/L", "were in gpg"),
        ("16.7 mg/L", "were in °dH"),
        ("29.9 mg/L", "were in °fH"),
        ("2.98 mg/L", "were in mmol/L"),
        ("900 mg/L", "Ask the laboratory"),
        ("0 mg/L", "Ask the laboratory"),
    ],
)
def test_the_total_of_the_sheet_tells_how_it_was_misread(sheet, told):
    text = warnings(calcium=80, magnesium=24, sheet_total=sheet)

    assert told in text if told else text == ""


def test_carbonate_that_was_really_ions_is_noticed():
    text = warnings(
        reported="as calcium carbonate", calcium=80, magnesium=24, sheet_total="298.6 mg/L"
    )

    assert "given as the ion" in text


@pytest.mark.parametrize(
    ("calcium", "magnesium", "unusual"), [(40, 40, False), (40, 40.1, True), (0, 1, True)]
)
def test_more_magnesium_than_calcium_is_unusual(calcium, magnesium, unusual):
    assert ("swapped" in warnings(calcium=calcium, magnesium=magnesium)) == unusual
