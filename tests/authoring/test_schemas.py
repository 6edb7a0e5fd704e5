"""The schemas hold for every shipped source, and refuse a broken one."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft7Validator

from build_tools.authoring.schemas import FOLDER, SETTINGS, files, renew, schemas, settings, stale
from build_tools.commands import ROOT
from build_tools.content.loading import BLOCKS, LISTS, SECTIONS
from build_tools.content.markdown_file import read_markdown, split_front
from build_tools.content.yaml_file import read_yaml
from build_tools.language.languages import LANGUAGES
from tests.content.small_shop import FILES

DOCS = ROOT / "docs_src"
ALL = schemas()
MAPPED = settings()["yaml.schemas"]


def _wrong(name: str, data: Any) -> list[str]:
    return [error.message for error in Draft7Validator(ALL[name]).iter_errors(data)]


def _data(text: str) -> Any:
    read = read_yaml(text, "")
    assert not read.problems
    return read.data


def test_the_kept_schemas_are_those_of_the_models() -> None:
    assert stale(ROOT) == [], "run python3 -m build_tools schemas"


def test_stale_schemas_are_renewed_and_old_ones_removed(tmp_path: Path) -> None:
    assert renew(tmp_path) == sorted(files())
    folder = tmp_path / FOLDER
    (folder / "facts.schema.json").write_text("{}")
    (folder / "stories.schema.json").write_text("{}")
    assert renew(tmp_path) == ["facts.schema.json", "stories.schema.json"]
    assert {one.name: one.read_text("utf-8") for one in folder.iterdir()} == files()
    assert renew(tmp_path) == []


@pytest.mark.parametrize("name", [one for one in files() if one != SETTINGS])
def test_each_is_a_schema(name: str) -> None:
    Draft7Validator.check_schema(ALL[name])


def test_every_yaml_file_has_a_schema_that_holds() -> None:
    seen = set()
    for schema, patterns in MAPPED.items():
        for path in sorted(path for pattern in patterns for path in ROOT.glob(pattern)):
            assert _wrong(Path(schema).name, _data(path.read_text("utf-8"))) == [], path
            seen.add(path)
    assert seen == set(DOCS.rglob("*.yaml"))


def test_front_matter_and_blocks_of_every_page_hold() -> None:
    words = set()
    for path in sorted(DOCS.rglob("*.md")):
        front, start, _ = split_front(path.read_text("utf-8"), "")
        lesson = path.parent.name == "learn" and path.stem != "index"
        translated = path.relative_to(DOCS).parts[0] in LANGUAGES
        if front is not None:
            name = "lesson.schema.json" if lesson else "page.schema.json"
            name = "translation.schema.json" if translated else name
            assert _wrong(name, _data(front)) == [], path
        for fence in read_markdown(path.read_text("utf-8")[start:]).fences:
            if fence.word in BLOCKS and not translated:
                assert _wrong(f"{fence.word}.schema.json", _data(fence.content)) == [], path
                words.add(fence.word)
    assert words == set(BLOCKS)


@pytest.mark.parametrize("name", [one for one in FILES if one.endswith(".yaml")])
def test_the_small_shop_holds_and_is_refused_when_broken(name: str) -> None:
    folder = name.split("/")[0].removesuffix(".yaml")
    assert folder == "shop" or folder in LISTS or folder in SECTIONS
    data = _data(FILES[name])
    assert _wrong(f"{folder}.schema.json", data) == []
    one = next(iter(data.values())) if folder in LISTS else data
    one["colour"] = "blue"
    assert any("'colour' was unexpected" in said for said in _wrong(f"{folder}.schema.json", data))
    del one["colour"]
    del one[next(iter(one))]
    assert any("is a required property" in said for said in _wrong(f"{folder}.schema.json", data))


@pytest.mark.parametrize(
    ("schema", "file", "old", "new", "said"),
    [
        ("procedures", "procedures/first-look.yaml", "brine-refill", "brine-refil", "not valid"),
        ("faults", "faults/no-salt.yaml", "salt_left", "salt_gone", "is not one of"),
        ("faults", "faults/no-salt.yaml", "7.5 %", "7.5", "is not of type 'string'"),
        ("checks", "checks/rod.yaml", "kind: feel", "kind: touch", "is not one of"),
        ("facts", "facts.yaml", "  value: 5 gal\n", "", "not valid under any"),
        ("facts", "facts.yaml", "  low: 2 min\n", "", "not valid under any"),
        ("facts", "facts.yaml", "flush_time", "flush-time", "does not match"),
        ("equipment", "equipment/clock-unit.yaml", "time clock", "sundial", "is not one of"),
    ],
)
def test_closed_sets_and_patterns_are_in_them(
    schema: str, file: str, old: str, new: str, said: str
) -> None:
    assert old in FILES[file]
    wrong = _wrong(f"{schema}.schema.json", _data(FILES[file].replace(old, new)))
    assert any(re.search(said, one) for one in wrong), wrong
