"""Flows at the drain: what a bucket and a watch say, against what is expected."""

import math

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.readings import tank_diameter

#: Backwash flow for each area of bed where no rating is stamped; common practice, no source.
USUAL_BACKWASH = 4.5  # gpm/ft2
#: Shares of the expected flow that part "none", "low", "as expected" and "high".
NO_FLOW, LOW_FLOW, HIGH_FLOW = 10.0, 85.0, 115.0

STAMPED, BY_TANK = "stamped rating", "tank diameter"


def usual_backwash(tank_diameter):
    """Return the usual backwash flow [gpm] of a tank of a diameter [in, above 0].

    Common practice, no source: a fixed flow for each area of bed.

    >>> round(usual_backwash(10), 2)
    2.45
    """
    return USUAL_BACKWASH * math.pi / 4 * tank_diameter**2 / 144


def reading_error(volume, volume_error, time, time_error):
    """Return the relative error [1] of a flow from a volume and a time, both with their errors.

    Independent errors add as squares. Volume and time above 0, each error in its quantity's unit.
    Source: the usual law of error propagation.
    """
    return math.hypot(volume_error / volume, time_error / time)


def verdict(share, error):
    """Return the word for a flow that is `share` [%] of the expected, with relative `error` [1].

    "cannot tell" where twice the error straddles the line between two words.
    """
    low, high = share * (1 - 2 * error), share * (1 + 2 * error)
    if any(snap(low) < line < snap(high) for line in (NO_FLOW, LOW_FLOW, HIGH_FLOW)):
        return "cannot tell: repeat with a bigger bucket"
    if snap(share) < NO_FLOW:
        return "none to speak of"
    if snap(share) < LOW_FLOW:
        return "low"
    return "as expected" if snap(share) <= HIGH_FLOW else "high"


def _bucket_flow(given, work):
    flow = work.step(
        "flow",
        "The flow is the water caught in the time.",
        "{caught} ÷ {time}",
        60 * given.caught / given.time,
        "gpm",
    )
    error = reading_error(given.caught, given.volume_error, given.time, given.time_error)
    work.step(
        "uncertainty",
        "The errors of the mark on the bucket and of the watch together.",
        "√(({volume_error} ÷ {caught})² + ({time_error} ÷ {time})²)",
        100 * error,
        "%",
    )
    expected = given.expected_flow
    if given.expected_from == BY_TANK:
        work.put("usual_backwash", USUAL_BACKWASH, "gpm/ft²")
        expected = work.step(
            "expected_flow",
            "Without a stamped rating, take the usual flow for the area of the tank.",
            "{usual_backwash} × π ÷ 4 × ({tank_diameter})²",
            usual_backwash(given.tank_diameter),
            "gpm",
        )
    share = work.step(
        "share",
        "Set beside what is expected.",
        "{flow} ÷ {expected_flow}",
        100 * flow / expected,
        "%",
    )
    if snap(error) > 0.08:
        work.warn("This reading is rough: repeat it with a bigger bucket or a longer time.")
    return {
        "flow": flow,
        "uncertainty": 100 * error,
        "share": share,
        "verdict": verdict(share, error),
    }


BUCKET_FLOW = Calculator(
    "bucket-flow",
    "Bucket-and-watch flow at the drain",
    "What is the flow at the drain, and is it what it should be?",
    inputs=[
        Input(
            "caught",
            "Water caught",
            "volume",
            "gal",
            example=2,
            low=0.1,
            high=55,
            help="Up to a mark on the bucket.",
        ),
        Input(
            "time",
            "Time to fill",
            "time",
            "s",
            example=50,
            low=1,
            high=3600,
            help="Start the watch once the flow is steady.",
        ),
        Input(
            "expected_from",
            "What is expected, from",
            "choice",
            default=STAMPED,
            choices=(STAMPED, BY_TANK),
        ),
        Input(
            "expected_flow",
            "Expected flow",
            "flow",
            "gpm",
            example=2.4,
            low=0.02,
            high=30,
            help="The rating of the drain line flow control, or the unit's sheet for this step.",
            only_when=("expected_from", (STAMPED,)),
            equipment="backwash_flow",
        ),
        tank_diameter(
            help="For backwash and fast rinse only.", only_when=("expected_from", (BY_TANK,))
        ),
        Input(
            "volume_error",
            "Error of the mark",
            "volume",
            "gal",
            default=0.1,
            low=0,
            high=5,
            help="How far off the water caught may be.",
        ),
        Input(
            "time_error",
            "Error of the watch",
            "time",
            "s",
            default=1,
            low=0,
            high=60,
            help="Starting and stopping together.",
        ),
    ],
    outputs=[
        Output("flow", "Flow", "flow", "gpm", step=0.01),
        Output("share", "Share of what is expected", "share", "%", step=1),
        Output("verdict", "Reading", "words"),
        Output("uncertainty", "Uncertainty of the reading", "share", "%", step=0.1),
    ],
    compute=_bucket_flow,
    picture=Curve("time", 10, 180, ["flow"]),
    sources=["common-practice"],
    cautions=[
        "Keep the air gap at the drain: never push the hose into the waste pipe to catch water.",
    ],
)

CALCULATORS = (BUCKET_FLOW,)
