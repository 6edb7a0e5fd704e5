"""What should run at the drain in each position of the valve."""

from calculators.beads import BEAD, flow_for_expansion, tank_area
from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.flow import HIGH_FLOW, LOW_FLOW, USUAL_BACKWASH, usual_backwash
from calculators.injector import (
    USUAL_MOTIVE,
    USUAL_PRESSURE,
    USUAL_SUCTION,
    motive_at,
    suction_at,
)
from calculators.quantities import snap
from calculators.readings import resin_volume, tank_diameter, water_pressure, water_temperature

SHEET, BY_TANK = "unit's figures", "tank diameter"
#: The trade's correction of the backwash flow for warm and cold water; common practice, no source.
TRADE_TEMPERATURE, CHANGE_BY_DEGREE = 50.0, 1.25  # °F; percent/°F
LIFT = 50.0  # percent by which a backwash should lift the bed


def backwash_wanted(tank_diameter, temperature):
    """Return the backwash flow [gpm] the trade wants for a tank [in] in water [°F, 33 to 110].

    The usual flow, changed by 1.25 percent for each degree from 50 °F. Common practice, no source.

    >>> round(backwash_wanted(10, 70), 1)
    3.1
    """
    change = CHANGE_BY_DEGREE / 100 * (temperature - TRADE_TEMPERATURE)
    return usual_backwash(tank_diameter) * (1 + change)


def _by_sheet(given, work):
    """Return the flows of the sheet [gpm]: backwash, fast rinse, brine draw, slow rinse."""
    if snap(given.brine_draw_flow) <= snap(given.slow_rinse_flow):
        raise InputProblem(
            "brine_draw_flow",
            "While brine is drawn more must run at the drain than in the slow rinse: check the two "
            "figures.",
        )
    backwash = work.step(
        "backwash",
        "The flow control of the drain line holds its rating in cold and warm water, and at any "
        "usual pressure.",
        "{backwash_flow}",
        given.backwash_flow,
        "gpm",
    )
    fast = given.backwash_flow if given.fast_rinse_flow is None else given.fast_rinse_flow
    return backwash, fast, given.brine_draw_flow, given.slow_rinse_flow


def _by_tank(given, work):
    """Return the usual flows [gpm] for the tank: backwash, fast rinse, brine draw, slow rinse."""
    work.put("usual_backwash", USUAL_BACKWASH, "gpm/ft²")
    work.put("usual_motive_flow", USUAL_MOTIVE, "gpm/ft³")
    work.put("usual_suction", USUAL_SUCTION, "gpm/ft³")
    work.put("usual_pressure", USUAL_PRESSURE, "psi")
    backwash = work.step(
        "backwash",
        "Without a rating, take the usual flow for the area of the tank.",
        "{usual_backwash} × π ÷ 4 × ({tank_diameter})²",
        usual_backwash(given.tank_diameter),
        "gpm",
    )
    slow = work.step(
        "slow_rinse",
        "A fitting injector passes so much water, with the square root of the pressure.",
        "{usual_motive_flow} × {resin_volume} × √({pressure} ÷ {usual_pressure})",
        motive_at(given.pressure, USUAL_MOTIVE * given.resin_volume, USUAL_PRESSURE),
        "gpm",
    )
    suction = work.step(
        "suction",
        "And draws so much brine, less at low pressure and in the end none.",
        "{usual_suction} × {resin_volume} at {pressure}",
        suction_at(given.pressure, USUAL_SUCTION * given.resin_volume, USUAL_PRESSURE),
        "gpm",
    )
    draw = work.step(
        "brine_draw",
        "Both run at the drain while brine is drawn.",
        "{slow_rinse} + {suction}",
        slow + suction,
        "gpm",
    )
    if suction == 0:
        work.warn("At this pressure the injector draws no brine at all.")
    return backwash, backwash, draw, slow


def _wanted(given, work, backwash):
    """Tell what the bed wants in this water; return the trade's flow and the physical one."""
    work.put("trade_temperature", TRADE_TEMPERATURE, "°F")
    work.put("usual_flow", usual_backwash(given.tank_diameter), "gpm")
    degree = 1.8 if work.units == "metric" else 1.0  # °F
    work.put("change_by_degree", CHANGE_BY_DEGREE * degree, "%")
    wanted = backwash_wanted(given.tank_diameter, given.temperature)
    work.step(
        "share_by_temperature",
        "Cold water lifts the bed more, so the trade wants less flow in it and more in warm water, "
        "by so much for each degree.",
        "100 % + {change_by_degree} × ({temperature} − {trade_temperature})",
        100 * wanted / usual_backwash(given.tank_diameter),
        "%",
    )
    work.step(
        "backwash_wanted",
        "That share of the usual flow for the area of the tank is wanted.",
        "{usual_flow} × {share_by_temperature}",
        wanted,
        "gpm",
    )
    half = work.step(
        "backwash_for_half",
        "By the drag on the beads this flow would lift the bed by half; the equations for it "
        "differ by half again, so the trade's flow sets the control and this one shows the trend.",
        "the flow that lifts the bed by half for {tank_diameter} and {temperature}",
        tank_area(given.tank_diameter) * flow_for_expansion(LIFT, BEAD, given.temperature),
        "gpm",
    )
    share = snap(100 * backwash / wanted)
    if share < LOW_FLOW:
        work.warn(
            "This backwash is less than the bed wants in water of this temperature: it may not "
            "lift it enough to clean."
        )
    if share > HIGH_FLOW:
        work.warn(
            "This backwash is more than the bed wants in water of this temperature: see how far it "
            "lifts, and watch for beads at the drain."
        )
    return wanted, half


def _drain_flow(given, work):
    if given.figures_from == SHEET:
        backwash, fast, draw, slow = _by_sheet(given, work)
    else:
        backwash, fast, draw, slow = _by_tank(given, work)
    work.put("low_share", LOW_FLOW, "%")
    work.put("high_share", HIGH_FLOW, "%")
    low = work.step(
        "backwash_low",
        "A reading is as expected from this flow on.",
        "{backwash} × {low_share}",
        backwash * LOW_FLOW / 100,
        "gpm",
    )
    high = work.step(
        "backwash_high",
        "And up to this flow.",
        "{backwash} × {high_share}",
        backwash * HIGH_FLOW / 100,
        "gpm",
    )
    wanted, half = _wanted(given, work, backwash)
    return {
        "backwash": backwash,
        "backwash_low": low,
        "backwash_high": high,
        "brine_draw": draw,
        "slow_rinse": slow,
        "fast_rinse": fast,
        "elsewhere": "nothing: a trickle means a leaking seal",
        "backwash_wanted": wanted,
        "backwash_for_half": half,
    }


_SHEET_ONLY, _TANK_ONLY = ("figures_from", (SHEET,)), ("figures_from", (BY_TANK,))

DRAIN_FLOW = Calculator(
    "drain-flow",
    "Expected flow at the drain",
    "How much water should run at the drain in each position?",
    inputs=[
        Input(
            "figures_from",
            "What is expected, from",
            "choice",
            default=SHEET,
            choices=(SHEET, BY_TANK),
        ),
        tank_diameter(),
        water_temperature(),
        Input(
            "backwash_flow",
            "Rated backwash flow",
            "flow",
            "gpm",
            example=2.4,
            low=0.1,
            high=30,
            help="Stamped on the flow control of the drain line, or from the unit's sheet.",
            only_when=_SHEET_ONLY,
            equipment="backwash_flow",
        ),
        Input(
            "brine_draw_flow",
            "Rated flow while brine is drawn",
            "flow",
            "gpm",
            example=0.7,
            low=0.06,
            high=15,
            help="The injector's water and the brine together.",
            only_when=_SHEET_ONLY,
            equipment="brine_draw_flow",
        ),
        Input(
            "slow_rinse_flow",
            "Rated slow rinse flow",
            "flow",
            "gpm",
            example=0.45,
            low=0.05,
            high=10,
            help="The injector's own water.",
            only_when=_SHEET_ONLY,
            equipment="slow_rinse_flow",
        ),
        Input(
            "fast_rinse_flow",
            "Rated fast rinse flow",
            "flow",
            "gpm",
            low=0.1,
            high=30,
            optional=True,
            help="Leave blank where fast rinse runs through the same flow control as backwash.",
            only_when=_SHEET_ONLY,
        ),
        resin_volume(help="Of the whole bed, from the unit's sheet.", only_when=_TANK_ONLY),
        water_pressure(only_when=_TANK_ONLY),
    ],
    outputs=[
        Output("backwash", "Backwash", "flow", "gpm", step=0.1),
        Output("backwash_low", "Backwash as expected, from", "flow", "gpm", step=0.01),
        Output("backwash_high", "Backwash as expected, to", "flow", "gpm", step=0.01),
        Output("brine_draw", "While brine is drawn", "flow", "gpm", step=0.01),
        Output("slow_rinse", "Slow rinse", "flow", "gpm", step=0.01),
        Output("fast_rinse", "Fast rinse", "flow", "gpm", step=0.1),
        Output("elsewhere", "In service and during refill", "words"),
        Output("backwash_wanted", "Backwash wanted in this water", "flow", "gpm", step=0.1),
        Output("backwash_for_half", "Backwash that lifts the bed by half", "flow", "gpm", step=0.1),
    ],
    compute=_drain_flow,
    picture=Curve("temperature", 33, 90, ["backwash_wanted", "backwash_for_half"]),
    sources=[
        "bed-expansion",
        "sphere-drag",
        "water-viscosity",
        "water-density",
        "common-practice",
    ],
    cautions=[
        "Keep the air gap at the drain: never push the hose into the waste pipe to catch water.",
    ],
)

CALCULATORS = (DRAIN_FLOW,)
