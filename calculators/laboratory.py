"""Hardness from the calcium and magnesium of a laboratory report."""

from calculators.declare import Calculator, Input, Output
from calculators.quantities import KINDS, snap
from calculators.units import CALCIUM_CARBONATE, GRAIN_PER_GALLON
from calculators.water import charge_equivalent, hardness_class

CALCIUM = 40.078  # g/mol
MAGNESIUM = 24.305  # g/mol

AS_ION, AS_CARBONATE = "as the ion", "as calcium carbonate"
#: A total on the sheet this far from the worked-out one is worth a word.
NOTABLE_DIFFERENCE = 0.10
#: Harder waters than this are rare, so that the sheet was more likely misread.
RARELY_HARDER = 60.0  # gpg


def hardness_of_ions(calcium, magnesium):
    """Return the total hardness [gpg] of calcium and magnesium [mg/L as the ion, 0 or more].

    Both are doubly charged, so each ion counts as one of calcium carbonate. Source: atomic-weights.

    >>> round(hardness_of_ions(50, 10), 3)
    9.7
    """
    return charge_equivalent(calcium, CALCIUM) + charge_equivalent(magnesium, MAGNESIUM)


def _part(work, given, ion, molar_mass):
    """Return the hardness [mg/L as CaCO3] of one ion and tell how it came about."""
    concentration = getattr(given, ion)
    if given.reported == AS_CARBONATE:
        return work.step(
            f"{ion}_part",
            f"The sheet already gives {ion} as hardness.",
            f"{{{ion}}}",
            concentration,
            "mg/L",
            fixed_unit=True,
        )
    work.put(f"one_part_of_{ion}", CALCIUM_CARBONATE / molar_mass, "mg/L per mg/L", fixed_unit=True)
    return work.step(
        f"{ion}_part",
        f"An ion of {ion} weighs less than the calcium carbonate it stands for.",
        f"{{{ion}}} × {{one_part_of_{ion}}}",
        charge_equivalent(concentration, molar_mass) * GRAIN_PER_GALLON,
        "mg/L",
        fixed_unit=True,
    )


def _fits(total, other):
    return abs(snap(total - other)) <= snap(NOTABLE_DIFFERENCE * other)


def _compare_with_sheet(given, work, total):
    """Warn where the sheet's own total differs, with the misreading that would explain it."""
    if given.sheet_total is None or _fits(total, given.sheet_total):
        return
    if given.reported == AS_ION:
        other, form = given.calcium + given.magnesium, AS_CARBONATE
    else:
        other = hardness_of_ions(given.calcium, given.magnesium) * GRAIN_PER_GALLON
        form = AS_ION
    factors = KINDS["hardness"].factors
    unit = min(factors, key=lambda one: abs(total - factors[one] * given.sheet_total))
    if _fits(other, given.sheet_total):
        guess = f"It would agree if calcium and magnesium were given {form}."
    elif _fits(total, factors[unit] * given.sheet_total):
        guess = f"It would agree if that total were in {unit}."
    else:
        guess = "Ask the laboratory which of the figures is meant how."
    work.warn(f"The total on the sheet differs from its calcium and magnesium. {guess}")


def _hardness_from_ions(given, work):
    calcium = _part(work, given, "calcium", CALCIUM)
    magnesium = _part(work, given, "magnesium", MAGNESIUM)
    total = work.step(
        "total",
        "Calcium and magnesium together are the hardness.",
        "{calcium_part} + {magnesium_part}",
        calcium + magnesium,
        "mg/L",
        fixed_unit=True,
    )
    hardness = work.step(
        "hardness",
        "The same hardness in the unit of the control.",
        "{total}",
        total / GRAIN_PER_GALLON,
        "gpg",
    )
    values = {"hardness": hardness, "total": total, "wording": hardness_class(total)}
    _compare_with_sheet(given, work, total)
    if snap(total) == 0:
        if not given.sheet_total:
            work.warn(
                "Neither calcium nor magnesium: this sheet is of softened or distilled water."
            )
        return values
    if given.reported == AS_ION and given.sheet_total is None and snap(hardness) > RARELY_HARDER:
        work.warn(
            "Few waters are so hard: check that the sheet does not give calcium and magnesium "
            "as calcium carbonate."
        )
    values["calcium_share"] = work.step(
        "calcium_share",
        "How much of it is calcium.",
        "{calcium_part} ÷ {total}",
        100 * calcium / total,
        "%",
    )
    if snap(calcium * CALCIUM) < snap(magnesium * MAGNESIUM):
        work.warn("More magnesium than calcium is unusual: check that they were not swapped.")
    return values


HARDNESS_FROM_IONS = Calculator(
    "hardness-from-ions",
    "Hardness from a laboratory report",
    "How hard is the water with this much calcium and magnesium?",
    inputs=[
        Input(
            "reported",
            "Calcium and magnesium are given",
            "choice",
            default=AS_ION,
            choices=(AS_ION, AS_CARBONATE),
            help="The sheet says so beside the unit; where it says nothing, take the ion.",
        ),
        Input(
            "calcium",
            "Calcium",
            "concentration",
            "mg/L",
            example=80,
            low=0,
            high=1000,
            help="From the sheet of the raw water.",
        ),
        Input(
            "magnesium",
            "Magnesium",
            "concentration",
            "mg/L",
            example=24,
            low=0,
            high=500,
            help="From the same sheet.",
        ),
        Input(
            "sheet_total",
            "Total hardness on the sheet",
            "hardness",
            "mg/L",
            low=0,
            high=5000,
            optional=True,
            help="To find out whether the sheet was read rightly.",
        ),
    ],
    outputs=[
        Output("hardness", "Hardness", "hardness", "gpg", step=0.1),
        Output("total", "As calcium carbonate", "hardness", "mg/L", step=1, fixed_unit=True),
        Output("calcium_share", "Share of calcium", "share", "%", step=1),
        Output("wording", "On a common scale", "words"),
    ],
    compute=_hardness_from_ions,
    sources=["atomic-weights", "unit-definitions", "hardness-classes"],
    cautions=[
        "Iron and manganese on the sheet are not in this hardness: they count when the control is "
        "set.",
    ],
)

CALCULATORS = (HARDNESS_FROM_IONS,)
