"""The resin bed in rising water: how far it lifts, and what it then weighs on the water."""

from calculators.beads import (
    BEAD,
    BEAD_DENSITY,
    SETTLED_VOIDS,
    balanced_voids,
    bead_weight_number,
    crowding_index,
    expansion,
    flow_for_expansion,
    lifted_loss,
    settling_flow,
    settling_reynolds,
    tank_area,
    voids_of_expansion,
)
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import snap
from calculators.readings import tank_diameter, water_temperature
from calculators.water_properties import GRAVITY, density, viscosity

#: Beyond these voids [percent] beads move one by one and are carried off.
MOST_VOIDS = 90.0
#: Expansions [percent] that part the words for a backwash; common practice, no source.
NO_CLEANING, GOOD_FROM, GOOD_TO, TOO_FAR = 20.0, 30.0, 50.0, 75.0
MARGIN = 3.0  # in, to keep free above the lifted bed
#: Free height [percent of the bed's depth] that federal works ask for: see the source "freeboard".
FREEBOARD = 50.0


def verdict(lifted, free):
    """Return the word for a backwash that lifts the bed [percent] and leaves so much free [in]."""
    lifted = snap(lifted)
    if lifted == 0:
        return "the bed does not lift"
    if lifted > TOO_FAR or snap(free) < MARGIN:
        return "too far: resin may go to the drain"
    if lifted < NO_CLEANING:
        return "too little: the bed will not clean"
    if lifted < GOOD_FROM:
        return "a little low"
    return "good" if lifted <= GOOD_TO else "ample: watch for beads at the drain"


def _voids(given, work):
    """Tell the steps from the flow to the voids of the lifted bed; return these [percent].

    By the rule of Richardson and Zaki, and by the Ergun equation.
    """
    work.step(
        "area",
        "The area of the bed.",
        "π ÷ 4 × ({tank_diameter})²",
        tank_area(given.tank_diameter),
        "ft²",
    )
    rising = work.step(
        "rising_flow",
        "What counts is the flow through each part of the area.",
        "{flow} ÷ {area}",
        given.flow / tank_area(given.tank_diameter),
        "gpm/ft²",
    )
    work.step(
        "viscosity",
        "Cold water is thicker and lifts more.",
        "viscosity of water at {temperature}",
        viscosity(given.temperature),
        "mPa·s",
    )
    work.put("water_density", density(given.temperature), "kg/m³")
    settling = work.step(
        "settling_flow",
        "A bead alone sinks until drag, by the law of Schiller and Naumann, carries its weight; "
        "water rising so fast would hold it up.",
        "the sinking speed for {bead} and {temperature}",
        settling_flow(given.bead, given.temperature),
        "gpm/ft²",
    )
    reynolds = work.step(
        "reynolds_number",
        "Whether weight or thickness rules its sinking: the Reynolds number.",
        "{settling_flow} × {bead} × {water_density} ÷ {viscosity}",
        settling_reynolds(bead_weight_number(given.bead, given.temperature)),
    )
    index = work.step(
        "index",
        "Beads in a crowd hinder each other, by the rule of Richardson and Zaki.",
        "4.45 ÷ {reynolds_number}^0.1",
        crowding_index(reynolds),
    )
    voids = work.step(
        "voids",
        "So much of the lifted bed is water.",
        "({rising_flow} ÷ {settling_flow})^(1 ÷ {index})",
        100 * (rising / settling) ** (1 / index),
        "%",
    )
    other = balanced_voids(rising, given.bead, given.temperature)
    if snap(max(voids, other)) > MOST_VOIDS:
        raise InputProblem(
            "flow",
            "This flow carries the beads off one by one, so no bed is left in the tank: check the "
            "flow, the diameter and the size of the beads.",
        )
    return voids, other


def _lift(work, voids, other):
    """Tell the steps from the voids to the expansions [percent], and return these.

    voids, other: by the rule of Richardson and Zaki, and by the Ergun equation.
    """
    work.put("settled_voids", SETTLED_VOIDS, "%")
    lifted = expansion(voids)
    if snap(lifted) > 0:
        work.step(
            "expansion",
            "The beads stay as many, so the bed grows with its voids.",
            "(1 − {settled_voids}) ÷ (1 − {voids}) − 1",
            lifted,
            "%",
        )
    else:
        work.step(
            "expansion",
            "That is no more than the voids of the settled bed, so it lies still.",
            "0",
            0.0,
            "%",
        )
    high = work.step(
        "expansion_by_ergun",
        "The Ergun equation, with the pressure set against the weight of the beads, usually gives "
        "half as much again: real beds lie in this band, so trust the trend and look at the bed.",
        "by the Ergun equation at {rising_flow}",
        expansion(other),
        "%",
    )
    return lifted, high


def _bed_expansion(given, work):
    if snap(given.bed_depth) > snap(given.tank_height):
        raise InputProblem("bed_depth", "The resin cannot be deeper than the tank is high.")
    voids, other = _voids(given, work)
    lifted, high = _lift(work, voids, other)
    top = work.step(
        "lifted_depth",
        "The lifted bed stands so high.",
        "{bed_depth} × (1 + {expansion})",
        given.bed_depth * (1 + lifted / 100),
        "in",
    )
    if snap(given.tank_height - top) > 0:
        free = work.step(
            "free_height",
            "Above it this much of the tank stays free.",
            "{tank_height} − {lifted_depth}",
            given.tank_height - top,
            "in",
        )
    else:
        free = work.step(
            "free_height",
            "So high a bed fills the tank to its top, and nothing stays free.",
            "0",
            0.0,
            "in",
        )
    work.put("half_voids", voids_of_expansion(50), "%")
    half = work.step(
        "flow_for_half",
        "Turned round: the flow that lifts the bed by half.",
        "{area} × {settling_flow} × {half_voids}^{index}",
        tank_area(given.tank_diameter) * flow_for_expansion(50, given.bead, given.temperature),
        "gpm",
    )
    work.put("bead_density", BEAD_DENSITY, "kg/m³")
    work.put("gravity", GRAVITY, "m/s²")
    loss = work.step(
        "lifted_loss",
        "A lifted bed floats: it costs the weight of its beads in water, however fast the flow. "
        "More than that across the bed at backwash means something is plugged.",
        "(1 − {settled_voids}) × ({bead_density} − {water_density}) × {gravity} × {bed_depth}",
        lifted_loss(given.bed_depth, given.temperature),
        "psi",
    )
    if snap(given.tank_height - given.bed_depth) < snap(given.bed_depth * FREEBOARD / 100):
        work.warn(
            "The tank leaves less than half the depth of the bed free, which is less than federal "
            "works ask for: it may be filled too high."
        )
    tall = given.bed_depth * (1 + high / 100)
    if lifted > 0 and snap(free) < MARGIN:
        work.warn(
            "The lifted bed comes too near the top of the tank: resin goes to the drain. See to "
            "the flow control, and to the depth of the bed."
        )
    elif snap(given.tank_height - tall) < 0:
        work.warn("By the Ergun equation the bed would reach the top: watch the drain for beads.")
    return {
        "expansion": lifted,
        "expansion_by_ergun": high,
        "free_height": free,
        "verdict": verdict(lifted, free),
        "flow_for_half": half,
        "lifted_loss": loss,
    }


BED_EXPANSION = Calculator(
    "bed-expansion",
    "Expansion of the bed in backwash",
    "How far does this backwash flow lift the resin, and does it stay in the tank?",
    inputs=[
        Input(
            "flow",
            "Backwash flow",
            "flow",
            "gpm",
            example=2.4,
            low=0.1,
            high=30,
            help="Measured at the drain, or stamped on the flow control.",
            equipment="backwash_flow",
        ),
        tank_diameter(),
        water_temperature(
            help="At the unit, in the season of the call: cold water lifts the bed further."
        ),
        Input(
            "bed_depth",
            "Depth of the settled resin",
            "length",
            "in",
            example=33,
            low=6,
            high=72,
            help="Its volume divided by the area of the tank, or measured with a lamp.",
            equipment="bed_depth",
        ),
        Input(
            "tank_height",
            "Height from the bottom of the resin to the top of the tank",
            "length",
            "in",
            example=50,
            low=12,
            high=96,
            help="Leave out gravel and the rounded bottom.",
            equipment="resin_room",
        ),
        Input(
            "bead",
            "Size of the beads",
            "length",
            "mm",
            default=BEAD,
            low=0.35,
            high=1.2,
            usual_low=0.45,
            usual_high=0.7,
            help="The usual one fits standard resin; fine-mesh resin lifts much further.",
        ),
    ],
    outputs=[
        Output("expansion", "Expansion of the bed", "share", "%", step=1),
        Output("expansion_by_ergun", "Expansion by the Ergun equation", "share", "%", step=1),
        Output("verdict", "Reading", "words"),
        Output("free_height", "Height left free above the bed", "length", "in", step=0.5),
        Output("flow_for_half", "Flow that lifts the bed by half", "flow", "gpm", step=0.1),
        Output("lifted_loss", "Most pressure the lifted bed costs", "pressure", "psi", step=0.01),
    ],
    compute=_bed_expansion,
    picture=Curve("flow", 0.5, 5, ["expansion", "expansion_by_ergun"]),
    sources=[
        "sphere-drag",
        "bed-expansion",
        "bed-pressure",
        "freeboard",
        "water-viscosity",
        "water-density",
        "common-practice",
    ],
    cautions=[
        "Beads at the drain are slippery underfoot and block traps: catch them in a stocking."
    ],
)

CALCULATORS = (BED_EXPANSION,)
