"""How far salt and water go, set beside the marks that rules and standards publish."""

from calculators.capacity import SALT_CEILING
from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.quantities import snap
from calculators.readings import salt_of_regeneration

#: Salt efficiency [grains/lb] that a softener must at least bring.
EFFICIENT = 3350.0  # of one called efficient; source: efficiency-standard
STRICT = 4000.0  # where rules are strict; sources: state-efficiency, sewer-district
OLD = 2850.0  # of an old one, from before 1980; source: state-efficiency
#: Water of one regeneration for each 1,000 grains of capacity [gal/kilograin], at most.
WATER = 5.0  # source: efficiency-standard
STRICT_WATER = 2.5  # source: sewer-district

_SALT_MARKS = (
    ("efficient", "for a softener called efficient", EFFICIENT),
    ("strict", "where the rule is strict", STRICT),
    ("old", "for an old softener", OLD),
)
_WATER_MARKS = (
    ("efficient_water", "for a softener called efficient", WATER),
    ("strict_water", "where a sewer district is strict", STRICT_WATER),
)


def _compared(work, measured, number, unit, marks, is_met):
    """Tell a step for each mark that a number is set beside; return the answers in words."""
    answers = {}
    for name, whose, mark in marks:
        work.put(f"{name}_mark", mark, unit)
        work.step(
            f"{name}_share",
            f"Set beside the mark {whose}.",
            f"{{{measured}}} ÷ {{{name}_mark}}",
            100 * number / mark,
            "%",
        )
        answers[name] = "met" if is_met(snap(number), mark) else "missed"
    return answers


def _salt_efficiency(given, work):
    efficiency = work.step(
        "efficiency",
        "The salt efficiency, or what the salt brings back for its weight.",
        "{capacity} ÷ {salt}",
        given.capacity / given.salt,
        "grains/lb",
    )
    if snap(efficiency) > snap(SALT_CEILING):
        raise InputProblem(
            "capacity",
            f"That is {work.shown(efficiency, 'grains/lb')}, and no salt can exchange more than "
            f"{work.shown(SALT_CEILING, 'grains/lb')}. Write the capacity that goes with this "
            "salt, not the greatest the tank can have.",
        )
    work.put("salt_ceiling", SALT_CEILING, "grains/lb")
    share = work.step(
        "share_of_the_ceiling",
        "Chemistry sets a ceiling: two ions of sodium for one of calcium.",
        "{efficiency} ÷ {salt_ceiling}",
        100 * efficiency / SALT_CEILING,
        "%",
    )
    values = {"efficiency": efficiency, "share_of_ceiling": share}
    values |= _compared(
        work,
        "efficiency",
        efficiency,
        "grains/lb",
        _SALT_MARKS,
        lambda number, mark: number >= mark,
    )
    if given.water is not None:
        each = work.step(
            "water_for_capacity",
            "The water of one regeneration, shared out over its capacity.",
            "{water} ÷ {capacity}",
            given.water / (given.capacity / 1000),
            "gal/kilograin",
        )
        values["water_for_capacity"] = each
        values |= _compared(
            work,
            "water_for_capacity",
            each,
            "gal/kilograin",
            _WATER_MARKS,
            lambda number, mark: number <= mark,
        )
    return values


SALT_EFFICIENCY = Calculator(
    "salt-efficiency",
    "Efficiency of a setting against published marks",
    "Does this setting make good use of salt and water?",
    inputs=[
        salt_of_regeneration(example=7.5),
        Input(
            "capacity",
            "Usable capacity at this salt",
            "capacity",
            "grains",
            example=27000,
            low=500,
            high=400000,
            help="From the capacity calculator, or as an audit showed it.",
        ),
        Input(
            "water",
            "Water of one regeneration",
            "volume",
            "gal",
            example=78,
            low=1,
            high=2000,
            optional=True,
            help="All of it, from backwash to refill.",
        ),
    ],
    outputs=[
        Output(
            "efficiency",
            "Salt efficiency",
            "salt efficiency",
            "grains/lb",
            digits=4,  # so that what just misses a mark is not shown as the mark
        ),
        Output("share_of_ceiling", "Share of what the salt could do", "share", "%", step=1),
        Output("efficient", "Mark for a softener called efficient", "words"),
        Output("strict", "Mark where the rule is strict", "words"),
        Output("old", "Mark for an old softener", "words"),
        Output(
            "water_for_capacity",
            "Water for the capacity",
            "water for capacity",
            "gal/kilograin",
            digits=3,
        ),
        Output("efficient_water", "Water mark for a softener called efficient", "words"),
        Output("strict_water", "Water mark of a strict sewer district", "words"),
    ],
    compute=_salt_efficiency,
    sources=["efficiency-standard", "state-efficiency", "sewer-district", "atomic-weights"],
    cautions=[
        "The marks are met in a laboratory by a softener with a meter: a setting on paper is no "
        "certificate, and the local rule wins.",
    ],
)

CALCULATORS = (SALT_EFFICIENCY,)
