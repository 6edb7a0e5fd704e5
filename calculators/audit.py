"""The capacity a bed really delivered, beside the capacity that was planned."""

from calculators.declare import Calculator, Input, Output
from calculators.quantities import snap

#: Shares of the planned capacity [percent]: good from, to be watched from, hard to believe above.
GOOD, WATCH, UNLIKELY = 90, 80, 120
LOSSES = (
    "weak or short brine; raw water harder than set; a short bed; fouled resin; water that the "
    "meter missed"
)
DOUBTS = "water counted that was not softened; raw water softer than written; a late hard sample"


def _verdict(share):
    """Return the judgement of a delivered share [percent], and where to look, likeliest first."""
    if snap(share) > UNLIKELY:
        return "hard to believe", DOUBTS
    if snap(share) >= GOOD:
        return "good", "nothing"
    return ("watch it" if snap(share) >= WATCH else "act"), LOSSES


def _capacity_audit(given, work):
    delivered = work.step(
        "delivered_capacity",
        "All the water brought its hardness, allowances included, until the first hard sample.",
        "{water} × {setting}",
        given.water * given.setting,
        "grains",
    )
    share = work.step(
        "delivered_share",
        "Set beside what was planned.",
        "{delivered_capacity} ÷ {planned_capacity}",
        100 * delivered / given.planned_capacity,
        "%",
    )
    missing = work.step(
        "missing_capacity",
        "What is missing, if anything.",
        "{planned_capacity} − {delivered_capacity}, at least 0",
        max(given.planned_capacity - delivered, 0.0),
        "grains",
    )
    if snap(share) > UNLIKELY:
        work.warn(
            "That is far more than planned: check the water counted, and that the first hard "
            "sample was the first."
        )
    verdict, look_for = _verdict(share)
    return {
        "delivered": delivered,
        "share": share,
        "missing": missing,
        "verdict": verdict,
        "look_for": look_for,
    }


CAPACITY_AUDIT = Calculator(
    "capacity-audit",
    "Audit of the capacity delivered",
    "Does the bed deliver the capacity it was planned for?",
    inputs=[
        Input(
            "water",
            "Water softened until the first hardness",
            "volume",
            "gal",
            example=1200,
            low=1,
            high=50000,
            help="By a checked meter, from a full regeneration on.",
        ),
        Input(
            "setting",
            "Hardness setting",
            "hardness",
            "gpg",
            example=20,
            low=1,
            high=260,
            help="The compensated hardness of today's raw water.",
        ),
        Input(
            "planned_capacity",
            "Planned capacity",
            "capacity",
            "grains",
            example=27000,
            low=500,
            high=400000,
            help="For the salt dose in use, from the capacity calculator.",
        ),
    ],
    outputs=[
        Output("delivered", "Capacity delivered", "capacity", "grains", step=100),
        Output("share", "Share of the plan", "share", "%", step=1, direction="down"),
        Output("missing", "Capacity missing", "capacity", "grains", step=100),
        Output("verdict", "Judgement", "words"),
        Output("look_for", "Look for, likeliest first", "words"),
    ],
    compute=_capacity_audit,
    sources=["common-practice"],
    cautions=[
        "Prove the meter and the bypass first: water that nobody counted looks like lost capacity.",
    ],
)

CALCULATORS = (CAPACITY_AUDIT,)
