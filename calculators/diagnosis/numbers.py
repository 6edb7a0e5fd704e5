"""Numbers that are read at a check, and the result that follows from them.

The lines between results are those of `calculators.simulation.results`, which the simulated visits
use too. Which checks have numbers is fixed here; any check can be answered by a tap instead.
"""

from calculators.declare import Input, InputProblem
from calculators.flow import reading_error
from calculators.meter import count_error
from calculators.simulation import results
from calculators.simulation.measuring import BUCKET_ERROR, METER_BUCKET_ERROR, WATCH_ERROR

TOO_CLOSE = "This lies too close to a line to tell. Measure again, or choose what you saw."
#: The step of a counter [gal] (common practice, no source).
COUNT_STEP = 1.0


class Numbers:
    """What is read at a check, and how its result follows.

    result: takes the numbers in their inputs' own units, by name, and returns a result's name, or
    None where they lie too close to a line.
    """

    def __init__(self, inputs, result):
        self.inputs = inputs
        self.result = result


def _hardness(name, label):
    return Input(name, label, "hardness", "gpg", example=18, low=0, high=200)


def _flow(name, label, example):
    return Input(name, label, "flow", "gpm", example=example, low=0, high=100)


def _volume(name, label, example, low=0):
    return Input(name, label, "volume", "gal", example=example, low=low, high=1000)


def _rating(label, example):
    return Input("rating", label, "flow", "gpm", example=example, low=0.01, high=100)


def _clock(name, label):
    return Input(name, label, "time of day", "h", example=14.5, low=0, high=24)


def _bucket(caught, time, rating):
    error = reading_error(caught, BUCKET_ERROR, time, WATCH_ERROR) if caught else 0.0
    return results.backwash_flow(60 * caught / time / rating, error)


#: By check.
NUMBERS = {
    "raw-hardness": Numbers(
        [
            _hardness("raw", "Raw hardness today, with the card's allowance for iron"),
            Input(
                "setting", "Hardness the control is set for", "hardness", "gpg",
                example=20, low=1, high=200,
            ),
        ],
        lambda raw, setting: results.raw_hardness(raw, 0.0, setting),
    ),
    "cold-and-hot-pair": Numbers(
        [
            _hardness("cold", "Hardness of the cold water"),
            _hardness("hot", "Hardness of the hot water"),
            Input(
                "raw", "Raw hardness today", "hardness", "gpg", example=18, low=1, high=200
            ),
        ],
        results.pair,
    ),
    "clock-reading": Numbers(
        [_clock("control", "Time on the control"), _clock("phone", "Time on the phone")],
        lambda control, phone: results.clock_reading(60 * (control - phone), False),
    ),
    "brine-level": Numbers(
        [
            Input("height", "Height of the water", "length", "in", example=8, low=0, high=60),
            Input(
                "expected", "Height expected now", "length", "in", example=8, low=0, high=60
            ),
        ],
        lambda height, expected: results.brine_level(height, expected),
    ),
    "backwash-flow": Numbers(
        [
            _volume("caught", "Water caught at the drain", 4),
            Input("time", "Time it took", "time", "s", example=60, low=1, high=3600),
            _rating("Rated drain flow", 2.4),
        ],
        _bucket,
    ),
    "brine-draw": Numbers(
        [_flow("flow", "Flow of brine drawn", 0.2), _rating("Flow of brine expected", 0.25)],
        lambda flow, rating: results.brine_draw(flow / rating),
    ),
    "refill-measured": Numbers(
        [
            _volume("came", "Water that came", 3),
            Input("time", "Refill time set", "time", "min", example=6, low=0.1, high=120),
            _rating("Rated refill flow", 0.5),
        ],
        lambda came, time, rating: results.refill_measured(came / (time * rating)),
    ),
    "leakage-slow-and-fast": Numbers(
        [
            _hardness("slow", "Hardness at slow flow"),
            _hardness("fast", "Hardness at fast flow"),
            Input(
                "raw", "Raw hardness today", "hardness", "gpg", example=18, low=1, high=200
            ),
        ],
        results.leakage_slow_and_fast,
    ),
    "meter-against-bucket": Numbers(
        [
            _volume("drawn", "Water drawn", 20, low=0.5),
            _volume("counted", "Water counted", 20),
        ],
        lambda drawn, counted: results.meter_against_bucket(
            counted / drawn, count_error(drawn, METER_BUCKET_ERROR, COUNT_STEP)
        ),
    ),
    "supply-voltage": Numbers(
        [
            Input(
                "measured", "Low voltage at the control, motor running", "voltage", "V",
                example=24, low=0, high=60,
            ),
            Input(
                "rated", "Voltage on the adaptor's label", "voltage", "V",
                example=24, low=1, high=60,
            ),
        ],
        lambda measured, rated: results.supply_voltage(measured / rated),
    ),
    "supply-pressure": Numbers(
        [
            Input(
                "running", "Pressure while water runs", "pressure", "psi",
                example=45, low=0, high=300,
            )
        ],
        results.supply_pressure,
    ),
    "brine-hydrometer": Numbers(
        [Input("gravity", "Hydrometer reading", "number", example=1.2, low=0.99, high=1.21)],
        results.brine_hydrometer,
    ),
}  # fmt: skip


def read(check, texts, units):
    """Return what a check's numbers, as typed, show.

    texts: by the names of the check's inputs; one left out counts as empty. units: "us" or
    "metric". Returns {"result": a result's name or None, "problems": {input: sentence},
    "sentence": why there is no result, or ""}. Raises KeyError for a check without numbers.
    """
    numbers = NUMBERS[check]
    given, problems = {}, {}
    for one in numbers.inputs:
        try:
            given[one.name] = one.read(texts.get(one.name, ""), units)
        except InputProblem as problem:
            problems[one.name] = problem.sentence
    if problems:
        return {"result": None, "problems": problems, "sentence": ""}
    result = numbers.result(**given)
    return {"result": result, "problems": {}, "sentence": "" if result else TOO_CLOSE}
