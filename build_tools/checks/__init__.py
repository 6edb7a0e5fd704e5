"""Every check of the handbook's content, one a module."""

from __future__ import annotations

from pathlib import Path

from build_tools.checks import (
    call_order,
    cautions,
    decisions,
    examples,
    expectations,
    expressions,
    finished_calls,
    left_examples,
    lessons,
    likelihoods,
    links,
    orphans,
    pictures,
    practice,
    readability,
    references,
    replaced,
    scripts,
    severities,
    shop_values,
    simulated_homes,
    skills,
    steps,
    tables,
    terms,
    translations,
    unbacked,
    unused_facts,
)
from build_tools.content.handbook import Handbook
from build_tools.content.problems import Problem, in_order
from build_tools.content.values import Values


def check_handbook(handbook: Handbook, values: Values) -> list[Problem]:
    """Return all problems in order; `values` then knows every use of a fact."""
    problems = [
        *handbook.problems,
        *left_examples.check(handbook),
        *references.check(handbook),
        *replaced.check(handbook),
        *links.check(handbook),
        *scripts.check(handbook),
        *decisions.check(handbook),
        *orphans.check(handbook),
        *call_order.check(handbook),
        *likelihoods.check(handbook),
        *severities.check(handbook),
        *skills.check(handbook),
        *steps.check(handbook),
        *cautions.check(handbook),
        *terms.check(handbook),
        *readability.check(handbook),
        *lessons.check(handbook),
        *unbacked.check(handbook),
        *translations.check(handbook),
        *shop_values.check(handbook, values),
        *examples.check(handbook, values),
        *pictures.check(handbook, values),
        *expectations.check(handbook, values),
        *tables.check(handbook, values),
        *expressions.check(handbook, values),
        *unused_facts.check(handbook, values),
        *finished_calls.check(handbook),
        *practice.check(handbook, values),
    ]
    if not problems:
        problems += simulated_homes.check(handbook)
    if not problems:
        problems += practice.check_evidence(handbook, values)
    return in_order(problems)


def find_problems(docs_folder: Path, root: Path, library: Path | None = None) -> list[Problem]:
    """Load and check the handbook in `docs_folder`; messages name files from `root`."""
    from build_tools.shops.retold import load  # which reads texts as the checks do

    handbook = load(docs_folder, root, library)
    return check_handbook(handbook, Values(handbook))
