"""A regeneration minute by minute: when each position begins, and what it sends to the drain."""

from types import SimpleNamespace

from calculators.brine import BRINE_REFILL, refill
from calculators.declare import Calculator, Drawing, Input, InputProblem, Output
from calculators.quantities import snap
from calculators.regeneration import draw

#: The positions in their order: the outputs' names, and how readers call them.
POSITIONS = {
    "backwash": "backwash",
    "draw": "brine draw",
    "slow": "slow rinse",
    "fast": "fast rinse",
    "refill": "refill",
}


def _times(given, work):
    """Return how long each position lasts [min], by name, and the brine drawn [gpm]."""
    brine_tank = refill(given, work)
    suction = work.step(
        "suction",
        "What runs at the drain beyond the injector's own water is brine.",
        "{brine_draw_flow} − {slow_rinse_flow}",
        given.brine_draw_flow - given.slow_rinse_flow,
        "gpm",
    )
    drawn = SimpleNamespace(brine=brine_tank["brine"], brine_time=given.brine_time)
    needed, _ = draw(drawn, work, suction)
    drawing = min(needed, given.brine_time)
    if snap(needed) <= snap(given.brine_time):
        slow = work.step(
            "slow_rinse_time",
            "What is left of the time set for both is slow rinse.",
            "{brine_time} − {draw_time}",
            given.brine_time - drawing,
            "min",
        )
    else:
        work.put("draw_time", drawing, "min")
        slow = work.step("slow_rinse_time", "No time is left for slow rinse.", "0", 0.0, "min")
    return {
        "backwash": given.backwash_time,
        "draw": drawing,
        "slow": slow,
        "fast": given.fast_rinse_time,
        "refill": brine_tank["refill_time"],
    }


def drain_flows(given):
    """Return what runs at the drain in each position [gpm], by name."""
    fast = given.backwash_flow if given.fast_rinse_flow is None else given.fast_rinse_flow
    return {
        "backwash": given.backwash_flow,
        "draw": given.brine_draw_flow,
        "slow": given.slow_rinse_flow,
        "fast": fast,
        "refill": 0.0,
    }


#: Position -> what its step says of its water, and the formula.
_WATER = {
    "backwash": ("The backwash sends this to the drain.", "{backwash_time} × {backwash_flow}"),
    "draw": (
        "The brine draw sends the injector's water and the brine.",
        "{draw_time} × {brine_draw_flow}",
    ),
    "slow": ("The slow rinse sends the injector's water.", "{slow_rinse_time} × {slow_rinse_flow}"),
    "fast": ("The fast rinse ends it.", "{fast_rinse_time} × {fast_rinse_flow}"),
}


def _timetable(given, work):
    if snap(given.brine_draw_flow) <= snap(given.slow_rinse_flow):
        raise InputProblem(
            "brine_draw_flow",
            "While brine is drawn more must run at the drain than in the slow rinse: if it does "
            "not, the injector draws nothing.",
        )
    flows = drain_flows(given)
    work.put("fast_rinse_flow", flows["fast"], "gpm")
    times = _times(given, work)
    values, begin, total = {}, 0.0, 0.0
    before = None
    for name, title in POSITIONS.items():
        if before:
            values[f"{name}_begins"] = work.step(
                f"{name}_begins",
                f"{title.capitalize()} begins when {POSITIONS[before]} ends.",
                f"{{{before}_begins}} + {{{_TIME[before]}}}",
                begin,
                "min",
            )
        else:
            work.put(f"{name}_begins", 0.0, "min")
        begin += times[name]
        before = name
    values["minutes"] = work.step(
        "minutes",
        "The regeneration ends with the refill.",
        "{refill_begins} + {refill_time}",
        begin,
        "min",
    )
    for name, (sentence, formula) in _WATER.items():
        water = times[name] * flows[name]
        values[f"{name}_water"] = work.step(f"{name}_water", sentence, formula, water, "gal")
        total += water
    values["drained"] = work.step(
        "drained",
        "All of it together.",
        " + ".join(f"{{{name}_water}}" for name in _WATER),
        total,
        "gal",
    )
    return values


_TIME = {
    "backwash": "backwash_time",
    "draw": "draw_time",
    "slow": "slow_rinse_time",
    "fast": "fast_rinse_time",
}


def _time(name, label, default, low=0.0):
    return Input(
        name,
        label,
        "time",
        "min",
        default=default,
        low=low,
        high=120,
        help="As the control is set.",
        equipment=name,
    )


def _flow(name, label, example, low, high, help):
    return Input(
        name,
        label,
        "flow",
        "gpm",
        example=example,
        low=low,
        high=high,
        help=help,
        equipment=name,
    )


REGENERATION_TIMETABLE = Calculator(
    "regeneration-timetable",
    "Timetable of a regeneration",
    "When does each position begin, and how much water goes to the drain in it?",
    inputs=[
        _time("backwash_time", "Backwash time", 10),
        _flow("backwash_flow", "Backwash flow", 2.4, 0.2, 20, "From the unit's sheet."),
        _time("brine_time", "Time set for brine and slow rinse", 60, 1),
        _flow(
            "brine_draw_flow",
            "Flow at the drain while brine is drawn",
            0.7,
            0.06,
            15,
            "The injector's water and the brine together.",
        ),
        _flow(
            "slow_rinse_flow",
            "Slow rinse flow",
            0.45,
            0.05,
            10,
            "At the drain once the brine is gone: the injector's own water.",
        ),
        _time("fast_rinse_time", "Fast rinse time", 10),
        Input(
            "fast_rinse_flow",
            "Fast rinse flow",
            "flow",
            "gpm",
            low=0.2,
            high=20,
            optional=True,
            help="Leave blank where it is the backwash flow.",
        ),
        *BRINE_REFILL.inputs,
    ],
    outputs=[
        *(
            Output(f"{name}_begins", f"{title.capitalize()} begins after", "time", "min", step=0.1)
            for name, title in POSITIONS.items()
            if name != "backwash"
        ),
        Output("minutes", "Minutes in all", "time", "min", step=0.1),
        *(
            Output(
                f"{name}_water", f"To the drain in the {POSITIONS[name]}", "volume", "gal", step=0.1
            )
            for name in _WATER
        ),
        Output("drained", "To the drain in all", "volume", "gal", step=0.1),
    ],
    compute=_timetable,
    picture=Drawing("timetable"),
    sources=["salt-solubility", "brine-density", "common-practice"],
    cautions=["Brine and the first rinse water go to the drain only: keep them off plants."],
)

CALCULATORS = (REGENERATION_TIMETABLE,)
