"""Expressions have the values of the shop's files, and each failure is told with its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook, load_handbook
from build_tools.content.problems import expected
from build_tools.content.showing import Shown
from build_tools.content.unit_figures import NAMES
from build_tools.content.values import Values
from calculators import CALCULATORS
from tests.content.small_shop import FILES, changed, write


@pytest.fixture
def handbook(tmp_path: Path) -> Handbook:
    return load_handbook(write(tmp_path, FILES), tmp_path)


def on_a_page(handbook: Handbook, text: str) -> Passage:
    """A text as it would stand from line 10 of the home page on."""
    return Passage(
        handbook.pages["index.md"], text, lambda offset: 10 + text.count("\n", 0, offset)
    )


def filled(handbook: Handbook, text: str, unit: str | None = None) -> str:
    values = Values(handbook)
    entry = handbook.equipment[unit] if unit else None
    text = values.fill(on_a_page(handbook, text), entry)
    assert values.problems == []
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("expression", "shown"),
    [
        ("{{ fact.bucket }}", "5 gal"),
        ("{{ fact.flush_time }}", "2 to 3 min"),
        ("{{ fact.flush_time.low }}", "2 min"),
        ("{{ fact.flush_time.high }}", "3 min"),
        ("{{ shop.name }}", "Wren Lane Water"),
        ("{{ shop.hot_share }}", "35 %"),
        ("{{ shop.salt_bag_price }}", "$8.25"),
        ("{{ shop.water_price }} for {{ shop.water_price_volume }}", "$6 for 1,000 gal"),
        ("{{ home.people }}", "4"),
        ("{{ home.hardness }}", "17 gpg"),
        ('{{ example("gannet-lane").setting }}', "20 gpg"),
        ('{{ example("gannet-lane").compensated }}', "20.0 gpg"),
        (
            '{{ work_out("brine-refill", salt="9 lb", refill_flow="0.5 gpm").refill_time }}',
            "6 min",
        ),
        ('{{ work_out("hardness-setting", hardness=home.hardness).setting }}', "17 gpg"),
        (
            '{{ work_out("household-load", people=home.people, '
            'setting=example("gannet-lane").setting).water }}',
            "240 gal/day",
        ),
        ('{{ "{{" }}', "{{"),
        ("no expression", "no expression"),
    ],
)
def test_an_expression_is_replaced_by_its_value(
    handbook: Handbook, expression: str, shown: str
) -> None:
    assert filled(handbook, expression) == shown


def test_a_unit_has_its_own_values(handbook: Handbook) -> None:
    assert filled(handbook, "{{ unit.tank_height }}", "meter-unit") == "54 in"
    assert filled(handbook, "{{ unit.tank_height }}", "clock-unit") == "48 in"


def test_any_page_may_name_a_unit(handbook: Handbook) -> None:
    assert filled(handbook, '{{ unit("clock-unit").tank_height }}') == "48 in"
    assert filled(handbook, '{{ unit("clock-unit").tank_height }}', "meter-unit") == "48 in"
    named = '{{ work_out("resin-capacity", salt="9 lb", resin_volume=unit("meter-unit").resin_volume).dose }}'
    assert filled(handbook, named).endswith(" lb/ft³")


def test_a_metric_shop_reads_metric_units(tmp_path: Path) -> None:
    files = changed("shop.yaml", "units: us", "units: metric")
    handbook = load_handbook(write(tmp_path, files), tmp_path)
    assert filled(handbook, "{{ fact.scald_limit }}, {{ fact.bucket }}") == "60 °C, 18.9 L"


def test_a_value_goes_into_a_calculator_as_it_was_written_not_as_it_is_shown(
    tmp_path: Path,
) -> None:
    files = changed("shop.yaml", "units: us", "units: metric")
    values = Values(load_handbook(write(tmp_path, files), tmp_path))
    shown = values.names.find("fact", "bucket")
    assert isinstance(shown, Shown)
    assert (shown.replace("\u00a0", " "), shown.typed) == ("18.9 L", "5 gal")


def test_the_shop_decides_what_a_calculator_takes_by_default(tmp_path: Path) -> None:
    files = changed("shop.yaml", "iron_allowance: 4", "iron_allowance: 5")
    values = Values(load_handbook(write(tmp_path, files), tmp_path))
    result = values.calculators.result("hardness-setting", {"hardness": "18 gpg", "iron": "1 mg/L"})
    assert result["values"]["setting"]["number"] == 23
    result = values.calculators.result("hardness-setting", {"hardness": "18 gpg", "iron": "1 mg/L",
                                                "iron_allowance": "3 gpg per mg/L"})  # fmt: skip
    assert result["values"]["setting"]["number"] == 21


NAME_ALONE = (
    "expected a name alone, such as {{ fact.name }}, or an answer, such as "
    "{{ work_out(…).answer }}: formulas stand in the calculators"
)
FAILURES = [
    (
        "{{ fact.buckt }}",
        'there is no fact "buckt" (expected one of: bucket, flush_time, scald_limit; nearest: '
        '"bucket")',
    ),
    (
        "{{ facts.bucket }}",
        '"{{ facts.bucket }}" uses the unknown name "facts" (expected one of: fact, shop, home, '
        'example, work_out, quantity, kept, unit; nearest: "fact")',
    ),
    (
        "{{ shop.salt_price }}",
        'there is no shop value "salt_price" (expected one of: salt_bag_price, water_price, '
        'sewer_price, water_price_volume, …; nearest: "salt_bag_price")',
    ),
    (
        "{{ home.peple }}",
        'the typical home has no "peple" (expected one of: people, hardness, iron; nearest: '
        '"people")',
    ),
    (
        "{{ unit.tank_height }}",
        '"unit" means nothing here (expected only on a page in equipment/ and in expected readings; '
        'elsewhere name one of the equipment, as in {{ unit("its-id").capacity }})',
    ),
    (
        '{{ unit("meter-unitt").tank_height }}',
        'there is no unit of equipment "meter-unitt" (expected one of: clock-unit, meter-unit; '
        'nearest: "meter-unit")',
    ),
    (
        '{{ unit("meter-unit").tank_hight }}',
        f'a unit has no "tank_hight" {expected("tank_hight", NAMES)}',
    ),
    (
        '{{ example("ganet-lane").setting }}',
        'there is no worked example "ganet-lane" (expected "gannet-lane")',
    ),
    (
        '{{ example("gannet-lane").seting }}',
        'the calculator "hardness-setting" gives no answer "seting" here (expected one of: setting, '
        'compensated, metals_by_charge; nearest: "setting")',
    ),
    (
        '{{ work_out("brine-refil").water }}',
        f'there is no calculator "brine-refil" {expected("brine-refil", CALCULATORS)}',
    ),
    (
        '{{ work_out("brine-refill", salt="9 gal", refill_flow="1 gpm").water }}',
        'the calculator "brine-refill" cannot use "salt": “9 gal” is a volume. Write a weight (lb, '
        "oz, kg, g).",
    ),
    (
        "{{ fact.bucket + }}",
        "\"{{ fact.bucket + }}\" fails: unexpected 'end of print statement' (expected an expression "
        "such as {{ fact.name }})",
    ),
    (
        "{{ fact['bucket'] / 2 }}",
        f'"{{{{ fact[\'bucket\'] / 2 }}}}" reckons with values, or changes them ({NAME_ALONE})',
    ),
    ("{{ 5 }}", f'"{{{{ 5 }}}}" types a value ({NAME_ALONE})'),
    (
        '{{ "a" * 10 ** 10 }}',
        f'"{{{{ "a" * 10 ** 10 }}}}" reckons with values, or changes them ({NAME_ALONE})',
    ),
    (
        '{{ fact.bucket.replace("5", "6") }}',
        '"{{ fact.bucket.replace("5", "6") }}" reckons with values, or changes them '
        f"({NAME_ALONE})",
    ),
    (
        "{{ fact }}",
        '"{{ fact }}" is no single value (expected a name after it, as in {{ fact.name }})',
    ),
    (
        '{{ work_out("brine-refill", salt="9 lb", refill_flow="1 gpm") }}',
        '"{{ work_out("brine-refill", salt="9 lb", refill_flow="1 gpm"…" is no single value '
        "(expected a name after it, as in {{ fact.name }})",
    ),
    (
        "{% set x = 1 %}",
        '"{% set x = 1 %}" is not an expression (expected "{{ … }}")',
    ),
    (
        "{# a note #}",
        '"{# a note #}" is not an expression (expected "{{ … }}")',
    ),
    (
        "{{ fact.bucket",
        '"{{" opens an expression that nothing closes (expected "}}")',
    ),
    (
        "{{ fact.bucket.__class__ }}",
        '"{{ fact.bucket.__class__ }}" is no single value (expected a name after it, as in '
        "{{ fact.name }})",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("expression", "said"), FAILURES)
def test_an_expression_that_fails_is_told_in_a_sentence_and_left_as_it_is(
    handbook: Handbook, expression: str, said: str
) -> None:
    values = Values(handbook)
    text = f"First line.\nHere: {expression} and"
    assert values.fill(on_a_page(handbook, text)) == text
    assert [str(problem) for problem in values.problems] == [f"docs_src/index.md:11: {said}"]


def test_all_failures_of_a_page_are_told_each_with_its_line(handbook: Handbook) -> None:
    values = Values(handbook)
    values.fill(on_a_page(handbook, "{{ a }}\n{{ fact.bucket }} {{ fact. }}\n\n{{ b }}"))
    assert [problem.line for problem in values.problems] == [10, 11, 13]


def test_every_use_of_a_fact_is_remembered(handbook: Handbook) -> None:
    values = Values(handbook)
    values.fill(
        on_a_page(handbook, "{{ fact.bucket }}\n{{ fact.bucket }} {{ fact.flush_time.low }}")
    )
    assert values.uses == {
        "bucket": {("docs_src/index.md", 10, "index.md"), ("docs_src/index.md", 11, "index.md")},
        "flush_time": {("docs_src/index.md", 11, "index.md")},
    }


def test_what_stands_in_a_broken_file_is_told_only_there(tmp_path: Path) -> None:
    files = changed("shop.yaml", "people: 4", "people: many")
    files["facts.yaml"] = FILES["facts.yaml"].replace("140 °F", "hot")
    handbook = load_handbook(write(tmp_path, files), tmp_path)
    values = Values(handbook)
    text = "{{ shop.name }} {{ home.people }} {{ fact.scald_limit }} {{ fact.bucket }}"
    assert values.fill(on_a_page(handbook, text)).replace("\u00a0", " ") == text.replace(
        "{{ fact.bucket }}", "5 gal"
    )
    assert values.problems == []
