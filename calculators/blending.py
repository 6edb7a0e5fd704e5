"""Two ways to serve a home: raw water blended in, and tanks exchanged for fresh ones."""

from calculators.capacity import capacity_of_dose
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.leakage import raw_share
from calculators.quantities import round_to, snap
from calculators.readings import raw_hardness, resin_volume


def _check_blend(given):
    if snap(given.target) < snap(given.soft):
        raise InputProblem(
            "target",
            "Blending only makes water harder than the softened water already is. Write more.",
        )
    if snap(given.target) >= snap(given.raw):
        raise InputProblem(
            "target",
            "The raw water is no harder than that, so there is nothing to soften. Write less.",
        )


def _blending(given, work):
    _check_blend(given)
    share = raw_share(given.target, given.raw, given.soft)
    work.step(
        "raw_share",
        "Each part of raw water lifts the blend by its distance from the softened water.",
        "({target} − {soft}) ÷ ({raw} − {soft})",
        100 * share,
        "%",
    )
    softened = work.step(
        "softened_share",
        "The rest goes through the bed.",
        "100 % − {raw_share}",
        100 * (1 - share),
        "%",
    )
    values = {"raw_share": 100 * share, "softened_share": softened}
    if given.softened_water is not None:
        values["blended_water"] = work.step(
            "blended_water",
            "A meter behind the blending valve counts the raw water too, so the bed lasts for more "
            "of what it counts.",
            "{softened_water} ÷ {softened_share}",
            given.softened_water / (1 - share),
            "gal",
        )
    return values


BLENDING = Calculator(
    "blending",
    "Blending valve",
    "How much raw water makes the hardness the customer wants?",
    inputs=[
        raw_hardness(),
        Input(
            "target",
            "Hardness wanted",
            "hardness",
            "gpg",
            example=3,
            low=0,
            high=100,
            usual_high=8,
            help="After the blending valve.",
        ),
        Input(
            "soft",
            "Hardness of the softened water",
            "hardness",
            "gpg",
            default=0.3,
            low=0,
            high=20,
            usual_high=2,
            help="Before the blending valve.",
        ),
        Input(
            "softened_water",
            "Water that the bed softens",
            "volume",
            "gal",
            low=10,
            high=100000,
            optional=True,
            help="Between regenerations; to see what a meter behind the valve counts.",
        ),
    ],
    outputs=[
        Output("raw_share", "Share of raw water", "share", "%", step=0.1),
        Output("softened_share", "Share of softened water", "share", "%", step=0.1),
        Output(
            "blended_water",
            "Blended water for each run of the bed",
            "volume",
            "gal",
            step=10,
            direction="down",
        ),
    ],
    compute=_blending,
    picture=Curve("raw", 5, 50, ["raw_share"]),
    sources=["blending-balance"],
    cautions=[
        "Set the valve by testing, not by turns: the share changes with flow and pressure.",
        "Iron in the raw water is blended in too.",
    ],
)


def _exchange_tank(given, work):
    each = work.step(
        "capacity_for_each_volume",
        "What the plant's salt gives back to the resin.",
        "the capacity of {dose}",
        capacity_of_dose(given.dose),
        "grains/ft³",
    )
    capacity = work.step(
        "capacity",
        "All the resin in the tank.",
        "{capacity_for_each_volume} × {resin_volume}",
        each * given.resin_volume,
        "grains",
    )
    water = work.step(
        "water",
        "It softens this much water.",
        "{capacity} ÷ {setting}",
        capacity / given.setting,
        "gal",
    )
    exact = work.step(
        "exact_days",
        "At the household's use the tank is spent after this time.",
        "{water} ÷ {use}",
        water / given.use,
        "days",
    )
    days = round_to(exact, 1.0, "down")
    if days < 1:
        raise InputProblem(
            "resin_volume",
            "That tank does not last one day: use a larger tank, or more than one.",
        )
    work.step(
        "days",
        "Come before that: round down to whole days.",
        "{exact_days}, down to whole days",
        days,
        "days",
    )
    return {"days": days, "exact_days": exact, "water": water, "capacity": capacity}


EXCHANGE_TANK = Calculator(
    "exchange-tank",
    "Portable exchange tank",
    "When must the tank be exchanged?",
    inputs=[
        resin_volume(
            example=1, help="Of all tanks that stand in line, where there are more.", equipment=None
        ),
        Input(
            "dose",
            "Salt dose at the plant",
            "salt dose",
            "lb/ft³",
            default=15,
            low=6,
            high=25,
            usual_high=20,
            help="Large, because every visit costs more than the salt.",
            unusual="Beyond that the capacity is a guess.",
        ),
        Input(
            "setting",
            "Compensated hardness",
            "hardness",
            "gpg",
            example=20,
            low=1,
            high=260,
            help="With the allowances for iron and manganese.",
        ),
        Input(
            "use",
            "Water to soften",
            "flow",
            "gal/day",
            example=120,
            low=1,
            high=5000,
            help="From the household's load.",
        ),
    ],
    outputs=[
        Output("days", "Exchange after", "time", "days", digits=None),
        Output("exact_days", "Spent after", "time", "days", step=0.1, direction="down"),
        Output("water", "Water softened", "volume", "gal", step=10, direction="down"),
        Output("capacity", "Capacity of the tank", "capacity", "grains", step=100),
    ],
    compute=_exchange_tank,
    picture=Curve("dose", 6, 25, ["exact_days"]),
    sources=["capacity-anchor", "capacity-high-dose"],
    cautions=[
        "There is no reserve in this: a leak or guests spend the tank early.",
        "A full tank is heavy: use a hand truck, and shut and relieve the line before uncoupling.",
    ],
)

CALCULATORS = (BLENDING, EXCHANGE_TANK)
