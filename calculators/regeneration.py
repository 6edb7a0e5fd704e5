"""Drawing brine and rinsing it through the bed."""

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.injector import (
    FULL_BRINE,
    LEAST_PRESSURE,
    USUAL_MOTIVE,
    USUAL_PRESSURE,
    USUAL_SUCTION,
    WEIGHT_OF_BRINE,
    motive_at,
    strength_at_bed,
    suction_at,
)
from calculators.quantities import convert, snap
from calculators.readings import resin_volume, water_pressure

#: Strength of brine [percent] at the bed, rinse [bed volumes] and time for it [min]; common
#: practice, no source.
WEAK, STRONG, LEAST_RINSE, LEAST_RINSE_TIME = 8.0, 12.0, 1.2, 15.0
#: The most bed volumes of slow rinse in print: see the source "regeneration-bands".
MOST_RINSE = 3.0

SHEET, BY_RESIN = "unit's figures", "resin volume"


def _figures(given, work):
    """Return suction and motive flow [gpm] at the pressure [psi] they hold at, and this."""
    if given.figures_from == BY_RESIN:
        work.put("usual_suction", USUAL_SUCTION, "gpm/ft³")
        work.put("usual_motive_flow", USUAL_MOTIVE, "gpm/ft³")
        work.put("flow_pressure", USUAL_PRESSURE, "psi")
        suction = work.step(
            "suction_of_sheet",
            "Without figures, an injector that fits the resin draws so much brine.",
            "{usual_suction} × {resin_volume}",
            USUAL_SUCTION * given.resin_volume,
            "gpm",
        )
        motive = work.step(
            "slow_rinse_flow",
            "And it drives it with so much water.",
            "{usual_motive_flow} × {resin_volume}",
            USUAL_MOTIVE * given.resin_volume,
            "gpm",
        )
        return suction, motive, USUAL_PRESSURE
    if snap(given.brine_draw_flow) <= snap(given.slow_rinse_flow):
        raise InputProblem(
            "brine_draw_flow",
            "While brine is drawn more must run at the drain than in the slow rinse: if it does "
            "not, the injector draws nothing.",
        )
    suction = work.step(
        "suction_of_sheet",
        "What runs at the drain beyond the injector's own water is brine.",
        "{brine_draw_flow} − {slow_rinse_flow}",
        given.brine_draw_flow - given.slow_rinse_flow,
        "gpm",
    )
    return suction, given.slow_rinse_flow, given.flow_pressure


def _injector(given, work):
    """Tell the steps to the flows at the pressure there is; return suction and motive [gpm]."""
    suction, motive, flow_pressure = _figures(given, work)
    pressure = work.step(
        "injector_pressure",
        "What the drain line pushes back is lost to the injector.",
        "{pressure} − {back_pressure}",
        given.pressure - given.back_pressure,
        "psi",
    )
    if snap(pressure) <= 0:
        raise InputProblem(
            "back_pressure", "The drain line takes all the pressure, so nothing flows through it."
        )
    motive = work.step(
        "motive_flow",
        "Water through the nozzle goes with the square root of the pressure.",
        "{slow_rinse_flow} × √({injector_pressure} ÷ {flow_pressure})",
        motive_at(pressure, motive, flow_pressure),
        "gpm",
    )
    work.put("least_pressure", LEAST_PRESSURE, "psi")
    suction = suction_at(pressure, suction, flow_pressure)
    if suction == 0:
        work.warn("At this pressure the injector draws no brine at all.")
        work.step(
            "suction",
            "Up to its least pressure the injector does not draw.",
            "0",
            0.0,
            "gpm",
        )
        return suction, motive
    work.step(
        "suction",
        "Suction starts only above a least pressure and then goes the same way.",
        "{suction_of_sheet} × √(({injector_pressure} − {least_pressure}) ÷ "
        "({flow_pressure} − {least_pressure}))",
        suction,
        "gpm",
    )
    return suction, motive


def draw(given, work, suction):
    """Tell the steps of the draw; return its time [min] or None, and the brine left [gal].

    given: has `brine` [gal] and `brine_time` [min]; suction: brine drawn [gpm].
    """
    least = work.step(
        "least_suction",
        "To draw all of it in the time set, the suction must be at least this.",
        "{brine} ÷ {brine_time}",
        given.brine / given.brine_time,
        "gpm",
    )
    if snap(suction) < snap(least):
        left = work.step(
            "brine_left",
            "The suction is less, so brine stays in the tank each time and no slow rinse follows.",
            "{brine} − {suction} × {brine_time}",
            given.brine - suction * given.brine_time,
            "gal",
        )
        if suction == 0:
            return None, left
        work.warn(
            "Brine is left each time and the salt is not rinsed out: clean the injector, see to "
            "the pressure and the drain line, or set more time."
        )
        time = work.step(
            "draw_time",
            "To draw all of it would take this time.",
            "{brine} ÷ {suction}",
            given.brine / suction,
            "min",
        )
        return time, left
    time = work.step(
        "draw_time",
        "At this suction the brine is drawn in this time.",
        "{brine} ÷ {suction}",
        given.brine / suction,
        "min",
    )
    return time, 0.0


def _slow_rinse(given, work, motive, draw_time):
    """Tell the steps of the slow rinse; return its time [min], water [gal] and bed volumes."""
    time = 0.0
    if draw_time is not None and snap(draw_time) < snap(given.brine_time):
        time = work.step(
            "slow_rinse_time",
            "What is left of the time set is slow rinse.",
            "{brine_time} − {draw_time}",
            given.brine_time - draw_time,
            "min",
        )
    else:
        work.step("slow_rinse_time", "No time is left for slow rinse.", "0", 0.0, "min")
    water = work.step(
        "slow_rinse_water",
        "The injector's water rinses on alone.",
        "{slow_rinse_time} × {motive_flow}",
        time * motive,
        "gal",
    )
    volumes = work.step(
        "bed_volumes",
        "Set beside the volume of the resin.",
        "{slow_rinse_water} ÷ {resin_volume}",
        water / convert(given.resin_volume, "ft³", "gal", "volume"),
    )
    return time, water, volumes


def _brine_draw(given, work):
    suction, motive = _injector(given, work)
    draw_time, left = draw(given, work, suction)
    rinse_time, water, volumes = _slow_rinse(given, work, motive, draw_time)
    work.put("full_brine", FULL_BRINE, "%")
    work.put("weight_of_brine", WEIGHT_OF_BRINE)
    strength = work.step(
        "strength",
        "The injector's water thins the brine; by weight, as brine is heavier than water.",
        "{full_brine} × {weight_of_brine} × {suction} ÷ "
        "({weight_of_brine} × {suction} + {motive_flow})",
        strength_at_bed(suction, motive),
        "%",
    )
    _warn(given, work, strength, draw_time, volumes)
    values = {
        "suction": suction,
        "motive_flow": motive,
        "strength": strength,
        "slow_rinse_time": rinse_time,
        "slow_rinse_water": water,
        "bed_volumes": volumes,
        "brine_left": left,
        "least_suction": given.brine / given.brine_time,
    }
    return values if draw_time is None else {**values, "draw_time": draw_time}


def _warn(given, work, strength, draw_time, volumes):
    if 0 < snap(strength) < WEAK:
        work.warn("The brine is thin at the bed: it gives back less capacity.")
    if snap(strength) > STRONG:
        work.warn("The brine is strong at the bed: it passes before all of it has worked.")
    if draw_time is None or snap(draw_time) > snap(given.brine_time):
        return
    if snap(draw_time) > snap(given.brine_time - LEAST_RINSE_TIME):
        work.warn(
            "The draw leaves little time for slow rinse: there is no room for a weak injector."
        )
    if snap(volumes) < LEAST_RINSE:
        work.warn("The slow rinse is short: the first water afterwards may taste of salt.")
    if snap(volumes) > MOST_RINSE:
        work.warn("The slow rinse is longer than any in print: it may waste water.")


BRINE_DRAW = Calculator(
    "brine-draw",
    "Brine draw and slow rinse",
    "Is all brine drawn and rinsed out in the time set, and how strong does it reach the bed?",
    inputs=[
        Input(
            "brine",
            "Brine to draw",
            "volume",
            "gal",
            example=3.4,
            low=0.2,
            high=60,
            help="What the refill makes, from the refill calculator.",
        ),
        resin_volume(help="Of the whole bed, from the unit's sheet."),
        Input(
            "brine_time",
            "Time set for brine and slow rinse",
            "time",
            "min",
            default=60,
            low=10,
            high=120,
            help="Both together, as controls count them.",
            equipment="brine_time",
        ),
        Input(
            "figures_from",
            "Flows of the injector, from",
            "choice",
            default=SHEET,
            choices=(SHEET, BY_RESIN),
        ),
        Input(
            "slow_rinse_flow",
            "Slow rinse flow",
            "flow",
            "gpm",
            example=0.45,
            low=0.05,
            high=10,
            help="At the drain once the brine is gone: the injector's own water.",
            only_when=("figures_from", (SHEET,)),
            equipment="slow_rinse_flow",
        ),
        Input(
            "brine_draw_flow",
            "Flow at the drain while brine is drawn",
            "flow",
            "gpm",
            example=0.7,
            low=0.06,
            high=15,
            help="The injector's water and the brine together.",
            only_when=("figures_from", (SHEET,)),
            equipment="brine_draw_flow",
        ),
        Input(
            "flow_pressure",
            "Pressure at which these flows hold",
            "pressure",
            "psi",
            default=USUAL_PRESSURE,
            low=20,
            high=125,
            help="Of the sheet; for flows you measured, the water pressure of the house.",
            equipment="flow_pressure",
            only_when=("figures_from", (SHEET,)),
        ),
        water_pressure(help="At the softener while brine is drawn."),
        Input(
            "back_pressure",
            "Pressure that the drain line takes",
            "pressure",
            "psi",
            default=0,
            low=0,
            high=60,
            help="Friction and lift at this small flow, from the calculator of the drain line.",
        ),
    ],
    outputs=[
        Output("draw_time", "Time to draw the brine", "time", "min", step=0.1),
        Output("slow_rinse_time", "Time left for slow rinse", "time", "min", step=0.1),
        Output("slow_rinse_water", "Water of the slow rinse", "volume", "gal", step=0.1),
        Output("bed_volumes", "Slow rinse in bed volumes", step=0.1),
        Output("strength", "Strength of the brine at the bed", "share", "%", step=0.1),
        Output("suction", "Brine drawn", "flow", "gpm", step=0.01),
        Output("motive_flow", "Injector's own water", "flow", "gpm", step=0.01),
        Output("least_suction", "Least suction that empties the tank", "flow", "gpm", digits=2),
        Output("brine_left", "Brine left in the tank", "volume", "gal", step=0.1),
    ],
    compute=_brine_draw,
    picture=Curve("pressure", 20, 100, ["suction", "motive_flow"]),
    sources=["regeneration-bands", "salt-solubility", "brine-density", "common-practice"],
    cautions=["Brine and the first rinse water go to the drain only: keep them off plants."],
)

CALCULATORS = (BRINE_DRAW,)
