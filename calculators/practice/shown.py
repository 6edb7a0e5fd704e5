"""What instruments show at a simulated check, in numbers with their units, and what that makes."""

from calculators.diagnosis.numbers import NUMBERS
from calculators.quantities import (
    clock,
    convert,
    display_unit,
    plain,
    round_to,
    significant,
    with_unit,
)
from calculators.simulation.measuring import METER_DRAW, SOUND, allowance
from calculators.simulation.visit import results_of

#: The voltage on the label of every adaptor in practice calls [V].
RATED_VOLTAGE = 24.0
#: What is caught in a bucket where nothing comes, and for how long [gal, s].
NOTHING_CAUGHT, WATCHED_FOR = 0.0, 60.0
LEAST_DRAW = 0.05  # gpm that an injector is expected to draw at the least
#: To what an instrument is read, by unit.
STEPS = {
    "gpg": 0.5, "in": 0.25, "gpm": 0.01, "gal": 0.1, "s": 1.0, "min": 0.5, "psi": 1.0, "V": 0.1,
    "": 0.001, "h": 1 / 60, "days": 0.1, "ft³": 0.25,
}  # fmt: skip
KIND_OF = {
    "gpg": "hardness", "in": "length", "gpm": "flow", "gal": "volume", "s": "time", "min": "time",
    "psi": "pressure", "V": "voltage", "": "number", "days": "time", "ft³": "volume",
}  # fmt: skip


def shown(check, visited, random):
    """Return {"lines": …, "result": …} of a simulated check, as `HiddenCall.reading` tells.

    A line is (label, number, unit), or (label, words). Where the page "Find the cause" takes the
    check's numbers, the result is what it makes of those shown here.
    """
    story = visited.story
    numbers = visited.numbers(random)
    if check in _READ:
        given = _READ[check](numbers, story)
        if given is None:
            lines, result = [("The display", "blank or flashing")], "blank"
            return {"lines": lines, "result": result}
        units = {one.name: one.unit or "" for one in NUMBERS[check].inputs}
        labels = {one.name: one.label for one in NUMBERS[check].inputs}
        given = {name: _read_off(number, units[name]) for name, number in given.items()}
        if check == "clock-reading":
            given = {name: number % 24 for name, number in given.items()}
        lines = [(labels[name], number, units[name]) for name, number in given.items()]
        result = NUMBERS[check].result(**given)
        if check == "brine-draw" and numbers["level_rises"]:
            lines, result = [("The level in the brine well", "rises while it should fall")], "pushes"
        return {"lines": lines, "result": result}
    for name, unit in _READ_OFF.items():
        if numbers[name] is not None:
            numbers[name] = _read_off(numbers[name], unit)
    lines = _FURTHER[check](numbers, story) if check in _FURTHER else []
    return {"lines": lines, "result": results_of(numbers, story)[check]}


def line_in(units, line):
    """Return a line of a reading as a reader of "us" or "metric" units sees it."""
    if len(line) == 2:
        return {"label": line[0], "shown": line[1]}
    label, number, unit = line
    if unit == "h":
        dial = "24-hour clock" if units == "metric" else "12-hour clock"
        return {"label": label, "shown": clock(number, dial)}
    if unit == "":
        return {"label": label, "shown": plain(number)}
    own = display_unit(unit, units)
    if own != unit:
        number = significant(convert(number, unit, own, KIND_OF[unit]), 3)
    return {"label": label, "shown": with_unit(plain(number), own)}


#: Numbers of the other checks that are read off before anything follows from them.
_READ_OFF = {
    "days_since": "days", "refill_set": "min", "counter_set": "gal", "interval_set": "days",
    "salt_top": "in", "water_level": "in", "pressure_loss": "psi", "peak_flow": "gpm",
    "pressure_loss_expected": "psi", "peak_loss": "psi",
}  # fmt: skip


def _read_off(number, unit):
    return round_to(number, STEPS[unit])


def _clock(numbers, story):
    if numbers["clock_blank"]:
        return None
    phone = story.time % 1440
    return {"control": (phone + numbers["clock_error"]) % 1440 / 60, "phone": phone / 60}


def _backwash(numbers, story):
    rating = _read_off(story.home.backwash, "gpm")
    flow = numbers["backwash_share"] * rating
    caught = 5.0 if flow > 1.0 else 1.0 if flow > 0.2 else 0.2
    if flow <= 0.01:
        return {"caught": NOTHING_CAUGHT, "time": WATCHED_FOR, "rating": rating}
    return {"caught": caught, "time": 60 * caught / flow, "rating": rating}


def _draw(numbers, story):
    expected = max(LEAST_DRAW, story.pressure.injector_flows(0.0, SOUND)[0])
    return {"flow": numbers["suction_share"] * expected, "rating": expected}


def _refill(numbers, story):
    home = story.home
    minutes = max(STEPS["min"], home.plan.refill * story.condition.salt_dose_factor)
    return {
        "came": numbers["refill_share"] * minutes * home.refill_flow,
        "time": minutes,
        "rating": home.refill_flow,
    }


#: What the page's numbers are in a home, by check and by their names there.
_READ = {
    "raw-hardness": lambda numbers, story: {
        "raw": numbers["raw_hardness"] + allowance(story),
        "setting": story.home.plan.setting,
    },
    "cold-and-hot-pair": lambda numbers, story: {
        "cold": numbers["cold_hardness"],
        "hot": numbers["hot_hardness"],
        "raw": numbers["raw_hardness"],
    },
    "clock-reading": _clock,
    "brine-level": lambda numbers, story: {
        "height": numbers["water_level"],
        "expected": numbers["expected_level"],
    },
    "backwash-flow": _backwash,
    "brine-draw": _draw,
    "refill-measured": _refill,
    "leakage-slow-and-fast": lambda numbers, story: {
        "slow": numbers["slow_hardness"],
        "fast": numbers["fast_hardness"],
        "raw": numbers["raw_hardness"],
    },
    "meter-against-bucket": lambda numbers, story: {
        "drawn": METER_DRAW,
        "counted": numbers["counted"],
    },
    "supply-voltage": lambda numbers, story: {
        "measured": max(0.0, numbers["supply_voltage"]) * RATED_VOLTAGE,
        "rated": RATED_VOLTAGE,
    },
    "supply-pressure": lambda numbers, story: {"running": max(0.0, numbers["running_pressure"])},
    "brine-hydrometer": lambda numbers, story: {
        "gravity": min(1.205, max(0.99, numbers["brine_gravity"]))
    },
}


def _settings(numbers, story):
    plan = story.home.plan
    lines = [
        ("Days since the last regeneration", numbers["days_since"], "days"),
        ("Days between regenerations by the card", plan.interval, "days"),
        ("Longest time between two that is set", plan.days, "days"),
        ("Refill time set", numbers["refill_set"], "min"),
        ("Refill time by the card", plan.refill, "min"),
    ]
    if numbers["interval_set"] is not None:
        lines[2] = ("Days between regenerations that are set", numbers["interval_set"], "days")
    if numbers["counter_set"] is not None:
        lines += [
            ("Counter starts at", numbers["counter_set"], "gal"),
            ("Counter by the card", plan.counter, "gal"),
            ("Water drawn meanwhile", METER_DRAW, "gal"),
            ("Counted meanwhile", numbers["counted"], "gal"),
        ]
    return lines


def _salt(numbers, story):
    if numbers["salt_top"] <= 0:
        return [("Salt", "none is left"), ("Height of the water", numbers["water_level"], "in")]
    return [
        ("Height of the salt", numbers["salt_top"], "in"),
        ("Height of the water", numbers["water_level"], "in"),
    ]


_FURTHER = {
    "settings-and-counters": _settings,
    "salt-height": _salt,
    "pressure-loss": lambda numbers, story: [
        ("Pressure lost across the unit", max(0.0, numbers["pressure_loss"]), "psi"),
        ("Loss expected of a sound bed", numbers["pressure_loss_expected"], "psi"),
    ],
    "peak-flow": lambda numbers, story: [
        ("Flow at two fixtures", numbers["peak_flow"], "gpm"),
        ("Resin in the tank", story.home.resin, "ft³"),
        ("Loss at that flow in a sound bed", numbers["peak_loss"], "psi"),
    ],
}
