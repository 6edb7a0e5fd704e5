"""A draw of an exercise with numbers, worked out; and which draws can be used.

A draw cannot be used where a mistake comes so near to the right answer, or to another mistake, that
a learner's number would not tell which it was; nor where a later step takes a number that lies a
hair beyond a step of the control. Both are judged as readers of either unit system have it.
"""

from calculators.practice import answers, chain
from calculators.practice.before_rounding import is_limited, step_of
from calculators.practice.drawing import TRIES, CannotBePosed, draws
from calculators.practice.mistakes import mistakes_in
from calculators.quantities import SYSTEMS


class Worked:
    """A draw of an exercise, worked out rightly.

    ask: the fields asked, each with its output; right: the steps as calculated; rounded: the steps
    of who writes shown answers down, None where those lead outside.
    """

    __slots__ = ("exercise", "units", "drawn", "texts", "asides", "right", "rounded", "_followed")

    def __init__(self, exercise, units, drawn):
        self.exercise = exercise
        self.units = units
        self.drawn = drawn
        self.texts = chain.given_texts(exercise, drawn, units)
        self.asides = chain.asides_of(exercise, drawn)
        self._followed = {}
        self.right = self.follow()
        self.rounded = self.follow(rounded=True) if len(self.texts) > 1 else self.right

    def follow(self, ways=(), rounded=False):
        """Work the steps out, with mistakes on the way or without; each way once."""
        key = (*ways, rounded)
        if key not in self._followed:
            self._followed[key] = chain.follow(
                self.exercise, self.texts, self.units, self.asides, ways, rounded=rounded
            )
        return self._followed[key]

    def output(self, field):
        """Return the output that a field asks for."""
        return self.right[field["step"]].calculator.output(field["output"])

    def value(self, done, field):
        """Return the plain structure of a field's answer in some steps, or None."""
        number = done[field["step"]].values.get(field["output"]) if done else None
        return None if number is None else self.output(field).value(number, self.units)

    def answer(self, field, ways=(), rounded=False):
        """Return a field's answer as `value` does, with mistakes on the way or without.

        "unrounded" is its number before the calculator rounds it to the steps of a control.
        """
        done = self.follow(ways, rounded=rounded)
        value = self.value(done, field)
        if value is not None and "number" in value:
            exact = done[field["step"]].unrounded[field["output"]]
            value["unrounded"] = self.output(field).value(exact, self.units)["number"]
        return value

    def right_answers(self, field):
        """Return the right answers to a field: exact, and of who writes shown answers down."""
        found = [self.answer(field)]
        if len(self.texts) > 1 and self.rounded:
            found.append(self.answer(field, rounded=True))
        return [value for value in found if value is not None]

    def is_right(self, answer, field):
        """Tell whether a number or choice is the answer to a field."""
        if field.get("between") and self._lies_between(answer, field):
            return True
        return any(
            answer == value["words"]
            if "words" in value
            else answers.is_right(answer, value, self.output(field))
            for value in self.right_answers(field)
        )

    def _lies_between(self, answer, field):
        ends = [self.value(self.right, {**field, "output": name}) for name in field["between"]]
        low, high = sorted(end["number"] for end in ends)
        return low <= answer <= high

    def wrong_values(self, ways, field):
        """Return the wrong answers to a field that ways give, in numbers; none changes nothing.

        The first is exact, the second that of who writes shown answers down on the way.
        """
        found = []
        for rounded in (False, True) if len(self.texts) > 1 else (False,):
            right = self.answer(field, rounded=rounded)
            value = self.answer(field, ways, rounded)
            if value is not None and "number" in value and value["number"] == value["number"]:
                if right is not None and answers.are_same(value, right):
                    continue
                if right is not None and value["unrounded"] == right["unrounded"]:
                    value["unrounded"] = value["number"]  # the slip is in the rounding itself
                found.append(value)
        return found


_last = {}


def accepted(exercise, seed, units):
    """Return the first draw for a seed that can be used, worked out. Raises CannotBePosed.

    It can be used in both unit systems, so that a seed is the same question to all. The last one is
    kept for its marking.
    """
    key = (repr(exercise), seed)
    if key not in _last:
        found = _first_usable(exercise, seed)
        _last.clear()
        _last[key] = found
    return _last[key][units]


def _first_usable(exercise, seed):
    for drawn in draws(exercise, seed):
        both = {}
        for units in SYSTEMS:
            both[units] = Worked(exercise, units, drawn)
            if not _can_be_used(both[units]):
                break
        else:
            return both
    raise CannotBePosed(f"“{exercise['id']}” has no usable draw in {TRIES} tries.")


def _can_be_used(worked):
    if worked.right is None or _lies_on_an_edge(worked):
        return False
    if not all(done_is_usual(done) for done in worked.right):
        return False
    if any(is_limited(done) for done in worked.right):
        return False  # no story tells of the longest interval
    for field in worked.exercise["ask"]:
        value = worked.answer(field)
        if value is None or worked.value(worked.rounded, field) is None:
            return False
        if "words" in value:
            if field.get("choices") and value["words"] not in field["choices"]:
                return False
            continue
        if not _keeps_apart(worked, field, value):
            return False
    return True


def _lies_on_an_edge(worked):
    """Tell whether a step takes a rounded number that a hair less or more would make another."""
    for step in worked.exercise["steps"]:
        for source in step["inputs"].values():
            if "answer" not in source:
                continue
            field = {"output": source["answer"], "step": source["step"]}
            done = worked.right[field["step"]]
            by = step_of(done, field["output"])
            if by is None:
                continue
            exact, rounded = (one[field["output"]] for one in (done.unrounded, done.values))
            if answers.is_on_an_edge(exact, rounded, by):
                return True
    return False


def done_is_usual(done):
    """Tell whether what varies lies in the usual range of its input; what a shop says may not."""
    for one in done.calculator.inputs:
        value = getattr(done.given, one.name)
        if one.name in done.varied and value is not None and one.kind != "choice":
            if one.unusual_warning(value, "us"):
                return False
    return True


def _keeps_apart(worked, field, right):
    """Tell whether no mistake comes near the right answer or near another mistake."""
    output = worked.output(field)
    told = []
    for mistake, ways in mistakes_in(worked.exercise).items():
        for way in ways:
            if way.reach:
                continue
            for value in worked.wrong_values((way,), field):
                if any(worked.is_right(one, field) for one in answers.numbers_of(value)):
                    return False
                if not answers.are_apart(value, right, output):
                    return False
                if any(
                    name != mistake and not answers.are_apart(value, other, output)
                    for name, other in told
                ):
                    return False
                told.append((mistake, value))
    return True
