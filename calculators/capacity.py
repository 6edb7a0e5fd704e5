"""What a salt dose gives back to the resin, and the dose for what is wanted back."""

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import round_to, snap
from calculators.readings import resin_condition, resin_volume, salt_of_regeneration, salt_step
from calculators.units import CALCIUM_CARBONATE

#: The fitted curve: capacity that no dose passes, and the dose that gives half of it.
CURVE_TOP = 45000.0  # grains/ft3
CURVE_HALF = 7.51  # lb/ft3
#: Doses the curve was fitted to, and doses between which it is used at all.
LEAST_FITTED, MOST_FITTED = 3.0, 20.0  # lb/ft3
LEAST_DOSE, MOST_DOSE = 1.0, 25.0  # lb/ft3
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


def dose_of_capacity(capacity):
    """Return the salt dose [lb/ft3] for a usable capacity [grains/ft3]: `capacity_of_dose` turned.

    capacity: 0 to below CURVE_TOP; the dose is trusted from 3 to 20 lb/ft3.
    Sources: capacity-anchor, capacity-high-dose.

    >>> round(dose_of_capacity(capacity_of_dose(9)), 9)
    9.0
    """
    return CURVE_HALF * capacity / (CURVE_TOP - capacity)


def _resin_capacity(given, work):
    dose = work.step(
        "dose",
        "The dose is the salt for each volume of resin.",
        "{salt} ÷ {resin_volume}",
        given.salt / given.resin_volume,
        "lb/ft³",
    )
    if not LEAST_DOSE <= snap(dose) <= MOST_DOSE:
        side = "less" if dose < LEAST_DOSE else "more"
        raise InputProblem(
            "salt",
            f"That is {work.shown(dose, 'lb/ft³')} of resin, {side} than the relation holds for "
            f"({work.shown(LEAST_DOSE, 'lb/ft³')} to {work.shown(MOST_DOSE, 'lb/ft³')}). "
            "Write the salt of one whole regeneration.",
        )
    if not LEAST_FITTED <= snap(dose) <= MOST_FITTED:
        work.warn("The dose lies outside the range the curve was fitted to: take it as a guess.")
    work.put("curve_top", CURVE_TOP, "grains/ft³")
    work.put("curve_half", CURVE_HALF, "lb/ft³")
    each = work.step(
        "capacity_for_each_volume",
        "More salt gives more capacity, but the more there is the less it adds.",
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
        "The salt efficiency, or what the salt brings back for its weight.",
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
        salt_of_regeneration(slider=(3, 30, 0.5)),
        resin_volume(),
        resin_condition(),
    ],
    outputs=[
        Output("capacity", "Usable capacity", "capacity", "grains", step=100),
        Output("dose", "Salt dose", "salt dose", "lb/ft³", step=0.1),
        Output(
            "efficiency",
            "Salt efficiency",
            "salt efficiency",
            "grains/lb",
            digits=3,
        ),
        Output("share_of_ceiling", "Share of what the salt could do", "share", "%", step=1),
    ],
    compute=_resin_capacity,
    picture=Curve("salt", 1.5, 30, ["capacity"]),
    sources=["capacity-anchor", "capacity-high-dose", "atomic-weights"],
    cautions=[
        "Never quote a tank's greatest capacity at a small dose: the two do not go together.",
    ],
)


def _dose_wanted(given, work):
    """Return the dose [lb/ft3] for the capacity wanted; refuse what the curve does not hold for."""
    each = work.step(
        "capacity_for_each_volume",
        "What each volume of resin would give if it were as new.",
        "{capacity} ÷ ({resin_volume} × {resin_condition})",
        given.capacity / (given.resin_volume * given.resin_condition / 100),
        "grains/ft³",
    )
    most = capacity_of_dose(MOST_FITTED)
    if snap(each) > snap(most):
        raise InputProblem(
            "capacity",
            f"That asks {work.shown(each, 'grains/ft³')} of the resin, and even a dose of "
            f"{work.shown(MOST_FITTED, 'lb/ft³')} gives only {work.shown(most, 'grains/ft³')}: "
            "use more resin, or regenerate sooner.",
        )
    work.put("curve_top", CURVE_TOP, "grains/ft³")
    work.put("curve_half", CURVE_HALF, "lb/ft³")
    dose = work.step(
        "dose",
        "The relation of capacity and dose, turned round.",
        "{curve_half} × {capacity_for_each_volume} ÷ ({curve_top} − {capacity_for_each_volume})",
        dose_of_capacity(each),
        "lb/ft³",
    )
    if snap(dose) < LEAST_DOSE:
        raise InputProblem(
            "capacity",
            f"That takes less than {work.shown(LEAST_DOSE, 'lb/ft³')} of salt, too little for the "
            "relation to hold. Write the capacity of one whole regeneration.",
        )
    return dose


def _salt_for_capacity(given, work):
    dose = _dose_wanted(given, work)
    exact = work.step(
        "exact_salt",
        "The salt for all the resin.",
        "{dose} × {resin_volume}",
        dose * given.resin_volume,
        "lb",
    )
    salt = work.step(
        "salt",
        "Round up: with less the bed would run out early.",
        "{exact_salt}, up to a multiple of {salt_step}",
        round_to(exact, given.salt_step, "up"),
        "lb",
    )
    if not LEAST_FITTED <= snap(salt / given.resin_volume) <= MOST_FITTED:
        work.warn("The dose lies outside the range the curve was fitted to: take it as a guess.")
    efficiency = work.step(
        "efficiency",
        "The salt efficiency, or what the set salt brings of the capacity wanted, for its weight.",
        "{capacity} ÷ {salt}",
        given.capacity / salt,
        "grains/lb",
    )
    work.put("salt_ceiling", SALT_CEILING, "grains/lb")
    least = work.step(
        "least_salt",
        "By chemistry alone, two ions of sodium for one of calcium, so little would do: the rest "
        "passes through unused, and no bed comes near it.",
        "{capacity} ÷ {salt_ceiling}",
        given.capacity / SALT_CEILING,
        "lb",
    )
    return {
        "salt": salt,
        "exact_salt": exact,
        "dose": dose,
        "efficiency": efficiency,
        "least_salt": least,
    }


SALT_FOR_CAPACITY = Calculator(
    "salt-for-capacity",
    "Salt for a wanted capacity",
    "How much salt does the bed need to give this capacity?",
    inputs=[
        Input(
            "capacity",
            "Capacity wanted",
            "capacity",
            "grains",
            example=24000,
            low=2000,
            high=200000,
            help="Of the whole bed, for one regeneration: the daily load times the days, those of "
            "the reserve included.",
        ),
        resin_volume(),
        resin_condition(),
        salt_step(),
    ],
    outputs=[
        Output("salt", "Set the salt to", "mass", "lb", digits=None),
        Output("exact_salt", "Exact salt", "mass", "lb", digits=3),
        Output("dose", "Exact dose", "salt dose", "lb/ft³", digits=3),
        Output(
            "efficiency",
            "Salt efficiency",
            "salt efficiency",
            "grains/lb",
            digits=3,
        ),
        Output("least_salt", "Salt by chemistry alone", "mass", "lb", digits=2),
    ],
    compute=_salt_for_capacity,
    picture=Curve("capacity", 10000, 48000, ["exact_salt", "least_salt"]),
    sources=["capacity-anchor", "capacity-high-dose", "atomic-weights"],
    cautions=[
        "The salt is for the whole bed: a dose for each volume of resin is a different number."
    ],
)

CALCULATORS = (RESIN_CAPACITY, SALT_FOR_CAPACITY)
