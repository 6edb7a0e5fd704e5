"""The brine tank: how long to refill it, and what the water dissolves."""

from calculators.declare import Calculator, Input, Output
from calculators.quantities import round_to, snap

#: Room that dissolved salt takes up in water, near saturation: see the source "brine-density".
ROOM_OF_SALT = 0.0438  # gal/lb
#: The share of the dose from which salt dissolved beyond it is worth a warning.
NOTABLE_EXCESS = 0.15


def refill(given, work):
    """Tell the steps from salt to refill time and brine; return the outputs by name.

    given: has `salt` [lb], `refill_flow` [gpm], `salt_in_water` [lb/gal] and `time_step` [min].
    """
    water = work.step(
        "water",
        "Water dissolves a fixed amount of salt, until it is saturated.",
        "{salt} ÷ {salt_in_water}",
        given.salt / given.salt_in_water,
        "gal",
    )
    exact = work.step(
        "exact_time",
        "The refill runs at the rate of its flow control.",
        "{water} ÷ {refill_flow}",
        water / given.refill_flow,
        "min",
    )
    time = work.step(
        "refill_time",
        "The control counts in steps: round up.",
        "{exact_time}, up to a multiple of {time_step}",
        round_to(exact, given.time_step, "up"),
        "min",
    )
    dissolved = work.step(
        "salt_dissolved",
        "The rounded time lets in a little more water, which dissolves a little more salt.",
        "{refill_time} × {refill_flow} × {salt_in_water}",
        time * given.refill_flow * given.salt_in_water,
        "lb",
    )
    let_in = work.step(
        "water_let_in",
        "So much water runs in.",
        "{refill_time} × {refill_flow}",
        time * given.refill_flow,
        "gal",
    )
    work.put("room_of_salt", ROOM_OF_SALT, "gal/lb")
    brine = work.step(
        "brine",
        "Dissolved salt takes up room, so the brine is more than the water that ran in.",
        "{water_let_in} + {salt_dissolved} × {room_of_salt}",
        let_in + dissolved * ROOM_OF_SALT,
        "gal",
    )
    if snap(dissolved - given.salt) > snap(NOTABLE_EXCESS * given.salt):
        work.warn(
            "The rounded time gives a good deal more salt than wanted: count with the salt that "
            "it really gives, or set a smaller dose."
        )
    return {
        "refill_time": time,
        "exact_time": exact,
        "water": water,
        "salt_dissolved": dissolved,
        "brine": brine,
    }


BRINE_REFILL = Calculator(
    "brine-refill",
    "Brine refill time and salt dissolved",
    "How long must the refill run for this much salt?",
    inputs=[
        Input(
            "salt",
            "Salt wanted for one regeneration",
            "mass",
            "lb",
            example=9,
            low=0.5,
            high=60,
            help="The whole amount, not the amount for each volume of resin.",
            equipment="salt_per_regeneration",
        ),
        Input(
            "refill_flow",
            "Refill flow",
            "flow",
            "gpm",
            example=0.5,
            low=0.05,
            high=3,
            help="Stamped on the refill flow control, or timed into a bucket.",
            equipment="refill_flow",
        ),
        Input(
            "salt_in_water",
            "Salt that the fill water dissolves",
            "salt strength",
            "lb/gal",
            default=3,
            low=1,
            high=3.1,
            usual_low=2.9,
            usual_high=3.05,
            help="Saturated, which needs hours and salt above the water; nearly the same in cold "
            "and warm water.",
            unusual="Saturated brine holds what is usual; less means weak brine.",
        ),
        Input(
            "time_step",
            "Step of the control",
            "time",
            "min",
            default=1,
            low=0.1,
            high=10,
            help="The smallest change of the refill time.",
            equipment="refill_step",
        ),
    ],
    outputs=[
        Output("refill_time", "Set the refill to", "time", "min", digits=None),
        Output("exact_time", "Exact time", "time", "min", digits=3),
        Output("water", "Water needed", "volume", "gal", step=0.1),
        Output("salt_dissolved", "Salt that the set time dissolves", "mass", "lb", step=0.1),
        Output("brine", "Brine it makes", "volume", "gal", step=0.1),
    ],
    compute=refill,
    sources=["salt-solubility", "brine-density", "common-practice"],
    cautions=[
        "Lift salt with bent knees, one bag at a time. Keep brine off floors and bare metal.",
    ],
)

CALCULATORS = (BRINE_REFILL,)
