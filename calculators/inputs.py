"""One input of a calculator: what it declares, and what somebody means by what they type.

Plain classes, not dataclasses, because every module imported here is one more that a phone must
load.
"""

from calculators.quantities import (
    KINDS,
    LARGEST,
    QuantityError,
    check_length,
    convert,
    display_unit,
    nearest,
    normal_spelling,
    parse,
    plain,
    read_number,
    show,
    significant,
    snap,
    with_unit,
)


class InputProblem(Exception):
    """What is wrong with one input, as a sentence for the person who typed it."""

    def __init__(self, name, sentence):
        super().__init__(sentence)
        self.name = name
        self.sentence = sentence


class Input:
    """One input of a calculator.

    kind: a key of `quantities.KINDS`, or "count" (whole), "number" (no unit) or "choice".
    unit: the unit in which `default`, the limits and the calculation take the number.
    default: None when it must be given; `example` is then what a form first shows. A choice whose
    example is not its default asks about safety: its form starts with the default, which refuses.
    metric_default: the default of a metric reader, in that reader's unit, where people there take
    another round number. low, high: the calculator refuses what lies outside; above `high`
    `refused` adds a sentence. usual_low, usual_high: outside these it answers with a warning, to
    which `unusual` adds a sentence. optional: may be left blank. shop: the value of the shop that
    replaces the default. equipment: the figure of a unit of equipment that fills the input in where
    a unit is named. only_when: (name of a choice input, its choices for which this input counts).
    """

    def __init__(
        self,
        name,
        label,
        kind,
        unit="",
        *,
        default=None,
        metric_default=None,
        example=None,
        low=None,
        high=None,
        usual_low=None,
        usual_high=None,
        help="",
        unusual="",
        refused="",
        choices=(),
        optional=False,
        shop=None,
        equipment=None,
        only_when=None,
        slider=None,
    ):
        self.name = name
        self.label = label
        self.kind = kind
        self.unit = unit
        self.default = default
        self.metric_default = metric_default
        self.example = default if example is None else example
        self.low = low
        self.high = high
        self.usual_low = usual_low
        self.usual_high = usual_high
        self.help = help
        self.unusual = unusual
        self.refused = refused
        self.choices = tuple(choices)
        self.optional = optional
        self.shop = shop
        self.equipment = equipment
        self.only_when = only_when
        self.slider = slider

    def read(self, value, units):
        """Return what `value` means: a number in `unit`, a choice, or None for a blank.

        `value` is text as typed, a number in the unit that a reader of `units` sees, or None for
        the default. Raises InputProblem.
        """
        if value is None:
            return self._default(units)
        if isinstance(value, str) and not value.strip():
            if self.optional:
                return None
            raise InputProblem(self.name, f"{self.label} is empty. {self._wanted(units)}")
        if self.kind == "choice":
            return self._read_choice(value)
        number, bare = self._read_number(value, units)
        if self.kind == "count" and number != int(number):
            raise InputProblem(self.name, f"{plain(number)} is not a whole number. Write one.")
        self._check_limits(number, bare, units)
        return number

    def _default(self, units):
        if self.default is None and not self.optional:
            raise InputProblem(self.name, f"{self.label} is missing. {self._wanted(units)}")
        if self.default is None or self.kind == "choice":
            return self.default
        number, unit = self.round_default(units)
        return convert(number, unit, self.unit, self.kind)

    def round_default(self, units):
        """Return the default as a round number in the reader's own unit, and that unit."""
        number, unit = self.displayed(self.default, units)
        if units == "metric" and self.metric_default is not None:
            return self.metric_default, unit
        return (number if number == self.default else significant(number, 3)), unit

    def default_text(self, units):
        """Return the default as a reader of `units` sees it."""
        return show(*self.round_default(units))

    def _wanted(self, units):
        if self.kind == "choice":
            return f"Choose one of: {', '.join(self.choices)}."
        words = KINDS[self.kind].words if self.kind in KINDS else "a number"
        if self.example is None:
            return f"Write {words}."
        return f"Write {words}, such as {self.example_text(units)}."

    def _read_choice(self, value):
        if not isinstance(value, str):
            raise InputProblem(self.name, f"That is not a choice. {self._wanted('us')}")
        wanted = " ".join(value.lower().split())
        for choice in self.choices:
            if wanted == choice:
                return choice
        close = nearest(wanted[:60], self.choices)
        guess = f" The nearest is “{close}”." if close else ""
        raise InputProblem(
            self.name,
            f"“{value[:40]}” is not a choice. Choose one of: {', '.join(self.choices)}.{guess}",
        )

    def _read_number(self, value, units):
        """Return the number in `unit`, and whether it came without a unit of its own."""
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            if not abs(value) <= LARGEST:
                raise InputProblem(self.name, f"That is not a usable number. {self._wanted(units)}")
            if self.kind == "time of day":
                return float(value), True
            value = str(value)
        if not isinstance(value, str):
            raise InputProblem(self.name, f"That is not a number. {self._wanted(units)}")
        try:
            if self.kind in KINDS:
                quantity = parse(value, self.kind, display_unit(self.unit, units))
                return quantity.to(self.unit).number, not read_number(value)[1]
            check_length(value)
            number, rest = read_number(value)
        except QuantityError as error:
            raise InputProblem(self.name, str(error)) from None
        if rest:
            raise InputProblem(self.name, f"“{rest}” does not belong here. Write a number alone.")
        return number, True

    def _check_limits(self, number, bare, units):
        too_low = self.low is not None and snap(number) < snap(self.low)
        too_high = self.high is not None and snap(number) > snap(self.high)
        if not (too_low or too_high):
            return
        if too_low:
            side, limit = "below", self.shown_limit(self.low, units, "up")
        else:
            side, limit = "above", self.shown_limit(self.high, units, "down")
        sentence = f"{self.shown(number, units)} is {side} the limit of {limit}."
        sentence += self._meant_unit(number, units) if bare else ""
        if too_high and self.refused:
            sentence += f" {self.refused}"
        raise InputProblem(self.name, sentence)

    def _meant_unit(self, number, units):
        """Say in which other unit a number without a unit would have been a usual one."""
        if self.kind not in KINDS:
            return ""
        own = display_unit(self.unit, units)
        written = convert(number, self.unit, own, self.kind)
        low = self.usual_low if self.usual_low is not None else self.low
        high = self.usual_high if self.usual_high is not None else self.high
        for unit in KINDS[self.kind].units:
            other = snap(convert(written, unit, self.unit, self.kind))
            if unit != own and (low is None or other >= low) and (high is None or other <= high):
                meant = with_unit(plain(written), unit)
                other = with_unit(plain(significant(self.displayed(other, units)[0], 3)), own)
                return f" If you meant {meant}, write the unit: that is {other}."
        return ""

    def unusual_warning(self, number, units):
        """Return the sentence for a number outside the usual range, or None."""
        too_low = self.usual_low is not None and snap(number) < snap(self.usual_low)
        too_high = self.usual_high is not None and snap(number) > snap(self.usual_high)
        if not (too_low or too_high):
            return None
        side, limit = ("below", self.usual_low) if too_low else ("above", self.usual_high)
        sentence = (
            f"{self.label}: {self.shown(number, units)} is {side} the usual "
            f"{self.shown_limit(limit, units, digits=3)}."
        )
        return f"{sentence} {self.unusual}".strip()

    def example_text(self, units):
        """Return what a form has in this input at first, as a reader of `units` would type it."""
        if self.kind == "choice" or self.example is None:
            return self.example or ""
        if self.example == self.default and self.metric_default is not None:
            return self.default_text(units)
        number, unit = self.displayed(self.example, units)
        return show(number if number == self.example else significant(number, 2), unit)

    def slider_texts(self, units):
        """Return what the slider writes into the field at each of its places, if it has one."""
        if self.slider is None:
            return []
        least, most, step = self.slider
        texts = []
        for place in range(round((most - least) / step) + 1):
            number, unit = self.displayed(least + place * step, units)
            if unit != self.unit:
                number = significant(number, 3)
            texts.append(show(snap(number), unit))
        return texts

    def displayed(self, number, units):
        """Return a number of this input's own unit, and its unit, as a reader of `units` has it."""
        unit = display_unit(self.unit, units)
        return convert(number, self.unit, unit, self.kind), unit

    def shown(self, number, units):
        """Return the text of a number of this input's own unit for a reader of `units`."""
        return show(*self.displayed(number, units))

    def shown_limit(self, limit, units, direction="nearest", digits=4):
        """Return the text of a limit: a round number also where the unit was converted."""
        number, unit = self.displayed(limit, units)
        return show(number if number == limit else significant(number, digits, direction), unit)


def unit_written(text, kind):
    """Return the unit that a text names for a quantity of `kind`, or None where it names none.

    >>> unit_written("310 ppm", "hardness")
    'mg/L'
    """
    if not isinstance(text, str) or kind not in KINDS or kind == "time of day":
        return None
    try:
        _, rest = read_number(text)
    except QuantityError:
        return None
    return KINDS[kind].spelled.get(normal_spelling(rest))
