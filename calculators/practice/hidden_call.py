"""What hides behind a code: the faults, the home they act on, the customer's words, every reading.

All of it is drawn on the code, so that it is the same on every device. What a check shows does not
depend on what was checked before it.
"""

from random import Random

from calculators.diagnosis.heard import Heard
from calculators.diagnosis.knowledge import COMPLAINT
from calculators.diagnosis.likelihoods import judged_row
from calculators.practice.call_code import groups_of
from calculators.practice.shown import shown
from calculators.simulation.visit import CHECKS, draw, visit

#: Shares of calls (common practice, no source).
NONE_SHARE, TWO_SHARE, DANGER_SHARE = 0.05, 0.10, 0.08
#: The fault that stands for none, by its file's name.
NO_FAULT = "no-fault"
#: A drawing that no home notices in so many tries is drawn anew.
TRIES, DRAWINGS = 200, 20
#: What a customer says who has no reason to complain.
FEEL = "feel"


class HiddenCall:
    """faults: those at work, the cause first where one brought the other; control, water: the home's
    class; complaint; words: what the customer says; danger: (check, text) of what must stop the
    work, or None.

    Raises LookupError for a handbook from which no call can be drawn.
    """

    def __init__(self, knowledge, code):
        self.knowledge, self.seed = knowledge, code.seed
        self._found = {}
        for drawing in range(DRAWINGS):
            random = Random(f"{code.seed} {drawing}")
            self.faults = drawn_faults(knowledge, code, random)
            home = self._home(random) if self.faults else None
            if home is not None:
                break
        else:
            raise LookupError("No home notices the faults of this handbook.")
        self.home_seed, self.changes = home
        self._random = random
        found = self.at(self.faults)
        self.control, self.water = found.control, found.water
        self.story = found.story
        self.complaint = self._complaint(found, random)
        self.words = self._words(random)
        self.danger = self._danger(random)

    def at(self, faults):
        """Return the visit to the home while these of its faults are at work."""
        key = tuple(faults)
        if key not in self._found:
            changes = [change for fault in faults for change in self.changes[fault]]
            self._found[key] = visit(self.home_seed, tuple(changes), notices=False)
        return self._found[key]

    def reading(self, check, faults):
        """Return what a check shows while these faults are at work.

        A dictionary: "lines", each (label, number, unit) or (label, words), and "result", the name
        of the result, or None where it cannot tell.
        """
        random = Random(f"{self.seed} {check} {' '.join(faults)}")
        if check in CHECKS:
            return shown(check, self.at(faults), random)
        names = self._possible(check)
        result = names[0]
        for fault in faults:
            chances = self.knowledge.faults[fault].get("likelihoods", {}).get(check)
            if chances is not None:
                row = judged_row(self.knowledge.results[check], chances)
                row = dict(zip(self.knowledge.results[check], row, strict=True))
                drawn = random.choices(names, [row[name] or 1e-9 for name in names])[0]
                result = drawn if result == names[0] else result
        return {"lines": [], "result": result}

    def _possible(self, check):
        """Return the results of a check that a home with this control can show."""
        results = self.knowledge.checks[check]["results"]
        return [
            one["name"]
            for one in results
            if not one.get("only_for") or self.control in one["only_for"]
        ]

    def _home(self, random):
        """Return a home's seed and what each fault changes there, where the customer notices."""
        faults = self.knowledge.faults
        simulated = [fault for fault in self.faults if faults[fault].get("simulation")]
        for _ in range(TRIES):
            changes = {fault: draw(faults[fault].get("simulation") or [], random) for fault in self.faults}
            seed = random.getrandbits(48)
            names = [name for fault in simulated for name, _, _ in changes[fault]]
            together = tuple(change for fault in simulated for change in changes[fault])
            found = visit(seed, together, notices=False)
            if len(set(names)) < len(names) or bool(found.signs) != bool(simulated):
                continue
            chance = 1.0
            for fault in self.faults:
                home = {"control": found.control, "water": found.water}
                chance *= self.knowledge.class_factor(fault, home)
            if random.random() < chance:
                self._found[tuple(self.faults)] = found
                return seed, changes
        return None

    def _complaint(self, found, random):
        """Return what the customer complains of: by the home, or as judged where none is simulated."""
        names = self.knowledge.results[COMPLAINT]
        if found.signs:
            # In the order of the handbook: that of the signs is another in every Python.
            chances = {name: found.complaints[name] for name in names if name in found.complaints}
        else:
            row = judged_row(names, self.knowledge.faults[self.faults[0]]["likelihoods"][COMPLAINT])
            chances = dict(zip(names, row, strict=True))
        return random.choices(list(chances), list(chances.values()))[0]

    def _words(self, random):
        """Return a saying of each fault's customers, one that fits the complaint where there is one."""
        heard = Heard(self.knowledge)
        words = []
        for fault in self.faults:
            title = self.knowledge.faults[fault]["title"].lower()
            sayings = self.knowledge.faults[fault].get("customer_says") or []
            sayings = [one for one in sayings if title not in one.lower()]
            fitting = [
                one
                for one in sayings
                if self.complaint in [each["complaint"] for each in heard.complaints_for(one)]
            ]
            if fitting or sayings:
                words.append(random.choice(fitting or sayings))
        return words

    def _danger(self, random):
        """Return a danger at one of the checks that no instrument shows, in a few of the calls."""
        dangers = [
            (name, text)
            for name, check in self.knowledge.checks.items()
            if name not in CHECKS and self.knowledge.applies(name, {"control": self.control})
            for text in check.get("stop_if") or []
        ]
        happens = random.random() < DANGER_SHARE
        return random.choice(dangers) if happens and dangers else None


def drawn_faults(knowledge, code, random):
    """Return the faults of a call, drawn by their shares of calls; none is the fault of that name.

    A call of a group has a fault of that group, with another beside it as often as any call has.
    """
    groups = groups_of(knowledge)
    wanted = groups[code.scope - 1] if code.scope else None
    shares = {
        name: fault["share_of_calls"]
        for name, fault in knowledge.faults.items()
        if name != NO_FAULT
    }

    def is_wanted(name):
        return wanted is None or knowledge.faults[name]["group"] == wanted

    kind = random.random()
    if NO_FAULT in knowledge.faults and (kind < NONE_SHARE or not any(map(is_wanted, shares))):
        return [NO_FAULT]
    first = {name: share for name, share in shares.items() if is_wanted(name)}
    if kind < NONE_SHARE + TWO_SHARE:
        pair = _two_faults(knowledge, shares, first, random)
        if pair:
            return pair
    return _one_of(first, random)


def _two_faults(knowledge, shares, first, random):
    """Return a cause and what it brought, or, as often, two that have nothing to do with another."""
    brought = {
        (cause, effect): shares[cause] * shares[effect]
        for effect in shares
        for cause in knowledge.faults[effect].get("follows") or []
        if cause in shares and (cause in first or effect in first)
    }
    if brought and random.random() < 0.5:
        return list(_one_of(brought, random)[0])
    simulated = [name for name in shares if knowledge.faults[name].get("simulation")]
    one = _one_of({name: first[name] for name in first if name in simulated}, random)
    others = {
        name: shares[name]
        for name in simulated
        if one and name != one[0] and (name, one[0]) not in brought and (one[0], name) not in brought
    }
    return one + _one_of(others, random) if others else None


def _one_of(weights, random):
    """Return one of the weighted things in a list, or an empty list where there is none."""
    names = [name for name, weight in weights.items() if weight > 0]
    return random.choices(names, [weights[name] for name in names])[:1] if names else []
