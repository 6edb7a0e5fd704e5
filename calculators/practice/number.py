"""Exercises with numbers: one calculator, or two or three in a row.

Beside what `drawing` and `chain` say, the exercise has "story", a text in which the names of what
is drawn stand in braces, and "ask": a list of {"output", "step", "choices"}. Where a reading is
rough a field has "between": the two outputs between which every answer is right.
"""

from calculators import run
from calculators.practice import answers
from calculators.practice.mistakes import SENTENCES, mistakes_in, pairs_in
from calculators.practice.solution import part, rows
from calculators.practice.worked import accepted
from calculators.quantities import display_unit

#: The field for the number of the first step, which is asked for where a slip is not known.
FIRST = "first step"
#: What stands in the place of answers while something cannot be marked.
NOTHING_SOLVED = {"answers": [], "solution": []}
#: A given number matters where one of these multiples of it gives another answer.
OTHER_NUMBERS = 1.37, 0.71, 3.3


def field_name(field):
    """Return the name under which a field is asked and answered."""
    return field["output"]


def pose(exercise, seed, units, library=None):
    """Return the question for a seed as plain data; see `exercises.pose`."""
    worked = accepted(exercise, seed, units)
    shown = _shown(worked)
    return {
        "story": _filled(exercise["story"], shown),
        "given": _given(worked, exercise["story"]),
        "asked": [asked(worked, field) for field in exercise["ask"]],
    }


def asked(worked, field):
    """Return a field as a page shows it: name, label, and the words for its unit."""
    output = worked.output(field)
    unit = _unit(output, worked.units)
    choices = field.get("choices") or []
    return {
        "name": field_name(field),
        "label": output.label,
        "help": "" if choices else answers.unit_words(output, unit),
        "choices": choices,
    }


def _unit(output, units):
    return output.unit if output.fixed_unit else display_unit(output.unit, units)


def _shown(worked):
    """Return the text of everything drawn, and of each step's answers, by name."""
    found = {}
    for done in worked.right[:-1]:
        for output in done.calculator.outputs:
            if output.name in done.values:
                value = output.value(done.values[output.name], worked.units)
                found[output.name] = value["shown"]
    for step, texts in zip(worked.exercise["steps"], worked.texts, strict=True):
        for name, source in step["inputs"].items():
            if "drawn" in source:
                found[source["drawn"]] = texts[name]
    for name, draw in worked.asides.items():
        found[name] = draw.shown(worked.exercise["asides"][name]["unit"], worked.units)
    return found


def _filled(text, shown):
    for name, value in shown.items():
        text = text.replace(f"{{{name}}}", value)
    return text


def _given(worked, story):
    """Return label and text of what is needed and the story does not mention.

    What the exercise fixes and no answer depends on is left out, and so are fixed choices: the
    story tells of them.
    """
    found = []
    for number, done in enumerate(worked.right):
        for name, source in worked.exercise["steps"][number]["inputs"].items():
            one = done.calculator.input(name)
            if "answer" in source or f"{{{source.get('drawn')}}}" in story:
                continue
            if "text" in source and (one.kind == "choice" or not _matters(worked, number, one)):
                continue
            row = {"label": one.label, "shown": done.texts[name]}
            if row not in found:
                found.append(row)
    return found


class _OtherNumber:
    """A way through the steps that takes a multiple of one number that is given."""

    def __init__(self, calculator, name, factor):
        self._calculator = calculator
        self._name = name
        self._factor = factor

    def concerns(self, done):
        return done.calculator is self._calculator

    def change_given(self, given, done, setting):
        if getattr(given, self._name) is not None:
            setattr(given, self._name, self._factor * getattr(given, self._name))

    def change_values(self, values, done, setting):
        pass


def _matters(worked, number, one):
    """Tell whether an asked answer changes with what a step is given for an input."""
    calculator = worked.right[number].calculator
    for factor in OTHER_NUMBERS:
        done = worked.follow((_OtherNumber(calculator, one.name, factor),))
        for field in worked.exercise["ask"]:
            if worked.value(done, field) != worked.value(worked.right, field):
                return True
    return False


def mark(exercise, seed, units, given, library=None):
    """Return how the answers to a question are; see `exercises.mark`."""
    worked = accepted(exercise, seed, units)
    read, problems = _read(worked, given)
    result = {"problems": problems, "fields": {}, "mistakes": [], "feedback": [], "ask": []}
    for field in exercise["ask"]:
        name = field_name(field)
        if name in read:
            result["fields"][name] = _field(worked, field, read[name], given, result)
    share = sum(one["right"] for one in result["fields"].values()) / len(exercise["ask"])
    return {
        **result,
        "right": not problems and share == 1,
        "score": share,
        "critical": False,
        **(_solved(worked) if not problems else NOTHING_SOLVED),
    }


def solve(exercise, seed, units, library=None):
    """Return the answers to a question and the way to them; see `exercises.solve`."""
    return _solved(accepted(exercise, seed, units))


def _solved(worked):
    told = []
    for field in worked.exercise["ask"]:
        value = worked.value(worked.right, field)
        row = {"label": worked.output(field).label, "shown": value["shown"]}
        if field.get("between"):
            low, high = (
                worked.value(worked.right, {**field, "output": name})["shown"]
                for name in field["between"]
            )
            row["shown"] += f", anything from {low} to {high} being right"
        told.append(row)
    return {"answers": told, "solution": solution(worked)}


def _read(worked, given):
    read, problems = {}, {}
    for field in worked.exercise["ask"]:
        name = field_name(field)
        output = worked.output(field)
        try:
            read[name] = answers.read_answer(
                given.get(name, ""), output, _unit(output, worked.units), field.get("choices") or ()
            )
        except answers.AnswerProblem as problem:
            problems[name] = str(problem)
    return read, problems


def _field(worked, field, answer, given, result):
    """Return how one answer is, and note what was recognized in the result."""
    right = worked.value(worked.right, field)
    if worked.is_right(answer, field):
        said = f"Right: {right.get('shown')}." if "number" in right else "Right."
        return {"right": True, "feedback": said}
    mistakes = [] if "words" in right else recognized(worked, field, answer)
    said = [SENTENCES[one] for one in mistakes]
    if "words" in right:
        said = ["Look at the readings again: they say the other."]
    elif not mistakes:
        said = [_unknown(worked, field, given, result)]
    for sentence in said:
        if sentence not in result["feedback"]:
            result["feedback"].append(sentence)
    result["mistakes"] += [one for one in mistakes if one not in result["mistakes"]]
    return {"right": False, "feedback": " ".join(said)}


def recognized(worked, field, answer):
    """Return the listed mistakes, one or two, that give this answer; none where it is not known."""
    output = worked.output(field)
    right = worked.value(worked.right, field)
    several = mistakes_in(worked.exercise).items()
    for mistake, ways in several:
        for way in ways:
            if any(
                answers.is_alike(answer, value, output)
                for value in worked.wrong_values((way,), field)
            ):
                return [mistake]
    for pair in pairs_in(worked.exercise):
        if any(
            answers.is_alike(answer, value, output) for value in worked.wrong_values(pair, field)
        ):
            return [way.mistake for way in pair]
    for mistake, ways in several:
        for way in ways:
            if way.reach and answers.is_alike(answer, right, output, way.reach):
                return [mistake]
    return []


def _first_field(worked):
    """Return the field for the first step's answer that the second takes, or None."""
    if len(worked.texts) < 2:
        return None
    for step in worked.exercise["steps"][1:]:
        for source in step["inputs"].values():
            if source.get("step") == 0:
                return {"output": source["answer"], "step": 0}
    return None


def _unknown(worked, field, given, result):
    """Return what to say to a number that no known slip gives, and ask for the first step's."""
    first = _first_field(worked)
    if first is None or first == {"output": field["output"], "step": field["step"]}:
        return "No slip that is known here gives this number: go through the solution step by step."
    label = worked.output(first).label
    text = given.get(FIRST, "")
    if not (isinstance(text, str) and text.strip()):
        if not result["ask"]:
            result["ask"].append({**asked(worked, first), "name": FIRST})
        return f"Not yet. What did you find first, for “{label}”? Write it below, and look again."
    output = worked.output(first)
    try:
        number = answers.read_answer(text, output, _unit(output, worked.units))
    except answers.AnswerProblem as problem:
        result["problems"][FIRST] = str(problem)
        result["ask"].append({**asked(worked, first), "name": FIRST})
        return "Write the first number so that it can be read."
    if worked.is_right(number, first):
        return f"The first number, “{label}”, is right: the slip lies after it."
    mistakes = recognized(worked, first, number)
    result["mistakes"] += mistakes
    if mistakes:
        return f"The first number is off already. {' '.join(SENTENCES[one] for one in mistakes)}"
    return f"The first number is off already: begin again with “{label}”."


def solution(worked):
    """Return the steps as the calculators tell them."""
    made = []
    for done in worked.right:
        result = run(done.calculator.name, done.texts, worked.units)
        made.append(
            part(
                done.calculator.title,
                calculator=done.calculator.name,
                inputs=rows(result["inputs"]),
                workings=result["workings"],
                values=rows(result["values"]),
            )
        )
    return made
