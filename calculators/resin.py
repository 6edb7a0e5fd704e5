"""How long resin lasts in chlorinated water."""

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import convert, snap

#: A rule of the trade: standard resin lasts these years with this much free chlorine.
RULE_YEARS, RULE_CHLORINE = 10.0, 1.0  # years, mg/L
RULE_TEMPERATURE = 60.0  # °F
HALVING = 10.0  # °C: so much warmer water halves the life
MOST_YEARS = 20.0
STRONGER = 1.5  # how many times longer resin with more crosslinking lasts
METALS = 0.5  # what iron, copper and manganese leave of the life
SPREAD = 0.5  # either way
EIGHT, TEN = "8 percent", "10 percent"


def warmth_factor(temperature):
    """Return how much longer [1] resin lasts at a temperature [°F, 33 to 120] than at the rule's.

    Chemistry of this kind about doubles its pace in water ten degrees Celsius warmer.
    Source: common-practice.

    >>> round(warmth_factor(78), 9)
    0.5
    """
    return 2 ** ((RULE_TEMPERATURE - temperature) / 1.8 / HALVING)


def years_of_resin(chlorine, factor=1.0):
    """Return the years that resin lasts, at most MOST_YEARS.

    chlorine: free chlorine [mg/L], 0 to 5; factor: what warmth, make and metals leave of the life
    by the rule. A rule of thumb, good to half its value either way.
    Sources: resin-life, common-practice.

    >>> years_of_resin(2)
    5.0
    """
    if chlorine == 0:
        return MOST_YEARS
    return min(MOST_YEARS, RULE_YEARS * RULE_CHLORINE / chlorine * factor)


def _factor(given, work):
    """Return what warmth, make and metals leave of the life by the rule."""
    for name, temperature in (("celsius", given.temperature), ("usual_celsius", RULE_TEMPERATURE)):
        celsius = convert(temperature, "°F", "°C", "temperature")
        work.put(name, celsius, "°C", fixed_unit=True)
    work.put("halving", HALVING)
    warmth = work.step(
        "warmth_factor",
        "Warm water attacks faster: so many degrees Celsius more halve the life.",
        "2^(({usual_celsius} − {celsius}) ÷ {halving})",
        warmth_factor(given.temperature),
    )
    make = work.step(
        "make_factor",
        "More crosslinking holds longer.",
        f"crosslinking of {given.crosslinking}",
        STRONGER if given.crosslinking == TEN else 1.0,
    )
    metals = work.step(
        "metals_factor",
        "Iron, copper and manganese speed the attack.",
        f"metals in the water: {given.metals}",
        METALS if given.metals == "yes" else 1.0,
    )
    return warmth * make * metals


def _resin_life(given, work):
    factor = _factor(given, work)
    work.put("rule_years", RULE_YEARS)
    work.put("rule_chlorine", RULE_CHLORINE, "mg/L")
    work.put("longest_life", MOST_YEARS)
    by_the_rule = (
        "{rule_years} × {rule_chlorine} ÷ {chlorine} × {warmth_factor} × {make_factor} × "
        "{metals_factor}, at most {longest_life}"
    )
    years = work.step(
        "years",
        "Free chlorine loosens the beads: the more of it, the sooner. Past the longest life, and "
        "without chlorine, other wear decides.",
        by_the_rule if given.chlorine else "{longest_life}",
        years_of_resin(given.chlorine, factor),
    )
    work.put("spread", 100 * SPREAD, "%")
    few = work.step(
        "fewest_years",
        "The rule is rough: it may be fewer.",
        "{years} × (100 % − {spread})",
        years * (1 - SPREAD),
    )
    many = work.step(
        "greatest_years",
        "Or more.",
        "{years} × (100 % + {spread}), at most {longest_life}",
        min(MOST_YEARS, years * (1 + SPREAD)),
    )
    return {
        "years": years,
        "few": few,
        "many": many,
        "limit": "iron, sand and wear" if snap(years) >= MOST_YEARS else "chlorine",
    }


RESIN_LIFE = Calculator(
    "resin-life",
    "Life of resin in chlorinated water",
    "How many years may this resin last?",
    inputs=[
        Input(
            "chlorine",
            "Free chlorine",
            "concentration",
            "mg/L",
            example=1,
            low=0,
            high=5,
            usual_high=2,
            help="At a flushed raw tap. Combined chlorine acts more slowly.",
            unusual="Public supplies rarely carry so much: test again, or take it out ahead.",
        ),
        Input(
            "temperature",
            "Temperature of the water",
            "temperature",
            "°F",
            default=60,
            low=33,
            high=120,
            usual_high=90,
            help="The average over the year.",
            unusual="Warm water is hard on resin.",
        ),
        Input(
            "crosslinking",
            "Crosslinking of the resin",
            "choice",
            default=EIGHT,
            choices=(EIGHT, TEN),
        ),
        Input(
            "metals",
            "Iron, copper or manganese in the water",
            "choice",
            default="no",
            choices=("no", "yes"),
        ),
    ],
    outputs=[
        Output("years", "Years, about", digits=2),
        Output("few", "Years, in hard conditions", digits=2),
        Output("many", "Years, in kind conditions", digits=2),
        Output("limit", "What ends its life", "words"),
    ],
    compute=_resin_life,
    picture=Curve("chlorine", 0.4, 4, ["years", "few", "many"]),
    sources=["resin-life", "resin-aging", "oxidant-limits", "common-practice"],
    cautions=["Judge resin by a capacity audit and a look at the beads, never by its age alone."],
)

CALCULATORS = (RESIN_LIFE,)
