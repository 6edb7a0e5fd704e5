"""How far the salt should fall, and what a customer's mark on the tank says."""

import math

from calculators.declare import Calculator, Input, Output
from calculators.quantities import snap
from calculators.readings import salt_of_regeneration
from calculators.units import CUBIC_FOOT, INCH
from calculators.usage import DAYS_IN_A_MONTH

#: Shares of the expected fall [percent] below and above which something is wrong.
TOO_LITTLE, TOO_MUCH = 30, 170
#: The least expected fall [in] beside which a fall read off loose salt says anything.
LEAST_JUDGED = 2.0
CUBIC_INCHES_IN_A_CUBIC_FOOT = CUBIC_FOOT * 1000 / INCH**3


def salt_fall(salt, bulk_density, diameter):
    """Return how far [in] the surface of loose salt falls in a round tank when salt is used up.

    salt: lb; bulk_density: lb/ft3, 60 to 84; diameter of the tank: in. Plain geometry, for salt
    that settles evenly; a bridge of salt breaks it. Source of bulk densities: salt-bulk.

    >>> round(salt_fall(9, 74, 18), 2)
    0.83
    """
    volume = salt / bulk_density * CUBIC_INCHES_IN_A_CUBIC_FOOT
    return volume / (math.pi * diameter**2 / 4)


def _verdict(share):
    """Return what the share [percent] of the expected fall says."""
    if snap(share) < TOO_LITTLE:
        return "hardly any salt is used: look for a bridge, a missed refill, a stopped control"
    if snap(share) > TOO_MUCH:
        return "too much salt is used: look for a wrong setting, a leak, a long refill"
    return "as expected"


def _salt_fall(given, work):
    work.step(
        "tank_area",
        "The area of the round tank.",
        "π × ({tank_diameter} ÷ 2)²",
        math.pi * given.tank_diameter**2 / 4,
        "in²",
    )
    each = work.step(
        "fall_each_time",
        "The salt of one regeneration leaves so much room when the salt settles evenly.",
        "{salt} ÷ {bulk_density} ÷ {tank_area}",
        salt_fall(given.salt, given.bulk_density, given.tank_diameter),
        "in",
    )
    expected = work.step(
        "expected_fall",
        "All regenerations since the mark was made.",
        "{fall_each_time} × {regenerations}",
        each * given.regenerations,
        "in",
    )
    values = {"each": each, "expected": expected}
    if given.interval is not None:
        work.put("days_in_a_month", DAYS_IN_A_MONTH, "days")
        values["month"] = work.step(
            "fall_in_a_month",
            "In a month, at the usual interval.",
            "{fall_each_time} × {days_in_a_month} ÷ {interval}",
            each * DAYS_IN_A_MONTH / given.interval,
            "in",
        )
    if given.observed is not None:
        values["share"] = work.step(
            "share",
            "What was seen, beside what was expected.",
            "{observed} ÷ {expected_fall}",
            100 * given.observed / expected,
            "%",
        )
        values["verdict"] = _verdict(values["share"])
        if snap(expected) < LEAST_JUDGED:
            work.warn(
                "So small a fall is hard to read on loose salt: judge after more regenerations."
            )
    return values


SALT_FALL = Calculator(
    "salt-fall",
    "Fall of the salt against what was seen",
    "How far should the salt have fallen by now?",
    inputs=[
        salt_of_regeneration(example=7.5, help="The whole amount, as it is set."),
        Input(
            "tank_diameter",
            "Diameter of the brine tank",
            "length",
            "in",
            example=18,
            low=8,
            high=48,
            help="Inside, across the salt.",
            equipment="brine_tank_diameter",
        ),
        Input(
            "bulk_density",
            "Weight of the loose salt",
            "salt dose",
            "lb/ft³",
            default=74,
            low=50,
            high=100,
            usual_low=60,
            usual_high=84,
            help="Pellets, crystals and rock salt differ.",
        ),
        Input(
            "regenerations",
            "Regenerations since the mark",
            "count",
            example=6,
            low=1,
            high=500,
            help="From the control's own count, or the days divided by the interval.",
        ),
        Input(
            "observed",
            "Fall that was seen",
            "length",
            "in",
            low=0,
            high=60,
            optional=True,
            help="From the mark down to the salt today, with none added in between.",
        ),
        Input(
            "interval",
            "Days between regenerations",
            "time",
            "days",
            low=0.2,
            high=60,
            optional=True,
            help="To see the fall in a month.",
        ),
    ],
    outputs=[
        Output("expected", "Expected fall since the mark", "length", "in", step=0.1),
        Output("each", "Fall for each regeneration", "length", "in", digits=2),
        Output("month", "Fall in a month", "length", "in", step=0.1),
        Output("share", "Seen, beside what was expected", "share", "%", digits=2),
        Output("verdict", "What that says", "words"),
    ],
    compute=_salt_fall,
    sources=["salt-bulk", "common-practice"],
    cautions=[
        "A bridge of salt makes the surface lie: probe it gently with a blunt stick, and ask how "
        "many bags were bought.",
    ],
)

CALCULATORS = (SALT_FALL,)
