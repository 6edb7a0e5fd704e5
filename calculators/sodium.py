"""Sodium or potassium that the exchange puts into the water, and potassium chloride as the salt."""

from calculators.capacity import SODIUM_CHLORIDE
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import snap
from calculators.readings import salt_of_regeneration
from calculators.units import GALLON
from calculators.water import charge_equivalent

SODIUM = 22.98977  # g/mol
POTASSIUM = 39.0983  # g/mol
POTASSIUM_CHLORIDE = 74.5513  # g/mol
#: Federal guidance for people on a very low sodium diet, and the range advised for taste.
STRICT_DIET, TASTE_LOW, TASTE_HIGH = 20.0, 30.0, 60.0  # mg/L; see the source "sodium-guidance"
LABEL_FREE, LABEL_VERY_LOW, LABEL_LOW = 5.0, 35.0, 140.0  # mg; see the source "sodium-labels"
WHOLE_DAY = 2000.0  # mg/day; see the source "sodium-day"
FLUID_OUNCE = GALLON / 128  # L


def added_by_exchange(removed, molar_mass):
    """Return the sodium or potassium [mg/L] that takes the place of a hardness removed [gpg].

    molar_mass: of the singly charged ion [g/mol]; two of them take the place of one of calcium.
    Source: atomic-weights.

    >>> round(added_by_exchange(1, SODIUM), 3)
    7.864
    """
    return removed / charge_equivalent(1, 2 * molar_mass)


def taste(sodium):
    """Return the words for sodium [mg/L] beside the range advised for taste (sodium-guidance)."""
    if snap(sodium) < TASTE_LOW:
        return "below the range advised for taste"
    if snap(sodium) <= TASTE_HIGH:
        return "within the range advised for taste"
    return "above the range advised for taste"


def label(sodium):
    """Return the word of a food label for the sodium of one serving [mg] (sodium-labels)."""
    if snap(sodium) < LABEL_FREE:
        return "sodium free"
    if snap(sodium) <= LABEL_VERY_LOW:
        return "very low sodium"
    return "low sodium" if snap(sodium) <= LABEL_LOW else "none of the label's words"


def _added(given, work, ion, molar_mass):
    """Return what is added of an ion, what the water then holds [mg/L] and what is drunk [mg]."""
    if snap(given.outlet) > snap(given.raw):
        raise InputProblem(
            "outlet",
            "The softened water is harder than the raw water. Check that the two were not swapped.",
        )
    removed = work.step(
        "hardness_removed",
        "Only the hardness taken out is exchanged.",
        "{raw} − {outlet}",
        given.raw - given.outlet,
        "gpg",
    )
    work.put("its_exchange", added_by_exchange(1, molar_mass), "mg/L")
    work.put("one_grain_per_gallon", 1, "gpg")
    added = work.step(
        "added",
        f"Two ions of {ion} take the place of one of calcium or magnesium.",
        "{hardness_removed} ÷ {one_grain_per_gallon} × {its_exchange}",
        added_by_exchange(removed, molar_mass),
        "mg/L",
    )
    total = work.step(
        "total",
        f"With the {ion} that the raw water already has.",
        f"{{added}} + {{raw_{ion}}}",
        added + getattr(given, f"raw_{ion}"),
        "mg/L",
    )
    day = work.step(
        "in_a_day",
        "In the water drunk in a day.",
        "{total} × {water_drunk}",
        total * given.water_drunk,
        "mg/day",
    )
    glass = work.step(
        "in_a_glass",
        "In one glass.",
        "{total} × {glass}",
        total * given.glass * FLUID_OUNCE,
        "mg",
    )
    if getattr(given, f"raw_{ion}") == 0:
        work.warn(
            f"No {ion} of the raw water was given, and nearly all water has some: without a "
            "laboratory's figure this is only what softening adds."
        )
    return {"added": added, "total": total, "in_a_day": day, "in_a_glass": glass}


def _sodium_added(given, work):
    values = _added(given, work, "sodium", SODIUM)
    total = values["total"]
    work.put("guidance", STRICT_DIET, "mg/L")
    beside = work.step(
        "beside_guidance",
        "Set beside the federal guidance, which is meant for people on a very low sodium diet and "
        "not for everybody.",
        "{total} ÷ {guidance}",
        100 * total / STRICT_DIET,
        "%",
    )
    work.put("whole_day", WHOLE_DAY, "mg/day")
    share = work.step(
        "share_of_day",
        "Set beside the sodium that world health guidance allows an adult in a day, all food "
        "included.",
        "{in_a_day} ÷ {whole_day}",
        100 * values["in_a_day"] / WHOLE_DAY,
        "%",
    )
    side = "within" if snap(total) <= STRICT_DIET else "above"
    return {
        **values,
        "guidance": f"{side} the federal guidance for a very low sodium diet",
        "beside_guidance": beside,
        "taste": taste(total),
        "label": label(values["in_a_glass"]),
        "share_of_day": share,
    }


_RAW = Input(
    "raw",
    "Hardness of the raw water",
    "hardness",
    "gpg",
    example=20,
    low=0,
    high=200,
    usual_high=60,
    help="As tested, without an allowance for iron.",
)
_OUTLET = Input(
    "outlet",
    "Hardness of the softened water",
    "hardness",
    "gpg",
    default=0,
    low=0,
    high=200,
    help="Of the water that is drunk; after a blending valve, where there is one.",
)
_WATER_DRUNK = Input(
    "water_drunk",
    "Water drunk in a day",
    "flow",
    "L/day",
    default=2,
    low=0,
    high=6,
    usual_high=4,
    help="Softened water only, with what is cooked in it.",
)
_GLASS = Input(
    "glass",
    "Size of a glass",
    "volume",
    "fl oz",
    default=8,
    low=2,
    high=40,
    help="Taken as one serving.",
)

SODIUM_ADDED = Calculator(
    "sodium-added",
    "Sodium in softened water",
    "How much sodium is in the softened water, and how does it compare with published guidance?",
    inputs=[
        _RAW,
        _OUTLET,
        Input(
            "raw_sodium",
            "Sodium of the raw water",
            "concentration",
            "mg/L",
            default=0,
            low=0,
            high=2000,
            usual_high=200,
            help="From a laboratory report.",
        ),
        _WATER_DRUNK,
        _GLASS,
    ],
    outputs=[
        Output("added", "Sodium added", "concentration", "mg/L", digits=2),
        Output("total", "Sodium in the softened water", "concentration", "mg/L", digits=2),
        Output("in_a_glass", "In a glass", "small mass", "mg", digits=2),
        Output("in_a_day", "In a day", "intake", "mg/day", digits=2),
        Output("guidance", "Federal guidance", "words"),
        Output("beside_guidance", "Beside that guidance", "share", "%", step=1, direction="up"),
        Output("taste", "Taste", "words"),
        Output("label", "A food label would call a glass", "words"),
        Output("share_of_day", "Share of a day's sodium", "share", "%", digits=2),
    ],
    compute=_sodium_added,
    picture=Curve("raw", 0, 50, ["added"]),
    sources=["atomic-weights", "sodium-guidance", "sodium-labels", "sodium-day"],
    cautions=[
        "Give the figures, never medical advice: whoever was told to limit sodium asks the "
        "physician.",
        "An unsoftened tap for drinking and cooking is the usual answer.",
    ],
)


def _potassium_salt(given, work):
    work.put("mole_of_potassium_chloride", POTASSIUM_CHLORIDE, "g")
    work.put("mole_of_sodium_chloride", SODIUM_CHLORIDE, "g")
    salt = work.step(
        "potassium_salt",
        "Salt for salt the exchange is one ion for one, and potassium chloride is the heavier: an "
        "equal number of ions, not an equal weight, does the same.",
        "{salt} × {mole_of_potassium_chloride} ÷ {mole_of_sodium_chloride}",
        given.salt * POTASSIUM_CHLORIDE / SODIUM_CHLORIDE,
        "lb",
    )
    same_weight = work.step(
        "same_weight",
        "The same weight would bring only this part of the ions.",
        "{mole_of_sodium_chloride} ÷ {mole_of_potassium_chloride}",
        100 * SODIUM_CHLORIDE / POTASSIUM_CHLORIDE,
        "%",
    )
    water = work.step(
        "water",
        "It also dissolves less well, so the refill must let in enough water.",
        "{potassium_salt} ÷ {salt_in_water}",
        salt / given.salt_in_water,
        "gal",
    )
    return {
        "potassium_salt": salt,
        "same_weight": same_weight,
        "water": water,
        **_added(given, work, "potassium", POTASSIUM),
    }


POTASSIUM_SALT = Calculator(
    "potassium-salt",
    "Potassium chloride instead of salt",
    "How much potassium chloride does the work of this salt, and what does it add to the water?",
    inputs=[
        salt_of_regeneration(help="Sodium chloride, the whole amount, as the softener is set now."),
        Input(
            "salt_in_water",
            "Potassium chloride that the fill water dissolves",
            "salt strength",
            "lb/gal",
            default=2.86,
            low=1.5,
            high=3.5,
            usual_low=2.3,
            usual_high=3.1,
            help="At room temperature; clearly less in a cold basement.",
        ),
        _RAW,
        _OUTLET,
        Input(
            "raw_potassium",
            "Potassium of the raw water",
            "concentration",
            "mg/L",
            default=0,
            low=0,
            high=500,
            usual_high=20,
            help="From a laboratory report.",
        ),
        _WATER_DRUNK,
        _GLASS,
    ],
    outputs=[
        Output(
            "potassium_salt",
            "Potassium chloride for the same exchange",
            "mass",
            "lb",
            step=0.1,
            direction="up",
        ),
        Output("same_weight", "Exchange by the same weight of it", "share", "%", step=1),
        Output("water", "Fill water it needs", "volume", "gal", step=0.1, direction="up"),
        Output("added", "Potassium added", "concentration", "mg/L", digits=2),
        Output("total", "Potassium in the softened water", "concentration", "mg/L", digits=2),
        Output("in_a_glass", "In a glass", "small mass", "mg", digits=2),
        Output("in_a_day", "In a day", "intake", "mg/day", digits=2),
    ],
    compute=_potassium_salt,
    sources=["atomic-weights", "potassium-guidance", "potassium-avoided", "potassium-health"],
    cautions=[
        "Potassium can be dangerous to people with kidney trouble, heart trouble, diabetes or "
        "certain medicines: they ask the physician before drinking or cooking with this water.",
        "Give the figures, never medical advice; an unsoftened tap is the usual answer.",
    ],
)

CALCULATORS = (SODIUM_ADDED, POTASSIUM_SALT)
