"""Hardness of the raw water: its units, and the number entered in the control."""

from calculators.declare import Calculator, Curve, Drawing, Input, Output
from calculators.quantities import KINDS, round_to, snap
from calculators.units import CALCIUM_CARBONATE, GRAIN_PER_GALLON

IRON = 55.845  # g/mol
MANGANESE = 54.938  # g/mol

#: Upper end of each class in mg/L as CaCO3 (see the source "hardness-classes").
CLASSES = ((60, "soft"), (120, "moderately hard"), (180, "hard"))


def hardness_class(hardness):
    """Return the word for a hardness [mg/L as CaCO3, 0 or more] on one common scale.

    Scales of different bodies differ: show the figure first, the word second.
    Source: hardness-classes.
    """
    for limit, word in CLASSES:
        if snap(hardness) <= limit:
            return word
    return "very hard"


def charge_equivalent(concentration, molar_mass):
    """Return the hardness [gpg] that a doubly charged ion [mg/L] of `molar_mass` [g/mol] uses up.

    This is chemistry: one ion takes the place of one calcium ion. Source: atomic-weights.

    >>> round(charge_equivalent(1, IRON), 4)
    0.1047
    """
    return concentration * CALCIUM_CARBONATE / molar_mass / GRAIN_PER_GALLON


def _hardness_units(given, work):
    factors = KINDS["hardness"].factors
    work.step(
        "grains",
        "Start from grains per gallon.",
        "{hardness}",
        given.hardness,
        "gpg",
        fixed_unit=True,
    )
    work.put("one_grain_per_gallon", GRAIN_PER_GALLON, "mg/L", fixed_unit=True)
    milligrams = work.step(
        "milligrams",
        "Each grain per gallon is a grain of calcium carbonate in a US gallon.",
        "{grains} × {one_grain_per_gallon}",
        given.hardness * GRAIN_PER_GALLON,
        "mg/L",
        fixed_unit=True,
    )
    values = {}
    for name, unit, _ in _UNITS:
        values[name] = milligrams / factors[unit]
        if unit in ("gpg", "mg/L"):
            continue
        work.put(f"one_{unit}", factors[unit], "mg/L", fixed_unit=True)
        work.step(
            name,
            f"Divide by what one {unit} is in mg/L.",
            f"{{milligrams}} ÷ {{one_{unit}}}",
            values[name],
            unit,
            fixed_unit=True,
        )
    return {**values, "wording": hardness_class(milligrams)}


_UNITS = (
    ("grains_per_gallon", "gpg", 0.1),
    ("mg_per_liter", "mg/L", 1),
    ("german_degrees", "°dH", 0.1),
    ("french_degrees", "°fH", 0.1),
    ("clark_degrees", "°Clark", 0.1),
    ("millimoles_per_liter", "mmol/L", 0.01),
    ("milliequivalents_per_liter", "meq/L", 0.01),
)

HARDNESS_UNITS = Calculator(
    "hardness-units",
    "Hardness in any unit",
    "What is this hardness in the other units?",
    inputs=[
        Input(
            "hardness",
            "Hardness",
            "hardness",
            "gpg",
            example=18,
            low=0,
            high=200,
            usual_high=60,
            help="Total hardness as calcium carbonate, with its unit.",
            unusual="Check that a reading in mg/L was not entered as grains.",
        ),
    ],
    outputs=[
        *(
            Output(name, f"In {unit}", "hardness", unit, step=step, fixed_unit=True)
            for name, unit, step in _UNITS
        ),
        Output("wording", "On a common scale", "words"),
    ],
    compute=_hardness_units,
    picture=Drawing("hardness-bar"),
    sources=["unit-definitions", "atomic-weights", "hardness-classes"],
    cautions=[
        "A laboratory sheet may give calcium and magnesium “as the ion”: those figures are not "
        "hardness as calcium carbonate.",
    ],
)


def _hardness_setting(given, work):
    iron_part = work.step(
        "iron_part",
        "Dissolved iron is held more firmly than hardness and comes off badly, so the trade "
        "counts each part of it as many parts of hardness.",
        "{iron} × {iron_allowance}",
        given.iron * given.iron_allowance,
        "gpg",
    )
    manganese_part = work.step(
        "manganese_part",
        "Manganese is counted in the same way.",
        "{manganese} × {manganese_allowance}",
        given.manganese * given.manganese_allowance,
        "gpg",
    )
    compensated = work.step(
        "compensated_hardness",
        "Hardness and the allowances together are the compensated hardness.",
        "{hardness} + {iron_part} + {manganese_part}",
        given.hardness + iron_part + manganese_part,
        "gpg",
    )
    setting = work.step(
        "setting",
        "The control takes steps, so round up: rounding down would run out early.",
        "{compensated_hardness}, up to a multiple of {setting_step}",
        round_to(compensated, given.setting_step, "up"),
        "gpg",
    )
    by_charge = work.step(
        "metals_by_charge",
        "By charge alone the metals would use only this much capacity: the rest of the allowance "
        "pays for poor regeneration, not for chemistry.",
        "{iron} and {manganese} as hardness",
        charge_equivalent(given.iron, IRON) + charge_equivalent(given.manganese, MANGANESE),
        "gpg",
    )
    metals = snap(given.iron + given.manganese)
    if metals > 3:
        work.warn("With this much iron and manganese do not rely on the softener: treat it first.")
    elif metals >= 1:
        work.warn(
            "Iron and manganese together reach the level at which public rules ask for treatment "
            "ahead of a softener."
        )
    return {"setting": setting, "compensated": compensated, "metals_by_charge": by_charge}


HARDNESS_SETTING = Calculator(
    "hardness-setting",
    "Hardness setting with iron and manganese",
    "What hardness do I enter in the control?",
    inputs=[
        Input(
            "hardness",
            "Hardness of the raw water",
            "hardness",
            "gpg",
            example=18,
            low=0,
            high=200,
            usual_high=60,
            help="From a test at a flushed raw tap.",
            unusual="Check that a reading in mg/L was not entered as grains.",
        ),
        Input(
            "iron",
            "Dissolved iron",
            "concentration",
            "mg/L",
            default=0,
            example=0.3,
            low=0,
            high=15,
            usual_high=1,
            help="Clear when drawn, rusty on standing. Iron that is already rust is filtered, "
            "not exchanged.",
            unusual="Look at treatment ahead of the softener.",
        ),
        Input(
            "manganese",
            "Manganese",
            "concentration",
            "mg/L",
            default=0,
            low=0,
            high=5,
            usual_high=0.3,
            help="From a laboratory report or a color test.",
            unusual="This is a health advisory level: refer the customer to the health department.",
        ),
        Input(
            "iron_allowance",
            "Allowance for iron",
            "allowance",
            "gpg per mg/L",
            default=4,
            low=0,
            high=10,
            usual_low=3,
            usual_high=5,
            help="The hardness counted for each part of iron; a habit of the trade.",
            shop="iron_allowance",
        ),
        Input(
            "manganese_allowance",
            "Allowance for manganese",
            "allowance",
            "gpg per mg/L",
            default=4,
            low=0,
            high=10,
            usual_low=2,
            usual_high=5,
            help="As for iron.",
            shop="manganese_allowance",
        ),
        Input(
            "setting_step",
            "Step of the control",
            "hardness",
            "gpg",
            default=1,
            low=0.1,
            high=20,
            help="The smallest change the control can be set to.",
            equipment="hardness_step",
        ),
    ],
    outputs=[
        Output("setting", "Enter in the control", "hardness", "gpg", digits=None),
        Output("compensated", "Compensated hardness", "hardness", "gpg", step=0.1),
        Output("metals_by_charge", "Metals by charge alone", "hardness", "gpg", step=0.01),
    ],
    compute=_hardness_setting,
    picture=Curve("iron", 0, 3, ["setting", "compensated"]),
    sources=["common-practice", "atomic-weights", "iron-pretreatment", "manganese-advisory"],
    cautions=[
        "Use the compensated hardness for settings only: sodium and leakage are reckoned from "
        "the tested hardness.",
        "Iron bacteria, a smell of sulfur, or acid or very alkaline water are not a softener's "
        "job: refer them to a certified laboratory and a licensed well contractor.",
    ],
)

CALCULATORS = (HARDNESS_UNITS, HARDNESS_SETTING)
