"""Working an exercise through its calculators, rightly or with a mistake on the way.

"steps" of an exercise are one to six: {"calculate": name, "inputs": {input: source}}. A source is
{"drawn": name}, {"text": what a person would type} or {"answer": output, "step": number}, the
answer of an earlier step.
"""

from types import SimpleNamespace

from calculators import CALCULATORS, read
from calculators.declare import InputProblem
from calculators.practice.before_rounding import in_hairs, rounds, with_parts_of_days
from calculators.practice.drawing import fixed_text
from calculators.working import Working


class Done:
    """One step worked out: its calculator, the texts it was given, and numbers in own units.

    drawn: the names of the inputs that the question gives, not an earlier step; varied: those of
    them that are another number in another question; unrounded: the values before the calculator
    rounds them to a control's steps.
    """

    __slots__ = ("calculator", "texts", "drawn", "varied", "given", "values", "unrounded")

    def __init__(self, calculator, texts, drawn, varied):
        self.calculator = calculator
        self.texts = texts
        self.drawn = drawn
        self.varied = varied


class Setting:
    """What a mistake may know beside its own step: the reader's units, asides, earlier steps."""

    __slots__ = ("units", "asides", "done")

    def __init__(self, units, asides, done):
        self.units = units
        self.asides = asides
        self.done = done


def given_texts(exercise, drawn, units):
    """Return for each step the text of every input that the question gives."""
    made = []
    for step in exercise["steps"]:
        calculator = CALCULATORS[step["calculate"]]
        texts = {}
        for name, source in step["inputs"].items():
            one = calculator.input(name)
            if "drawn" in source:
                texts[name] = drawn[source["drawn"]].shown(one.unit, units)
            elif "text" in source:
                texts[name] = fixed_text(source["text"], one, units)
        made.append(texts)
    return made


def asides_of(exercise, drawn):
    """Return the quantities that the question mentions and no step takes, by name, as draws."""
    return {name: drawn[name] for name in exercise.get("asides", {})}


def follow(exercise, texts, units, asides, ways=(), rounded=False):
    """Work out all steps; return a list of Done, or None where that is not possible.

    texts: as `given_texts` returns them. ways: the mistakes made on the way. rounded: whether a
    step takes the earlier answer as it is shown, as people do who write it down.
    """
    done = []
    for step, given in zip(exercise["steps"], texts, strict=True):
        calculator = CALCULATORS[step["calculate"]]
        varied = [name for name, source in step["inputs"].items() if "drawn" in source]
        one = Done(calculator, dict(given), frozenset(given), frozenset(varied))
        for name, source in step["inputs"].items():
            if "answer" in source:
                text = _earlier(done[source["step"]], source["answer"], units, rounded)
                if text is None:
                    return None
                one.texts[name] = text
        if not _work_out(one, Setting(units, asides, done), ways):
            return None
        done.append(one)
    return done


def _earlier(done, output, units, rounded):
    number = done.values.get(output)
    if number is None:
        return None
    value = done.calculator.output(output).value(number, units)
    if "unit" not in value:
        return value["words"]
    if rounded:
        return value["shown"]
    return f"{value['number']!r} {value['unit']}"


def _work_out(done, setting, ways):
    result = {"inputs": {}, "problems": {}}
    given = read(done.calculator, done.texts, setting.units, result)
    if result["problems"]:
        return False
    given = SimpleNamespace(**given)
    mine = [way for way in ways if way.concerns(done)]
    try:
        for way in mine:
            way.change_given(given, done, setting)
        if rounds(done.calculator):
            done.given = in_hairs(done.calculator, given)
            exact = _values(done, mine, setting)
            done.unrounded = with_parts_of_days(done.calculator, exact, given)
        done.given = given
        done.values = _values(done, mine, setting)
    except (InputProblem, ArithmeticError, ValueError):  # a wrong path may lead outside
        return False
    if not rounds(done.calculator):
        done.unrounded = done.values
    return True


def _values(done, ways, setting):
    work = Working(setting.units)
    for one in done.calculator.inputs:
        value = getattr(done.given, one.name)
        if value is not None and one.kind != "choice":
            work.put(one.name, value, one.unit)
    values = dict(done.calculator.compute(done.given, work))
    for way in ways:
        way.change_values(values, done, setting)
    return values
