"""How a calculator declares itself: its question, inputs, outputs, picture, cautions and sources.

Forms, reference pages, exercises and checks are all derived from these declarations. Calculators
import from here all that a declaration is made of; how an input reads what is typed stands in
inputs.py, how an output is rounded in outputs.py.
"""

from calculators.inputs import Input, InputProblem
from calculators.outputs import Output

__all__ = ["Calculator", "Course", "Curve", "Drawing", "Input", "InputProblem", "Output"]


class Curve:
    """The picture of a calculator's relation: outputs drawn over one input.

    input: the name of the input along the picture, from `low` to `high` in its own unit; all other
    inputs keep what is given. outputs: the names of one to three outputs of one unit. instead:
    curves for when `input` does not count; the first whose input counts is drawn.
    """

    def __init__(self, input, low, high, outputs, instead=()):
        self.input = input
        self.low = low
        self.high = high
        self.outputs = tuple(outputs)
        self.instead = tuple(instead)

    def for_inputs(self, names):
        """Return the curve over one of these inputs, the inputs that count, or None."""
        return next((one for one in (self, *self.instead) if one.input in names), None)


class Course:
    """The picture of what goes on through time.

    follow(given) gets the inputs as a calculation does and returns a dictionary: `times` [days],
    `marks` [days] of what happened at a moment, and `panels`, each (title, kind, unit, lines), where
    a line is (label, a number for each time) and all numbers of a panel have its unit.
    """

    def __init__(self, follow):
        self.follow = follow


class Drawing:
    """A picture of one thing alone.

    name: of a calculator's picture, its name in `figures`; of a drawing without a calculator, as
    pages name it. Such a one has inputs, and draw(given) gets them as a calculation does and
    returns SVG.
    """

    def __init__(self, name, inputs=(), draw=None):
        self.name = name
        self.inputs = tuple(inputs)
        self.draw = draw


class Calculator:
    """One calculator: what it answers and the function that works it out.

    compute(given, work) gets the inputs as attributes of `given`, tells its steps to `work` (a
    `working.Working`) and returns a dictionary of output name -> number in the output's unit.
    sources: keys of `sources.SOURCES`. cautions: sentences shown beside every answer.
    picture: what its form and pages show of it, a Curve, a Course or a Drawing.
    """

    def __init__(
        self,
        name,
        title,
        question,
        inputs,
        outputs,
        compute,
        *,
        sources,
        cautions=(),
        picture=None,
    ):
        self.name = name
        self.title = title
        self.question = question
        self.inputs = tuple(inputs)
        self.outputs = tuple(outputs)
        self.compute = compute
        self.sources = tuple(sources)
        self.cautions = tuple(cautions)
        self.picture = picture

    def input(self, name):
        """Return the input called `name`, or None."""
        return next((one for one in self.inputs if one.name == name), None)

    def output(self, name):
        """Return the output called `name`, or None."""
        return next((one for one in self.outputs if one.name == name), None)
