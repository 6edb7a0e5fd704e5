"""Chemicals put through the resin: bleach for a stale bed, iron cleaner for a fouled one.

Nothing is dosed until it is known what went through the unit last, because bleach with acid, iron
cleaner or ammonia gives off poisonous gas.
"""

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import snap
from calculators.readings import resin_volume
from calculators.units import GALLON

PLAIN, OTHER = "plain bleach, nothing added", "scented, thickened or not known"
SALT_ONLY, BLEACH, CLEANER, UNKNOWN = (
    "salt only", "bleach", "iron cleaner", "something else, or not known",
)  # fmt: skip
LAST_CYCLE = (SALT_ONLY, BLEACH, CLEANER, UNKNOWN)
POWDER, LIQUID = "powder", "liquid"

#: Strength [%] of the bleach for which the dose of the trade is told.
HOUSEHOLD_STRENGTH = 5.25
#: Chlorine [mg/L] for each percent on the label, a percent being one gram in 100 mL. Labels that
#: mean percent by weight hold a few percent more.
CHLORINE_OF_PERCENT = 10_000.0
FLUID_OUNCES_IN_A_GALLON = 128

_MIXING = (
    "Never let bleach meet acid, iron cleaner or ammonia, in the brine well, in the drain or "
    "in a bucket: the gas is poisonous. One chemical for each regeneration, and a full one with "
    "salt alone between."
)
_AIR = (
    "Wear gloves and eye protection, and keep the air moving. If you smell gas, leave, take "
    "everyone with you, and call the emergency number from outside. Never sniff a drain to see "
    "whether it has come through."
)
_TELL = (
    "Tell the household before you start: nobody draws water until the rinse is done and tested. "
    "A unit in bypass gets no water and cannot run the cycle; only with separate valves can its "
    "inlet stand open and its outlet shut while the bypass feeds the house."
)
_DISCHARGE = (
    "Local rules say what may go down this drain; keep the rinse out of a septic system where "
    "there is another way."
)


def bleach_dose(resin_volume, dose, strength):
    """Return the bleach [fl oz] for a volume of resin [ft³] at the dose [fl oz/ft³] of the trade.

    The dose is told for household bleach; a stronger bleach [%, above 0] needs less of it, so that
    the chlorine stays the same. Common practice, no source: no public body gives a dose for resin.

    >>> bleach_dose(1.5, 1.2, 10.5)
    0.9
    """
    return snap(resin_volume * dose * HOUSEHOLD_STRENGTH / strength)


def _refuse_after(given, chemical):
    """Raise InputProblem unless the last cycle left nothing that the chemical reacts with."""
    rinse = "Run one full regeneration with salt alone to its end, then ask again."
    if given.last_cycle == UNKNOWN:
        raise InputProblem(
            "last_cycle",
            f"No {chemical} unless it is known that only salt or {chemical} went through the unit "
            f"last. {rinse}",
        )
    if given.last_cycle not in (SALT_ONLY, chemical):
        raise InputProblem(
            "last_cycle", f"Never {chemical} after {given.last_cycle}: poisonous gas. {rinse}"
        )


def _sanitizing_dose(given, work):
    _refuse_after(given, BLEACH)
    if given.product == OTHER:
        raise InputProblem(
            "product",
            "Use plain bleach only, with nothing added: perfume and thickener stay in the resin "
            "and may not go into drinking water.",
        )
    work.put("household_bleach", HOUSEHOLD_STRENGTH, "%")
    bleach = work.step(
        "bleach",
        "A stronger bleach needs less, so that the chlorine stays the same.",
        "{resin_volume} × {dose} × {household_bleach} ÷ {strength}",
        bleach_dose(given.resin_volume, given.dose, given.strength),
        "fl oz",
    )
    work.put("chlorine_of_one_percent", CHLORINE_OF_PERCENT, "mg/L")
    in_bottle = work.step(
        "chlorine_in_bleach",
        "Each percent on the label is so much chlorine.",
        "{strength} ÷ 1 % × {chlorine_of_one_percent}",
        given.strength * CHLORINE_OF_PERCENT,
        "mg/L",
    )
    liters = bleach / FLUID_OUNCES_IN_A_GALLON * GALLON
    chlorine = work.step(
        "chlorine",
        "So much chlorine goes in.",
        "{bleach} × {chlorine_in_bleach}",
        liters * in_bottle / 1000,
        "g",
    )
    in_brine = work.step(
        "in_brine",
        "Mixed into the brine that is drawn, it has this strength.",
        "{chlorine} ÷ {brine}",
        1000 * chlorine / (given.brine * GALLON),
        "mg/L",
    )
    return {
        "bleach": bleach,
        "chlorine": chlorine,
        "in_brine": in_brine,
        "order": "pour it into the brine well, not onto the salt; start a regeneration by hand; "
        "pause it, where the control can, when a strip at the drain first shows chlorine; let it "
        "run to its end; run the cold taps; test",
        "done_when": "a chlorine strip at the tap reads no more than in the raw water",
    }


def _last_cycle():
    return Input(
        "last_cycle",
        "What went through the unit last",
        "choice",
        default=UNKNOWN,
        example=SALT_ONLY,
        choices=LAST_CYCLE,
        help="With the last full regeneration; ask the household too. Salt with a rust remover in "
        "it and a feeder of cleaner count as iron cleaner; acid is something else.",
    )


SANITIZING_DOSE = Calculator(
    "sanitizing-dose",
    "Bleach for a stale or newly opened bed",
    "How much bleach sanitizes this bed?",
    inputs=[
        resin_volume(),
        Input(
            "strength",
            "Strength of the bleach",
            "share",
            "%",
            default=5.25,
            low=3,
            high=12.5,
            usual_high=8.25,
            help="Sodium hypochlorite, as the label says; old bleach is weaker.",
            unusual="This is not household bleach: it burns skin and eyes at once.",
        ),
        Input(
            "product",
            "Kind of bleach",
            "choice",
            default=OTHER,
            example=PLAIN,
            choices=(PLAIN, OTHER),
            help="Read the whole label.",
        ),
        _last_cycle(),
        Input(
            "dose",
            "Dose of household bleach",
            "liquid dose",
            "fl oz/ft³",
            default=1.2,
            low=0.1,
            high=2,
            usual_high=1.2,
            help="A habit of the trade. The sheet of the resin's or control's maker wins.",
            unusual="Chlorine oxidizes resin: go above the usual dose only where the maker's sheet "
            "says so.",
        ),
        Input(
            "brine",
            "Brine drawn in the cycle",
            "volume",
            "gal",
            example=3,
            low=0.5,
            high=30,
            help="What the refill made.",
        ),
    ],
    outputs=[
        Output("bleach", "Bleach, and never more", "volume", "fl oz", step=0.1, direction="down"),
        Output("chlorine", "Chlorine in it", "mass", "g", step=0.1),
        Output("in_brine", "Strength in the brine", "concentration", "mg/L", step=10),
        Output("order", "In this order", "words"),
        Output("done_when", "Done when", "words"),
    ],
    compute=_sanitizing_dose,
    picture=Curve("strength", 3, 12.5, ["bleach"]),
    sources=[
        "common-practice",
        "well-chlorination",
        "well-bypass",
        "resin-chlorination",
        "bleach-mixing",
    ],
    cautions=[
        _MIXING,
        "The label and the sheets of the resin's and the control's maker win over this dose; some "
        "resins take no chlorine at all.",
        _AIR,
        _TELL,
        "A softener does not make unsafe water safe. A contaminated well belongs to the health "
        "department and a licensed well contractor; the softener stays in bypass while a well is "
        "shock-chlorinated.",
        _DISCHARGE,
    ],
)


def _resin_cleaner_dose(given, work):
    _refuse_after(given, CLEANER)
    if given.form == POWDER:
        amount = {
            "powder": work.step(
                "powder",
                "The label's dose for all the resin.",
                "{resin_volume} × {powder_dose}",
                given.resin_volume * given.powder_dose,
                "oz",
            )
        }
    else:
        amount = {
            "liquid": work.step(
                "liquid",
                "The label's dose for all the resin.",
                "{resin_volume} × {liquid_dose}",
                given.resin_volume * given.liquid_dose,
                "fl oz",
            )
        }
    return {
        **amount,
        "hold": given.contact,
        "order": "try the cleaner on a spoonful of resin in a jar; dissolve the dose as the label "
        "says; pour it into the brine well; start a regeneration by hand; hold it in the bed; "
        "backwash until the drain runs clear; run a second full regeneration with salt alone; test",
        "done_when": "the drain and the tap run clear, the tap is soft, and the next cycle "
        "delivers more water than the last",
    }


RESIN_CLEANER_DOSE = Calculator(
    "resin-cleaner-dose",
    "Iron cleaner for a fouled bed",
    "How much iron cleaner does this bed take, and how is it proved?",
    inputs=[
        resin_volume(),
        _last_cycle(),
        Input(
            "form",
            "Kind of cleaner",
            "choice",
            default=POWDER,
            choices=(POWDER, LIQUID),
            help="A powder is weighed, a liquid is measured.",
        ),
        Input(
            "powder_dose",
            "Dose of powder on the label",
            "powder dose",
            "oz/ft³",
            default=4,
            low=0.5,
            high=32,
            usual_low=2,
            usual_high=8,
            help="By weight. The label wins over the usual range.",
            only_when=("form", (POWDER,)),
        ),
        Input(
            "liquid_dose",
            "Dose of liquid on the label",
            "liquid dose",
            "fl oz/ft³",
            default=4,
            low=0.5,
            high=32,
            usual_low=2,
            usual_high=8,
            help="By volume. The label wins over the usual range.",
            only_when=("form", (LIQUID,)),
        ),
        Input(
            "contact",
            "Contact time on the label",
            "time",
            "min",
            default=45,
            low=5,
            high=240,
            usual_low=30,
            usual_high=60,
            help="How long it stays in the bed.",
        ),
    ],
    outputs=[
        Output("powder", "Cleaner", "mass", "oz", step=0.1, direction="down"),
        Output("liquid", "Liquid cleaner", "volume", "fl oz", step=0.1, direction="down"),
        Output("hold", "Hold in the bed", "time", "min", step=1),
        Output("order", "In this order", "words"),
        Output("done_when", "Done when", "words"),
    ],
    compute=_resin_cleaner_dose,
    sources=["common-practice", "bleach-mixing", "iron-pretreatment"],
    cautions=[
        _MIXING,
        "The cleaner's label wins over every number here, and so do the sheets of the resin's and "
        "the control's maker.",
        _AIR,
        _TELL,
        "Test hardness, taste and color at a tap before anyone drinks; cleaner left in the bed "
        "goes into the water.",
        "Cleaning cures the bed, not the water: where iron comes back, treat it ahead of the "
        "softener.",
        _DISCHARGE,
    ],
)

CALCULATORS = (SANITIZING_DOSE, RESIN_CLEANER_DOSE)
