"""What a salt dose gives back to the resin."""

from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.quantities import snap
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
        Output(
            "efficiency",
            "Capacity for each pound of salt",
            "salt efficiency",
            "grains/lb",
            digits=3,
        ),
        Output("share_of_ceiling", "Share of what the salt could do", "share", "%", step=1),
    ],
    compute=_resin_capacity,
    sources=["capacity-anchor", "capacity-high-dose", "atomic-weights"],
    cautions=[
        "Never quote a tank's greatest capacity at a small dose: the two do not go together.",
    ],
)

CALCULATORS = (RESIN_CAPACITY,)
