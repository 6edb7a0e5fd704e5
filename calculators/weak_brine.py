"""What weak or short brine costs in capacity."""

from calculators.capacity import MOST_DOSE, capacity_of_dose
from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.readings import resin_volume, salt_voids

STRENGTH, LEVELS = "strength of the brine", "salt and water levels"


def share_among_salt(salt_depth, water_depth, voids):
    """Return the share [1] of the water that stands among the salt: all, where the salt is higher.

    Depths in the same unit, water above 0; voids: share [1] of loose salt that is not salt.

    >>> round(share_among_salt(4, 8, 0.45), 4)
    0.3103
    """
    covered = min(salt_depth, water_depth)
    among = voids * covered
    return among / (water_depth - covered + among)


def strength_by_levels(salt_depth, water_depth, voids, pick_up):
    """Return the salt in the brine [1 of saturated] where water may stand above the salt.

    Water among the salt is saturated; water above has taken up only `pick_up` [1] on its way
    through; without salt there is no brine. Source: common-practice.

    >>> round(strength_by_levels(4, 8, 0.45, 0.3), 3)
    0.517
    """
    if salt_depth == 0:
        return 0.0
    share = share_among_salt(salt_depth, water_depth, voids)
    return share + pick_up * (1 - share)


def _salt_ratio(given, work):
    """Return the salt in the brine [1] beside that of saturated brine, given or from the levels."""
    if given.known == STRENGTH:
        return given.salt_ratio / 100
    levels = given.salt_depth, given.water_depth, given.voids / 100
    work.step(
        "covered_salt",
        "Only the salt under water counts.",
        "the smaller of {salt_depth} and {water_depth}",
        min(given.salt_depth, given.water_depth),
        "in",
    )
    work.step(
        "share_among_salt",
        "This part of the water stands among the salt and is saturated.",
        "{voids} × {covered_salt} ÷ ({voids} × {covered_salt} + {water_depth} − {covered_salt})",
        100 * share_among_salt(*levels),
        "%",
    )
    ratio = strength_by_levels(*levels, given.pick_up / 100)
    work.step(
        "salt_ratio",
        "The water above took up a little as it rose through the salt; without salt, nothing.",
        "{share_among_salt} + {pick_up} × (100 % − {share_among_salt})",
        100 * ratio,
        "%",
    )
    return ratio


def _weak_brine(given, work):
    ratio = _salt_ratio(given, work)
    delivered = work.step(
        "delivered_salt",
        "So much of the planned salt reaches the bed.",
        "{salt} × {salt_ratio} × {drawn_share}",
        given.salt * ratio * given.drawn_share / 100,
        "lb",
    )
    planned = work.step(
        "planned_capacity",
        "What the planned salt would give back.",
        "the capacity of {salt} in {resin_volume}",
        capacity_of_dose(given.salt / given.resin_volume) * given.resin_volume,
        "grains",
    )
    capacity = work.step(
        "capacity",
        "What the delivered salt gives back at best: thin brine also works less well.",
        "the capacity of {delivered_salt} in {resin_volume}",
        capacity_of_dose(delivered / given.resin_volume) * given.resin_volume,
        "grains",
    )
    left = work.step(
        "capacity_left",
        "Half the salt costs less than half the capacity, because the first salt does most.",
        "{capacity} ÷ {planned_capacity}",
        100 * capacity / planned,
        "%",
    )
    if delivered == 0:
        work.warn("No salt reaches the bed: the regeneration gives nothing back.")
    if snap(given.salt / given.resin_volume) > MOST_DOSE:
        work.warn("That is more salt than the curve of capacity holds for: check the planned salt.")
    return {
        "capacity_left": left,
        "capacity": capacity,
        "delivered": delivered,
        "ratio": 100 * ratio,
    }


WEAK_BRINE = Calculator(
    "weak-brine",
    "Capacity lost to weak or short brine",
    "How much capacity does weak or short brine leave?",
    inputs=[
        Input(
            "salt",
            "Salt planned for one regeneration",
            "mass",
            "lb",
            example=9,
            low=0.5,
            high=100,
            help="The whole amount, not the amount for each volume of resin.",
            equipment="salt_per_regeneration",
        ),
        resin_volume(help="From the unit's sheet."),
        Input("known", "What is known", "choice", default=STRENGTH, choices=(STRENGTH, LEVELS)),
        Input(
            "salt_ratio",
            "Salt beside that of saturated brine",
            "share",
            "%",
            example=60,
            low=0,
            high=100,
            help="From the calculator of brine strength; it is not the salometer's figure.",
            only_when=("known", (STRENGTH,)),
        ),
        Input(
            "salt_depth",
            "Depth of the salt",
            "length",
            "in",
            example=4,
            low=0,
            high=60,
            help="From the grid, or the floor, up to its surface.",
            only_when=("known", (LEVELS,)),
        ),
        Input(
            "water_depth",
            "Depth of the water",
            "length",
            "in",
            example=8,
            low=0.5,
            high=60,
            help="From the same place up.",
            only_when=("known", (LEVELS,)),
        ),
        salt_voids(only_when=("known", (LEVELS,))),
        Input(
            "pick_up",
            "Strength of the water above the salt",
            "share",
            "%",
            default=30,
            low=0,
            high=100,
            usual_low=10,
            usual_high=60,
            help="What it took up while it rose through the salt; a rough guess.",
            only_when=("known", (LEVELS,)),
        ),
        Input(
            "drawn_share",
            "Brine drawn of what was planned",
            "share",
            "%",
            default=100,
            low=0,
            high=100,
            help="Less where the draw stops early or the refill is short.",
        ),
    ],
    outputs=[
        Output("capacity_left", "Capacity left, at best", "share", "%", step=1),
        Output("capacity", "Capacity, at best", "capacity", "grains", step=100),
        Output("delivered", "Salt that reaches the bed", "mass", "lb", step=0.1),
        Output("ratio", "Salt beside that of saturated brine", "share", "%", step=1),
    ],
    compute=_weak_brine,
    picture=Curve("salt_ratio", 0, 100, ["capacity_left"]),
    sources=["capacity-anchor", "capacity-high-dose", "salt-bulk", "common-practice"],
    cautions=["The answer is the best case: thin brine also exchanges less well, so expect less."],
)

CALCULATORS = (WEAK_BRINE,)
