"""The water heater as a record of what happened: how fast new water clears old."""

import math

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.readings import heater_volume


def share_left(drawn, tank):
    """Return the share [1] of the old water left in a well-mixed tank after a draw.

    drawn, tank: volumes in the same unit, drawn 0 or more, tank above 0. A real tank lies between
    well mixed and plug flow, in which new water pushes the old out whole. Source: stirred-tank.

    >>> round(share_left(100, 50), 5)
    0.13534
    """
    return math.exp(-drawn / tank)


def draw_for_share(share, tank):
    """Return the draw that leaves a share [1, above 0 to 1] of the old water; see `share_left`."""
    return -tank * math.log(share)


def _heater_washout(given, work):
    left = share_left(given.drawn, given.tank)
    work.step(
        "share_left",
        "New water mixes with the old, so the old fades and never stops at once.",
        "e^(−{drawn} ÷ {tank})",
        100 * left,
        "%",
    )
    hot = work.step(
        "hot_now",
        "The hot water lies between the old hardness and that of the water flowing in.",
        "{cold} + ({before} − {cold}) × {share_left}",
        given.cold + (given.before - given.cold) * left,
        "gpg",
    )
    values = {"hot_now": hot, "share_left": 100 * left}
    if snap(given.cold) >= snap(given.target):
        work.warn(
            "The water flowing in is no softer than the hardness wanted, so drawing water does not "
            "get there: find out first why the cold water is hard."
        )
        return values
    if snap(given.target) < snap(given.before):
        needed = work.step(
            "water_needed",
            "Turned round: the draw after which the hot water falls to the wanted hardness.",
            "{tank} × ln(({before} − {cold}) ÷ ({target} − {cold}))",
            draw_for_share((given.target - given.cold) / (given.before - given.cold), given.tank),
            "gal",
        )
    else:
        needed = work.step(
            "water_needed", "The hot water was no harder than wanted: no draw.", "0", 0.0, "gal"
        )
    values["water_needed"] = needed
    if given.hot_use is not None:
        values["wait"] = work.step(
            "wait",
            "At the household's own use this takes its time by itself.",
            "{water_needed} ÷ {hot_use}",
            needed / given.hot_use,
            "days",
        )
    return values


HEATER_WASHOUT = Calculator(
    "heater-washout",
    "Hot-water tank washout",
    "How soft is the hot water after a draw, and how much must be drawn?",
    inputs=[
        heater_volume(help="From its rating plate. A tankless heater keeps no old water."),
        Input(
            "before",
            "Hardness of the hot water before",
            "hardness",
            "gpg",
            example=20,
            low=0,
            high=200,
            help="Raw hardness where the softener had stopped for some days.",
        ),
        Input(
            "cold",
            "Hardness of the water flowing in",
            "hardness",
            "gpg",
            default=0,
            low=0,
            high=200,
            help="The cold softened sample.",
        ),
        Input(
            "drawn",
            "Hot water drawn since",
            "volume",
            "gal",
            example=100,
            low=0,
            high=5000,
            help="All hot taps together.",
            slider=(0, 200, 5),
        ),
        Input(
            "target",
            "Hardness wanted",
            "hardness",
            "gpg",
            default=1,
            low=0.05,
            high=20,
            help="What counts as softened, or what the customer will notice no more.",
        ),
        Input(
            "hot_use",
            "Hot water used",
            "flow",
            "gal/day",
            low=1,
            high=2000,
            optional=True,
            help="To see how long waiting takes.",
        ),
    ],
    outputs=[
        Output("hot_now", "Hardness of the hot water now", "hardness", "gpg", step=0.1),
        Output("share_left", "Old water left", "share", "%", step=0.1),
        Output("water_needed", "Hot water to draw in all", "volume", "gal", step=1),
        Output("wait", "Waiting in all at the usual use", "time", "days", step=0.1),
    ],
    compute=_heater_washout,
    picture=Curve("drawn", 0, 200, ["hot_now"]),
    sources=["stirred-tank", "hot-water-burns"],
    cautions=[
        "Hot water scalds: cool every sample, and warn children and elders before you draw the "
        "heater down.",
        "Never drain a heater with its power or gas on; work on the heater is licensed work.",
    ],
)

CALCULATORS = (HEATER_WASHOUT,)
