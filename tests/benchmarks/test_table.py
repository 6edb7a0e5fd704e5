"""The measured rows as a table and as data."""

from __future__ import annotations

from build_tools.benchmarks.table import Row, table

ROUNDS = [
    {"plain": 1300.0, "compiled": 330.0, "image": 196.04},
    {"plain": 1200.0, "compiled": 340.0, "image": 200.0},
    {"plain": 1250.0, "compiled": 900.0, "image": 195.0},
]
WARM = Row.of_medians("first answer", "next visit", "ms", ROUNDS)
SENT = Row("before it", "brotli", "bytes", {"plain": 5_525_490, "image": 4_103_388})


def test_a_row_has_the_median_of_each_way() -> None:
    assert WARM.values == {"plain": 1250.0, "compiled": 340.0, "image": 196.04}


def test_as_data_it_has_values_and_ratios_to_the_plain_way() -> None:
    assert WARM.as_data() == {
        "subject": "first answer",
        "setting": "next visit",
        "unit": "ms",
        "values": {"plain": 1250.0, "compiled": 340.0, "image": 196.0},
        "ratios": {"compiled": 0.272, "image": 0.157},
    }


def test_the_table_has_a_heading_for_each_subject() -> None:
    again = Row("first answer", "first visit", "ms", {"plain": 2000, "compiled": 700, "image": 300})
    lines = [" ".join(line.split()) for line in table([WARM, again, SENT]).splitlines()]
    assert lines == [
        "first answer, ms plain compiled, of plain image, of plain",
        "next visit 1,250 340 27.2% 196 15.7%",
        "first visit 2,000 700 35.0% 300 15.0%",
        "",
        "before it, bytes plain image, of plain",
        "brotli 5,525,490 4,103,388 74.3%",
    ]
