"""Samples of water: what a count of drops says, and how much to run off before a sample."""

import math

from calculators.declare import Calculator, Curve, Drawing, Input, Output
from calculators.leaks import CUBIC_INCHES_IN_A_GALLON

#: Below this count a reading is mostly the size of one drop.
FEW_DROPS = 3
#: Standard deviations on either side that about nineteen readings of twenty lie within.
COVERAGE = 2.0


def reading_error(hardness, drop_hardness, drop_error):
    """Return the standard deviation [gpg] of a hardness [gpg] read by counting drops.

    drop_hardness: hardness that one drop stands for [gpg, above 0]. drop_error: relative error [1]
    of the size of a drop. The true end lies anywhere within the last drop, which spreads by the
    drop over the root of twelve; the error of size grows with the count; both add as squares.
    Source: uncertainty-guide.

    >>> round(reading_error(19.5, 1, 0.05), 3)
    1.017
    """
    return math.hypot(drop_hardness / math.sqrt(12), drop_error * hardness)


def drop_estimate(drops, drop_hardness):
    """Return the best estimate [gpg] of a hardness that took so many drops: half a drop less.

    drops: whole, 0 or more; drop_hardness: gpg that one drop stands for. The end lay anywhere
    within the last drop. No drop at all counts as none, though up to half a drop may be there.

    >>> drop_estimate(10, 1), drop_estimate(0, 1)
    (9.5, 0.0)
    """
    return (drops - 0.5) * drop_hardness if drops else 0.0


def _drop_count(given, work):
    reading = work.step(
        "reading",
        "The trade counts every drop in full.",
        "{drops} × {drop_hardness}",
        given.drops * given.drop_hardness,
        "gpg",
    )
    if given.drops == 0:
        highest = work.step(
            "highest",
            "The color never changed from that of soft water, so the hardness is below about half "
            "a drop.",
            "{drop_hardness} ÷ 2",
            given.drop_hardness / 2,
            "gpg",
        )
        return {"reading": reading, "estimate": 0.0, "lowest": 0.0, "highest": highest}
    estimate = work.step(
        "estimate",
        "The last drop was needed only in part, on average by half.",
        "{reading} − {drop_hardness} ÷ 2",
        drop_estimate(given.drops, given.drop_hardness),
        "gpg",
    )
    error = work.step(
        "uncertainty",
        "The last drop and the size of all drops are uncertain; the two add as squares.",
        "√(({drop_hardness})² ÷ 12 + ({drop_error} × {estimate})²)",
        reading_error(estimate, given.drop_hardness, given.drop_error / 100),
        "gpg",
    )
    lowest = work.step(
        "lowest",
        "About nineteen of twenty such readings lie within twice that; none lies below zero.",
        "{estimate} − 2 × {uncertainty}, not below zero",
        max(0.0, estimate - COVERAGE * error),
        "gpg",
    )
    highest = work.step(
        "highest",
        "And so far above.",
        "{estimate} + 2 × {uncertainty}",
        estimate + COVERAGE * error,
        "gpg",
    )
    if given.drops <= FEW_DROPS:
        work.warn(
            "So few drops say little: take a larger sample, so that each drop stands for less."
        )
    return {
        "reading": reading,
        "estimate": estimate,
        "uncertainty": error,
        "lowest": lowest,
        "highest": highest,
    }


#: What a kit says about its drops; every calculator that takes a count of them asks it.
DROP_INPUTS = (
    Input(
        "drop_hardness",
        "Hardness of one drop",
        "hardness",
        "gpg",
        default=1,
        low=0.05,
        high=10,
        usual_low=0.1,
        usual_high=2,
        help="From the kit's sheet. Twice the sample with the same drops halves it.",
    ),
    Input(
        "drop_error",
        "Error of the size of a drop",
        "share",
        "%",
        default=5,
        low=0,
        high=20,
        help="Smallest with the bottle held upright; common practice, no source.",
    ),
)

DROP_COUNT = Calculator(
    "drop-count",
    "What a count of drops says",
    "How hard is the water that took this many drops?",
    inputs=[
        Input(
            "drops",
            "Drops until the color changed",
            "count",
            example=10,
            low=0,
            high=60,
            help="Count none where the color was that of soft water before the first drop.",
        ),
        *DROP_INPUTS,
    ],
    outputs=[
        Output("reading", "As the trade reads it", "hardness", "gpg", step=0.1),
        Output("estimate", "Best estimate", "hardness", "gpg", step=0.1),
        Output("lowest", "At least", "hardness", "gpg", step=0.1, direction="down"),
        Output("highest", "At most", "hardness", "gpg", step=0.1, direction="up"),
        Output("uncertainty", "Standard deviation", "hardness", "gpg", step=0.01),
    ],
    compute=_drop_count,
    picture=Drawing("drop-scale"),
    sources=["uncertainty-guide", "common-practice"],
    cautions=[
        "Iron, manganese, copper or much chlorine can spoil the color: then ask a laboratory.",
        "Look at the date of the reagent, and let a hot sample cool before testing it.",
        "A test strip tells less than a count of drops: take it as a first look only.",
    ],
)


def pipe_volume(bore, length):
    """Return the water [gal] that a pipe of a bore [in, above 0] holds over a length [ft].

    >>> round(pipe_volume(1, 100), 2)
    4.08
    """
    return math.pi / 4 * bore**2 * 12 * length / CUBIC_INCHES_IN_A_GALLON


def _sample_flush(given, work):
    held = work.step(
        "held",
        "The pipe holds its area times its length.",
        "π ÷ 4 × ({bore})² × {length}",
        pipe_volume(given.bore, given.length),
        "gal",
    )
    flush = work.step(
        "flush",
        "Water along the wall lags behind, so one content of the pipe is not enough.",
        "{held} × {contents}",
        held * given.contents,
        "gal",
    )
    values = {"held": held, "flush": flush}
    if given.flow is not None:
        values["time"] = work.step(
            "time",
            "At the flow of the tap it takes so long.",
            "{flush} ÷ {flow}",
            60 * flush / given.flow,
            "s",
        )
    return values


SAMPLE_FLUSH = Calculator(
    "sample-flush",
    "Flush before a sample",
    "How much water must run before the sample comes from where I want it?",
    inputs=[
        Input(
            "bore",
            "Bore of the pipe",
            "length",
            "in",
            example=0.75,
            low=0.25,
            high=3,
            usual_high=1.5,
            help="The inner diameter, which can differ from the size a pipe is sold by.",
        ),
        Input(
            "length",
            "Length of the pipe",
            "length",
            "ft",
            example=50,
            low=0,
            high=500,
            help="From the point whose water is wanted to the tap.",
        ),
        Input(
            "contents",
            "Contents of the pipe to run off",
            "number",
            default=3,
            low=1,
            high=10,
            help="How many times the pipe is to be filled anew.",
        ),
        Input(
            "flow",
            "Flow of the tap",
            "flow",
            "gpm",
            low=0.1,
            high=20,
            optional=True,
            help="To see how long it takes.",
        ),
    ],
    outputs=[
        Output("flush", "Run off at least", "volume", "gal", step=0.1, direction="up"),
        Output("held", "Water in the pipe", "volume", "gal", digits=3),
        Output("time", "Time", "time", "s", step=5, direction="up"),
    ],
    compute=_sample_flush,
    picture=Curve("bore", 0.25, 1.5, ["flush"]),
    sources=["unit-definitions", "common-practice"],
    cautions=[
        "This is for the pipe alone: a filter, a pressure tank or a softener on the way holds far "
        "more.",
        "Hot side: run until it is steadily hot and a little longer; hot water scalds, so let the "
        "sample cool.",
        "A hot sample shows what the heater holds, which can be days old.",
    ],
)

CALCULATORS = (DROP_COUNT, SAMPLE_FLUSH)
