"""Every formula of household water-softener service, behind one door.

`run(name, inputs)` is that door: the build, the tests and the browser all go through it. Pure
standard library, no input or output, so that it starts fast in a browser.
"""

from types import SimpleNamespace

from calculators import (
    air_gap,
    audit,
    bed,
    bed_depth,
    blending,
    brine,
    brine_level,
    brine_strength,
    capacity,
    care,
    clock,
    costs,
    dissolved_solids,
    dose,
    drain_flow,
    drain_line,
    efficiency,
    electrical,
    flow,
    heater,
    heater_history,
    interval,
    laboratory,
    leakage,
    leaks,
    meter,
    pressure,
    regeneration,
    resin,
    salt_use,
    sampling,
    simulated_softener,
    sodium,
    through_a_cycle,
    timetable,
    usage,
    water,
    weak_brine,
)
from calculators.inputs import InputProblem, unit_written
from calculators.quantities import SYSTEMS, nearest, show, significant
from calculators.working import Working

#: The subjects' modules in groups, in the order in which a call meets them.
_SUBJECTS = {
    "Water and tests": (water, laboratory, sampling, dissolved_solids),
    "The household": (usage, leaks),
    "Resin, salt and settings": (
        capacity,
        dose,
        interval,
        efficiency,
        costs,
        audit,
        bed_depth,
        resin,
    ),
    "The brine tank": (brine, brine_level, brine_strength, weak_brine, salt_use),
    "Flow and pressure": (
        regeneration,
        timetable,
        drain_flow,
        flow,
        bed,
        drain_line,
        air_gap,
        pressure,
    ),
    "Water at the taps": (leakage, through_a_cycle, blending, heater, heater_history, sodium),
    "Control and care": (clock, electrical, meter, care),
    "Through the days": (simulated_softener,),
}

#: The calculators of each group.
GROUPS = {
    group: tuple(calculator for subject in subjects for calculator in subject.CALCULATORS)
    for group, subjects in _SUBJECTS.items()
}

#: Every calculator by its name.
CALCULATORS = {one.name: one for calculators in GROUPS.values() for one in calculators}


#: More names than this are too many for a sentence.
MANY = 20


def run(name, inputs, units="us", *, workings=True):
    """Work out one calculator and return a plain structure that JSON can carry.

    name: a key of CALCULATORS. inputs: input name -> text as a person types it ("18 gpg") or a
    plain number in the unit shown to a reader of `units`; what is left out takes its default.
    units: "us" or "metric", the system a bare number is read in and answers are shown in.
    workings: whether to write out the steps; a curve, which takes many points, asks for values.

    Returns `inputs` (as understood), `values` (number, unit and how the trade shows it),
    `workings` (sentence, formula, numbers, result), `warnings` and `problems` (a sentence for each
    wrong input). With any problem there are no values. Bad input never raises.
    """
    result = {
        "calculator": name,
        "inputs": {},
        "values": {},
        "workings": [],
        "warnings": [],
        "problems": {},
    }
    calculator = CALCULATORS.get(name) if isinstance(name, str) else None
    if calculator is None:
        result["problems"]["calculator"] = _unknown("calculator", name, CALCULATORS)
        return result
    if units not in SYSTEMS:
        result["problems"]["units"] = _unknown("unit system", units, SYSTEMS)
        return result
    if not isinstance(inputs, dict):
        result["problems"]["inputs"] = "Inputs are given by name."
        return result
    given = read(calculator, inputs, units, result)
    if not result["problems"]:
        work = _work_out(calculator, given, units, result)
        if workings and not result["problems"]:
            result["workings"] = work.steps
    return result


def understood(name, inputs, units="us"):
    """Return what `run` would work with, as attributes in the inputs' own units.

    None where an input has a problem. name, inputs, units: as `run` takes them.
    """
    result = {"inputs": {}, "problems": {}}
    given = read(CALCULATORS[name], inputs, units, result)
    return None if result["problems"] else SimpleNamespace(**given)


def _unknown(what, name, known):
    close = nearest(str(name)[:60], known)
    if close:
        guess = f" The nearest is “{close}”."
    elif len(known) > MANY:
        guess = f" There are {len(known)}, such as {', '.join(list(known)[:3])}."
    else:
        guess = f" There are: {', '.join(known)}."
    return f"There is no {what} “{str(name)[:60]}”.{guess}"


def read(calculator, inputs, units, result):
    """Return all inputs that count by name, in their own units; note every problem in `result`.

    calculator: what has `inputs`, a calculator or a drawing.
    """
    given = {}
    names = [one.name for one in calculator.inputs]
    for name in inputs:
        if name not in names:
            result["problems"][str(name)[:60]] = _unknown("input", name, names)
    for one in calculator.inputs:
        given[one.name] = None
        if one.only_when and given.get(one.only_when[0]) not in one.only_when[1]:
            continue
        try:
            value = one.read(inputs.get(one.name), units)
        except InputProblem as problem:
            result["problems"][one.name] = problem.sentence
            continue
        given[one.name] = value
        if value is not None:
            result["inputs"][one.name] = _understood(one, value, units, inputs.get(one.name))
    return given


def _understood(one, value, units, text):
    """Return an input as it was understood; `text` is what was typed, if anything.

    What was typed in another unit is shown in the reader's own like any converted quantity.
    """
    if one.kind == "choice":
        return {"label": one.label, "choice": value, "shown": value}
    number, unit = one.displayed(value, units)
    converted = unit_written(text, one.kind) not in (None, unit)
    shown = show(significant(number, 3) if converted else number, unit)
    return {"label": one.label, "number": number, "unit": unit, "shown": shown}


def _work_out(calculator, given, units, result):
    work = Working(units)
    for one in calculator.inputs:
        value = given[one.name]
        if value is None or one.kind == "choice":
            continue
        work.put(one.name, value, one.unit)
        if warning := one.unusual_warning(value, units):
            work.warn(warning)
    try:
        values = calculator.compute(SimpleNamespace(**given), work)
    except InputProblem as problem:
        result["problems"][problem.name] = problem.sentence
        return work
    result["values"] = {
        output.name: output.value(values[output.name], units)
        for output in calculator.outputs
        if output.name in values
    }
    result["warnings"] = work.warnings
    return work
