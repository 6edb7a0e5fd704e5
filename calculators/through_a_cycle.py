"""Hardness at the outlet as the bed is used up, from one regeneration to the next."""

import math

from calculators.capacity import CURVE_TOP
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.leakage import front, passing_share
from calculators.quantities import snap
from calculators.readings import fresh_leakage, raw_hardness, resin_volume
from calculators.simulation.bed import left_after
from calculators.simulation.physics import USUAL_PHYSICS


def load_until(capacity, left, front_of_bed):
    """Return the load [grains] that leaves so much of a capacity [grains] at a constant flow.

    capacity, left: above 0, left no more than capacity; front_of_bed: length of the front [grains]
    of the whole bed. `left_after` turned round.

    >>> from calculators.simulation.bed import left_after
    >>> round(left_after(30000.0, load_until(30000.0, 2000.0, 1000.0), 1000.0), 6)
    2000.0
    """

    def grown(part):  # ln(e^part - 1), also where e^part is beyond all numbers
        return part + math.log(-math.expm1(-part))

    return front_of_bed * (grown(capacity / front_of_bed) - grown(left / front_of_bed))


def _check(given, work):
    held = given.capacity / given.resin_volume
    if snap(held) > CURVE_TOP:
        raise InputProblem(
            "capacity",
            f"That is {work.shown(held, 'grains/ft³')}, more than any softening resin holds. Write "
            "what the whole bed has after regeneration.",
        )
    if snap(given.floor) >= snap(given.raw):
        raise InputProblem(
            "floor",
            "A sound softener cannot let through as much as the raw water has. Write less.",
        )
    if snap(given.end_point) <= snap(given.floor):
        raise InputProblem("end_point", "A fresh bed already lets through so much. Write more.")
    if snap(given.end_point) >= snap(given.raw):
        raise InputProblem("end_point", "The raw water is no harder than that. Write less.")


def _through_a_cycle(given, work):
    _check(given, work)
    each = front(given, work)
    bed = work.step(
        "front_of_the_bed",
        "For the whole bed.",
        "{front} × {resin_volume}",
        each * given.resin_volume,
        "grains",
    )
    drop = work.step(
        "taken_from_water",
        "A fresh bed takes so much from the water.",
        "{raw} − {floor}",
        given.raw - given.floor,
        "gpg",
    )
    load = work.step(
        "load",
        "So much hardness has come to the bed.",
        "{used} × {taken_from_water}",
        given.used * drop,
        "grains",
    )
    held = work.step(
        "held",
        "Capacity is counted to the point where hardness begins to come through. The bed still "
        "holds something then.",
        "{capacity} + {left_at_plan} × {resin_volume}",
        given.capacity + given.left_at_plan * given.resin_volume,
        "grains",
    )
    left = work.step(
        "capacity_left",
        "What passes grows as what the bed holds falls, and what passed has taken none: added up, "
        "this is left.",
        "{front_of_the_bed} × ln(1 + (e^({held} ÷ {front_of_the_bed}) − 1) × "
        "e^(−{load} ÷ {front_of_the_bed}))",
        left_after(held, load, bed),
        "grains",
    )
    share = work.step(
        "share_used",
        "What is gone was used, and never more than all of the capacity.",
        "({held} − {capacity_left}) ÷ {capacity}, not above 100 %",
        100 * min(1.0, max(0.0, (held - left) / given.capacity)),
        "%",
    )
    outlet = work.step(
        "outlet",
        "What outruns the exchange adds to what passes a fresh bed.",
        "{floor} + {taken_from_water} × e^(−{capacity_left} ÷ {front_of_the_bed})",
        given.floor + drop * passing_share(left / given.resin_volume, each),
        "gpg",
    )
    return {"outlet": outlet, "share_used": share, **_end(given, work, held, bed, drop)}


def _end(given, work, held, bed, drop):
    """Tell when the end point comes; return the outputs about it."""
    least = work.step(
        "left_at_the_end",
        "At the end point the outlet has the hardness you stop at, with so much capacity left.",
        "{front_of_the_bed} × ln({taken_from_water} ÷ ({end_point} − {floor}))",
        bed * math.log(drop / (given.end_point - given.floor)),
        "grains",
    )
    if snap(held) <= snap(least):
        work.warn(
            "Even just after regeneration the outlet is harder than the end point: the dose is too "
            "small, or the flow too fast, for this bed."
        )
        end = work.step("water_to_the_end", "The bed never gets below it.", "0", 0.0, "gal")
    else:
        end = work.step(
            "water_to_the_end",
            "The same sum turned round gives the water up to there.",
            "{front_of_the_bed} ÷ {taken_from_water} × ln((e^({held} ÷ {front_of_the_bed}) − 1)"
            " ÷ (e^({left_at_the_end} ÷ {front_of_the_bed}) − 1))",
            load_until(held, least, bed) / drop,
            "gal",
        )
    left = work.step(
        "water_left",
        "What was used comes off; none is left once the end point is passed.",
        "{water_to_the_end} − {used}, not below zero",
        max(0.0, end - given.used),
        "gal",
    )
    if 0 < snap(end) < snap(given.used):
        work.warn("The end point is passed: the house gets hard water until regeneration.")
    return {"water_left": left, "water_to_the_end": end}


OUTLET_THROUGH_A_CYCLE = Calculator(
    "outlet-through-a-cycle",
    "Hardness at the outlet through a cycle",
    "How hard is the outlet after so much water, and how much is left until it is too hard?",
    inputs=[
        Input(
            "used",
            "Water used since regeneration",
            "volume",
            "gal",
            example=1200,
            low=0,
            high=20000,
            help="From the counter: what it was set to less what it shows.",
            slider=(0, 2000, 40),
        ),
        Input(
            "capacity",
            "Capacity after regeneration",
            "capacity",
            "grains",
            example=30000,
            low=500,
            high=150000,
            help="What the dose gives back to the whole bed, from the calculator of the resin.",
        ),
        Input(
            "left_at_plan",
            "Left in the bed where that capacity ends",
            "resin capacity",
            "grains/ft³",
            default=USUAL_PHYSICS.heel,
            low=0,
            high=10000,
            help="For each volume of resin, at the usual flow. The capacity of a dose is counted to "
            "where hardness begins to come through, not to the last bead.",
        ),
        resin_volume(help="What is really there: a bed that lost resin is short."),
        Input(
            "flow",
            "Flow through the softener",
            "flow",
            "gpm",
            default=3,
            low=0.1,
            high=40,
            usual_high=15,
            help="Taken as the same all the time; a faster flow brings the end sooner.",
        ),
        raw_hardness(help="As tested; where there is iron, with its allowance."),
        fresh_leakage(),
        Input(
            "end_point",
            "Hardness at which you call it hard",
            "hardness",
            "gpg",
            default=1,
            low=0.1,
            high=20,
            help="The end point of the run.",
        ),
    ],
    outputs=[
        Output("outlet", "Hardness at the outlet now", "hardness", "gpg", step=0.1),
        Output("share_used", "Capacity used", "share", "%", step=1),
        Output("water_left", "Water left until the end point", "volume", "gal", step=10),
        Output(
            "water_to_the_end", "Water from regeneration to the end point", "volume", "gal", step=10
        ),
    ],
    compute=_through_a_cycle,
    picture=Curve("used", 0, 2000, ["outlet"]),
    sources=["film-exchange", "common-practice"],
    cautions=[
        "A bed that is hard from the start is no case for this curve: prove the bypass shut and "
        "look for a path around the bed.",
    ],
)

CALCULATORS = (OUTLET_THROUGH_A_CYCLE,)
