"""How high water stands in the brine tank: under the salt, among it and above it."""

import math

from calculators.declare import Calculator, Drawing, Input, InputProblem, Output
from calculators.leaks import CUBIC_INCHES_IN_A_GALLON
from calculators.quantities import snap
from calculators.readings import salt_voids

ROUND, RECTANGULAR = "round", "rectangular"
#: Room [in] that a float should have above the water, so that it acts only when something is wrong.
LEAST_FLOAT_ROOM = 1.0


def water_below(height, layers):
    """Return the volume [in3] of water up to a height [in] in a tank of `layers`.

    layers: (top [in], free area [in2]) from the floor up; the last top is infinite. Plain geometry.

    >>> water_below(3, [(2, 10), (math.inf, 100)])
    120.0
    """
    volume, bottom = 0.0, 0.0
    for top, area in layers:
        volume += area * max(0.0, min(height, top) - bottom)
        bottom = top
    return volume


def water_height(volume, layers):
    """Return the height [in] at which a volume [in3] of water stands: `water_below` turned round.

    >>> water_height(120, [(2, 10), (math.inf, 100)])
    3.0
    """
    bottom = 0.0
    for top, area in layers:
        room = area * (top - bottom)
        if volume <= room:
            break
        volume -= room
        bottom = top
    return bottom + volume / area


def _areas(given, work):
    """Return the area of the tank and of the brine well in it [in2]."""
    area = given.tank_area
    if given.shape == ROUND:
        area = work.step(
            "tank_area",
            "The area of the round tank.",
            "π × ({tank_diameter} ÷ 2)²",
            math.pi * given.tank_diameter**2 / 4,
            "in²",
        )
    well = work.step(
        "well_area",
        "The brine well holds no salt.",
        "π × ({well_diameter} ÷ 2)²",
        math.pi * given.well_diameter**2 / 4,
        "in²",
    )
    if snap(well) >= snap(area):
        raise InputProblem("well_diameter", "The brine well is wider than the tank it stands in.")
    return area, well


def _layers(given, work):
    """Return the layers of the tank: under the grid, among the salt, above the salt."""
    area, well = _areas(given, work)
    among_salt = work.step(
        "free_area_among_salt",
        "Among the salt, water has only the voids and the brine well.",
        "({tank_area} − {well_area}) × {voids} + {well_area}",
        (area - well) * given.voids / 100 + well,
        "in²",
    )
    top = given.grid_height + given.salt_depth
    return [(given.grid_height, area), (top, among_salt), (math.inf, area)]


def _salt_warnings(given, work, height):
    if snap(given.salt_depth) == 0:
        work.warn("There is no salt: the next regeneration gives nothing back.")
    elif snap(height) <= snap(given.grid_height):
        work.warn(
            "The water never reaches the salt: lower the grid, raise the dose or use a narrower "
            "tank."
        )
    elif snap(height) > snap(given.grid_height + given.salt_depth):
        work.warn("The water stands above the salt, so the brine stays weak: add salt.")


def _room_to_float(given, work, height):
    if snap(given.float_height) <= snap(height):
        work.warn("The float shuts before the refill is complete, so the salt dose is cut short.")
    elif snap(given.float_height) < snap(height + LEAST_FLOAT_ROOM):
        work.warn("The float stands very near the water: raise it a little.")
    return work.step(
        "room_to_float",
        "The float should act only when something is wrong.",
        "{float_height} − {height}",
        given.float_height - height,
        "in",
    )


def _overflow(given, work, height, layers):
    room = work.step(
        "room_to_overflow",
        "Up to the overflow fitting, or the rim where there is none.",
        "{overflow_height} − {height}",
        given.overflow_height - height,
        "in",
    )
    over = water_below(height, layers) - water_below(given.overflow_height, layers)
    guarded = given.float_height is not None and (
        snap(given.float_height) < snap(given.overflow_height)
    )
    if given.float_height is not None and not guarded:
        work.warn("The float stands too high to act below the overflow: lower it.")
    if snap(height) > snap(given.overflow_height):
        says = "Only the float keeps the tank from running" if guarded else "The brine tank runs"
        work.warn(f"{says} over: lower the refill, or find why so much water stays.")
    return {
        "room_to_overflow": room,
        "overflow": work.step(
            "overflow",
            "What finds no room below the overflow, where no float stops the refill.",
            "the water between {overflow_height} and {height}, where the water stands higher",
            max(0.0, over) / CUBIC_INCHES_IN_A_GALLON,
            "gal",
        ),
    }


def _brine_level(given, work):
    if given.overflow_height is not None and snap(given.overflow_height) < snap(given.water_left):
        raise InputProblem(
            "overflow_height", "The overflow stands below the water that is left after the draw."
        )
    layers = _layers(given, work)
    left_in = work.step(
        "water_left_in",
        "The water that the air check leaves in after the draw.",
        "the water up to {water_left}",
        water_below(given.water_left, layers) / CUBIC_INCHES_IN_A_GALLON,
        "gal",
    )
    total = work.step(
        "water_in_the_tank",
        "With the brine of one refill.",
        "{water_left_in} + {brine}",
        left_in + given.brine,
        "gal",
    )
    height = work.step(
        "height",
        "It fills the tank layer by layer: under the grid, among the salt, above the salt.",
        "the height that {water_in_the_tank} fills",
        water_height(total * CUBIC_INCHES_IN_A_GALLON, layers),
        "in",
    )
    rise = work.step(
        "rise",
        "So far the water rises at each refill.",
        "{height} − {water_left}",
        height - given.water_left,
        "in",
    )
    dry = work.step(
        "dry_salt",
        "Salt that stands dry above the water.",
        "{salt_depth} less the part of it under water",
        given.salt_depth - min(max(height - given.grid_height, 0.0), given.salt_depth),
        "in",
    )
    _salt_warnings(given, work, height)
    values = {"height": height, "rise": rise, "dry_salt": dry}
    if given.float_height is not None:
        values["room_to_float"] = _room_to_float(given, work, height)
    if given.overflow_height is not None:
        values |= _overflow(given, work, height, layers)
    return values


def _length(name, label, help, *, high, low=0, **more):
    return Input(name, label, "length", "in", low=low, high=high, help=help, **more)


BRINE_LEVEL = Calculator(
    "brine-level",
    "Height of the water in the brine tank",
    "How high should the water stand after the refill?",
    inputs=[
        Input(
            "brine",
            "Brine that one refill makes",
            "volume",
            "gal",
            example=2.8,
            low=0,
            high=60,
            help="From the refill calculator: a little more than the water let in.",
            slider=(0, 12, 0.2),
        ),
        Input("shape", "Shape of the tank", "choice", default=ROUND, choices=(ROUND, RECTANGULAR)),
        _length(
            "tank_diameter",
            "Diameter of the brine tank",
            "Inside.",
            example=18,
            low=8,
            high=48,
            only_when=("shape", (ROUND,)),
            equipment="brine_tank_diameter",
        ),
        Input(
            "tank_area",
            "Area of the brine tank",
            "area",
            "in²",
            example=196,
            low=40,
            high=2500,
            help="Inside length times inside width.",
            only_when=("shape", (RECTANGULAR,)),
        ),
        _length(
            "well_diameter",
            "Diameter of the brine well",
            "The tube that keeps salt off the float.",
            default=4,
            high=8,
            equipment="brine_well_diameter",
        ),
        _length(
            "grid_height",
            "Height of the grid",
            "The platform under the salt; nothing where salt lies on the floor.",
            default=0,
            high=24,
            equipment="brine_grid_height",
        ),
        _length(
            "salt_depth",
            "Depth of the salt",
            "From the grid, or the floor, up to its surface.",
            default=24,
            high=60,
            slider=(0, 36, 1),
        ),
        salt_voids(),
        _length(
            "water_left",
            "Water left after the draw",
            "Up to where the air check shuts.",
            default=2,
            high=24,
            equipment="water_left",
        ),
        _length(
            "float_height",
            "Height of the float",
            "Where the safety float shuts the refill.",
            high=72,
            optional=True,
            equipment="float_height",
        ),
        _length(
            "overflow_height",
            "Height of the overflow",
            "The overflow fitting, or the rim of the tank.",
            high=72,
            optional=True,
        ),
    ],
    outputs=[
        Output("height", "Height of the water above the floor", "length", "in", step=0.5),
        Output("rise", "Rise at each refill", "length", "in", step=0.1),
        Output("dry_salt", "Salt dry above the water", "length", "in", step=0.5),
        Output("room_to_float", "Room up to the float", "length", "in", step=0.1),
        Output("room_to_overflow", "Room up to the overflow", "length", "in", step=0.1),
        Output("overflow", "Runs over, without a float", "volume", "gal", step=0.1),
    ],
    compute=_brine_level,
    picture=Drawing("brine-tank"),
    sources=["salt-bulk", "common-practice"],
    cautions=[
        "Never set a float so high that it cannot act below the overflow: it guards the floor.",
    ],
)

CALCULATORS = (BRINE_LEVEL,)
