"""What a new source is given beyond its format: what its title, the handbook and calculators tell.

Numbers come from the calculators' own examples; an answer is worked out.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from build_tools.authoring.template import Example, Known, Several, lines
from build_tools.checks.left_examples import MARK, MARK_OF_TEXT
from build_tools.checks.lessons import LEAST_CAN_NOW, MINUTES, QUESTIONS
from build_tools.content.diagnosis_models import COMPLAINT, STAGES
from build_tools.content.handbook import Handbook
from build_tools.content.page_models import LessonFront, Picture, WorkedExample
from build_tools.content.problems import expected
from build_tools.content.values import Values
from build_tools.set_up.failure import Failure
from calculators import CALCULATORS
from calculators.declare import Calculator, Input
from calculators.quantities import plain

#: What examples are worked out with where none is named, and what a lesson's picture shows.
CALCULATOR, PICTURE, TABLE = "hardness-setting", "resin-capacity", "brine-refill"
#: What stands above the keys.
HEAD = (
    f'# Each line that ends in "{MARK}" is yours: write what is true, and take "{MARK}" away.',
    "# The command check names the lines that are left.",
)
_ANSWERS, _STEPS = 3, 10

Given = dict[str, Any]


def _procedure(handbook: Handbook, title: str, _: str) -> Given:
    return {"title": title}


def _fault(handbook: Handbook, title: str, _: str) -> Given:
    groups = sorted({one.content.group for one in handbook.faults.values()})
    complaints = handbook.checks.get(COMPLAINT)
    names = [one.name for one in complaints.content.results] if complaints else ["hard-water"]
    given: Given = {"title": title, "likelihoods": Example({COMPLAINT: {names[0]: "60 %"}})}
    return given | ({"group": Example(groups[0])} if groups else {})


def _check(handbook: Handbook, title: str, _: str) -> Given:
    stage = STAGES[-1]
    taken = [one.content.order for one in handbook.checks.values() if one.content.stage == stage]
    results = tuple(
        {"name": Example(name), "label": Example(label), "means": Example(means)}
        for name, label, means in (
            ("normal", "As it should be", "What is seen on a sound unit, which comes first."),
            ("abnormal", "Not as it should be", "What is seen with a fault, and what it means."),
        )
    )
    return {
        "title": title,
        "stage": Example(stage),
        "order": Example(max(taken, default=0) + 1),
        "results": Several(results),
    }


def _table(handbook: Handbook, title: str, calculate: str) -> Given:
    calculator = _calculator(calculate or TABLE)
    given = _inputs(handbook, calculator)
    name = next((one for one in given if calculator.input(one).kind != "choice"), None)
    if name is None:
        raise Failure(
            f'The calculator "{calculator.name}" needs no number, so nothing stands down the side '
            "of its table (expected another one under --calculate)."
        )
    rest = {key: value for key, value in given.items() if key != name}
    return {
        "title": title,
        "calculate": calculator.name,
        "down": {"input": Example(name), "values": Example([given[name]])},
        "show": Example([calculator.outputs[0].name]),
    } | ({"given": Example(rest)} if rest else {})


def _fact(handbook: Handbook, title: str, _: str) -> Given:
    return {"is": title, "basis": Example("common practice")}


def _term(handbook: Handbook, title: str, _: str) -> Given:
    return {"term": title}


def _exercise(handbook: Handbook, title: str, calculate: str) -> Given:
    calculator = _calculator(calculate or CALCULATOR)
    given = _inputs(handbook, calculator)
    drawn = {name: _drawn(calculator.input(name), text) for name, text in given.items()}
    told = ", ".join(f"{{{name}}}" for name, one in drawn.items() if isinstance(one, dict))
    return {
        "title": title,
        "kind": Example("number"),
        "story": Example(f"A story that names what is drawn: {told}. What is asked?"),
        "steps": Several(({"calculate": calculator.name, "given": Example(drawn)},)),
        "ask": Several(({"answer": Example(calculator.outputs[0].name)},)),
    }


#: What a new source of a kind is given: by the handbook, its title, and a calculator's name or "".
GIVEN: dict[str, Callable[[Handbook, str, str], Given]] = {
    "procedure": _procedure,
    "fault": _fault,
    "check": _check,
    "equipment": _procedure,
    "table": _table,
    "fact": _fact,
    "term": _term,
    "exercise": _exercise,
}


def example(handbook: Handbook, title: str, name: str, calculate: str) -> Given:
    """Return what a worked example is given; its answers are worked out."""
    calculator = _calculator(calculate or CALCULATOR)
    given = _inputs(handbook, calculator)
    values = Values(handbook).calculators.result(calculator.name, given)["values"]
    answers = {one: _plain(found["shown"]) for one, found in values.items()}
    told = ", ".join(f"{calculator.input(one).label} {value}" for one, value in given.items())
    return {
        "id": name,
        "title": title,
        "story": Example(f"A story that names what is given. {told}."),
        "calculate": calculator.name,
        "given": Example(given),
        "answers": dict([*answers.items()][:_ANSWERS]),
    }


def lesson(handbook: Handbook, title: str, name: str, known: Known) -> list[str]:
    """Return the lines of a lesson: its front matter, and a body with one block of each kind."""
    orders = [page.content.order for page in handbook.lessons_in_order]
    question = {"ask": Example("A question?"), "answer": Example("Its answer.")}
    front = {
        "title": title,
        "order": Example(max(orders, default=0) + 1),
        "minutes": Example(MINUTES[0]),
        "can_now": Example(["Do what the learner can do now."] * LEAST_CAN_NOW),
        "questions": Several((question,) * QUESTIONS),
    }
    worked = example(handbook, "A worked example", f"{name}-example", "")
    calculator = _calculator(PICTURE)
    picture = {
        "id": f"{name}-picture",
        "title": Example("What the picture is of"),
        "calculate": calculator.name,
        "given": Example(_inputs(handbook, calculator)),
    }
    return [
        "---",
        *HEAD,
        *lines(LessonFront, front, known),
        "---",
        f"# {title}",
        "",
        MARK_OF_TEXT,
        "",
        "Say in a few short sentences what this lesson is about, and why it matters on a call.",
        "",
        "## Try it with numbers",
        "",
        "```worked-example",
        *lines(WorkedExample, worked, known),
        "```",
        "",
        "## See it",
        "",
        "```picture",
        *lines(Picture, picture, known),
        "```",
        "",
        "## Rule and physics",
        "",
        MARK_OF_TEXT,
        "",
        "Say where the habit of the trade and the physics differ.",
    ]


def _calculator(name: str) -> Calculator:
    if name not in CALCULATORS:
        choices = sorted(CALCULATORS)
        raise Failure(f'There is no calculator "{name}" {expected(name, choices)}.')
    return CALCULATORS[name]


def _inputs(handbook: Handbook, calculator: Calculator) -> dict[str, str]:
    """Return examples of the inputs that must be given, or of all where these are not enough."""
    texts = {
        one.name: _plain(one.example_text(handbook.units))
        for one in calculator.inputs
        if one.example is not None
    }
    needed = {
        one.name: texts[one.name]
        for one in calculator.inputs
        if one.default is None and not one.optional and one.name in texts
    }
    for given in (needed, texts):
        if given and not Values(handbook).calculators.result(calculator.name, given)["problems"]:
            return given
    raise Failure(
        f'The calculator "{calculator.name}" answers no example by itself (expected another one '
        "under --calculate)."
    )


def _drawn(one: Input, text: str) -> Any:
    """Return a range from the example of an input to twice it, or the example of a choice."""
    if one.kind in ("choice", "count", "time of day"):
        return text
    most = 2 * one.example if one.high is None else min(2 * one.example, one.high)
    numbers = {"from": one.example, "to": most, "step": one.example / _STEPS}
    return {key: f"{plain(number)} {one.unit}".strip() for key, number in numbers.items()}


def _plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u202f", " ")
