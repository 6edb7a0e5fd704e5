"""Each wrong way to reckon: which calculators it belongs to, and what it changes there.

All numbers are in the own units of the inputs and outputs.
"""

import math

from calculators.capacity import capacity_of_dose
from calculators.care import HOUSEHOLD_STRENGTH
from calculators.clock import FACES, short_way_round
from calculators.heater import share_left
from calculators.quantities import convert, display_unit, round_to, snap
from calculators.readings import CLOCK, DELAYED
from calculators.units import GALLON, GRAIN_PER_GALLON
from calculators.weak_brine import STRENGTH

#: The large dose whose capacity people know by heart, and the round figure of sales sheets.
LARGE_DOSE = 15.0  # lb/ft3
SALES_FIGURE = 32000.0  # grains/ft3; common practice, no source
WEIGHT_OF_WATER = 8.34  # lb/gal, near 60 °F
#: Who blames the cold takes brine for weaker by some share of its strength.
COLD_LOW, COLD_HIGH = 0.3, 0.94


class Way:
    """One way to make a mistake.

    given(given, setting) changes what a calculator takes, values(values, done, setting) what it
    says; drawn: the inputs of which one must be given by the question. reach: the shares of the
    right answer between which the wrong one lies, where the slip has no one value.
    """

    __slots__ = ("mistake", "calculators", "reach", "_given", "_values", "_drawn")

    def __init__(self, mistake, calculators, given=None, values=None, drawn=(), reach=None):
        self.mistake = mistake
        self.calculators = frozenset(calculators.split())
        self.reach = reach
        self._given = given
        self._values = values
        self._drawn = drawn

    def concerns(self, done):
        """Tell whether it can be made in a step."""
        if done.calculator.name not in self.calculators:
            return False
        return not self._drawn or any(name in done.drawn for name in self._drawn)

    def change_given(self, given, done, setting):
        """Change what the calculator takes."""
        if self._given:
            self._given(given, setting)

    def change_values(self, values, done, setting):
        """Change what the calculator says."""
        if self._values:
            self._values(values, done, setting)


def _take(**names):
    """Return a change that sets inputs to fixed numbers."""

    def change(given, setting):
        for name, number in names.items():
            setattr(given, name, number)

    return change


def _times(factor, *names):
    """Return a change that multiplies inputs."""

    def change(given, setting):
        for name in names:
            if getattr(given, name, None) is not None:
                setattr(given, name, factor * getattr(given, name))

    return change


def _scaled(factor, *kinds):
    """Return a change that multiplies all answers of some kinds."""

    def change(values, done, setting):
        for output in done.calculator.outputs:
            if output.kind in kinds and output.name in values:
                values[output.name] *= factor

    return change


def _reserve(times):
    def change(given, setting):
        if given.control == DELAYED:
            given.reserve = times * (given.water if given.reserve is None else given.reserve)

    return change


def _full_capacity(each):
    def change(values, done, setting):
        values["capacity"] = each * done.given.resin_volume

    return change


def _dose_as_salt(given, setting):
    given.salt *= given.resin_volume


def _salt_as_dose(given, setting):
    given.salt /= given.resin_volume


def _dose_for_salt(values, done, setting):
    values["salt"], values["exact_salt"] = round_to(values["dose"], 0.1), values["dose"]


def _per_volume(*names):
    def change(values, done, setting):
        for name in names:
            if name in values:
                values[name] /= done.given.resin_volume

    return change


def _minutes(of):
    """Return a change of the refill's time; of(given, setting) tells the minutes."""

    def change(values, done, setting):
        time = of(done.given, setting)
        values["exact_time"] = time
        values["refill_time"] = round_to(time, done.given.time_step, "up")

    return change


def _water_as_minutes(given, setting):
    water = given.salt / given.salt_in_water
    return convert(water, "gal", display_unit("gal", setting.units), "volume")


def _weight_as_water(given, setting):
    return given.salt / WEIGHT_OF_WATER / given.refill_flow


def _seconds_for_each(values, done, setting):
    """Seconds for each volume, read as a flow in the reader's unit."""
    unit = display_unit("gal", setting.units)
    volume = convert(done.given.caught, "gal", unit, "volume")
    _set_flow(values, done, convert(done.given.time / volume, unit, "gal", "volume"))


def _volume_for_seconds(values, done, setting):
    _set_flow(values, done, done.given.caught / done.given.time)


def _set_flow(values, done, flow):
    values["share"] *= flow / values["flow"]
    values["flow"] = flow


def _in_step_with_salt(values, done, setting):
    given = done.given
    ratio = given.salt_ratio / 100 if given.known == STRENGTH else values["ratio"] / 100
    share = ratio * given.drawn_share / 100
    planned = capacity_of_dose(given.salt / given.resin_volume) * given.resin_volume
    values["capacity_left"], values["capacity"] = 100 * share, planned * share


def _straight_washout(values, done, setting):
    given = done.given
    left = max(0.0, 1 - given.drawn / given.tank)
    values["share_left"] = 100 * left
    values["hot_now"] = given.cold + (given.before - given.cold) * left
    if values.get("water_needed"):
        share = (given.target - given.cold) / (given.before - given.cold)
        values["water_needed"] = given.tank * (1 - share)
        if given.hot_use is not None:
            values["wait"] = values["water_needed"] / given.hot_use


def _straight_history(values, done, setting):
    given = done.given
    for which in ("", "least_", "most_"):
        drawn = values.get(f"{which}drawn")
        if drawn is not None:
            gone = 1 - share_left(drawn, given.tank) if given.tanks == 1 else math.nan
            values[f"{which}drawn"] = given.tank * gone
            values[f"{which}hours"] *= given.tank * gone / drawn if drawn else 1.0


def _other_side(given, setting):
    error = short_way_round(given.shown_time - given.true_time)
    if given.told_by == FACES:
        given.shown_time = snap(given.true_time - error + 48) % 24


def _no_floor(values, done, setting):
    values["share"] = 100 * done.given.outlet / done.given.raw


def _next_day(values, done, setting):
    given = done.given
    exact = values["total_water"] / given.water
    if given.control == CLOCK and snap(exact) > snap(values["interval"]):
        values["interval"] = float(math.ceil(snap(exact)))


def _raw_taps_in(given, setting):
    for aside in setting.asides.values():
        if aside.kind == "flow":
            given.other_use += convert(aside.value, aside.unit, "gal/day", "flow")


def _setting_as_raw(given, setting):
    for done in setting.done:
        if "setting" in done.values:
            given.raw = done.values["setting"]


def _count_as_reading(values, done, setting):
    for name in ("estimate", "lowest", "highest"):
        values[name] = values["reading"]


_HARDNESS = "hardness setting raw"
_TAKES_HARDNESS = (
    "hardness-setting household-load regeneration-interval sodium-added capacity-audit"
)
_GIVES_HARDNESS = "hardness-units hardness-from-ions"
_GIVES_VOLUME = (
    "brine-refill brine-level sample-flush regeneration-interval heater-washout household-load "
    "small-leak bucket-flow regeneration-timetable brine-draw drain-flow exchange-tank blending"
)


def _hardness_ways(factor):
    taken = _HARDNESS.split()
    return [
        Way("milligrams-for-grains", _TAKES_HARDNESS, _times(factor, *taken), drawn=taken),
        Way("milligrams-for-grains", _GIVES_HARDNESS, values=_scaled(factor, "hardness")),
    ]


def _volume_way(factor):
    return Way("liters-for-gallons", _GIVES_VOLUME, values=_scaled(factor, "volume", "flow"))


#: Every way to make a listed mistake.
WAYS = [
    Way("iron-left-out", "hardness-setting", _take(iron=0.0, manganese=0.0)),
    Way("no-reserve", "regeneration-interval", _reserve(0.0)),
    Way("reserve-twice", "regeneration-interval", _reserve(2.0)),
    Way("reserve-twice", "regeneration-interval", _reserve(-1.0)),
    Way(
        "capacity-at-small-dose",
        "resin-capacity",
        values=_full_capacity(capacity_of_dose(LARGE_DOSE)),
    ),
    Way("capacity-at-small-dose", "resin-capacity", values=_full_capacity(SALES_FIGURE)),
    Way("dose-for-total", "resin-capacity", _dose_as_salt),
    Way("dose-for-total", "resin-capacity", _salt_as_dose),
    Way("dose-for-total", "salt-for-capacity", values=_dose_for_salt),
    Way("dose-for-total", "sanitizing-dose", values=_per_volume("bleach")),
    Way("dose-for-total", "resin-cleaner-dose", values=_per_volume("powder", "liquid")),
    Way("gallons-for-minutes", "brine-refill", values=_minutes(_water_as_minutes)),
    Way("gallons-for-minutes", "brine-refill", values=_minutes(_weight_as_water)),
    Way("voids-forgotten", "brine-level", _take(voids=100.0)),
    Way("diameter-for-radius", "brine-level bed-depth salt-fall", _times(2.0, "tank_diameter")),
    Way("seconds-for-flow", "bucket-flow", values=_seconds_for_each),
    Way("seconds-for-flow", "bucket-flow", values=_volume_for_seconds),
    Way("half-strength-half-capacity", "weak-brine", values=_in_step_with_salt),
    Way("straight-line-dilution", "heater-washout", values=_straight_washout),
    Way("straight-line-dilution", "heater-history", values=_straight_history),
    Way("floor-ignored", "crossover", values=_no_floor),
    Way("wrong-side-of-clock", "clock-error", _other_side),
    Way("infant-left-out", "household-load", _take(infants=0.0)),
    Way("days-rounded-up", "regeneration-interval", values=_next_day),
    Way("water-left-out-or-in", "household-load", _take(leak=0.0)),
    Way("water-left-out-or-in", "household-load", _take(other_use=0.0, outdoor_use=0.0)),
    Way("water-left-out-or-in", "household-load", _raw_taps_in),
    Way("sodium-from-setting", "sodium-added", _setting_as_raw),
    Way("bleach-strength-ignored", "sanitizing-dose", _take(strength=HOUSEHOLD_STRENGTH)),
    Way("drops-as-exact", "drop-count", values=_count_as_reading),
    Way("cold-blamed", "brine-strength", reach=(COLD_LOW, COLD_HIGH)),
    *_hardness_ways(GRAIN_PER_GALLON),
    *_hardness_ways(1 / GRAIN_PER_GALLON),
    _volume_way(GALLON),
    _volume_way(1 / GALLON),
]
