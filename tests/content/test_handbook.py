"""A whole source folder is loaded in one pass; a broken file hides nothing and invents nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.handbook import Handbook, load_handbook
from tests.content.small_shop import FILES, changed, problems_of, write


@pytest.fixture
def handbook(tmp_path: Path) -> Handbook:
    return load_handbook(write(tmp_path, FILES), tmp_path)


def test_everything_of_a_good_shop_is_loaded(handbook: Handbook) -> None:
    assert handbook.problems == []
    assert handbook.shop is not None
    assert handbook.shop.content.name == "Wren Lane Water"
    assert [*handbook.facts] == ["bucket", "scald_limit", "flush_time"]
    assert [*handbook.procedures] == ["drain-flow", "first-look"]
    assert [*handbook.faults] == ["no-salt", "salt-bridge"]
    assert [*handbook.lessons] == ["hardness"]
    assert [*handbook.pages] == ["index.md"]
    assert [*handbook.examples] == ["gannet-lane"]
    assert [unit.id for unit in handbook.carried] == ["meter-unit", "clock-unit"]
    assert handbook.other_files == {"images/bridge.svg"}


def test_every_entry_knows_its_file_and_lines(handbook: Handbook) -> None:
    look = handbook.procedures["first-look"]
    assert (look.file, look.address) == (
        "docs_src/procedures/first-look.yaml",
        "procedures/first-look.md",
    )
    assert look.line("steps", 0, "expect", 1, "inputs", "salt") == 22
    assert handbook.facts["scald_limit"].line("source") == 9
    assert handbook.lessons["hardness"].line("questions", 0, "answer") == 10
    assert handbook.examples["gannet-lane"].line("answers", "setting") == 27


def test_a_page_is_a_row_of_texts_worked_examples_and_pictures(handbook: Handbook) -> None:
    sections = [*handbook.lessons["hardness"].sections()]
    assert [line for line, _ in sections] == [12, 19, 30, 34, 40]
    assert sections[1][1] is handbook.examples["gannet-lane"]
    assert str(sections[0][1]).startswith("# Hardness\n")
    assert str(sections[2][1]).strip().startswith("Go on to")


LOADING = [
    (
        "procedures/first-look.yaml", "goal: Know", "goall: Know",
        'docs_src/procedures/first-look.yaml:1: the key "goal" is missing (expected what is '
        "achieved when it is done)\n"
        'docs_src/procedures/first-look.yaml:2: unknown key "goall" (expected one of: goal, tools, '
        'group, title, …; nearest: "goal")',
    ),
    (
        "procedures/first-look.yaml", "- do: Run", "- doo: Run",
        'docs_src/procedures/first-look.yaml:12: the key "do" is missing (expected what to do)\n'
        'docs_src/procedures/first-look.yaml:12: unknown key "doo" (expected one of: do, why, '
        'expect, decide; nearest: "do")',
    ),
    (
        "procedures/first-look.yaml", "  - Every visit.", "  Every visit.",
        'docs_src/procedures/first-look.yaml:3: "when" is "Every visit." (expected a list: lines '
        'that begin with "- ")',
    ),
    (
        "procedures/first-look.yaml", "  - Every visit.", "  - 12",
        'docs_src/procedures/first-look.yaml:4: item 1 of "when" is the number 12 (expected a text)',
    ),
    (
        "procedures/first-look.yaml", "  - Every visit.", "  - true",
        'docs_src/procedures/first-look.yaml:4: item 1 of "when" is the switch true (expected a '
        "text)",
    ),
    (
        "procedures/first-look.yaml", "title: First look", "title:",
        'docs_src/procedures/first-look.yaml:1: "title" is empty (expected the procedure\'s title)',
    ),
    (
        "procedures/first-look.yaml", "  - Every visit.", "  - ''",
        'docs_src/procedures/first-look.yaml:4: item 1 of "when" is empty (expected a list of '
        "occasions to use it)",
    ),
    (
        "procedures/first-look.yaml", "title: First look", "title: First look\ntitle: Again",
        'docs_src/procedures/first-look.yaml:2: the key "title" is here twice, first on line 1 '
        "(expected each key once)",
    ),
    (
        "procedures/first-look.yaml", "title: First look", "title: First: look",
        "docs_src/procedures/first-look.yaml:1: the YAML does not parse: mapping values are not "
        'allowed in this context (expected quotes around a text that holds ": ")',
    ),
    (
        "procedures/first-look.yaml", "goal: Know", "\tgoal: Know",
        "docs_src/procedures/first-look.yaml:2: the YAML does not parse: while scanning a plain "
        "scalar found a tab character that violates indentation (expected spaces instead of tabs)",
    ),
    (
        "procedures/first-look.yaml", "value: unit.backwash_flow", "values: unit.backwash_flow",
        'docs_src/procedures/first-look.yaml:18: unknown key "values" (expected one of: reading, '
        'value, calculate, inputs, show, only_for; nearest: "value")',
    ),
    (
        "procedures/first-look.yaml", "        value: unit.backwash_flow\n", "",
        'docs_src/procedures/first-look.yaml:17: a reading needs either "value" or "calculate"',
    ),
    (
        "procedures/first-look.yaml", "        show: refill_time\n", "",
        'docs_src/procedures/first-look.yaml:19: the key "show" is missing (expected the name of an '
        "answer)",
    ),
    (
        "procedures/first-look.yaml", "[delayed meter]", "[delayed metre]",
        'docs_src/procedures/first-look.yaml:27: item 1 of "only_for" is "delayed metre" (expected '
        'one of: time clock, delayed meter, immediate meter, twin tank; nearest: "delayed meter")',
    ),
    (
        "equipment/clock-unit.yaml", "control: time clock", "control: time clok",
        'docs_src/equipment/clock-unit.yaml:3: "control" is "time clok" (expected one of: time '
        'clock, delayed meter, immediate meter, twin tank; nearest: "time clock")',
    ),
    (
        "equipment/clock-unit.yaml", "9 in", "9 inchs",
        'docs_src/equipment/clock-unit.yaml:6: "tank_diameter": “inchs” is no unit for a length. '
        "Use in, ft, mm, cm, m. The nearest is in.",
    ),
    (
        "equipment/clock-unit.yaml", "9 in", "9 lb",
        'docs_src/equipment/clock-unit.yaml:6: "tank_diameter": “9 lb” is a weight. Write a length '
        "(in, ft, mm, cm, m).",
    ),
    (
        "equipment/clock-unit.yaml", "9 in", "9",
        'docs_src/equipment/clock-unit.yaml:6: "tank_diameter": “9” has no unit. Write a length, '
        "such as 9 in.",
    ),
    (
        "equipment/clock-unit.yaml", "9 in", "[9 in]",
        'docs_src/equipment/clock-unit.yaml:6: "tank_diameter": this is no quantity. Write a length '
        "as a text.",
    ),
    (
        "equipment/meter-unit.yaml", "meter_step: 10 gal\n", "",
        'docs_src/equipment/meter-unit.yaml:1: the key "meter_step" is missing (expected the step '
        'of the delayed meter, such as "10 gal")',
    ),
    (
        "equipment/clock-unit.yaml", "backwash_time", "meter_step: 1 gal\nbackwash_time",
        'docs_src/equipment/clock-unit.yaml:1: a time clock has no meter (expected no key '
        '"meter_step")',
    ),
    (
        "facts.yaml", "  source: burn-leaflet\n", "",
        'docs_src/facts.yaml:5: a published fact has no source (expected a key "source")',
    ),
    (
        "facts.yaml", "140 °F", "140 °Q",
        'docs_src/facts.yaml:7: "value": “°Q” is no unit known here.',
    ),
    (
        "facts.yaml", "140 °F", "140",
        'docs_src/facts.yaml:7: "value": “140” has no unit. Write a quantity with its unit.',
    ),
    (
        "facts.yaml", "  high: 3 min\n", "",
        'docs_src/facts.yaml:10: a fact needs "value", or both "low" and "high"',
    ),
    (
        "facts.yaml", "high: 3 min", "high: 1 min",
        'docs_src/facts.yaml:10: "low" must be below "high", in a unit of the same kind',
    ),
    (
        "facts.yaml", "high: 3 min", "high: 3 gal",
        'docs_src/facts.yaml:10: "low" must be below "high", in a unit of the same kind',
    ),
    (
        "facts.yaml", "bucket:", "bucket: five",
        "docs_src/facts.yaml:2: the YAML does not parse: mapping values are not allowed in this "
        'context (expected quotes around a text that holds ": ")',
    ),
    (
        "sources.yaml", "burn-leaflet:", "burn-leaflet: {title: T, publisher: P, seen: read}\n"
        "unit-definitions:",
        'docs_src/sources.yaml:2: the source "unit-definitions" is one of the calculators\' own '
        "sources (expected another key)",
    ),
    (
        "shop.yaml", "people: 4", "people: 0",
        'docs_src/shop.yaml:6: "people" is the number 0 (expected a number of at least 1)',
    ),
    (
        "shop.yaml", "8.25", "cheap",
        'docs_src/shop.yaml:19: "salt_bag_price" is "cheap" (expected a number)',
    ),
    (
        "shop.yaml", "8.25", "0",
        'docs_src/shop.yaml:19: "salt_bag_price" is the number 0 (expected a number above 0)',
    ),
    (
        "shop.yaml", "town: Hollow Weir\n", "",
        'docs_src/shop.yaml:1: the key "town" is missing (expected the town it works in)',
    ),
    (
        "learn/hardness.md", "order: 1", "order: first",
        'docs_src/learn/hardness.md:3: "order" is "first" (expected a whole number)',
    ),
    (
        "learn/hardness.md", "title: Hardness", "title: Hard: ness",
        "docs_src/learn/hardness.md:2: the YAML does not parse: mapping values are not allowed in "
        'this context (expected quotes around a text that holds ": ")',
    ),
    (
        "learn/hardness.md", "---\n# Hardness", "# Hardness",
        'docs_src/learn/hardness.md:1: the front matter is not closed (expected a second line "---")',
    ),
    (
        "learn/hardness.md", "```worked-example", "```worked-exmple",
        'docs_src/learn/hardness.md:18: unknown block "worked-exmple" (expected one of: '
        'worked-example, picture; nearest: "worked-example")',
    ),
    (
        "learn/hardness.md", "id: gannet-lane\n", "",
        'docs_src/learn/hardness.md:19: the key "id" is missing (expected its name, such as '
        "gannet-lane-setting)",
    ),
    (
        "learn/hardness.md", "  hardness: 18 gpg", "  hardness: [18 gpg]",
        'docs_src/learn/hardness.md:24: "hardness": this is no quantity or choice. Write a text '
        'such as "18 gpg", or a number.',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "old", "new", "said"), LOADING)
def test_what_does_not_fit_its_format_is_told_and_nothing_follows_from_it(
    tmp_path: Path, name: str, old: str, new: str, said: str
) -> None:
    assert problems_of(tmp_path, changed(name, old, new)) == said.split("\n")


FILES_THAT_ARE_WRONG = [
    (
        {"procedures/Other One.yaml": FILES["procedures/drain-flow.yaml"]},
        "docs_src/procedures/Other One.yaml:1: no other page leads to this one (expected a link, a "
        '"go_to" or a list on another page that names it)\n'
        'docs_src/procedures/Other One.yaml:1: the name "Other One" cannot be an address (expected '
        'lower case letters, digits and "-")',
    ),
    (
        {"procedures/other.yml": ""},
        'docs_src/procedures/other.yml:1: this file is not read (expected the name "other.yaml")',
    ),
    (
        {"fact.yaml": ""},
        "docs_src/fact.yaml:1: this file is not read (expected one of: facts.yaml, paths.yaml, "
        'cautions.yaml, tables.yaml, …; nearest: "facts.yaml")',
    ),
    (
        {"procedure/other.yaml": ""},
        "docs_src/procedure/other.yaml:1: this file is not read (expected YAML files in the folders "
        "procedures, faults, equipment, checks, practice)",
    ),
    (
        {"faults/no-salt.md": "# No salt\n[x](salt-bridge.md)\n"},
        'docs_src/faults/no-salt.md:1: "no-salt.yaml" makes a page of the same address (expected '
        "another name)",
    ),
    (
        {"learn/bare.md": "# Bare\n"},
        'docs_src/learn/bare.md:1: a lesson begins with front matter between two lines "---" '
        "(expected title, order, minutes, aim, can_now, questions)",
    ),
    (
        {"cautions.yaml": "- hot-water\n"},
        'docs_src/cautions.yaml:1: this is a list (expected lines "key: value")',
    ),
    (
        {"facts.yaml": ""},
        'docs_src/facts.yaml:1: this is empty (expected lines "key: value")',
    ),
]  # fmt: skip


@pytest.mark.parametrize(("files", "said"), FILES_THAT_ARE_WRONG)
def test_a_file_in_the_wrong_place_or_form_is_never_passed_over(
    tmp_path: Path, files: dict[str, str], said: str
) -> None:
    assert problems_of(tmp_path, {**FILES, **files}) == said.split("\n")


def test_a_shop_without_its_main_file_says_so_and_nothing_else(tmp_path: Path) -> None:
    files = {name: text for name, text in FILES.items() if name != "shop.yaml"}
    assert problems_of(tmp_path, files) == [
        "docs_src/shop.yaml:1: the file is missing (expected the shop's name, town, units and "
        "prices)"
    ]


def test_two_worked_examples_with_one_id_are_told_with_both_places(tmp_path: Path) -> None:
    lesson = FILES["learn/hardness.md"]
    example = lesson[lesson.index("```worked") : lesson.index("Go on to")]
    files = changed("learn/hardness.md", "Go on to", f"{example}Go on to")
    assert problems_of(tmp_path, files) == [
        'docs_src/learn/hardness.md:32: two worked examples have the id "gannet-lane", the first in '
        "docs_src/learn/hardness.md, line 19 (expected each id once)"
    ]


def test_a_file_that_cannot_be_read_hides_no_other_problem(tmp_path: Path) -> None:
    docs = write(tmp_path, changed("shop.yaml", "people: 4", "people: 0"))
    (docs / "facts.yaml").write_bytes(b"bucket: \xff")
    (docs / "learn/hardness.md").write_bytes(b"---\n\xff")
    assert [str(problem) for problem in load_handbook(docs, tmp_path).problems] == [
        "docs_src/facts.yaml:1: the file is not UTF-8 text (expected a file saved with the encoding "
        "UTF-8)",
        "docs_src/learn/hardness.md:2: the file is not UTF-8 text (expected a file saved with the "
        "encoding UTF-8)",
        'docs_src/shop.yaml:6: "people" is the number 0 (expected a number of at least 1)',
    ]


def test_hidden_files_are_no_part_of_the_handbook(tmp_path: Path) -> None:
    assert problems_of(tmp_path, {**FILES, "procedures/.first-look.yaml": "\t"}) == []


def test_an_ending_in_capitals_is_told_and_not_left_out(tmp_path: Path) -> None:
    files = {**FILES, "learn/MORE.MD": "# More"}
    assert problems_of(tmp_path, files) == [
        'docs_src/learn/MORE.MD:1: the ending ".MD" is not read (expected ".md")'
    ]


def test_a_character_that_is_no_text_is_told(tmp_path: Path) -> None:
    assert problems_of(tmp_path, changed("index.md", "Start", "St\x00art")) == [
        "docs_src/index.md:3: the file holds a character that is no text (U+0000; expected plain "
        "text)"
    ]
