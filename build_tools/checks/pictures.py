"""A picture block must name a picture that exists, and give it what it can draw."""

from __future__ import annotations

from collections.abc import Iterator

from build_tools.checks.examples import wrong_names
from build_tools.content.diagnosis_models import COMPLAINT
from build_tools.content.entries import Entry
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import Picture
from build_tools.content.pictures import CAUSES, CAUSES_GIVEN, NAMES, drawn, inputs_of
from build_tools.content.problems import Problem, choosing, shortened
from build_tools.content.values import Values
from calculators import CALCULATORS


def check(handbook: Handbook, values: Values) -> Iterator[Problem]:
    """Yield a problem for each block that names no picture or gives what it cannot draw."""
    for picture in handbook.pictures.values():
        content = picture.content
        if content.drawing == CAUSES:
            yield from _causes(handbook, picture)
            continue
        wrong = [*_wrong_names(picture), *_several(picture)]
        yield from wrong
        known = content.drawing or content.calculate in CALCULATORS
        if known and not wrong and handbook.shop is not None:
            yield from _drawn(values, picture)


def _wrong_names(picture: Entry[Picture]) -> Iterator[Problem]:
    content = picture.content
    if content.calculate in CALCULATORS:
        calculator = CALCULATORS[content.calculate]
        if not calculator.picture:
            with_one = [one.name for one in CALCULATORS.values() if one.picture]
            said = f'the calculator "{calculator.name}" has no picture'
            yield picture.problem(("calculate",), choosing(said, calculator.name, with_one))
        yield from wrong_names(picture, calculator)
    elif content.drawing and content.drawing not in NAMES:
        said = f'there is no drawing "{shortened(content.drawing)}"'
        yield picture.problem(("drawing",), choosing(said, content.drawing, NAMES))
    elif content.drawing:
        names = [one.name for one in inputs_of(content)]
        for name in content.given:
            if name not in names:
                said = f'the drawing "{content.drawing}" has no input "{shortened(name)}"'
                yield picture.problem(("given", name), choosing(said, name, names))


def _several(picture: Entry[Picture]) -> Iterator[Problem]:
    for name, value in picture.content.given.items():
        if isinstance(value, dict):
            said = f'"{name}" has several values (expected one, such as "18 gpg")'
            yield picture.problem(("given", name), said)


def _drawn(values: Values, picture: Entry[Picture]) -> Iterator[Problem]:
    svg, problems = drawn(values, picture)
    for name, sentence in problems.items():
        yield picture.problem(("given", name), f'picture "{picture.id}", "{name}": {sentence}')
    if not svg and not problems:
        said = f'picture "{picture.id}": the calculator draws nothing for these inputs'
        curve = CALCULATORS[picture.content.calculate].picture
        yield picture.problem(
            ("given",), f'{said} (expected choices for which "{curve.input}" counts)'
        )


def _causes(handbook: Handbook, picture: Entry[Picture]) -> Iterator[Problem]:
    given = picture.content.given
    for name in given:
        if name not in CAUSES_GIVEN:
            said = f'the drawing "{CAUSES}" has no input "{shortened(name)}"'
            yield picture.problem(("given", name), choosing(said, name, CAUSES_GIVEN))
    complaint, findings = given.get("complaint"), given.get("findings", {})
    if isinstance(complaint, str):
        yield from _finding(handbook, picture, ("given", "complaint"), COMPLAINT, complaint)
    else:
        said = f'the drawing "{CAUSES}" needs one complaint'
        names = _results(handbook, COMPLAINT) or []
        yield picture.problem(("given",), choosing(said, complaint, names))
    if isinstance(findings, str):
        said = '"findings" is a text (expected lines of a check, a colon and its result)'
        yield picture.problem(("given", "findings"), said)
        return
    for name, result in findings.items():
        yield from _finding(handbook, picture, ("given", "findings", name), name, result)


def _finding(
    handbook: Handbook, picture: Entry[Picture], path: tuple[str, ...], name: str, result: str
) -> Iterator[Problem]:
    if not handbook.knows("checks", name):
        choices = sorted(handbook.names("checks"))
        said = choosing(f'there is no check "{shortened(name)}"', name, choices)
        yield picture.problem(path, said)
        return
    results = _results(handbook, name)
    if results is not None and result not in results:
        said = f'the check "{name}" has no result "{shortened(result)}"'
        yield picture.problem(path, choosing(said, result, results))


def _results(handbook: Handbook, name: str) -> list[str] | None:
    """Return the results of a check, None for one that failed to load."""
    entry = handbook.checks.get(name)
    return [one.name for one in entry.content.results] if entry else None
