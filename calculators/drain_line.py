"""The line to the drain: what it costs in pressure."""

from calculators.declare import Calculator, Curve, Input, Output
from calculators.pipe import darcy_weisbach, hazen_williams, height_pressure
from calculators.quantities import snap
from calculators.readings import water_pressure, water_temperature

FITTING = 2.0  # ft of line that a fitting counts for; common practice, no source
#: Shares [1] between which two laws of friction agree well enough to say nothing.
AGREE_FROM, AGREE_TO = 0.75, 1.33


def _friction(given, work):
    """Tell the steps to the friction; return it by the trade, by the physical law, and its rate."""
    work.put("fitting_length", FITTING, "ft")
    length = work.step(
        "length_with_fittings",
        "Each fitting costs as much as a piece of line.",
        "{length} + {fittings} × {fitting_length}",
        given.length + given.fittings * FITTING,
        "ft",
    )
    rate = work.step(
        "friction_rate",
        "The rule of Hazen and Williams gives the friction; it steps up steeply with the flow and "
        "down steeply with the bore.",
        "the friction for {flow}, {bore} and {smoothness}",
        hazen_williams(given.flow, given.bore, given.smoothness, given.temperature),
        "psi/ft",
    )
    friction = work.step(
        "friction",
        "Along the whole line.",
        "{friction_rate} × {length_with_fittings}",
        rate * length,
        "psi",
    )
    physical = darcy_weisbach(given.flow, given.bore, given.temperature)
    other = work.step(
        "friction_by_darcy",
        "The law of Darcy and Weisbach knows thin tube and cold water better and differs by up to "
        "a fifth at such flows; the rule stays what lines are sized by.",
        "by Darcy and Weisbach for {flow}, {length_with_fittings}, {bore} and {temperature}",
        physical * length,
        "psi",
    )
    if not AGREE_FROM <= snap(physical / rate) <= AGREE_TO:
        work.warn(
            "The two laws of friction lie far apart here, as with old rough pipe, a trickle or a "
            "rush: measure before you change the line."
        )
    return friction, other, rate


def _drain_line(given, work):
    friction, other, rate = _friction(given, work)
    column = height_pressure(given.temperature)
    work.put("height_pressure", column, "psi/ft")
    lift = work.step(
        "lift",
        "Lifting the water costs its weight; a line that falls gives it back.",
        "{height_pressure} × {rise}",
        column * given.rise,
        "psi",
    )
    if snap(friction + lift) > 0:
        line = work.step(
            "line_loss",
            "Friction and lift are what pushes back on the valve.",
            "{friction} + {lift}",
            friction + lift,
            "psi",
        )
    else:
        line = work.step(
            "line_loss",
            "The fall gives more than the friction takes, so the line does not run full and "
            "pushes nothing back.",
            "0",
            0.0,
            "psi",
        )
    spare = work.step(
        "spare",
        "What is left after the valve, the line and the need of the flow control.",
        "{pressure} − {valve_loss} − {line_loss} − {control_need}",
        given.pressure - given.valve_loss - line - given.control_need,
        "psi",
    )
    values = {
        "line_loss": line,
        "spare": spare,
        "friction": friction,
        "friction_by_darcy": other,
        "lift": lift,
    }
    left = given.pressure - given.valve_loss - lift - given.control_need
    longest = left / rate - given.fittings * FITTING
    if snap(longest) > 0:
        values["longest"] = work.step(
            "longest",
            "Turned round: how long the line may be before nothing is spare.",
            "({pressure} − {valve_loss} − {lift} − {control_need}) ÷ {friction_rate} − "
            "{fittings} × {fitting_length}",
            longest,
            "ft",
        )
    if snap(spare) < 0:
        work.warn(
            "The pressure does not suffice: backwash and fast rinse run below their rating, and "
            "the injector draws less. Use a wider, shorter or lower line."
        )
    return values


DRAIN_LINE = Calculator(
    "drain-line",
    "Friction and lift of the drain line",
    "Does the drain line let the full flow through?",
    inputs=[
        Input(
            "flow",
            "Flow in the line",
            "flow",
            "gpm",
            example=2.4,
            low=0.05,
            high=30,
            help="The rating of the flow control for backwash, or the flow while brine is drawn.",
            equipment="backwash_flow",
        ),
        Input(
            "bore",
            "Bore of the line",
            "length",
            "in",
            default=0.5,
            low=0.25,
            high=1.5,
            help="The inner diameter of the tube, also at its narrowest fitting.",
        ),
        Input(
            "length",
            "Length of the line",
            "length",
            "ft",
            default=20,
            low=0,
            high=200,
            usual_high=30,
            help="Along the tube.",
            unusual="It may be longer where the bore is wide and the flow small: the answer tells.",
        ),
        Input(
            "fittings",
            "Elbows and other fittings",
            "count",
            default=0,
            low=0,
            high=40,
            help="A gentle bend of the tube does not count.",
        ),
        Input(
            "rise",
            "Rise of the line",
            "length",
            "ft",
            default=0,
            low=-10,
            high=20,
            usual_high=8,
            help="From the valve up to its highest point; write a fall with a minus.",
            unusual="A line so high pushes back on the injector.",
        ),
        water_pressure(),
        Input(
            "valve_loss",
            "Loss in the valve",
            "pressure",
            "psi",
            default=5,
            low=0,
            high=40,
            help="At this flow; the usual one is a habit of the trade.",
        ),
        Input(
            "control_need",
            "Pressure that the flow control needs",
            "pressure",
            "psi",
            default=15,
            low=0,
            high=40,
            help="To hold its rating; for brine drawing, what the injector needs.",
        ),
        Input(
            "smoothness",
            "Smoothness of the line",
            "number",
            default=140,
            low=60,
            high=160,
            help="The coefficient C of Hazen and Williams: high for smooth tube, low for old iron.",
        ),
        water_temperature(),
    ],
    outputs=[
        Output("line_loss", "Pressure the line takes", "pressure", "psi", step=0.1),
        Output("spare", "Spare pressure", "pressure", "psi", step=0.1),
        Output("friction", "Friction", "pressure", "psi", step=0.1),
        Output("friction_by_darcy", "Friction by the physical law", "pressure", "psi", step=0.1),
        Output("lift", "Lift", "pressure", "psi", step=0.1),
        Output("longest", "Longest line of this bore", "length", "ft", step=1, direction="down"),
    ],
    compute=_drain_line,
    picture=Curve("flow", 0.5, 8, ["friction", "friction_by_darcy"]),
    sources=[
        "pipe-friction",
        "pipe-friction-again",
        "water-viscosity",
        "water-density",
        "common-practice",
    ],
    cautions=[
        "The line ends above the drain with an air gap, tied down so that it cannot jump out.",
        "Keep the line free of frost, kinks and shut-off valves.",
    ],
)

CALCULATORS = (DRAIN_LINE,)
