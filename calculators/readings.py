"""Readings that several calculators take, each declared once.

Every function returns a new Input; `more` is what differs where it is taken, such as `help`.
"""

from calculators.declare import Input

CLOCK, DELAYED, IMMEDIATE, TWIN = "time clock", "delayed meter", "immediate meter", "twin tank"


def _input(*named, more, **usual):
    return Input(*named, **{**usual, **more})


def resin_volume(**more):
    """Return the resin in the tank [ft3]."""
    return _input(
        "resin_volume",
        "Resin in the tank",
        "volume",
        "ft³",
        example=1.5,
        low=0.2,
        high=10,
        usual_low=0.5,
        usual_high=4,
        help="From the unit's sheet, or the tank's area times the depth of the bed.",
        equipment="resin_volume",
        more=more,
    )


def resin_condition():
    """Return the condition of the resin [percent of new]."""
    return Input(
        "resin_condition",
        "Condition of the resin",
        "share",
        "%",
        default=100,
        low=10,
        high=110,  # as for the capacity of the resin
        help="Lower for old or fouled resin, when a test has shown it.",
    )


def salt_of_regeneration(**more):
    """Return the salt for one regeneration [lb]."""
    return _input(
        "salt",
        "Salt for one regeneration",
        "mass",
        "lb",
        example=9,
        low=0.5,
        high=100,
        help="The whole amount, not the amount for each volume of resin.",
        equipment="salt_per_regeneration",
        more=more,
    )


def salt_step():
    """Return the step of the salt setting [lb]."""
    return Input(
        "salt_step",
        "Step of the salt setting",
        "mass",
        "lb",
        default=0.5,
        metric_default=0.25,
        low=0.05,
        high=5,
        help="The smallest change of the salt that can be set.",
    )


def salt_voids(**more):
    """Return the voids among loose salt [percent]."""
    return _input(
        "voids",
        "Voids among the salt",
        "share",
        "%",
        default=45,
        low=30,
        high=60,
        usual_low=35,
        usual_high=52,
        help="The share of loose salt that is air or water.",
        more=more,
    )


def control():
    """Return the kind of control."""
    return Input(
        "control",
        "Kind of control",
        "choice",
        default=DELAYED,
        choices=(CLOCK, DELAYED, IMMEDIATE, TWIN),
        equipment="control",
    )


def tank_diameter(**more):
    """Return the diameter of the resin tank [in]."""
    return _input(
        "tank_diameter",
        "Diameter of the resin tank",
        "length",
        "in",
        example=10,
        low=6,
        high=24,
        help="Measured around the tank and divided by π, or from the unit's sheet.",
        equipment="tank_diameter",
        more=more,
    )


def water_temperature(**more):
    """Return the temperature of the water [°F]."""
    return _input(
        "temperature",
        "Temperature of the water",
        "temperature",
        "°F",
        default=55,
        low=33,
        high=110,
        usual_low=36,
        usual_high=90,
        help="At the unit, in the season of the call.",
        more=more,
    )


def water_pressure(**more):
    """Return the pressure of the water [psi]."""
    return _input(
        "pressure",
        "Water pressure",
        "pressure",
        "psi",
        default=50,
        low=10,
        high=125,
        usual_low=25,
        usual_high=80,
        help="At the softener while water runs.",
        more=more,
    )


def heater_volume(**more):
    """Return the volume of the water heater [gal]."""
    return _input(
        "tank",
        "Volume of the heater",
        "volume",
        "gal",
        example=50,
        low=5,
        high=200,
        help="From its rating plate.",
        more=more,
    )


def hot_share():
    """Return the share of the household's water that is hot [percent]."""
    return Input(
        "hot_share",
        "Share of it that is hot",
        "share",
        "%",
        default=35,
        low=1,
        high=100,
        usual_low=25,
        usual_high=45,
        help="A habit of the trade; meters show much variety.",
        shop="hot_share",
    )


def raw_hardness(**more):
    """Return the hardness of the raw water that a softener takes most of away [gpg]."""
    return _input(
        "raw",
        "Hardness of the raw water",
        "hardness",
        "gpg",
        example=20,
        low=0.5,
        high=200,
        usual_high=60,
        help="As tested, without an allowance for iron.",
        more=more,
    )


def fresh_leakage():
    """Return the hardness that passes a fresh bed [gpg]."""
    return Input(
        "floor",
        "Hardness that passes a fresh bed",
        "hardness",
        "gpg",
        default=0.3,
        low=0,
        high=20,
        usual_high=2,
        help="More on salty water: there take it from the calculator for dissolved solids.",
    )
