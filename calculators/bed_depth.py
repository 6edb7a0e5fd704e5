"""How deep a volume of resin stands in its tank, and how much resin a depth is."""

from calculators.beads import tank_area
from calculators.declare import Calculator, Curve, Input, Output
from calculators.quantities import snap
from calculators.readings import resin_volume, tank_diameter

#: Shares of the resin expected [percent] between which a bed is as it should be.
LEAST, MOST = 90.0, 110.0


def bed_depth(resin, diameter):
    """Return the depth [in] of a volume of resin [ft3] in a tank of a diameter [in].

    A round tank with a flat bottom; a rounded bottom holds a little more. Plain geometry.

    >>> round(bed_depth(1.5, 10), 2)
    33.0
    """
    return resin / tank_area(diameter) * 12


def resin_of_depth(depth, diameter):
    """Return the volume of resin [ft3] that stands so deep [in] in a tank of a diameter [in].

    >>> round(resin_of_depth(33, 10), 2)
    1.5
    """
    return tank_area(diameter) * depth / 12


def verdict(share):
    """Return the word for a share [percent] of the resin that was expected."""
    if snap(share) < LEAST:
        return "short: find out how resin was lost"
    if snap(share) > MOST:
        return "deeper than expected: check the volume, or the resin is swollen"
    return "as it should be"


def _bed_depth(given, work):
    work.step(
        "area",
        "The area of the bed.",
        "π ÷ 4 × ({tank_diameter})²",
        tank_area(given.tank_diameter),
        "ft²",
    )
    depth = work.step(
        "depth",
        "The resin stands on this area.",
        "{resin_volume} ÷ {area}",
        bed_depth(given.resin_volume, given.tank_diameter),
        "in",
    )
    if given.measured is None:
        return {"depth": depth}
    present = work.step(
        "present",
        "The depth that was measured, on the same area.",
        "{area} × {measured}",
        resin_of_depth(given.measured, given.tank_diameter),
        "ft³",
    )
    share = work.step(
        "share",
        "Set beside what was expected.",
        "{present} ÷ {resin_volume}",
        100 * present / given.resin_volume,
        "%",
    )
    missing = work.step(
        "missing",
        "What is missing, if anything.",
        "{resin_volume} − {present}, at least 0",
        max(given.resin_volume - present, 0.0),
        "ft³",
    )
    return {
        "depth": depth,
        "present": present,
        "share": share,
        "missing": missing,
        "verdict": verdict(share),
    }


BED_DEPTH = Calculator(
    "bed-depth",
    "Depth of the resin bed",
    "How deep should the resin stand, and how much is there?",
    inputs=[
        resin_volume(help="What the tank should hold, from the unit's sheet."),
        tank_diameter(),
        Input(
            "measured",
            "Depth measured",
            "length",
            "in",
            low=0,
            high=96,
            optional=True,
            help="From the bottom of the resin to its top: leave out gravel.",
        ),
    ],
    outputs=[
        Output("depth", "Depth of the resin", "length", "in", step=0.5),
        Output("present", "Resin there is", "volume", "ft³", step=0.05),
        Output("share", "Share of what was expected", "share", "%", step=1),
        Output("missing", "Resin missing", "volume", "ft³", step=0.05),
        Output("verdict", "Reading", "words"),
    ],
    compute=_bed_depth,
    picture=Curve("resin_volume", 0.5, 4, ["depth"]),
    sources=["unit-definitions", "common-practice"],
    cautions=[
        "Take the pressure off before a tank is opened. Beads on the floor are slippery: sweep "
        "them up at once."
    ],
)

CALCULATORS = (BED_DEPTH,)
