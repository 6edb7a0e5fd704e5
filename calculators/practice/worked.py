"""A draw of an exercise with numbers, worked out; and which draws can be used.

A draw cannot be used where a mistake comes so near to the right answer, or to another mistake, that
a learner's number would not tell which it was.
"""

from calculators.practice import answers, chain
from calculators.practice.drawing import TRIES, CannotBePosed, draws
from calculators.practice.mistakes import mistakes_in


class Worked:
    """A draw of an exercise, worked out rightly.

    ask: the fields asked, each with its output; right: the steps as calculated; rounded: the steps
    of who writes shown answers down, None where those lead outside.
    """

    __slots__ = ("exercise", "units", "drawn", "texts", "asides", "right", "rounded")

    def __init__(self, exercise, units, drawn):
        self.exercise = exercise
        self.units = units
        self.drawn = drawn
        self.texts = chain.given_texts(exercise, drawn, units)
        self.asides = chain.asides_of(exercise, drawn)
        self.right = self.follow()
        self.rounded = self.follow(rounded=True) if len(self.texts) > 1 else self.right

    def follow(self, ways=(), rounded=False):
        """Work the steps out, with mistakes on the way or without."""
        return chain.follow(
            self.exercise, self.texts, self.units, self.asides, ways, rounded=rounded
        )

    def output(self, field):
        """Return the output that a field asks for."""
        return self.right[field["step"]].calculator.output(field["output"])

    def value(self, done, field):
        """Return the plain structure of a field's answer in some steps, or None."""
        number = done[field["step"]].values.get(field["output"]) if done else None
        return None if number is None else self.output(field).value(number, self.units)

    def is_right(self, answer, field):
        """Tell whether a number or choice is the answer to a field."""
        if field.get("between") and self._lies_between(answer, field):
            return True
        return any(
            answer == value["words"]
            if "words" in value
            else answers.is_right(answer, value, self.output(field))
            for value in map(lambda done: self.value(done, field), (self.right, self.rounded))
            if value is not None
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
            right = self.value(self.rounded if rounded else self.right, field)
            value = self.value(self.follow(ways, rounded=rounded), field)
            if value is not None and "number" in value and value["number"] == value["number"]:
                if not answers.are_same(value, right):
                    found.append(value)
        return found


def accepted(exercise, seed, units):
    """Return the first draw for a seed that can be used, worked out. Raises CannotBePosed.

    The units in which the exercise is written decide, so that a seed is the same question to all.
    """
    own = exercise.get("written_in", units)
    for drawn in draws(exercise, seed):
        worked = Worked(exercise, own, drawn)
        if _can_be_used(worked):
            worked = worked if own == units else Worked(exercise, units, drawn)
            if worked.right is not None:
                return worked
    raise CannotBePosed(f"“{exercise['id']}” has no usable draw in {TRIES} tries.")


def _can_be_used(worked):
    if worked.right is None:
        return False
    for field in worked.exercise["ask"]:
        value = worked.value(worked.right, field)
        if value is None or worked.value(worked.rounded, field) is None:
            return False
        if "words" in value:
            if field.get("choices") and value["words"] not in field["choices"]:
                return False
            continue
        if not _keeps_apart(worked, field, value):
            return False
    return all(done_is_usual(done) for done in worked.right)


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
            for value in worked.wrong_values((way,), field)[:1]:
                if worked.is_right(value["number"], field) or worked.is_right(
                    value["rounded"], field
                ):
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
