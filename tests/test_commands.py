"""The commands as they run inside the environment."""

from __future__ import annotations

import json
import re
import signal
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest
from ruamel.yaml import YAML

from build_tools.commands import ROOT, run
from calculators import CALCULATORS
from calculators import run as calculate

#: A shop whose site is built in a moment.
SMALL = str(ROOT / "tests" / "second_shop")


@pytest.fixture
def port() -> int:
    """A port that is free now."""
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return listener.getsockname()[1]


def test_a_taken_port_is_told_before_anything_is_built(capsys: pytest.CaptureFixture[str]) -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
        assert run(["serve", "--port", str(port)]) == 1
    assert capsys.readouterr() == (
        "",
        f"Port {port} is taken by another program: stop that one, or add --port {port + 1}.\n",
    )


def test_a_port_that_is_none_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["serve", "--port", "70000"]) == 1
    assert capsys.readouterr().err == (
        "Invalid value for '--port': 70000 is not in the range 1<=x<=65535.\n"
    )


def test_an_unknown_option_is_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["build", "--outptu", "x"]) == 1
    assert capsys.readouterr().err == "No such option '--outptu'. Did you mean '--output'?\n"


def test_a_folder_with_other_things_in_it_is_never_emptied(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    photo = tmp_path / "photo.jpg"
    photo.write_bytes(b"dear to someone")
    assert run(["build", "--output", str(tmp_path)]) == 1
    assert photo.read_bytes() == b"dear to someone"
    assert capsys.readouterr().err == (
        f"The folder {tmp_path} holds something other than a built handbook, and a build empties "
        "its folder: name a new or an empty one.\n"
    )


def test_build_writes_a_site_and_writes_it_again(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    for _ in range(2):
        assert run(["build", "--shop", SMALL, "--output", str(site)]) == 0
        assert capsys.readouterr().out == f"The handbook is in {site}\n"
        assert (site / "index.html").is_file()
        assert not (site / "left-over.html").exists()
        (site / "left-over.html").write_text("from an earlier edition")


def test_check_finds_no_problem_in_the_handbook(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["check"]) == 0
    assert capsys.readouterr().out == "No problems found.\n"


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


def test_benchmark_measures_every_calculator_in_both_pythons(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(["benchmark", "calculators", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)
    assert [row["calculator"] for row in rows] == list(CALCULATORS)
    assert all(row["python_ms"] > 0 and row["browser_ms"] > 0 for row in rows)


@pytest.mark.parametrize("stop", [signal.SIGINT, signal.SIGTERM])
def test_serve_listens_here_only_and_ends_cleanly(port: int, stop: signal.Signals) -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "build_tools", "serve", "--shop", SMALL, "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        # A shell that started these tests in the background may have had Ctrl+C ignored.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    ) as serving:
        said = ""
        while "Serving on" not in said and (line := serving.stderr.readline()):
            said += line
        address = re.search(r"Serving on (http://127\.0\.0\.1:\d+\S*)", said).group(1)
        with urllib.request.urlopen(address) as answer:
            assert b"livereload" in answer.read()
        serving.send_signal(stop)
        said += serving.stderr.read()
    assert serving.returncode == 0
    assert "Traceback" not in said
