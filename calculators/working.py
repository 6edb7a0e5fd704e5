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
        self.steps = []
        self.warnings = []
        self._words = {}
        self._shown = {}

    def put(self, name, number, unit="", *, fixed_unit=False):
        """Make an input or constant known by name, so that formulas can use it.

        fixed_unit: shown in `unit` to every reader, as where the unit itself is the subject.
        """
        self._words[name] = name.replace("_", " ")
        self._shown[name] = self.shown(number, unit, fixed_unit)

    def step(self, name, sentence, formula, number, unit="", *, fixed_unit=False):
        """Add a step whose result is `number` of `unit`; later formulas may use it by name."""
        self.steps.append(
            {
                "sentence": sentence,
                "formula": formula.format_map(self._words),
                "numbers": formula.format_map(self._shown),
                "result": self.shown(number, unit, fixed_unit),
            }
        )
        self.put(name, number, unit, fixed_unit=fixed_unit)
        return number

    def warn(self, sentence):
        """Add a sentence about an answer that is true but unusual."""
        self.warnings.append(sentence)

    def shown(self, number, unit, fixed_unit=False):
        """Return a number of a calculation's unit as the reader sees it inside a working."""
        own = unit if fixed_unit else display_unit(unit, self.units)
        if own != unit:
            number = convert(number, unit, own, kind_of(unit))
        return show(number, own, working_number)
