"""The command benchmark: what each subject measures, told as a table or as JSON."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from build_tools.shops.place import Place

DIAGNOSIS = "diagnosis"
SUBJECTS = ("calculators", "first-answer", "build", "simulation", DIAGNOSIS)


def options_of_benchmark(command: Callable[..., None]) -> Callable[..., None]:
    """Give a command the arguments of `benchmark`."""
    for one in (
        click.option(
            "--keep",
            is_flag=True,
            help="Of diagnosis: write the figures that the trainers' page shows.",
        ),
        click.option(
            "--seed",
            default=1,
            show_default=True,
            type=int,
            help="Of diagnosis: which calls to draw.",
        ),
        click.option(
            "--calls",
            default=3000,
            show_default=True,
            type=click.IntRange(1),
            help="Of diagnosis: how many hidden faults to look for.",
        ),
        click.option(
            "--rounds",
            default=5,
            show_default=True,
            type=click.IntRange(1),
            help="Of first-answer and build: how often to measure; the medians are told.",
        ),
        click.option("--json", "as_json", is_flag=True, help="What was measured, as JSON."),
        click.argument("subject", type=click.Choice(SUBJECTS)),
    ):
        command = one(command)
    return command


def benchmark(root: Path, subject: str, rounds: int, as_json: bool) -> None:
    """Measure a subject that is the same in every shop."""
    if subject in ("first-answer", "build"):
        from build_tools.benchmarks import build, first_answer
        from build_tools.benchmarks.table import table

        found = build.measure(rounds) if subject == "build" else first_answer.measure(root, rounds)
        rows = list(found)
        _tell([row.as_data() for row in rows], lambda _: table(rows), as_json)
        return
    from build_tools.benchmarks import calculators, simulation

    measured_by = simulation if subject == "simulation" else calculators
    _tell(measured_by.measure(root), measured_by.table, as_json)


def benchmark_diagnosis(place: Place, calls: int, seed: int, keep: bool, as_json: bool) -> None:
    """Measure how soon the diagnosis of a shop finds hidden faults."""
    from build_tools.benchmarks.diagnosis.measure import measure
    from build_tools.benchmarks.diagnosis.table import table
    from build_tools.diagnosis import measured
    from build_tools.diagnosis.knowledge_data import knowledge_data

    handbook = place.load_sound()
    found = measure(knowledge_data(handbook), calls, seed)
    if keep:
        measured.keep(handbook.docs_folder, found)
    _tell(found, table, as_json)


def _tell(data: Any, table: Callable[[Any], str], as_json: bool) -> None:
    click.echo(json.dumps(data, indent=2) if as_json else table(data))
