"""One output of a calculator: its unit, and the rounding in which the trade shows it."""

import math

from calculators.quantities import (
    convert,
    display_unit,
    fixed,
    plain,
    round_to,
    show,
    significant,
    snap,
    with_unit,
)

_ROUNDING = {
    "nearest": "to the nearest {step}",
    "up": "up to the next {step}",
    "down": "down to a full {step}",
}


class Output:
    """One output of a calculator, with the rounding the trade shows it in.

    kind: as of an Input, or "words" for an answer in words.
    step and direction: shown as a multiple of `step`, to the "nearest", "up" or "down"; where step
    is None, shown with `digits` significant digits; where that is None too, as it comes out, for
    settings that the calculation itself rounds. fixed_unit: shown in `unit` to every reader.
    """

    def __init__(
        self,
        name,
        label,
        kind="number",
        unit="",
        *,
        step=None,
        direction="nearest",
        digits=4,
        fixed_unit=False,
    ):
        self.name = name
        self.label = label
        self.kind = kind
        self.unit = unit
        self.step = step
        self.direction = direction
        self.digits = digits
        self.fixed_unit = fixed_unit

    def value(self, number, units):
        """Return the plain structure of this output for a number in its own unit, or words."""
        if self.kind == "words":
            return {"label": self.label, "words": number, "shown": number}
        unit = self.unit if self.fixed_unit else display_unit(self.unit, units)
        if self.kind == "time of day":
            return self._time_of_day(number, unit)
        step = self.step
        if unit != self.unit:
            number = convert(number, self.unit, unit, self.kind)
            if step is not None:
                step = _power_of_ten_below(convert(step, self.unit, unit, self.kind))
        if step is None and self.digits is None:
            rounded = snap(number) if unit == self.unit else significant(number, 4)
            text, rounding = plain(rounded), "as the control takes it"
        elif step is None:
            rounded = significant(number, self.digits)
            text, rounding = plain(rounded), f"to {self.digits} significant digits"
        else:
            rounded = round_to(number, step, self.direction)
            text = fixed(rounded, step)
            rounding = _ROUNDING[self.direction].format(step=with_unit(plain(step), unit))
        return {
            "label": self.label,
            "number": number,
            "rounded": rounded,
            "unit": unit,
            "shown": with_unit(text, unit),
            "rounding": rounding,
        }

    def _time_of_day(self, number, unit):
        return {
            "label": self.label,
            "number": number,
            "rounded": round_to(number, 1 / 60),
            "unit": unit,
            "shown": show(number, unit),
            "rounding": "to the nearest minute",
        }


def _power_of_ten_below(number):
    return snap(10.0 ** math.floor(math.log10(snap(number)) + 1e-9))
