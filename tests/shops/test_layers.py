"""A shop draws on a library: its files and entries replace what is shipped."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.content.small_shop import FILES, changed
from tests.shops.small_library import SHOP, place, problems_of, with_lines

LESSON = FILES["learn/hardness.md"].replace("is very hard", "is hard indeed")
BUCKET = "bucket: {is: The bucket, value: 12 L, basis: common practice}\n"


def test_a_shop_of_two_files_is_a_whole_handbook(tmp_path: Path) -> None:
    assert problems_of(tmp_path, SHOP) == []
    handbook = place(tmp_path, SHOP).load()
    assert set(handbook.procedures) == {"first-look", "drain-flow"}
    assert set(handbook.facts) == {"bucket", "scald_limit", "flush_time"}
    assert handbook.shop.content.town == "Vik"


def test_what_a_shop_does_not_carry_has_no_page_and_stays_an_example(tmp_path: Path) -> None:
    handbook = place(tmp_path, SHOP).load()
    assert set(handbook.equipment) == {"vik-unit"}
    assert set(handbook.example_units) == {"meter-unit", "clock-unit"}
    lesson = FILES["learn/hardness.md"].replace(
        "is very hard", 'leaves {{ unit("meter-unit").capacity }}'
    )
    assert problems_of(tmp_path / "b", SHOP, {**FILES, "learn/hardness.md": lesson}) == []


def test_a_carried_unit_may_be_shipped(tmp_path: Path) -> None:
    shop = {**SHOP, "shop.yaml": SHOP["shop.yaml"].replace("  - vik-unit", "  - clock-unit")}
    assert problems_of(tmp_path, shop) == []
    handbook = place(tmp_path / "b", shop).load()
    assert [one.id for one in handbook.carried] == ["clock-unit"]
    assert set(handbook.equipment) == {"clock-unit", "vik-unit"}


def test_a_file_of_the_shop_replaces_the_shipped_one(tmp_path: Path) -> None:
    shop = with_lines("shop.yaml", "replaces: [learn/hardness]\n")
    shop["learn/hardness.md"] = LESSON
    assert problems_of(tmp_path, shop)[0].startswith(
        'docs_src/learn/hardness.md:27: worked example "gannet-lane" states "setting" as "20 gpg"'
    )
    handbook = place(tmp_path / "b", shop).load()
    assert "is hard indeed" in handbook.lessons["hardness"].body
    assert handbook.lessons["hardness"].file == "docs_src/learn/hardness.md"


def test_an_entry_of_the_shop_replaces_the_shipped_one(tmp_path: Path) -> None:
    shop = with_lines("shop.yaml", "replaces: [facts/bucket]\n") | {"facts.yaml": BUCKET}
    assert problems_of(tmp_path, shop) == []
    facts = place(tmp_path / "b", shop).load().facts
    assert facts["bucket"].content.value.text == "12 L"
    assert facts["scald_limit"].file == "../shipped/docs_src/facts.yaml"


@pytest.mark.parametrize(
    ("shop", "told"),
    [
        (
            {**SHOP, "facts.yaml": BUCKET},
            'docs_src/facts.yaml:1: this stands in the place of the shipped "facts/bucket", and '
            'shop.yaml does not say so (expected "- facts/bucket" under "replaces" in shop.yaml, '
            "or another name here)",
        ),
        (
            with_lines("shop.yaml", "replaces: [learn/hardness]\n")
            | {"learn/hardness.md": FILES["learn/hardness.md"]},
            'docs_src/learn/hardness.md:1: this says the same as the shipped "learn/hardness" '
            '(expected a change, or neither it nor its line under "replaces" in shop.yaml)',
        ),
        (
            with_lines("shop.yaml", "replaces:\n  - learn/hardnesses\n"),
            'docs_src/shop.yaml:26: nothing shipped is called "learn/hardnesses" (any more) '
            '(expected "learn/hardness")',
        ),
        (
            with_lines("shop.yaml", "replaces:\n  - facts/bucket\n"),
            'docs_src/shop.yaml:26: nothing of the shop stands in the place of "facts/bucket" '
            "(expected a file or an entry of that name, or no such line)",
        ),
        (
            with_lines("shop.yaml", "left_out:\n  - learn/hardness\n  - learn/hardness\n"),
            'docs_src/shop.yaml:27: "learn/hardness" is named twice (expected each once)',
        ),
        (
            with_lines("shop.yaml", "local_cautions:\n  - {caution: cold-water, local: No.}\n"),
            'docs_src/shop.yaml:26: there is no caution "cold-water" (expected "hot-water")',
        ),
    ],
)
def test_replacing_is_told_where_it_is_not_what_it_seems(
    tmp_path: Path, shop: dict[str, str], told: str
) -> None:
    assert told in "\n".join(problems_of(tmp_path, shop))


def test_a_replacement_is_told_when_its_page_was_renamed(tmp_path: Path) -> None:
    shop = with_lines("shop.yaml", "replaces: [facts/pail]\n")
    shop["facts.yaml"] = BUCKET.replace("bucket:", "pail:", 1)
    told = problems_of(tmp_path, shop)
    assert told == [
        'docs_src/facts.yaml:1: no text uses the fact "pail" (expected {{ fact.pail }} somewhere, '
        "or no such fact)",
        'docs_src/shop.yaml:25: nothing shipped is called "facts/pail" (any more) (expected one '
        "of: facts/bucket, facts/flush_time, facts/scald_limit)",
    ]


def test_a_problem_of_the_library_names_its_own_file_and_line(tmp_path: Path) -> None:
    library = changed("faults/no-salt.yaml", "Add salt.", "Add 9 lb of salt.")
    assert problems_of(tmp_path, SHOP, library) == [
        '../shipped/docs_src/faults/no-salt.yaml:9: nothing backs the typed quantity "9 lb" '
        "(expected an expression: put the value in facts.yaml and write {{ fact.its_name }}, or "
        "compute it with {{ work_out(…) }} or a worked example)"
    ]


def test_what_is_left_out_is_not_read(tmp_path: Path) -> None:
    shop = with_lines("shop.yaml", "left_out: [procedures/drain-flow]\n")
    told = problems_of(tmp_path, shop)
    assert all("drain-flow" in one for one in told)
    assert [one.partition(": ")[0] for one in told] == [
        "../shipped/docs_src/faults/salt-bridge.yaml:16",
        "../shipped/docs_src/procedures/first-look.yaml:31",
    ]


def test_a_fact_that_only_a_replaced_page_used_is_no_problem_of_the_shop(tmp_path: Path) -> None:
    procedure = FILES["procedures/first-look.yaml"].replace("The {{ fact.bucket }} bucket", "A can")
    shop = with_lines("shop.yaml", "replaces: [procedures/first-look]\n")
    shop["procedures/first-look.yaml"] = procedure
    assert problems_of(tmp_path, shop) == []


def test_a_shop_has_its_own_record_of_calls_and_no_other(tmp_path: Path) -> None:
    library = {**FILES, "finished_calls.csv": "date,complaint,cause,minutes,note\n2026-01-06,x,y\n"}
    assert len(problems_of(tmp_path, SHOP, library)) == 0
