"""Exercises that read the evidence of one simulated home, of those that the diagnosis has.

The exercise has "faults", one of which is hidden in the home, and "control", that of the home or
None. The library is the diagnosis's `Knowledge`. A home is taken where the readings shown lead to
the hidden fault and leave something to find out, and where one of them speaks clearly against the
runner-up and one check is clearly the best to do next.
"""

from math import log10

from calculators.diagnosis.call import Call
from calculators.diagnosis.explanation import explain
from calculators.diagnosis.knowledge import COMPLAINT
from calculators.diagnosis.next_check import choose, options
from calculators.diagnosis.standing import Standing
from calculators.diagnosis.stopping import repair_and_see, stop
from calculators.diagnosis.weighing import likelihoods
from calculators.diagnosis.words import chance_in_words
from calculators.practice import answers
from calculators.practice.drawing import CannotBePosed, choice, random_for, shuffled
from calculators.practice.solution import part

HOMES, CHOICES_OF_READINGS = 40, 3
FEWEST, MOST = 5, 8
#: Causes offered, and checks offered.
OFFERED = 4
#: The leader's chance, and how far it leads; common practice, no source, as all that follows.
LEAST_CHANCE, MOST_CHANCE, LEADS = 0.5, 0.85, 2.0
#: How loudly the reading speaks against the runner-up, and how far it stands out; logarithms to 10.
SPEAKS, STANDS_OUT = 0.3, 0.2
#: A check offered beside the best tells at most this part of what the best tells for its minutes.
TELLS_LESS = 0.6
LABELS = {
    "cause": "The likeliest of these causes",
    "against": "The reading that speaks most against the second likeliest",
    "next": "The check to do next",
}
#: What a field counts.
COUNTS = {"cause": 0.5, "against": 0.25, "next": 0.25}


class Scene:
    """A home with its readings and all that is asked of it."""

    __slots__ = ("knowledge", "call", "complaint", "readings", "standing", "found", "option",
                 "against", "causes", "checks")  # fmt: skip


def accepted(exercise, seed, knowledge):
    """Return the scene of a seed. Raises CannotBePosed."""
    if knowledge is None:
        raise CannotBePosed("The diagnosis has not been given its knowledge.")
    random = random_for(exercise, seed)
    faults = [one for one in exercise["faults"] if knowledge.homes_of(one)]
    for _ in range(HOMES if faults else 0):
        fault = choice(random, faults)
        home = Home(knowledge, fault, random)
        if exercise.get("control") not in (None, home.control):
            continue
        for _ in range(CHOICES_OF_READINGS):
            readings = _some(random, home.shown, knowledge)
            scene = _scene(random, knowledge, fault, home, readings)
            if scene is not None:
                return scene
    raise CannotBePosed(f"“{exercise['id']}” has no clear home in {HOMES} tries.")


class Home:
    """One of the simulated homes of a fault, with one set of readings."""

    __slots__ = ("control", "water", "complaint", "shown")

    def __init__(self, knowledge, fault, random):
        number = int(random.random() * knowledge.homes_of(fault))
        self.control, self.water, chances = knowledge.simulated_home(fault, number)
        self.shown = {
            check: _one_of(random, knowledge.results[check], row)
            for check, row in chances.items()
            if knowledge.applies(check, {"control": self.control, "water": self.water})
        }
        self.complaint = self.shown.pop(COMPLAINT, None)


def _one_of(random, names, chances):
    left = random.random() * sum(chances)
    for name, chance in zip(names, chances, strict=True):
        left -= chance
        if left < 0:
            return name
    return names[0]


def _some(random, shown, knowledge):
    """Return five to eight readings, what is not normal sooner than what is."""
    normal = [one for one in shown if shown[one] == knowledge.results[one][0]]
    other = [one for one in shown if one not in normal]
    count = FEWEST + int(random.random() * (MOST - FEWEST + 1))
    odd = shuffled(random, other)[: count - 2]
    taken = {*odd, *shuffled(random, normal)[: count - len(odd)]}
    return {one: shown[one] for one in knowledge.checks if one in taken}


def _scene(random, knowledge, fault, home, readings):
    if len(readings) < FEWEST:
        return None
    scene = Scene()
    scene.knowledge = knowledge
    scene.call = {
        "complaint": home.complaint,
        "home": {"control": home.control, "water": home.water},
        "readings": readings,
    }
    scene.complaint, scene.readings = home.complaint, readings
    scene.standing = standing = Standing(knowledge, Call(knowledge, scene.call))
    first, second = standing.ranking[:2]
    chance = standing.causes[first]
    clear = LEAST_CHANCE <= chance <= MOST_CHANCE and chance >= LEADS * standing.causes[second]
    if first != fault or not clear:
        return None
    scene.against = against(standing, first, second, readings)
    if scene.against[0][0] < SPEAKS or scene.against[0][0] - scene.against[1][0] < STANDS_OUT:
        return None
    scene.found = options(standing)
    scene.option = choose(standing, scene.found)
    if scene.option is None or stop(standing, scene.option) is not None:
        return None
    less = [
        one
        for one in scene.found
        if one.first == one.check != scene.option.first
        and one.rate <= TELLS_LESS * scene.option.rate
    ]
    if len(less) < OFFERED - 1:
        return None
    checks = [scene.option.first, *(one.check for one in shuffled(random, less)[: OFFERED - 1])]
    scene.checks = shuffled(random, checks)
    scene.causes = shuffled(random, standing.ranking[:OFFERED])
    return scene


def against(standing, first, second, readings):
    """Return (weight, check) of each reading for one fault against another, the loudest first.

    The weight is the logarithm to ten of how much likelier the first makes what was read.
    """
    weights = []
    for check in readings:
        given = likelihoods(standing, check)
        weights.append((log10(given[first] / given[second]), check))
    return sorted(weights, key=lambda one: -one[0])


_last = {}


def _remembered(exercise, seed, knowledge):
    """Return the scene of a seed; the last one is kept for its marking."""
    key = (exercise["id"], seed, tuple(exercise["faults"]), id(knowledge))
    if key not in _last:
        scene = accepted(exercise, seed, knowledge)
        _last.clear()
        _last[key] = scene
    return _last[key]


def pose(exercise, seed, units, library=None):
    """Return the question for a seed; see `exercises.pose`."""
    scene = _remembered(exercise, seed, library)
    home = scene.call["home"]
    given = [
        {"label": "The control", "shown": home["control"]},
        {"label": "The water", "shown": home["water"]},
    ]
    if scene.complaint:
        label = _label(scene, "complaint", scene.complaint)
        given.append({"label": "The customer says", "shown": label})
    given += [
        {"label": _title(scene, check), "shown": _label(scene, check, result)}
        for check, result in scene.readings.items()
    ]
    return {"story": exercise["story"], "given": given, "asked": _asked(scene)}


def _asked(scene):
    return [
        {"name": name, "label": LABELS[name], "help": "", "choices": _choices(scene)[name]}
        for name in COUNTS
    ]


def _choices(scene):
    return {
        "cause": [_fault(scene, one) for one in scene.causes],
        "against": [_title(scene, check) for check in scene.readings],
        "next": [_title(scene, check) for check in scene.checks],
    }


def _right(scene):
    return {
        "cause": _fault(scene, scene.standing.leader),
        "against": _title(scene, scene.against[0][1]),
        "next": _title(scene, scene.option.first),
    }


def mark(exercise, seed, units, given, library=None):
    """Return how the answers are; see `exercises.mark`."""
    scene = _remembered(exercise, seed, library)
    right, offered = _right(scene), _choices(scene)
    fields, problems = {}, {}
    for name in COUNTS:
        try:
            answer = answers.read_answer(given.get(name, ""), None, "", offered[name])
        except answers.AnswerProblem as problem:
            problems[name] = str(problem)
            continue
        hit = answer == right[name]
        fields[name] = {
            "right": hit,
            "feedback": "Right." if hit else _feedback(scene, name, right),
        }
    score = sum(COUNTS[name] for name, one in fields.items() if one["right"])
    return {
        "problems": problems,
        "fields": fields,
        "mistakes": [],
        "feedback": [one["feedback"] for one in fields.values() if not one["right"]],
        "ask": [],
        "right": score == 1 and not problems,
        "score": score,
        "critical": False,
        **({"answers": [], "solution": []} if problems else _solved(scene)),
    }


def solve(exercise, seed, units, library=None):
    """Return the answers to a question and the way to them; see `exercises.solve`."""
    return _solved(_remembered(exercise, seed, library))


def _solved(scene):
    right = _right(scene)
    rows = [{"label": LABELS[name], "shown": right[name]} for name in COUNTS]
    return {"answers": rows, "solution": solution(scene)}


def _feedback(scene, name, right):
    standing = scene.standing
    if name == "cause":
        chance = chance_in_words(standing.causes[standing.leader])
        return f"All readings together speak for {right['cause']} ({chance})."
    if name == "against":
        return (
            f"Louder is {right['against']}: ask of each reading how often either cause would "
            "show it."
        )
    return f"{right['next']} tells more about the causes that are left, for its minutes."


def solution(scene):
    """Return the engine's own reasons, and what each reading says between the first two causes."""
    standing = scene.standing
    first, second = standing.ranking[:2]
    stopped = stop(standing, scene.option)
    tried = repair_and_see(standing, scene.option)
    return [
        part(
            "What the readings say together",
            sentences=explain(standing, scene.found, scene.option, stopped, tried),
        ),
        part(
            f"{_fault(scene, first)}, or {_fault(scene, second)}?",
            sentences=[_between(scene, weight, check) for weight, check in scene.against],
        ),
    ]


def _between(scene, weight, check):
    reading = f"{_title(scene, check)} ({_label(scene, check, scene.readings[check]).lower()})"
    first, second = (_fault(scene, one) for one in scene.standing.ranking[:2])
    if abs(weight) < 0.1:
        return f"{reading}: says as much for the one as for the other."
    times = 10 ** abs(weight)
    how = f"{times:.0f} times" if times >= 2.5 else "somewhat"
    return f"{reading}: {how} likelier with {first if weight > 0 else second}."


def _title(scene, check):
    return scene.knowledge.checks[check]["title"]


def _fault(scene, fault):
    return scene.knowledge.faults[fault]["title"]


def _label(scene, check, result):
    of_check = scene.knowledge.checks[check]["results"]
    return next(one["label"] for one in of_check if one["name"] == result)
