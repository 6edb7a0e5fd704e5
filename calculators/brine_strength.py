"""How strong brine can be, how strong it is, and how long it takes."""

import math

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import convert, snap
from calculators.units import GALLON, POUND

#: Salt in 100 parts of water by weight at saturation: a + b T + c T², T in °C.
SOLUBILITY = (35.63, 0.0029, 0.0004)
#: Density of brine [kg/L] at 20 °C: water + first × strength + second × strength², in percent.
WATER_DENSITY, DENSITY_FIRST, DENSITY_SECOND = 0.9982, 0.00698, 0.0000255
SATURATED = 26.395  # percent by weight at 60 °F: a hundred degrees of the salometer
#: How salt dissolves in a tank at rest: the time in which the gap to saturation shrinks by a
#: factor of e, longer in cold water.
DISSOLVING_TIME, DISSOLVING_TEMPERATURE = 40.0, 20.0  # min at °C
SLOWER, SLOWER_EACH = 1.6, 10.0  # times for each °C colder
TIMES_TO_WAIT = 4
WEAK = 90  # degrees of the salometer
#: Degrees of the salometer by which saturated brine may read high: cold, or by another water.
READS_HIGH = 2
NONE, HYDROMETER, SALOMETER = "no reading", "hydrometer", "salometer"


def saturation(celsius):
    """Return the strength [percent by weight] of saturated salt brine at a temperature [°C].

    Valid from 0 to 50 °C, within 0.1. Sources: salt-solubility, salt-solubility-handbook.

    >>> round(saturation(20), 1)
    26.4
    """
    constant, first, second = SOLUBILITY
    salt = constant + first * celsius + second * celsius**2
    return 100 * salt / (100 + salt)


def brine_density(strength):
    """Return the density [kg/L] of brine of a strength [percent by weight, 0 to 27] at 20 °C.

    Within 0.001. Source: brine-density.

    >>> round(brine_density(20), 4)
    1.148
    """
    return WATER_DENSITY + DENSITY_FIRST * strength + DENSITY_SECOND * strength**2


def strength_of_gravity(gravity):
    """Return the strength [percent by weight] for a hydrometer reading [1]; 0 below water.

    gravity: density over that of water at 20 °C. The inverse of `brine_density`.

    >>> round(strength_of_gravity(brine_density(20) / WATER_DENSITY), 9)
    20.0
    """
    above_water = max(0.0, WATER_DENSITY * (gravity - 1))
    root = math.sqrt(DENSITY_FIRST**2 + 4 * DENSITY_SECOND * above_water)
    return (root - DENSITY_FIRST) / (2 * DENSITY_SECOND)


def salt_in_water(strength):
    """Return the salt for each part of water by weight [1] at a strength [percent, below 100].

    >>> salt_in_water(20)
    0.25
    """
    return strength / (100 - strength)


def dissolving_time(celsius):
    """Return the time [min] in which the gap to saturation shrinks by a factor of e.

    celsius: °C, 0 to 50. A habit of the trade, good to half its value. Source: common-practice.

    >>> round(dissolving_time(20))
    40
    """
    return DISSOLVING_TIME * SLOWER ** ((DISSOLVING_TEMPERATURE - celsius) / SLOWER_EACH)


def _saturated(work, celsius):
    """Return the strength when saturated [percent], and the salt that its water takes up [lb/gal]."""
    for name, number in zip(("solubility", "first", "second"), SOLUBILITY, strict=True):
        work.put(name, number)
    full = saturation(celsius)
    parts = work.step(
        "salt_for_a_hundred",
        "Parts of salt in a hundred parts of water: nearly the same in cold and warm.",
        "{solubility} + {first} × {celsius} + {second} × {celsius} × {celsius}",
        100 * salt_in_water(full),
    )
    work.step(
        "full_strength",
        "As a share of the brine by weight.",
        "{salt_for_a_hundred} ÷ (100 + {salt_for_a_hundred})",
        full,
        "%",
    )
    work.put("weight_of_water", WATER_DENSITY * GALLON / POUND, "lb/gal")
    in_water = work.step(
        "salt_in_water",
        "What the water let in dissolves in the end, for its volume.",
        "{salt_for_a_hundred} ÷ 100 × {weight_of_water}",
        parts / 100 * WATER_DENSITY * GALLON / POUND,
        "lb/gal",
    )
    return full, in_water


def _waiting(given, work, celsius):
    work.put("dissolving_time", DISSOLVING_TIME, "min")
    work.put("slower", SLOWER)
    work.put("usual_celsius", DISSOLVING_TEMPERATURE, "°C", fixed_unit=True)
    work.put("slower_each", SLOWER_EACH)
    pace = work.step(
        "pace",
        "Cold slows the salt down far more than it weakens the brine.",
        "{dissolving_time} × {slower}^(({usual_celsius} − {celsius}) ÷ {slower_each})",
        dissolving_time(celsius),
        "min",
    )
    work.put("times_to_wait", TIMES_TO_WAIT)
    values = {
        "wait": work.step(
            "wait",
            "After so many times the pace the brine is within two percent of full strength.",
            "{times_to_wait} × {pace}",
            TIMES_TO_WAIT * pace / 60,
            "h",
        )
    }
    if given.waited is not None:
        values["reached"] = work.step(
            "reached",
            "The gap to saturation fades and never closes at once.",
            "1 − e^(−{waited} ÷ {pace})",
            100 * (1 - math.exp(-given.waited / pace)),
            "%",
        )
        if snap(given.waited) < snap(TIMES_TO_WAIT * pace):
            work.warn("The brine has not stood long enough: a reading now does not judge the salt.")
    return values


def _strength_read(given, work, full):
    """Return the strength [percent by weight] that the reading says, at most saturated."""
    if given.reading == SALOMETER:
        read = work.step(
            "strength_read",
            "The salometer counts in hundredths of saturation.",
            "{salometer} × {saturated}",
            given.salometer * SATURATED / 100,
            "%",
        )
    else:
        read = work.step(
            "strength_read",
            "The strength whose density is so many times that of water.",
            "the strength at {gravity}",
            strength_of_gravity(given.gravity),
            "%",
        )
    if snap(read) > snap(max(full, SATURATED) + READS_HIGH * SATURATED / 100):
        work.warn(
            "The reading lies above saturation: cold brine reads a little high, so let it warm, "
            "and check the instrument in clean water."
        )
    return work.step(
        "strength",
        "No brine is stronger than saturated.",
        "{strength_read}, at most {saturated} or {full_strength}",
        min(read, max(full, SATURATED)),
        "%",
    )


def _reading(given, work, full):
    work.put("saturated", SATURATED, "%")
    strength = _strength_read(given, work, full)
    density = work.step(
        "density",
        "From a curve through the table of densities.",
        "the density at {strength}",
        brine_density(strength) * GALLON / POUND,
        "lb/gal",
    )
    in_brine = work.step(
        "salt_in_brine",
        "Brine carries less for its volume than the water took up, for brine is more than the water "
        "it was made of.",
        "{density} × {strength}",
        density * strength / 100,
        "lb/gal",
    )
    degrees = work.step(
        "degrees",
        "By weight, as the salometer counts.",
        "{strength} ÷ {saturated}",
        100 * strength / SATURATED,
        "%",
    )
    ratio = work.step(
        "salt_ratio",
        "Salt for each part of water, beside saturated brine: this counts for the resin.",
        "{strength} ÷ (100 % − {strength}), beside {saturated} ÷ (100 % − {saturated})",
        100 * salt_in_water(strength) / salt_in_water(SATURATED),
        "%",
    )
    weak = snap(degrees) < WEAK
    return {
        "strength": strength,
        "in_brine": in_brine,
        "degrees": degrees,
        "ratio": ratio,
        "verdict": "weak: wait, or look for missing salt" if weak else "strong enough",
    }


def _brine_strength(given, work):
    celsius = convert(given.temperature, "°F", "°C", "temperature")
    work.put("celsius", celsius, "°C", fixed_unit=True)
    full, in_water = _saturated(work, celsius)
    values = {"full": full, "in_water": in_water, **_waiting(given, work, celsius)}
    if given.reading != NONE:
        values |= _reading(given, work, full)
    return values


BRINE_STRENGTH = Calculator(
    "brine-strength",
    "Strength of the brine",
    "How strong can the brine be, how strong is it, and how long does it take?",
    inputs=[
        Input(
            "temperature",
            "Temperature of the brine",
            "temperature",
            "°F",
            default=60,
            low=32,
            high=120,
            usual_low=40,
            help="Of the water in the brine tank.",
            unusual="Cold brine takes long to get strong.",
        ),
        Input(
            "waited",
            "Time since the refill",
            "time",
            "min",
            low=0,
            high=2880,
            optional=True,
            help="To see how far the salt has dissolved.",
        ),
        Input(
            "reading",
            "What was read",
            "choice",
            default=NONE,
            choices=(NONE, HYDROMETER, SALOMETER),
        ),
        Input(
            "gravity",
            "Hydrometer reading",
            "number",
            example=1.19,
            low=0.99,
            high=1.21,
            help="Density beside that of water, in brine near room temperature; cold brine reads a "
            "little high.",
            only_when=("reading", (HYDROMETER,)),
        ),
        Input(
            "salometer",
            "Salometer reading",
            "share",
            "%",
            example=95,
            low=0,
            high=105,
            help="In degrees, which are hundredths of saturation.",
            only_when=("reading", (SALOMETER,)),
        ),
    ],
    outputs=[
        Output("full", "Strength when saturated", "share", "%", step=0.1),
        Output("in_water", "Salt for each volume of water", "salt strength", "lb/gal", digits=3),
        Output("wait", "Time to saturate", "time", "h", step=0.1, direction="up"),
        Output("reached", "Saturation reached so far", "share", "%", step=1),
        Output("strength", "Strength by weight", "share", "%", step=0.1),
        Output("in_brine", "Salt for each volume of brine", "salt strength", "lb/gal", digits=3),
        Output("degrees", "Degrees of the salometer", "share", "%", step=1, direction="down"),
        Output("ratio", "Salt beside that of saturated brine", "share", "%", step=1),
        Output("verdict", "Judgement", "words"),
    ],
    compute=_brine_strength,
    picture=Curve("temperature", 33, 100, ["wait"]),
    sources=[
        "salt-solubility",
        "salt-solubility-handbook",
        "brine-density",
        "salometer",
        "common-practice",
    ],
    cautions=[
        "Brine stings in eyes and cuts: rinse with water, and wipe spills off floors and metal.",
    ],
)

CALCULATORS = (BRINE_STRENGTH,)
