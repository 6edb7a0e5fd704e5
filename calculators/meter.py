"""The softener's meter against a bucket."""

import math

from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.quantities import snap

#: Shares [%] of the water drawn that part the words for a count; common practice, no source.
DEAD_BELOW, LOW_BELOW, HIGH_ABOVE = 5.0, 90.0, 110.0
#: A counter that has not moved over so many of its steps does not count.
STEPS_UNMOVED = 5
#: A share [%] above this is hardly the meter's doing.
HARDLY_THE_METER = 200.0


def count_error(volume, volume_error, step):
    """Return the relative error [1] of a count over a volume caught, as of a true meter.

    The mark on the bucket may be off by `volume_error` and the count by half its `step`;
    independent errors add as squares. All in one unit, volume above 0. Source: the usual law of
    error propagation.

    >>> round(count_error(10, 0.15, 1), 4)
    0.0522
    """
    return math.hypot(volume_error / volume, 0.5 * step / volume)


def meter_verdict(share, error):
    """Return the word for a count that is `share` [%] of the water, with an `error` [1] of it all.

    "cannot tell" where twice the error straddles the line between two words.
    """
    low, high = snap(share - 200 * error), snap(share + 200 * error)
    if any(low < line < high for line in (DEAD_BELOW, LOW_BELOW, HIGH_ABOVE)):
        return "cannot tell: draw more water"
    if snap(share) < DEAD_BELOW:
        return "not counting"
    if snap(share) < LOW_BELOW:
        return "counts too little"
    return "true" if snap(share) <= HIGH_ABOVE else "counts too much"


def _verdict(counted, caught, error, step):
    if snap(counted) == 0 and snap(caught) >= snap(STEPS_UNMOVED * step):
        return "not counting"
    return meter_verdict(100 * counted / caught, error)


def _meter_check(given, work):
    counted = work.step(
        "counted",
        "The counter moved by so much, up or down.",
        "|{count_after} − {count_before}|",
        abs(given.count_after - given.count_before),
        "gal",
    )
    share = work.step(
        "share",
        "Set beside the water drawn.",
        "{counted} ÷ {caught}",
        100 * counted / given.caught,
        "%",
    )
    error = count_error(given.caught, given.volume_error, given.count_step)
    work.step(
        "uncertainty",
        "The mark on the bucket and half a step of the counter are both uncertain; the verdict "
        "allows for twice as much.",
        "√(({volume_error} ÷ {caught})² + (½ × {count_step} ÷ {caught})²)",
        100 * error,
        "%",
    )
    values = {
        "counted": counted,
        "share": share,
        "uncertainty": 100 * error,
        "verdict": _verdict(counted, given.caught, error, given.count_step),
    }
    if snap(share) > HARDLY_THE_METER:
        work.warn(
            "A meter hardly counts so much too much: look at the unit of the counter, whether it "
            "started anew during the run, and whether water ran elsewhere."
        )
    if given.slow_caught is None and given.slow_counted is None:
        work.warn("A turbine may stand still in a slow flow: this run does not clear a small leak.")
        return values
    return {**values, **_slow_run(given, work)}


def _slow_run(given, work):
    for name in ("slow_caught", "slow_counted"):
        if getattr(given, name) is None:
            raise InputProblem(name, "The slow run needs both the water drawn and the count.")
    share = work.step(
        "slow_share",
        "The same for the slow run.",
        "{slow_counted} ÷ {slow_caught}",
        100 * given.slow_counted / given.slow_caught,
        "%",
    )
    error = count_error(given.slow_caught, given.volume_error, given.count_step)
    work.step(
        "slow_uncertainty",
        "With less water the same errors weigh more.",
        "√(({volume_error} ÷ {slow_caught})² + (½ × {count_step} ÷ {slow_caught})²)",
        100 * error,
        "%",
    )
    verdict = _verdict(given.slow_counted, given.slow_caught, error, given.count_step)
    if verdict in ("not counting", "counts too little"):
        work.warn(
            "The meter misses slow flows, as many do: look for small leaks, which use up the bed "
            "unseen."
        )
    return {"slow_share": share, "slow_verdict": verdict}


METER_CHECK = Calculator(
    "meter-check",
    "Meter against a bucket",
    "Does the softener's meter count the water that runs through it?",
    inputs=[
        Input(
            "caught",
            "Water drawn",
            "volume",
            "gal",
            example=20,
            low=1,
            high=200,
            help="Buckets filled to a mark at a tap that the softener feeds, all others shut.",
        ),
        Input(
            "count_before",
            "Counter before",
            "volume",
            "gal",
            example=840,
            low=0,
            high=1e7,
            help="In the unit the counter has.",
        ),
        Input(
            "count_after",
            "Counter after",
            "volume",
            "gal",
            example=820,
            low=0,
            high=1e7,
            help="A counter may run up or down.",
        ),
        Input(
            "count_step",
            "Step of the counter",
            "volume",
            "gal",
            default=1,
            metric_default=1,
            low=0.001,
            high=100,
            help="The smallest change it shows. With a coarse one draw more water.",
        ),
        Input(
            "volume_error",
            "Error of the water drawn",
            "volume",
            "gal",
            default=0.15,
            low=0,
            high=20,
            help="How far off the buckets together may be.",
        ),
        Input(
            "slow_caught",
            "Slow run: water drawn",
            "volume",
            "gal",
            low=0.5,
            high=200,
            optional=True,
            help="A second run at a thin stream, such as a leak would be.",
        ),
        Input(
            "slow_counted",
            "Slow run: counted",
            "volume",
            "gal",
            low=0,
            high=1000,
            optional=True,
            help="By how much the counter moved meanwhile.",
        ),
    ],
    outputs=[
        Output("verdict", "The meter is", "words"),
        Output("share", "Counted of the water drawn", "share", "%", step=0.1),
        Output("uncertainty", "Uncertainty, more or less", "share", "%", step=0.1),
        Output("counted", "Counted", "volume", "gal", digits=4),
        Output("slow_share", "Counted in the slow run", "share", "%", step=0.1),
        Output("slow_verdict", "In a slow flow it is", "words"),
    ],
    compute=_meter_check,
    sources=["common-practice", "meter-tests"],
    cautions=[
        "Before you open the meter: bypass, and bleed the softener at its drain until nothing "
        "runs.",
        "See that no regeneration starts and nobody draws water during the run.",
    ],
)

CALCULATORS = (METER_CHECK,)
