"""What salty raw water does to a softener: less capacity, and some hardness always passing."""

from calculators.capacity import capacity_of_dose
from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.units import GRAIN_PER_GALLON

#: Common practice, no source: dissolved solids up to which nothing is taken off [mg/L], what each
#: further step of as many takes off [1], and the capacity left at the least [1].
HARMLESS, LOSS, LEAST_FACTOR = 500.0, 0.06, 0.70
#: Common practice, no source: leakage [mg/L] at HARMLESS solids and this dose [lb/ft3], and the
#: share of the raw hardness it is held to.
USUAL_LEAKAGE, USUAL_DOSE, MOST_LEAKAGE = 2.5, 8.0, 0.25
SOFT = 1.0  # gpg; see the source "soft-limit"
TRUSTED = 3000.0  # mg/L of solids; common practice, no source
#: Hardness cannot pass the solids it is part of by more than magnesium carbonate allows.
MOST_HARDNESS = 1.2


def capacity_factor(solids):
    """Return the share [1] of the capacity left in water with dissolved solids [mg/L, 0 or more].

    A habit of the trade, not a law: common practice, no source. Trusted up to TRUSTED.

    >>> round(capacity_factor(1500), 3)
    0.88
    """
    return max(LEAST_FACTOR, 1 - LOSS * max(0.0, (solids - HARMLESS) / HARMLESS))


def fresh_leakage(solids, dose, hardness):
    """Return the hardness [mg/L] that passes a freshly regenerated bed.

    solids: dissolved solids [mg/L, above 0]; dose: salt [lb/ft3, above 0]; hardness: of the raw
    water [mg/L]. By the law of mass action it grows as the square of the solids; how much it is at
    one point, that it falls with the dose and its cap are common practice, no source.
    Source: ion-exchange-equilibrium.

    >>> fresh_leakage(1000, 8, 342)
    10.0
    """
    leakage = USUAL_LEAKAGE * (solids / HARMLESS) ** 2 * USUAL_DOSE / dose
    return min(leakage, MOST_LEAKAGE * hardness)


def _capacity_step(given, work):
    work.put("harmless_solids", HARMLESS, "mg/L")
    work.put("loss", 100 * LOSS, "%")
    work.put("least_factor", 100 * LEAST_FACTOR, "%")
    factor = capacity_factor(given.solids)
    if snap(given.solids) <= HARMLESS:
        formula, sentence = "100 %", "So few dissolved solids take nothing off the capacity."
    elif snap(factor) > LEAST_FACTOR:
        formula = "100 % − {loss} × ({solids} − {harmless_solids}) ÷ {harmless_solids}"
        sentence = "Sodium already in the water holds back the exchange; the trade takes this off."
    else:
        formula = "{least_factor}"
        sentence = (
            "Sodium already in the water holds back the exchange; the trade takes off no more."
        )
    work.step("capacity_factor", sentence, formula, 100 * factor, "%")
    each = work.step(
        "usual_capacity",
        "What the dose gives in ordinary water.",
        "the capacity of {dose}",
        capacity_of_dose(given.dose),
        "grains/ft³",
    )
    capacity = work.step(
        "capacity",
        "Plan with what is left of it.",
        "{usual_capacity} × {capacity_factor}",
        each * factor,
        "grains/ft³",
    )
    return {"factor": 100 * factor, "capacity": capacity}


def _leakage_step(given, work):
    raw = given.hardness * GRAIN_PER_GALLON
    leakage = fresh_leakage(given.solids, given.dose, raw) / GRAIN_PER_GALLON
    if snap(leakage) < snap(MOST_LEAKAGE * given.hardness):
        work.put("usual_leakage", USUAL_LEAKAGE / GRAIN_PER_GALLON, "gpg")
        work.put("usual_dose", USUAL_DOSE, "lb/ft³")
        sentence = (
            "The salt in the water washes a little hardness off the end of the bed, as the square "
            "of the dissolved solids; more regeneration salt leaves less there."
        )
        formula = "{usual_leakage} × ({solids} ÷ {harmless_solids})² × {usual_dose} ÷ {dose}"
    else:
        work.put("most_leakage", 100 * MOST_LEAKAGE, "%")
        sentence = "The relation ends here: leakage is taken as no more than this part of the raw."
        formula = "{hardness} × {most_leakage}"
    return work.step("leakage", sentence, formula, leakage, "gpg")


def _dissolved_solids(given, work):
    values = _capacity_step(given, work)
    leakage = _leakage_step(given, work)
    if snap(given.solids) > 2000:
        work.warn("Water this salty is hard to soften: look at other treatment before setting up.")
    if snap(given.solids) > TRUSTED:
        work.warn(
            "The relations are not trusted in water this salty: less capacity may be left, and "
            "more hardness may pass."
        )
    if snap(given.hardness * GRAIN_PER_GALLON) > snap(MOST_HARDNESS * given.solids):
        work.warn(
            "The hardness is more than all dissolved solids together: one of the two was read or "
            "typed wrongly."
        )
    if snap(leakage) >= SOFT:
        verdict = "hard at the tap even when all is sound"
        work.warn("This much steady hardness is the water's doing: do not change seals for it.")
    else:
        verdict = "soft at the tap when all is sound"
    return {**values, "leakage": leakage, "verdict": verdict}


DISSOLVED_SOLIDS = Calculator(
    "dissolved-solids",
    "Salty raw water",
    "What do dissolved solids take off the capacity, and how much hardness passes anyway?",
    inputs=[
        Input(
            "solids",
            "Total dissolved solids",
            "concentration",
            "mg/L",
            example=450,
            low=10,
            high=10000,
            usual_high=1000,
            help="From a laboratory report or a conductivity meter.",
            unusual="Tell the customer that some hardness will always pass.",
        ),
        Input(
            "dose",
            "Salt dose",
            "salt dose",
            "lb/ft³",
            example=6,
            low=1,
            high=25,
            usual_low=3,
            usual_high=20,
            help="The salt of one regeneration for each volume of resin.",
        ),
        Input(
            "hardness",
            "Hardness of the raw water",
            "hardness",
            "gpg",
            example=20,
            low=0.5,
            high=200,
            usual_high=60,
            help="As tested, without an allowance for iron.",
        ),
    ],
    outputs=[
        Output("leakage", "Hardness that passes a fresh bed", "hardness", "gpg", digits=2),
        Output("factor", "Capacity left", "share", "%", step=1),
        Output("capacity", "Capacity to plan with", "resin capacity", "grains/ft³", digits=3),
        Output("verdict", "At the tap", "words"),
    ],
    compute=_dissolved_solids,
    picture=Curve("solids", 50, 3000, ["leakage"]),
    sources=[
        "ion-exchange-equilibrium",
        "soft-limit",
        "capacity-anchor",
        "capacity-high-dose",
        "common-practice",
    ],
    cautions=[
        "Work this out before condemning seals: leakage that stays the same through the whole run "
        "and at every flow can be the water's own.",
        "For beds regenerated in the direction of service; the other way less hardness passes.",
    ],
)

CALCULATORS = (DISSOLVED_SOLIDS,)
