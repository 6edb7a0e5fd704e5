"""Small leaks: from a cup, drips, a cistern or the house meter to water lost in a day."""

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.units import GALLON

CUP, DRIPS, CISTERN, METER = "cup and watch", "drips", "toilet cistern", "house meter"
PINTS_IN_A_GALLON = 8
CUBIC_INCHES_IN_A_GALLON = 231


def _small_leak(given, work):
    if given.measured == DRIPS:
        flow = work.step(
            "flow",
            "Drops in a minute, each of the same size.",
            "{drips} × {drop_size}",
            given.drips * given.drop_size / 1000 / GALLON,
            "gpm",
        )
    elif given.measured == CISTERN:
        flow = work.step(
            "flow",
            "The water that left the cistern is its area times the fall of the level.",
            "{cistern_area} × {fall} ÷ {time}",
            given.cistern_area * given.fall / CUBIC_INCHES_IN_A_GALLON / given.time,
            "gpm",
        )
    elif given.measured == METER:
        flow = work.step(
            "flow",
            "What the house meter counted with all taps shut.",
            "{metered} ÷ {time}",
            given.metered / given.time,
            "gpm",
        )
    else:
        flow = work.step(
            "flow",
            "What ran into the cup in the time watched.",
            "{caught} ÷ {time}",
            given.caught / PINTS_IN_A_GALLON / given.time,
            "gpm",
        )
    lost = work.step(
        "water_lost",
        "A leak runs day and night.",
        "{flow} × 24 hours",
        flow * 1440,
        "gal/day",
    )
    values = {"flow": flow, "water_lost": lost}
    if given.household_use is not None:
        values["extra"] = work.step(
            "extra",
            "Set beside what the household uses in a day.",
            "{water_lost} ÷ {household_use}",
            100 * lost / given.household_use,
            "%",
        )
    if snap(flow) == 0:
        counted = "no leak"
    elif snap(flow) < snap(given.meter_start_flow):
        counted = "no: too slow to turn the meter, so the bed runs out unseen"
    else:
        counted = "yes: it is paid for in salt and water"
    return {**values, "counted": counted}


SMALL_LEAK = Calculator(
    "small-leak",
    "Small leak in a day",
    "How much water does this small leak lose in a day?",
    inputs=[
        Input(
            "measured",
            "How it was measured",
            "choice",
            default=CUP,
            choices=(CUP, DRIPS, CISTERN, METER),
        ),
        Input(
            "caught",
            "Water caught",
            "volume",
            "pint",
            example=1,
            low=0,
            high=400,
            help="In a cup or jar with a mark.",
            only_when=("measured", (CUP,)),
        ),
        Input(
            "metered",
            "Water metered",
            "volume",
            "gal",
            example=10,
            low=0,
            high=5000,
            help="What the house meter counted with all taps shut, overnight for example.",
            only_when=("measured", (METER,)),
        ),
        Input(
            "drips",
            "Drips",
            "drips",
            "drips/min",
            example=60,
            low=0,
            high=400,
            help="Count for a whole minute.",
            only_when=("measured", (DRIPS,)),
        ),
        Input(
            "drop_size",
            "Size of a drop",
            "volume",
            "mL",
            default=0.25,
            low=0.05,
            high=0.5,
            usual_low=0.2,
            usual_high=0.4,
            help="Published figures differ, so this is a rough measure.",
            only_when=("measured", (DRIPS,)),
        ),
        Input(
            "cistern_area",
            "Area of the water in the cistern",
            "area",
            "in²",
            example=96,
            low=5,
            high=1000,
            help="Length times width inside the toilet's tank.",
            only_when=("measured", (CISTERN,)),
        ),
        Input(
            "fall",
            "Fall of the level",
            "length",
            "in",
            example=1,
            low=0,
            high=20,
            help="With the cistern's fill valve shut.",
            only_when=("measured", (CISTERN,)),
        ),
        Input(
            "time",
            "Time watched",
            "time",
            "min",
            example=1,
            low=0.05,
            high=2880,
            help="A short watch of a small leak says little: watch longer.",
            only_when=("measured", (CUP, CISTERN, METER)),
        ),
        Input(
            "household_use",
            "Water the household uses",
            "flow",
            "gal/day",
            low=1,
            high=5000,
            optional=True,
            help="To see the leak as a share of it.",
        ),
        Input(
            "meter_start_flow",
            "Flow at which the softener's meter starts",
            "flow",
            "gpm",
            default=0.2,
            low=0.01,
            high=2,
            usual_low=0.1,
            usual_high=0.5,
            help="Below this the meter stands still.",
        ),
    ],
    outputs=[
        Output("water_lost", "Water lost", "flow", "gal/day", digits=2),
        Output("flow", "Flow of the leak", "flow", "gpm", digits=2),
        Output("extra", "On top of the household's use", "share", "%", digits=2),
        Output("counted", "Seen by the softener's meter", "words"),
    ],
    compute=_small_leak,
    picture=Curve(
        "caught",
        0,
        10,
        ["water_lost"],
        instead=(
            Curve("drips", 0, 200, ["water_lost"]),
            Curve("fall", 0, 4, ["water_lost"]),
            Curve("metered", 0, 20, ["water_lost"]),
        ),
    ),
    sources=["unit-definitions", "drop-size", "common-practice"],
    cautions=["The customer's plumbing is the customer's: agree first who repairs it."],
)

CALCULATORS = (SMALL_LEAK,)
