"""How long a bed lasts under each kind of control, and what is set."""

import math

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import round_to, snap
from calculators.readings import CLOCK, DELAYED, IMMEDIATE, TWIN, control

IMMEDIATE_RESERVE = 3.0  # percent of the water between regenerations


def _reserve(given, work, total):
    """Return the reserve [gal] that this control needs, given or by habit of the trade."""
    if given.control == TWIN:
        return work.step("reserve", "The second tank stands ready: no reserve.", "0", 0.0, "gal")
    if given.reserve is not None:
        return given.reserve
    if given.control == DELAYED:
        return work.step(
            "reserve",
            "A delayed control waits until night, so the day that runs the counter out must still "
            "be covered: keep one day's water.",
            "{water} × 1 day",
            given.water,
            "gal",
        )
    work.put("small_share", IMMEDIATE_RESERVE, "%")
    return work.step(
        "reserve",
        "An immediate control needs only a little for the slow end of the bed.",
        "{water_between} × {small_share}",
        total * IMMEDIATE_RESERVE / 100,
        "gal",
    )


def _clock_interval(given, work, total):
    days = float(math.floor(snap(total / given.water) + 1e-9))
    if days < 1:
        raise InputProblem(
            "capacity",
            "The bed does not last one day: use more salt or resin, or a control with a meter.",
        )
    return work.step(
        "interval",
        "A time clock counts whole days: round down.",
        "{water_between} ÷ {water}, down to whole days",
        days,
        "days",
    )


def _meter_interval(given, work, total):
    reserve = _reserve(given, work, total)
    counter = round_to(total - reserve, given.meter_step, "down")
    if counter <= 0:
        field = "capacity" if given.reserve is None else "reserve"
        raise InputProblem(
            field,
            "Nothing is left for the counter after the reserve: use more salt or resin, or an "
            "immediate control or twin tanks.",
        )
    work.step(
        "counter",
        "Set the counter to the water left after the reserve, rounded down to the meter's step.",
        "{water_between} − {reserve}, down to a multiple of {meter_step}",
        counter,
        "gal",
    )
    if given.control == DELAYED:
        interval = work.step(
            "interval",
            "The counter runs out at any hour and the control then waits for night: on average "
            "half a day more.",
            "{counter} ÷ {water} + half a day",
            counter / given.water + 0.5,
            "days",
        )
    else:
        interval = work.step(
            "interval",
            "The control acts as soon as the counter is empty.",
            "{counter} ÷ {water}",
            counter / given.water,
            "days",
        )
    return counter, interval


def _longest_interval(given, work):
    sentence = "No bed stands longer than the longest interval, whatever it could still take."
    if given.control == CLOCK:
        days = float(math.floor(snap(given.longest_interval)))
        formula = "the smaller of {interval} and {longest_interval}, in whole days"
    else:
        days = given.longest_interval
        formula = "the smaller of {interval} and {longest_interval}"
    return work.step("interval", sentence, formula, days, "days")


def _regeneration_interval(given, work):
    total = work.step(
        "water_between",
        "The bed softens this much water before it is spent.",
        "{capacity} ÷ {setting}",
        given.capacity / given.setting,
        "gal",
    )
    values = {"total_water": total}
    if given.control == CLOCK:
        interval = _clock_interval(given, work, total)
    else:
        values["counter"], interval = _meter_interval(given, work, total)
    values["interval"] = interval
    if snap(interval) < 2:
        work.warn("The interval is very short: the bed or the salt dose is small for this home.")
    if snap(interval) > snap(given.longest_interval):
        values["interval"] = _longest_interval(given, work)
        work.warn(
            "The bed would stand longer than the longest interval: set the control to regenerate "
            f"after {work.shown(values['interval'], 'days')} in any case."
        )
    return values


REGENERATION_INTERVAL = Calculator(
    "regeneration-interval",
    "Capacity, reserve and days between regenerations",
    "How long does the bed last, and what do I set?",
    inputs=[
        Input(
            "capacity",
            "Usable capacity",
            "capacity",
            "grains",
            example=30000,
            low=500,
            high=400000,
            help="For the salt dose in use, from the capacity calculator.",
        ),
        Input(
            "setting",
            "Hardness setting",
            "hardness",
            "gpg",
            example=20,
            low=1,
            high=260,
            help="The number entered in the control.",
        ),
        Input(
            "water",
            "Water to soften",
            "flow",
            "gal/day",
            example=240,
            low=1,
            high=5000,
            help="From the household's load.",
        ),
        control(),
        Input(
            "reserve",
            "Reserve",
            "volume",
            "gal",
            low=0,
            high=10000,
            optional=True,
            help="Leave blank for the trade's habit: one day's water, or a little for an "
            "immediate control.",
            only_when=("control", (DELAYED, IMMEDIATE)),
        ),
        Input(
            "meter_step",
            "Step of the counter",
            "volume",
            "gal",
            default=10,
            metric_default=50,
            low=1,
            high=1000,
            help="The smallest change the counter can be set to.",
            only_when=("control", (DELAYED, IMMEDIATE, TWIN)),
            equipment="meter_step",
        ),
        Input(
            "longest_interval",
            "Longest interval",
            "time",
            "days",
            default=14,
            low=1,
            high=60,
            help="Regenerate at least this often, whatever the counter says; sooner with iron.",
        ),
    ],
    outputs=[
        Output("interval", "Days between regenerations", "time", "days", step=0.1),
        Output("counter", "Set the counter to", "volume", "gal", digits=None),
        Output("total_water", "Water the bed softens", "volume", "gal", step=1),
    ],
    compute=_regeneration_interval,
    picture=Curve("water", 60, 600, ["interval"]),
    sources=["common-practice"],
)

CALCULATORS = (REGENERATION_INTERVAL,)
