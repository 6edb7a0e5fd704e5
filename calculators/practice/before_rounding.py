"""What a control takes, as it is before it is rounded to the control's steps.

A learner who works exactly and leaves the last rounding out is right, too; and where exact numbers
lie a hair beyond a step, it is the rounding of who writes them down that decides.
"""

from types import SimpleNamespace

from calculators.quantities import snap
from calculators.readings import CLOCK

#: A step so small that rounding to it changes nothing.
HAIR = 1e-6
#: The steps of the controls, by calculator.
STEPS = {
    "hardness-setting": "setting_step",
    "regeneration-interval": "meter_step",
    "brine-refill": "time_step",
    "salt-for-capacity": "salt_step",
}
#: A time clock counts whole days.
DAY = 1.0


def rounds(calculator):
    """Tell whether a calculator rounds to the steps of a control."""
    return calculator.name in STEPS


def in_hairs(calculator, given):
    """Return what a calculator that rounds is given, with a step that changes nothing."""
    return SimpleNamespace(**{**vars(given), STEPS[calculator.name]: HAIR})


def with_parts_of_days(calculator, values, given):
    """Return what a calculator says with a time clock's days before they are rounded down."""
    if calculator.name == "regeneration-interval" and given.control == CLOCK:
        return {**values, "interval": _days(values, given)}
    return values


def is_limited(done):
    """Tell whether the longest interval decides how many days a time clock waits."""
    return (
        done.calculator.name == "regeneration-interval"
        and done.given.control == CLOCK
        and snap(_days(done.values, done.given)) > snap(done.given.longest_interval)
    )


def _days(values, given):
    return values["total_water"] / given.water


def step_of(done, output):
    """Return the step to which a worked step rounded an answer, in its own unit; None for none."""
    if not rounds(done.calculator):
        return None
    if output == "interval":
        return DAY if done.given.control == CLOCK else None
    if done.calculator.output(output).digits is not None:
        return None
    return getattr(done.given, STEPS[done.calculator.name])
