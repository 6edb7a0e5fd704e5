"""The gap of air between the end of the drain line and the drain."""

from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap

LEAST_GAP = 1.0  # in; see the source "air-gap-least"

WIDE_ENOUGH = "wide enough"


def air_gap(bore):
    """Return the least air gap [in] above the rim for a drain line of a bore [in].

    Twice the bore, and never under 1 in. Sources: air-gap-code, air-gap-least.

    >>> air_gap(0.625), air_gap(0.375)
    (1.25, 1.0)
    """
    return max(2 * bore, LEAST_GAP)


def reading(measured, gap):
    """Return the word for a gap measured, beside the least gap asked for, in the same unit."""
    if snap(measured) >= snap(gap):
        return WIDE_ENOUGH
    return "too small" if measured else "no air gap"


def _air_gap(given, work):
    work.step(
        "double_bore", "Plumbing codes ask for twice the bore.", "2 × {bore}", 2 * given.bore, "in"
    )
    work.put("least", LEAST_GAP, "in")
    gap = work.step(
        "gap",
        "A thin tube needs no less than the least gap all the same.",
        "the larger of {double_bore} and {least}",
        air_gap(given.bore),
        "in",
    )
    values = {"gap": gap}
    if given.measured is not None:
        values["reading"] = reading(given.measured, gap)
        if values["reading"] != WIDE_ENOUGH:
            work.warn("Drain water could be sucked back into the softener: lift the line now.")
    return values


AIR_GAP = Calculator(
    "air-gap",
    "Air gap at the drain",
    "How far above the drain must the line end?",
    inputs=[
        Input(
            "bore",
            "Bore of the drain line",
            "length",
            "in",
            example=0.5,
            low=0.125,
            high=4,
            help="The inner diameter at its end.",
        ),
        Input(
            "measured",
            "Gap measured",
            "length",
            "in",
            low=0,
            high=36,
            optional=True,
            help="From the end of the line to the flood rim, where the water would spill over.",
        ),
    ],
    outputs=[
        Output("gap", "Least air gap", "length", "in", step=0.25, direction="up"),
        Output("reading", "Reading", "words"),
    ],
    compute=_air_gap,
    picture=Curve("bore", 0.25, 2, ["gap"]),
    sources=["air-gap-code", "air-gap-least"],
    cautions=["Local code wins where it asks for more."],
)

CALCULATORS = (AIR_GAP,)
