"""Hardness at the outlet: raw water that goes around the bed, and a front pushed through it."""

import math

from calculators.capacity import CURVE_TOP
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import round_to, snap
from calculators.readings import fresh_leakage, raw_hardness, resin_volume
from calculators.sampling import COVERAGE, DROP_INPUTS, reading_error

#: Shares of raw water [%] from which to watch and from which to act; common practice, no source.
WATCH, ACT = 2.0, 5.0
#: The front at the usual flow, that flow, and the shortest front; common practice, no source.
USUAL_FRONT, USUAL_FLOW, SHORTEST_FRONT = 1000.0, 3.0, 500.0  # grains/ft3, gpm/ft3, grains/ft3
#: The fastest flow that softeners are built for, at the peak; common practice, no source.
FASTEST_FLOW = 10.0  # gpm/ft3


def raw_share(outlet, raw, floor):
    """Return the share [1] of raw water in a mixture of raw and softened water.

    outlet, raw, floor: hardness of the mixture, of the raw and of the softened water in one unit,
    raw above floor. A balance of hardness; below the floor it comes out negative.
    Source: blending-balance.

    >>> round(raw_share(500, 800, 303), 3)
    0.396
    """
    return (outlet - floor) / (raw - floor)


def share_error(share, raw_minus_floor, outlet_error, raw_error):
    """Return the standard deviation [1] of a share of raw water from those of two readings.

    All hardness in one unit. The errors of the two readings add as squares.
    Source: uncertainty-guide.

    >>> round(share_error(0.5, 20, 0.2, 0.4), 5)
    0.01414
    """
    return math.hypot(outlet_error, share * raw_error) / raw_minus_floor


def share_verdict(share, smallest):
    """Return the words for a share of raw water [%] where none below `smallest` [%] is seen."""
    if snap(share) < snap(smallest):
        return "below what this test can see"
    if snap(share) < WATCH:
        return "none to speak of"
    return "watch" if snap(share) <= ACT else "act: water goes around the bed"


def _errors(given):
    """Return the standard deviations [gpg] of the two readings, of the outlet and of the raw."""
    return [
        reading_error(hardness, given.drop_hardness, given.drop_error / 100)
        for hardness in (given.outlet, given.raw)
    ]


def _check_crossover(given):
    if snap(given.raw) <= snap(given.floor):
        raise InputProblem(
            "raw",
            "The raw water is no harder than what a sound softener lets through, so no share can "
            "be told. Write the hardness of the raw water.",
        )
    if snap(given.outlet - given.raw) > snap(COVERAGE * math.hypot(*_errors(given))):
        raise InputProblem(
            "outlet",
            "The outlet is harder than the raw water. Check that the two samples were not swapped.",
        )


def _crossover_error(given, work, share):
    errors = [
        work.step(
            f"{name}_error",
            f"What a count of drops leaves uncertain at the {where}.",
            f"√(({{drop_hardness}})² ÷ 12 + ({{drop_error}} × {{{name}}})²)",
            error,
            "gpg",
        )
        for name, where, error in zip(
            ("outlet", "raw"), ("outlet", "raw tap"), _errors(given), strict=True
        )
    ]
    return work.step(
        "uncertainty",
        "The errors of both tests carried into the share; they add as squares.",
        "√(({outlet_error})² + ({share} × {raw_error})²) ÷ ({raw} − {floor})",
        100 * share_error(share / 100, given.raw - given.floor, *errors),
        "%",
    )


def _crossover(given, work):
    _check_crossover(given)
    exact = 100 * raw_share(given.outlet, given.raw, given.floor)
    if snap(given.outlet) < snap(given.floor):
        work.warn(
            "The outlet is softer than what a sound softener was taken to let through: no raw "
            "water shows."
        )
    if snap(given.outlet) > snap(given.raw):
        work.warn(
            "The outlet reads harder than the raw water, by no more than the test can err: all of "
            "it is taken as raw water."
        )
    share = work.step(
        "share",
        "What the outlet has above a sound softener's water, beside what raw water would add; none "
        "is the least, and all the most.",
        "({outlet} − {floor}) ÷ ({raw} − {floor}), not below zero nor above 100 %",
        min(100.0, max(0.0, exact)),
        "%",
    )
    error = _crossover_error(given, work, share)
    smallest = work.step(
        "smallest_seen",
        "A single drop of the test is already this share.",
        "{drop_hardness} ÷ ({raw} − {floor})",
        100 * given.drop_hardness / (given.raw - given.floor),
        "%",
    )
    work.put("watched_share", WATCH, "%")
    times = work.step(
        "larger_sample",
        "To see the smallest share worth watching, a drop must be no more than that part of "
        "what raw water would add: so many times the sample, with the same drops.",
        "{smallest_seen} ÷ {watched_share}, up to a whole number",
        max(1.0, round_to(smallest / WATCH, 1.0, "up")),
    )
    seen = snap(share) >= snap(smallest)
    if seen and any(abs(snap(share - mark)) < snap(COVERAGE * error) for mark in (WATCH, ACT)):
        work.warn(
            "This share lies closer to a mark than the test can tell: repeat it, with a larger "
            "sample, before acting on it."
        )
    return {
        "share": share,
        "uncertainty": error,
        "verdict": share_verdict(share, smallest),
        "smallest_seen": smallest,
        "larger_sample": times,
    }


CROSSOVER = Calculator(
    "crossover",
    "Share of raw water in the outlet",
    "How much raw water goes around the bed?",
    inputs=[
        Input(
            "outlet",
            "Hardness at the outlet",
            "hardness",
            "gpg",
            example=3,
            low=0,
            high=200,
            help="Of a fresh bed, with the bypass proven shut. From drops, take the best estimate.",
        ),
        raw_hardness(),
        fresh_leakage(),
        *DROP_INPUTS,
    ],
    outputs=[
        Output("share", "Share of raw water", "share", "%", step=0.1),
        Output("uncertainty", "Standard deviation of the share", "share", "%", step=0.1),
        Output("verdict", "Reading", "words"),
        Output("smallest_seen", "Smallest share this test can see", "share", "%", step=0.1),
        Output("larger_sample", "Larger sample to see a small share, times", "count", step=1),
    ],
    compute=_crossover,
    sources=["blending-balance", "uncertainty-guide", "common-practice"],
    cautions=[
        "The same share slowly and fast is a path around the bed; a share that grows with the flow "
        "is the bed itself.",
        "Prove the bypass shut before opening the control.",
    ],
)


def front_length(flow):
    """Return the length of the exchange front [grains/ft3] at a flow [gpm/ft3, above 0].

    The capacity over which the hardness that passes falls to a third (1/e). The root of the flow is
    that of a film around the beads; the figure at one flow and the least are common practice,
    no source. Source: film-exchange.

    >>> front_length(3), front_length(0.5)
    (1000.0, 500.0)
    """
    return max(SHORTEST_FRONT, USUAL_FRONT * math.sqrt(flow / USUAL_FLOW))


def passing_share(capacity_left, front):
    """Return the share [1] of the hardness that passes a bed with capacity left [grains/ft3].

    front: length of the front in the same unit. With nothing left, everything passes.

    >>> round(passing_share(3000, 1000), 4)
    0.0498
    """
    return math.exp(-capacity_left / front)


def front(given, work):
    """Tell the steps to the length of the front [grains/ft3] at a flow; return it.

    given: has `flow` [gpm] and `resin_volume` [ft3].
    """
    flow = work.step(
        "flow_for_each_volume",
        "What matters is the flow for each volume of resin.",
        "{flow} ÷ {resin_volume}",
        given.flow / given.resin_volume,
        "gpm/ft³",
    )
    if snap(flow) > FASTEST_FLOW:
        work.warn(
            "Softeners are not built for so much flow through each volume of resin: take the "
            "answer as a guess."
        )
    length = front_length(flow)
    if snap(length) > SHORTEST_FRONT:
        work.put("usual_front", USUAL_FRONT, "grains/ft³")
        work.put("usual_flow", USUAL_FLOW, "gpm/ft³")
        formula = "{usual_front} × √({flow_for_each_volume} ÷ {usual_flow})"
        sentence = "Faster water carries the front of exchange farther, as the root of the flow."
    else:
        work.put("shortest_front", SHORTEST_FRONT, "grains/ft³")
        formula = "{shortest_front}"
        sentence = "However slow the water, the front is not shorter than this."
    return work.step("front", sentence, formula, length, "grains/ft³")


def _fast_flow_leakage(given, work):
    if snap(given.floor) >= snap(given.raw):
        raise InputProblem(
            "floor",
            "A sound softener cannot let through as much as the raw water has. Write less.",
        )
    length = front(given, work)
    left = work.step(
        "left_for_each_volume",
        "What the bed can still take.",
        "{capacity_left} ÷ {resin_volume}",
        given.capacity_left / given.resin_volume,
        "grains/ft³",
    )
    if snap(left) > CURVE_TOP:
        raise InputProblem(
            "capacity_left",
            f"That is {work.shown(left, 'grains/ft³')}, more than any softening resin holds. Write "
            "what the whole bed has left.",
        )
    share = passing_share(left, length)
    work.step(
        "passing_share",
        "The part of the hardness that outruns the exchange.",
        "e^(−{left_for_each_volume} ÷ {front})",
        100 * share,
        "%",
    )
    outlet = work.step(
        "outlet",
        "It adds to what passes a fresh bed.",
        "{floor} + ({raw} − {floor}) × {passing_share}",
        given.floor + (given.raw - given.floor) * share,
        "gpg",
    )
    return {"outlet": outlet, "passing_share": 100 * share, "front": length}


FAST_FLOW_LEAKAGE = Calculator(
    "fast-flow-leakage",
    "Leakage at a fast flow or near the end",
    "How hard is the outlet at this flow with this much capacity left?",
    inputs=[
        Input(
            "flow",
            "Flow through the softener",
            "flow",
            "gpm",
            example=8,
            low=0.1,
            high=40,
            usual_high=15,
            help="All taps that run together.",
        ),
        resin_volume(help="What is really there: a bed that lost resin is short."),
        Input(
            "capacity_left",
            "Capacity left in the bed",
            "capacity",
            "grains",
            example=4500,
            low=0,
            high=400000,
            help="All that it can still take up, with the rest beyond the capacity that is counted on.",
        ),
        raw_hardness(),
        fresh_leakage(),
    ],
    outputs=[
        Output("outlet", "Hardness at the outlet", "hardness", "gpg", step=0.1),
        Output("passing_share", "Share of the hardness that passes", "share", "%", digits=2),
        Output("front", "Length of the front", "resin capacity", "grains/ft³", digits=2),
    ],
    compute=_fast_flow_leakage,
    picture=Curve("capacity_left", 0, 15000, ["outlet"]),
    sources=["film-exchange", "common-practice"],
    cautions=[
        "Hard only when fast points to the end of the run or a short bed; hard at every flow "
        "points to a path around the bed.",
    ],
)

CALCULATORS = (CROSSOVER, FAST_FLOW_LEAKAGE)
