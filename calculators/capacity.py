"""What a salt dose gives back to the resin, and how long that lasts."""

import math

from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.quantities import round_to, snap
from calculators.units import CALCIUM_CARBONATE

#: The fitted curve: capacity that no dose passes, and the dose that gives half of it.
CURVE_TOP = 45000.0  # grains/ft3
CURVE_HALF = 7.51  # lb/ft3
SODIUM_CHLORIDE = 58.4427  # g/mol
GRAINS_IN_A_POUND = 7000.0
#: Grains of hardness that a pound of pure salt can exchange at the very most: two ions of sodium
#: for one of calcium.
SALT_CEILING = GRAINS_IN_A_POUND * CALCIUM_CARBONATE / (2 * SODIUM_CHLORIDE)


def capacity_of_dose(dose):
    """Return the usable capacity [grains/ft3] of standard gel resin for a salt dose [lb/ft3].

    A curve fitted to published pairs (6 lb gives about 20,000, 15 lb about 30,000), regenerated in
    the direction of service; valid from 3 to 20 lb/ft3, within about 10 percent. Any dose above
    zero gives an answer below the exchange that the salt itself allows.
    Sources: capacity-anchor, capacity-high-dose.

    >>> round(capacity_of_dose(6)), round(capacity_of_dose(15))
    (19985, 29987)
    """
    return CURVE_TOP * dose / (dose + CURVE_HALF)


def _resin_capacity(given, work):
    dose = work.step(
        "dose",
        "The dose is the salt for each volume of resin.",
        "{salt} ÷ {resin_volume}",
        given.salt / given.resin_volume,
        "lb/ft³",
    )
    if not 1 <= snap(dose) <= 25:
        side = "less" if dose < 1 else "more"
        raise InputProblem(
            "salt",
            f"That is {work.shown(dose, 'lb/ft³')} of resin, {side} than the relation holds for "
            f"({work.shown(1, 'lb/ft³')} to {work.shown(25, 'lb/ft³')}). "
            "Write the salt of one whole regeneration.",
        )
    if not 3 <= snap(dose) <= 20:
        work.warn("The dose lies outside the range the curve was fitted to: take it as a guess.")
    work.put("curve_top", CURVE_TOP, "grains/ft³")
    work.put("curve_half", CURVE_HALF, "lb/ft³")
    each = work.step(
        "capacity_for_each_volume",
        "More salt gives more capacity, but less and less for each pound.",
        "{curve_top} × {dose} ÷ ({dose} + {curve_half})",
        capacity_of_dose(dose),
        "grains/ft³",
    )
    capacity = work.step(
        "capacity",
        "All the resin together, in its present condition.",
        "{capacity_for_each_volume} × {resin_volume} × {resin_condition}",
        each * given.resin_volume * given.resin_condition / 100,
        "grains",
    )
    efficiency = work.step(
        "efficiency",
        "What each pound of salt brings back.",
        "{capacity} ÷ {salt}",
        capacity / given.salt,
        "grains/lb",
    )
    work.put("salt_ceiling", SALT_CEILING, "grains/lb")
    share = work.step(
        "share_of_the_ceiling",
        "Chemistry sets a ceiling: two ions of sodium for one of calcium.",
        "{efficiency} ÷ {salt_ceiling}",
        100 * efficiency / SALT_CEILING,
        "%",
    )
    return {
        "capacity": capacity,
        "dose": dose,
        "efficiency": efficiency,
        "share_of_ceiling": share,
    }


RESIN_CAPACITY = Calculator(
    "resin-capacity",
    "Capacity of the resin for a salt dose",
    "How much hardness can this bed take after this much salt?",
    inputs=[
        Input(
            "salt",
            "Salt for one regeneration",
            "mass",
            "lb",
            example=9,
            low=0.5,
            high=100,
            help="The whole amount, not the amount for each cubic foot.",
        ),
        Input(
            "resin_volume",
            "Resin in the tank",
            "volume",
            "ft³",
            example=1.5,
            low=0.2,
            high=10,
            usual_low=0.5,
            usual_high=4,
            help="From the unit's sheet, or the tank's area times the depth of the bed.",
        ),
        Input(
            "resin_condition",
            "Condition of the resin",
            "share",
            "%",
            default=100,
            low=10,
            high=110,  # with more, the smallest doses would pass the ceiling of the salt
            help="Lower for old or fouled resin, when a test has shown it.",
        ),
    ],
    outputs=[
        Output("capacity", "Usable capacity", "capacity", "grains", step=100),
        Output("dose", "Salt dose", "salt dose", "lb/ft³", step=0.1),
        Output("efficiency", "Capacity for each pound of salt", "salt efficiency", "grains/lb", digits=3),
        Output("share_of_ceiling", "Share of what the salt could do", "share", "%", step=1),
    ],
    compute=_resin_capacity,
    sources=["capacity-anchor", "capacity-high-dose", "atomic-weights"],
    cautions=["Never quote a tank's greatest capacity at a small dose: the two do not go together."],
)

CLOCK, DELAYED, IMMEDIATE, TWIN = "time clock", "delayed meter", "immediate meter", "twin tank"
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
        work.warn(
            "The bed would stand longer than the longest interval: set the control to regenerate "
            f"after {work.shown(given.longest_interval, 'days')} in any case."
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
        Input(
            "control",
            "Kind of control",
            "choice",
            default=DELAYED,
            choices=(CLOCK, DELAYED, IMMEDIATE, TWIN),
        ),
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
            low=1,
            high=1000,
            help="The smallest change the counter can be set to.",
            only_when=("control", (DELAYED, IMMEDIATE, TWIN)),
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
    sources=["common-practice"],
)

CALCULATORS = (RESIN_CAPACITY, REGENERATION_INTERVAL)
