"""The low-voltage supply of a control: readings against the rating, and what a cable loses."""

import math

from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.quantities import convert, snap

LIVE, DEAD, UNTESTED = "lamp lights", "lamp stays dark", "not tested"
ALTERNATING, DIRECT = "ac", "dc"

#: Shares [%] of the rated voltage that part the words; common practice, no source.
NOTHING, FAILS_BELOW, MARGINAL_BELOW, LOADED_HIGH = 5.0, 85.0, 90.0, 115.0
OPEN_LOW, OPEN_HIGH = 95.0, 125.0
#: A reading under load this much [%] above the open one is no slip of the mains.
SWAPPED = 105.0

COPPER = 1.7241e-8  # Ω·m at 20 °C: see the source "wire-gauge"
COPPER_RISE = 0.00393  # of that for each °C


def wire_resistance(gauge, temperature):
    """Return the resistance [Ω/ft] of one solid copper wire.

    gauge: number of the American wire gauge, 0 to 40. temperature [°F]. The diameter grows by equal
    ratios from gauge 36 to gauge 0000. Stranded wire has about two percent more.
    Source: wire-gauge.

    >>> round(1000 * wire_resistance(18, 68), 3)
    6.385
    """
    diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39)
    resistivity = COPPER * (
        1 + COPPER_RISE * (convert(temperature, "°F", "°C", "temperature") - 20)
    )
    return convert(resistivity / (math.pi / 4 * diameter**2), "Ω/m", "Ω/ft", "wire resistance")


def supply_verdict(open_share, loaded_share, adaptor_share, outlet):
    """Return the words for shares of the rated voltage [%]: open, loaded, and at the adaptor.

    adaptor_share: the loaded voltage with the loss of the cable added. outlet: what a plug-in lamp
    in the outlet does.
    """
    open_share, loaded_share, adaptor_share = map(snap, (open_share, loaded_share, adaptor_share))
    if open_share < NOTHING:
        return {
            LIVE: "nothing: the adaptor has failed, if the meter is on the right range",
            DEAD: "nothing: the outlet is dead",
            UNTESTED: "nothing: try the outlet with a plug-in lamp",
        }[outlet]
    if loaded_share > LOADED_HIGH:
        return "too high"
    if loaded_share >= MARGINAL_BELOW:
        return "in band"
    if loaded_share >= FAILS_BELOW:
        return "marginal"
    if open_share < OPEN_LOW:
        return "too low even without load: failing or wrong adaptor"
    if adaptor_share >= MARGINAL_BELOW:
        return "too low: the cable loses it"
    return "too low under load: weak adaptor, or the control draws too much"


def _supply_voltage(given, work):
    if snap(given.loaded) > snap(given.open * SWAPPED / 100):
        raise InputProblem(
            "loaded",
            "Under load the voltage cannot be above the open one: look whether the two readings "
            "are swapped, or on different ranges.",
        )

    def share(name, sentence, of):
        return work.step(
            name, sentence, f"{{{of}}} ÷ {{rated}}", 100 * reading[of] / given.rated, "%"
        )

    resistance = work.step(
        "resistance",
        "The resistance of one wire follows from its gauge and temperature.",
        "wire {gauge} at {temperature}",
        wire_resistance(given.gauge, given.temperature),
        "Ω/ft",
    )
    loss = work.step(
        "cable_loss",
        "The current goes there and back, so the cable counts twice.",
        "2 × {cable_length} × {resistance} × {current}",
        2 * given.cable_length * resistance * given.current,
        "V",
    )
    at_adaptor = work.step(
        "at_adaptor",
        "At the adaptor itself there is so much under load.",
        "{loaded} + {cable_loss}",
        given.loaded + loss,
        "V",
    )
    reading = {"open": given.open, "loaded": given.loaded, "at_adaptor": at_adaptor}
    open_share = share("open_share", "Without load, set beside the rating.", "open")
    loaded_share = share("loaded_share", "With the motor running, set beside the rating.", "loaded")
    adaptor_share = share("adaptor_share", "At the adaptor, set beside the rating.", "at_adaptor")
    if open_share >= NOTHING and snap(at_adaptor) > snap(given.open * SWAPPED / 100):
        work.warn(
            "The cable cannot lose more than the voltage falls under load: look at its length, its "
            "gauge and the current, and do not trust the loss."
        )
    if open_share < NOTHING:
        work.warn(
            "A meter on the wrong range shows about nothing: this adaptor gives "
            f"{'alternating' if given.current_kind == ALTERNATING else 'direct'} current."
        )
    elif not OPEN_LOW <= snap(open_share) <= OPEN_HIGH:
        work.warn(
            "Without load the voltage is outside the usual range: read the adaptor's label and the "
            "control's sheet, and see that they agree."
        )
    return {
        "verdict": supply_verdict(open_share, loaded_share, adaptor_share, given.outlet),
        "loaded_share": loaded_share,
        "open_share": open_share,
        "cable_loss": loss,
        "at_adaptor": at_adaptor,
    }


_LOW_VOLTAGE_ONLY = (
    "Only the low-voltage side of the adaptor is measured: the mains belong to a licensed "
    "electrician."
)

SUPPLY_VOLTAGE = Calculator(
    "supply-voltage",
    "Low-voltage supply and wire loss",
    "Does the control get the voltage it needs, and how much does the cable lose?",
    inputs=[
        Input(
            "current_kind",
            "Kind of current",
            "choice",
            default=ALTERNATING,
            choices=(ALTERNATING, DIRECT),
            help="From the adaptor's label; set the meter to the same.",
            equipment="control_current",
        ),
        Input(
            "rated",
            "Rated voltage",
            "voltage",
            "V",
            default=24,
            low=5,
            high=30,
            help="The output on the adaptor's label, not what it plugs into.",
            equipment="control_voltage",
            refused=_LOW_VOLTAGE_ONLY,
        ),
        Input(
            "open",
            "Voltage without load",
            "voltage",
            "V",
            example=26,
            low=0,
            high=60,
            help="At the control's end of the cable, unplugged from the control.",
            refused=_LOW_VOLTAGE_ONLY,
        ),
        Input(
            "loaded",
            "Voltage under load",
            "voltage",
            "V",
            example=23,
            low=0,
            high=60,
            help="At the control with its motor running.",
            refused=_LOW_VOLTAGE_ONLY,
        ),
        Input(
            "outlet",
            "A plug-in lamp in the outlet",
            "choice",
            default=UNTESTED,
            choices=(LIVE, DEAD, UNTESTED),
            help="The outlet is tested in no other way.",
        ),
        Input(
            "cable_length",
            "Length of the low-voltage cable",
            "length",
            "ft",
            default=0,
            example=50,
            low=0,
            high=500,
            help="One way, as added between adaptor and control.",
        ),
        Input(
            "gauge",
            "Gauge of its wires",
            "count",
            default=18,
            low=10,
            high=28,
            help="Printed on the cable; a higher number is a thinner wire.",
        ),
        Input(
            "current",
            "Current the control draws",
            "current",
            "A",
            default=0.2,
            low=0,
            high=4,
            help="With the motor running, from the control's sheet.",
        ),
        Input(
            "temperature",
            "Temperature of the cable",
            "temperature",
            "°F",
            default=68,
            low=-40,
            high=180,
            help="Warm copper resists more.",
        ),
    ],
    outputs=[
        Output("verdict", "The supply is", "words"),
        Output("loaded_share", "Under load, share of the rating", "share", "%", step=0.1),
        Output("open_share", "Without load, share of the rating", "share", "%", step=0.1),
        Output("cable_loss", "Lost in the cable", "voltage", "V", step=0.01),
        Output("at_adaptor", "At the adaptor under load", "voltage", "V", step=0.1),
    ],
    compute=_supply_voltage,
    sources=["wire-gauge", "wire-table", "low-voltage-limit", "common-practice"],
    cautions=[
        "Never measure or open an outlet, a switch or anything else on the mains: test it with a "
        "plug-in lamp, and leave a dead outlet to a licensed electrician.",
        "A tripped breaker or ground-fault device is reset once only; if it trips again, stop.",
        "Replace an adaptor only by one of the same kind of current, voltage and at least the same "
        "rated current. Its label and the control maker's sheet win over these bands.",
    ],
)

CALCULATORS = (SUPPLY_VOLTAGE,)
