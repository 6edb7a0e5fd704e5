"""The working of a calculation, step by step, in words and numbers."""

from calculators.quantities import (
    convert,
    display_unit,
    kind_of,
    show,
    working_number,
)


class Working:
    """Collects the steps and warnings of one calculation for a reader of `units`.

    Formulas are equations between quantities ("{salt} ÷ {salt_per_gallon}"), so they hold in any
    unit: each name in braces stands once in words and once with its number and unit.
    """

    def __init__(self, units):
        self.units = units
        self.warnings = []
        self._known = {}
        self._steps = []

    def put(self, name, number, unit="", *, fixed_unit=False):
        """Make an input or constant known by name, so that formulas can use it.

        fixed_unit: shown in `unit` to every reader, as where the unit itself is the subject.
        """
        self._known[name] = (number, unit, fixed_unit)

    def step(self, name, sentence, formula, number, unit="", *, fixed_unit=False):
        """Add a step whose result is `number` of `unit`; later formulas may use it by name."""
        self._steps.append((sentence, formula, dict(self._known), (number, unit, fixed_unit)))
        self.put(name, number, unit, fixed_unit=fixed_unit)
        return number

    @property
    def steps(self):
        """The steps in words; a picture, which asks only for numbers, never writes them."""
        return [
            {
                "sentence": sentence,
                "formula": formula.format_map({name: name.replace("_", " ") for name in known}),
                "numbers": formula.format_map(_Shown(self, known)),
                "result": self.shown(*result),
            }
            for sentence, formula, known, result in self._steps
        ]

    def warn(self, sentence):
        """Add a sentence about an answer that is true but unusual."""
        self.warnings.append(sentence)

    def shown(self, number, unit, fixed_unit=False):
        """Return a number of a calculation's unit as the reader sees it inside a working."""
        own = unit if fixed_unit else display_unit(unit, self.units)
        if own != unit:
            number = convert(number, unit, own, kind_of(unit))
        return show(number, own, working_number)


class _Shown(dict):
    """What was known at a step, as the reader sees it; only what its formula names is written."""

    def __init__(self, work, known):
        self._work = work
        self._known = known

    def __missing__(self, name):
        return self._work.shown(*self._known[name])
