"""Pressure lost in service: through the bed, the valve and the pipe."""

from calculators.beads import (
    BEAD,
    SETTLED_VOIDS,
    carman,
    tank_area,
    viscous_loss,
    whirling_loss,
)
from calculators.declare import Calculator, Curve, Input, Output
from calculators.pipe import hazen_williams
from calculators.quantities import convert, snap
from calculators.readings import tank_diameter, water_temperature
from calculators.water_properties import density, viscosity

#: The most a softener may cost at its rated flow: see the source "pressure-mark".
MARK = 15.0  # psi
#: The same with pipe and valves in federal buildings: see the source "pressure-mark-federal".
FEDERAL_MARK = 10.0  # psi
#: Shortest stay of water in the bed, all day and for a moment: 5 and 10 gpm for each cubic foot;
#: common practice, no source.
ALL_DAY, MOMENT = 1.5, 0.75  # min
#: Share [percent] of the expected loss from which a measured one points to a plugged bed.
PLUGGED = 200.0


def _bed_loss(given, work):
    """Tell the steps to the loss of the bed; return it [psi] and that of the other equation."""
    area = work.step(
        "area",
        "The area of the bed.",
        "π ÷ 4 × ({tank_diameter})²",
        tank_area(given.tank_diameter),
        "ft²",
    )
    speed = work.step(
        "flow_through",
        "The flow through each part of it is the speed of the water.",
        "{flow} ÷ {area}",
        given.flow / area,
        "gpm/ft²",
    )
    work.step(
        "viscosity",
        "Cold water is thicker.",
        "viscosity of water at {temperature}",
        viscosity(given.temperature),
        "mPa·s",
    )
    work.put("water_density", density(given.temperature), "kg/m³")
    bed = (speed, given.bead, given.voids, given.temperature)
    viscous = work.step(
        "viscous_part",
        "By the equation of Ergun most of the loss is rubbing, in proportion to the flow.",
        "150 × {viscosity} × (1 − {voids})² × {flow_through} ÷ ({voids}³ × ({bead})²)",
        viscous_loss(*bed),
        "psi/ft",
    )
    whirling = work.step(
        "whirling_part",
        "A small part grows with the square of the flow.",
        "1.75 × {water_density} × (1 − {voids}) × ({flow_through})² ÷ ({voids}³ × {bead})",
        whirling_loss(*bed),
        "psi/ft",
    )
    loss = work.step(
        "bed_loss",
        "Both together, through the whole depth.",
        "({viscous_part} + {whirling_part}) × {bed_depth}",
        (viscous + whirling) * given.bed_depth / 12,
        "psi",
    )
    high = work.step(
        "bed_loss_by_carman",
        "The equation of Carman gives about a fifth more: expect a clean bed in this band.",
        "by the equation of Carman for {flow_through} and {bed_depth}",
        carman(*bed) * given.bed_depth / 12,
        "psi",
    )
    return loss, high


def _warn(softener, total, stay, work):
    if snap(softener) > MARK:
        work.warn(
            f"The softener alone costs more than {work.shown(MARK, 'psi')}, the most that the "
            "standard allows at the rated flow."
        )
    elif snap(total) > FEDERAL_MARK:
        work.warn(
            f"With its pipe the softener costs more than {work.shown(FEDERAL_MARK, 'psi')}, the "
            "most that federal buildings allow: the shower may tell."
        )
    if snap(stay) < MOMENT:
        work.warn("The water is in the bed for too short a time: expect hardness to slip through.")
    elif snap(stay) < ALL_DAY:
        work.warn("The bed stands this flow for some minutes, not all day.")


def _service_pressure(given, work):
    bed, bed_high = _bed_loss(given, work)
    valve = work.step(
        "valve_loss",
        "The valve's loss grows with the square of the flow.",
        "({flow} ÷ {valve_coefficient})²",
        (given.flow / given.valve_coefficient) ** 2,
        "psi",
    )
    pipe = work.step(
        "pipe_loss",
        "The pipe, by the rule of Hazen and Williams.",
        "the friction for {flow}, {pipe_length}, {pipe_bore} and {smoothness}",
        hazen_williams(given.flow, given.pipe_bore, given.smoothness, given.temperature)
        * given.pipe_length,
        "psi",
    )
    softener = work.step(
        "softener_loss",
        "Bed and valve are the softener's own loss.",
        "{bed_loss} + {valve_loss}",
        bed + valve,
        "psi",
    )
    total = work.step(
        "total_loss",
        "With the pipe, this is what the gauges before and after show.",
        "{softener_loss} + {pipe_loss}",
        softener + pipe,
        "psi",
    )
    work.put("mark", MARK, "psi")
    margin = work.step(
        "margin", "Beside the mark.", "{mark} − {softener_loss}", MARK - softener, "psi"
    )
    stay = work.step(
        "stay",
        "How long the water is in the bed.",
        "{area} × {bed_depth} ÷ {flow}",
        convert(tank_area(given.tank_diameter) * given.bed_depth / 12, "ft³", "gal", "volume")
        / given.flow,
        "min",
    )
    _warn(softener, total, stay, work)
    values = {
        "bed_loss": bed,
        "bed_loss_by_carman": bed_high,
        "valve_loss": valve,
        "pipe_loss": pipe,
        "softener_loss": softener,
        "total_loss": total,
        "margin": margin,
        "stay": stay,
    }
    if given.measured is not None:
        values["measured_share"] = _measured_share(given, work, total)
    return values


def _measured_share(given, work, total):
    share = work.step(
        "measured_share",
        "What the gauges show beside what is expected.",
        "{measured} ÷ {total_loss}",
        100 * given.measured / total,
        "%",
    )
    if snap(share) > PLUGGED:
        work.warn(
            "The loss is more than twice what is expected: look for broken or swollen beads, dirt "
            "in the bed and plugged screens."
        )
    return share


SERVICE_PRESSURE = Calculator(
    "service-pressure",
    "Pressure lost in service",
    "How much pressure do the bed, the valve and the pipe cost at this flow?",
    inputs=[
        Input(
            "flow",
            "Service flow",
            "flow",
            "gpm",
            example=8,
            low=0.1,
            high=40,
            help="All taps that run at once.",
            equipment="service_flow",
        ),
        tank_diameter(),
        Input(
            "bed_depth",
            "Depth of the resin",
            "length",
            "in",
            example=33,
            low=6,
            high=72,
            help="Its volume divided by the area of the tank.",
            equipment="bed_depth",
        ),
        water_temperature(),
        Input(
            "valve_coefficient",
            "Flow coefficient of the valve",
            "flow coefficient",
            "gpm/√psi",
            default=4,
            low=1,
            high=40,
            usual_low=2.5,
            usual_high=12,
            help="The flow that costs one unit of pressure, Cv or Kv: from the unit's sheet. The "
            "usual one fits a household valve.",
            equipment="valve_coefficient",
        ),
        Input(
            "pipe_bore",
            "Bore of the pipe",
            "length",
            "in",
            default=0.785,
            low=0.25,
            high=4,
            help="The inner diameter; the usual one is that of a tube called three quarters.",
        ),
        Input(
            "pipe_length",
            "Length of pipe between the gauges",
            "length",
            "ft",
            default=10,
            low=0,
            high=500,
            help="There and back, with some more for each bend.",
        ),
        Input(
            "smoothness",
            "Smoothness of the pipe",
            "number",
            default=140,
            low=60,
            high=160,
            help="The coefficient C of Hazen and Williams: high for smooth tube, low for old iron.",
        ),
        Input(
            "bead",
            "Size of the beads",
            "length",
            "mm",
            default=BEAD,
            low=0.3,
            high=1.2,
            usual_low=0.45,
            usual_high=0.7,
            help="The usual one fits standard resin; fines and broken beads are smaller.",
        ),
        Input(
            "voids",
            "Voids of the settled bed",
            "share",
            "%",
            default=SETTLED_VOIDS,
            low=30,
            high=50,
            usual_low=36,
            usual_high=41,
            help="The share of the bed that is water; dirt and fines make it less.",
        ),
        Input(
            "measured",
            "Pressure loss measured",
            "pressure",
            "psi",
            low=0,
            high=150,
            optional=True,
            help="The difference of the gauges before and after at this flow.",
        ),
    ],
    outputs=[
        Output("total_loss", "Loss with the pipe", "pressure", "psi", step=0.1),
        Output("softener_loss", "Loss of the softener", "pressure", "psi", step=0.1),
        Output("margin", "Left to the mark of the standard", "pressure", "psi", step=0.1),
        Output("bed_loss", "Loss of the bed", "pressure", "psi", step=0.1),
        Output("bed_loss_by_carman", "Loss of the bed by Carman", "pressure", "psi", step=0.1),
        Output("valve_loss", "Loss of the valve", "pressure", "psi", step=0.1),
        Output("pipe_loss", "Loss of the pipe", "pressure", "psi", step=0.1),
        Output("stay", "Time of the water in the bed", "time", "min", step=0.01),
        Output("measured_share", "Share of what is expected", "share", "%", step=1),
    ],
    compute=_service_pressure,
    picture=Curve("flow", 0.5, 20, ["total_loss", "bed_loss", "valve_loss"]),
    sources=[
        "bed-pressure",
        "bed-pressure-again",
        "pipe-friction",
        "pressure-mark",
        "pressure-mark-federal",
        "water-viscosity",
        "water-density",
        "common-practice",
    ],
)

CALCULATORS = (SERVICE_PRESSURE,)
