"""What a fault may change in a simulated home: the names, and what each stands for."""

from calculators.quantities import snap


class Change:
    """One thing a fault may change: the value of a sound home, the range, the unit, the meaning."""

    __slots__ = ("name", "sound", "low", "high", "unit", "meaning")

    def __init__(self, name, sound, low, high, unit, meaning):
        self.name, self.sound, self.low, self.high = name, sound, low, high
        self.unit, self.meaning = unit, meaning


_DECLARED = (
    # Routing
    ("bypass_share", 0, 0, 1, "1", "share of the house's water that goes around the softener"),
    ("seal_leak_share", 0, 0, 1, "1", "share of the valve's water that seals let around the bed"),
    ("riser_leak_share", 0, 0, 1, "1", "share that passes the top of the riser, around the bed"),
    ("hard_tap", 0, 0, 1, "yes or no", "the cold tap tested is on the unsoftened line"),
    ("flow_reversed", 0, 0, 1, "yes or no", "inlet and outlet changed: the meter stands, beads"),
    ("cross_connection_share", 0, 0, 0.9, "1", "share of raw cold water in what hot taps give"),
    # Raw water
    ("raw_hardness_factor", 1, 0.2, 4, "1", "raw hardness over the hardness planned for"),
    ("iron", 0, 0, 15, "mg/L", "dissolved iron that the setting does not allow for"),
    ("capacity_loss_per_cycle", 0, 0, 0.2, "1", "share of the capacity lost with each cycle"),
    ("supply_pressure_factor", 1, 0, 2, "1", "supply pressure over what it was"),
    # Usage
    ("extra_people", 0, 0, 10, "people", "people more than planned for, for good"),
    ("leak_flow", 0, 0, 5, "gpm", "softened water that runs all day"),
    ("peak_flow_factor", 1, 0.3, 4, "1", "flow of every draw over the usual; volumes stay"),
    # Power, clock, meter, control
    ("clock_offset", 0, -720, 720, "min", "the control's clock jumps by this; behind is below 0"),
    ("power_on", 1, 0, 1, "yes or no", "the control has power"),
    ("supply_voltage_share", 1, 0, 1.3, "1", "voltage at the control over its rating"),
    ("clock_runs", 1, 0, 1, "yes or no", "the timer advances"),
    ("setting_factor", 1, 0.3, 4, "1", "water or days set over what was planned"),
    ("days_blocked", 0, 0, 1, "yes or no", "no day of regeneration is set, or it is told to wait"),
    ("meter_factor", 1, 0, 1.5, "1", "counted water over real water"),
    ("stall_position", 0, 0, 4, "position", "where the drive stops: 1 backwash, 2 brine, 3 fast "
     "rinse, 4 refill; 0 nowhere"),
    # Salt and brine
    ("salt_left", -1, -1, 500, "lb", "solid salt left, and none is added; -1 leaves it alone"),
    ("salt_bridged", 0, 0, 1, "1", "share of the solid salt that hangs above the water"),
    ("mush_share", 0, 0, 1, "1", "share of the brine that fine salt keeps from the well"),
    ("refill_factor", 1, 0, 3, "1", "refill flow over its rating"),
    ("brine_valve_leak", 0, 0, 10, "gal/h", "water that runs into the brine tank all day"),
    ("float_height_factor", 1, 0, 2, "1", "height at which the float shuts over what it was"),
    ("salt_dose_factor", 1, 0.05, 4, "1", "refill time set over what was planned"),
    ("usable_brine_share", 1, 0, 1, "1", "share of the brine drawn before the air check shuts"),
    # Injector and drain
    ("suction_factor", 1, 0, 2, "1", "brine the injector draws over its rating"),
    ("motive_flow_factor", 1, 0, 3, "1", "the injector's own water over its rating"),
    ("drain_flow_factor", 1, 0, 1, "1", "what the whole drain line lets through, over its rating"),
    ("drain_control_factor", 1, 0, 1, "1", "what the drain's flow control alone lets through"),
    ("drain_rise", 0, 0, 40, "ft", "height of the drain line beyond what it was"),
    ("drain_flow_excess", 1, 1, 5, "1", "backwash over its rating: the control is missing"),
    ("resin_loss_per_cycle", 0, 0, 0.3, "1", "share of the resin lost to the drain each cycle"),
    # Valve
    ("piston_travels", 1, 0, 1, "yes or no", "the piston follows the motor"),
    ("drain_leak", 0, 0, 5, "gpm", "raw water that seals let to the drain in service"),
    ("brine_valve_opens", 1, 0, 1, "yes or no", "the brine valve opens: draw and refill"),
    # Resin
    ("beads_at_taps", 0, 0, 1, "yes or no", "resin leaves through the lower distributor"),
    ("resin_capacity_factor", 1, 0.05, 1.2, "1", "capacity of the resin over what it was"),
    ("front_length_factor", 1, 0.3, 20, "1", "length of the exchange front over the usual"),
    ("pressure_loss_factor", 1, 0.3, 20, "1", "pressure the bed costs over the usual"),
    ("bed_volume_factor", 1, 0.05, 1.5, "1", "resin in the tank over what belongs in it"),
    # Heater
    ("heater_hardness", -1, -1, 200, "gpg", "hardness the heater holds at the onset; -1: its own"),
    ("heater_scale", 0, 0, 60, "gpg", "hardness that scale adds to the hot water"),
)  # fmt: skip

CHANGES = {row[0]: Change(*row) for row in _DECLARED}


class Condition:
    """The present value of everything a fault may change, as attributes; a sound home at first."""

    __slots__ = tuple(CHANGES)

    def __init__(self):
        for change in CHANGES.values():
            setattr(self, change.name, change.sound)

    def take(self, changes, days):
        """Set what changes, as it is this many days after its onset.

        changes: triples (name, value, growth a day); a value grown beyond its range stays at it.
        """
        for name, value, growth in changes:
            change = CHANGES[name]
            setattr(self, name, min(change.high, max(change.low, value + growth * days)))


def draw(ranges, random):
    """Return changes (name, value, growth) drawn from a fault's ranges.

    ranges: mappings with "change", "from", "to", and where wanted "grows_per_day" and "spread":
    "even" (also without one), "ratio" for log-evenly, "whole" for one of the whole numbers from the
    one to the other. Names and values are checked; a ValueError says what is wrong.
    """
    drawn = []
    for one in ranges:
        name, low, high = one["change"], float(one["from"]), float(one["to"])
        spread = one.get("spread") or "even"
        problem = range_problem(name, low, high, spread)
        if problem:
            raise ValueError(problem)
        value = _SPREADS[spread](low, high, random.random())
        drawn.append((name, value, float(one.get("grows_per_day") or 0.0)))
    return tuple(drawn)


#: How a place from 0 to 1 becomes a value between two ends.
_SPREADS = {
    "even": lambda low, high, place: low + place * (high - low),
    "ratio": lambda low, high, place: low * (high / low) ** place,
    "whole": lambda low, high, place: low + int(place * (high - low + 1)),
}


def range_problem(name, low, high, spread=None):
    """Return what is wrong with a fault's range for a change, or an empty text."""
    if name not in CHANGES:
        return f'There is no change "{name}".'
    if spread not in (None, *_SPREADS):
        return f'There is no spread "{spread}", only {", ".join(_SPREADS)}.'
    change = CHANGES[name]
    for value in (low, high):
        if not snap(change.low) <= snap(value) <= snap(change.high):
            return f"{name} lies between {change.low:g} and {change.high:g}, not at {value:g}."
    if spread == "ratio" and min(low, high) <= 0:
        return f"{name} cannot spread by ratio from or to {min(low, high):g}."
    return ""
