"""The command work-out: lists, answers with their working, and what is wrong."""

from __future__ import annotations

import json
import re

import pytest
from ruamel.yaml import YAML

from build_tools.commands import ROOT, run
from calculators import CALCULATORS
from calculators import run as calculate


def test_work_out_alone_lists_every_calculator(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["work-out"]) == 0
    told = capsys.readouterr().out
    for calculator in CALCULATORS.values():
        assert re.search(rf"^  {calculator.name} +{re.escape(calculator.question)}$", told, re.M)


def test_work_out_tells_question_inputs_working_answer_and_cautions(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["work-out", "resin-capacity", "salt=24 lb", "resin_volume=1 ft³"]) == 0
    told = capsys.readouterr().out
    parts = ["How much hardness", "Inputs", "Working", "Answer", "Take note", "Caution"]
    assert sorted(parts, key=told.index) == parts
    result = calculate("resin-capacity", {"salt": "24 lb", "resin_volume": "1 ft³"})
    step = result["workings"][0]
    for text in (
        f"Usable capacity: {result['values']['capacity']['shown']}",
        f"{step['formula']} = {step['numbers']} = {step['result']}",
        *result["warnings"],
        *CALCULATORS["resin-capacity"].cautions,
    ):
        assert text.replace("\u00a0", " ") in told


def test_work_out_takes_the_shops_values_and_units(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["work-out", "hardness-setting", "hardness=300 mg/L", "iron=1", "--json"]) == 0
    shops = json.loads(capsys.readouterr().out)
    assert shops["inputs"]["iron_allowance"]["shown"] == "4\u00a0gpg per mg/L"
    assert shops == calculate("hardness-setting", {"hardness": "300 mg/L", "iron": "1"})
    metric = ["work-out", "hardness-setting", "hardness=300", "--units", "metric", "--json"]
    assert run(metric) == 0
    assert json.loads(capsys.readouterr().out)["inputs"]["hardness"]["shown"] == "300\u00a0mg/L"


def test_work_out_takes_the_figures_of_a_unit(capsys: pytest.CaptureFixture[str]) -> None:
    unit = ["--unit", "delayed-meter-softener"]
    assert run(["work-out", "brine-refill", *unit, "salt=12 lb", "--json"]) == 0
    inputs = json.loads(capsys.readouterr().out)["inputs"]
    equipment = YAML(typ="safe").load(ROOT / "docs_src/equipment/delayed-meter-softener.yaml")
    assert inputs["refill_flow"]["shown"].replace("\u00a0", " ") == equipment["refill_flow"]
    assert inputs["salt"]["shown"] == "12\u00a0lb"
    assert run(["work-out", "brine-refill", "--unit", "delayed-softener"]) == 1
    assert "The nearest is delayed-meter-softener." in capsys.readouterr().err


def test_work_out_tells_what_is_wrong_and_what_it_takes(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["work-out", "hardness-setting", "hardness=18 psi", "irn=1"]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("irn: There is no input “irn”. The nearest is “iron”.\nhardness: ")
    assert '"hardness=18 gpg"  Hardness of the raw water' in told.err


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (
            ["zzz"],
            f'There is no calculator "zzz". There are {len(CALCULATORS)}, such as hardness-units, '
            "hardness-setting, hardness-from-ions.",
        ),
        (["smal-leak"], 'There is no calculator "smal-leak". The nearest is small-leak.'),
        (
            ["small-leak", "60"],
            '"60" is no input: write it as NAME=VALUE, such as "hardness=18 gpg".',
        ),
    ],
)
def test_work_out_tells_a_wrong_command(
    arguments: list[str], sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["work-out", *arguments]) == 1
    assert capsys.readouterr() == ("", f"{sentence}\n")
