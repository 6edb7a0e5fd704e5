"""What the diagnosis knows: causes, checks and simulated homes, made ready for quick answers.

A hypothesis is a cause, two causes of which one brings the other, or a cause nobody thought of.
Each has homes: rows that tell for every simulated check how likely each result is in that home.
A simulated cause has its simulated homes and one row more, its average home, in which all checks
are independent; a judged cause has only such a row. So the links between readings that the physics
makes are kept, and readings that no simulated home gave still count by their own likelihoods.
"""

from array import array

from calculators.diagnosis.home_codes import letter
from calculators.diagnosis.likelihoods import (
    MISREADING,
    counted_row,
    either,
    entropy,
    flat_row,
    judged_row,
    misread,
)

COMPLAINT = "complaint"
#: The prior share of a cause that is not in the list (common practice, no source).
UNKNOWN_SHARE = 0.02
#: How much likelier a second cause is where the first one brings it (common practice, no source).
CAUSE_AND_EFFECT = 5
#: The weight of the average home beside the simulated ones.
AVERAGE_HOME = 0.1
#: How much a simulated home counts whose control or water is another than the visited home's.
OTHER_CLASS = 0.2
#: The stages of the first look; 0 is the telephone, a higher one goes deeper.
FIRST_LOOK = (1, 2, 3, 4)
UNKNOWN = ()


class Knowledge:
    """All causes and checks, and for each check what each cause makes of it.

    data: {"faults": {name: …}, "checks": {name: …}, "homes": …} as plain data. The keys of a fault
    and a check are those of the handbook's files, with numbers in the place of texts: chances from
    0 to 1, `share_of_calls` in any common unit, `minutes` in minutes, `stage` as a number, and
    `results` as a list of "name" and "label", the normal one first. `homes` is what `simulate-homes` writes, or {} where nothing was simulated.
    """

    def __init__(self, data):
        self.faults = data["faults"]
        self.checks = dict(sorted(data["checks"].items(), key=_running_order))
        self.results = {
            name: [one["name"] for one in check["results"]] for name, check in self.checks.items()
        }
        self._simulated = (data.get("homes") or {}).get("faults", {})
        self._result_names = (data.get("homes") or {}).get("results", {})
        self.hypotheses = [
            *((name,) for name in self.faults),
            *(
                (cause, effect)
                for effect, fault in self.faults.items()
                for cause in fault.get("follows") or []
                if cause in self.faults
            ),
            UNKNOWN,
        ]
        self.priors = self._priors()
        self.simulated_checks = [name for name in self.checks if name in self._result_names]
        self._place_homes()
        self.kinds = {}
        self.columns = {}
        self.tables = {name: self._table(name) for name in self.checks}
        for name in self.simulated_checks:
            self.kinds[name], self.columns[name] = self._column(name)
        self.alike = {name: self._alike(name) for name in self.simulated_checks}
        self._cached = {}

    def misreading(self, check):
        """Return how often a result of a check is noted wrongly."""
        return MISREADING[self.checks[check].get("kind", "look")]

    def rows(self, check, wrong):
        """Return for each hypothesis the chance of each noted result, all its homes together."""
        key = (check, wrong)
        if key not in self._cached:
            self._cached[key] = [misread(row, wrong) for row in self.tables[check]]
        return self._cached[key]

    def entropies(self, check):
        """Return for each hypothesis how uncertain the noted result of a check is, in bits."""
        key = (check, "entropies")
        if key not in self._cached:
            rows = self.rows(check, self.misreading(check))
            self._cached[key] = [entropy(row) for row in rows]
        return self._cached[key]

    def noted_kinds(self, check, wrong):
        """Return for each kind of home the chance of each noted result of a simulated check."""
        key = (check, wrong, "kinds")
        if key not in self._cached:
            self._cached[key] = [misread(row, wrong) for row in self.kinds[check]]
        return self._cached[key]

    def chances(self, check, result, wrong):
        """Return for each home the chance that a result of a simulated check is noted."""
        key = (check, result, wrong)
        if key not in self._cached:
            of_kinds = [row[result] for row in self.noted_kinds(check, wrong)]
            self._cached[key] = [of_kinds[kind] for kind in self.columns[check]]
        return self._cached[key]

    def class_factor(self, fault, home):
        """Return how much likelier a fault is in a home of this control and water."""
        factors = self.faults[fault].get("homes") or {}
        return factors.get(home.get("control"), 1.0) * factors.get(home.get("water"), 1.0)

    def applies(self, check, home):
        """Tell whether a check can be made in a home of this control and water."""
        only_for = self.checks[check].get("only_for")
        return not only_for or home.get("control") is None or home["control"] in only_for

    def home_weights(self, home):
        """Return the weight of each home in its hypothesis, for a visited control and water."""
        key = ("weights", home.get("control"), home.get("water"))
        if key not in self._cached:
            weights = []
            for hypothesis, (start, end) in zip(self.hypotheses, self.places, strict=True):
                packed = self._homes_of(hypothesis)
                if packed is None:
                    weights.append(1.0)
                    continue
                raw = [
                    (OTHER_CLASS if _differs(control, home.get("control"), _CONTROLS) else 1.0)
                    * (OTHER_CLASS if _differs(water, home.get("water"), _WATERS) else 1.0)
                    for control, water in zip(packed["control"], packed["water"], strict=True)
                ]
                share = (1 - AVERAGE_HOME) / sum(raw)
                weights += [share * one for one in raw]
                weights.append(AVERAGE_HOME)
            self._cached[key] = weights
        return self._cached[key]

    def _priors(self):
        total = sum(fault["share_of_calls"] for fault in self.faults.values())
        share = {name: fault["share_of_calls"] / total for name, fault in self.faults.items()}
        priors = []
        for hypothesis in self.hypotheses:
            if len(hypothesis) == 1:
                priors.append(share[hypothesis[0]])
            elif hypothesis:
                priors.append(CAUSE_AND_EFFECT * share[hypothesis[0]] * share[hypothesis[1]])
        known = sum(priors)
        return [(1 - UNKNOWN_SHARE) * one / known for one in priors] + [UNKNOWN_SHARE]

    def _homes_of(self, hypothesis):
        packed = self._simulated.get("+".join(hypothesis))
        return packed if packed and packed["control"] else None

    def _place_homes(self):
        self.places = []
        start = 0
        for hypothesis in self.hypotheses:
            packed = self._homes_of(hypothesis)
            end = start + 1 + (len(packed["control"]) if packed else 0)
            self.places.append((start, end))
            start = end

    def _table(self, check):
        rows = []
        of_fault = {}
        for hypothesis in self.hypotheses:
            packed = self._homes_of(hypothesis)
            if not hypothesis:
                row = flat_row(self.results[check])
            elif packed and check in packed["readings"]:
                row = counted_row(self._counts(check, packed["readings"][check]))
            elif len(hypothesis) == 2:
                row = either(*(of_fault[name] for name in hypothesis))
            else:
                given = self.faults[hypothesis[0]].get("likelihoods", {}).get(check)
                row = judged_row(self.results[check], given)
            if len(hypothesis) == 1:
                of_fault[hypothesis[0]] = row
            rows.append(row)
        return rows

    def _counts(self, check, packed):
        """Return how often each result was seen, each home counting as one."""
        order = [self._result_names[check].index(name) for name in self.results[check]]
        counts = [0.0] * len(order)
        for place, kind in enumerate(packed["kinds"]):
            draws = sum(kind)
            if not draws:
                continue  # homes in which the check cannot tell
            homes = packed["homes"].count(letter(place))
            for result, column in enumerate(order):
                counts[result] += homes * kind[column] / draws
        return counts

    def _alike(self, check):
        """Return for each hypothesis the kind that all its simulated homes are of, or None."""
        column = self.columns[check]
        found = []
        for start, end in self.places:
            kinds = set(column[start : end - 1])
            found.append(kinds.pop() if len(kinds) == 1 else None)
        return found

    def _column(self, check):
        """Return the kinds of homes by what they give in a check, and each home's kind."""
        kinds = []
        places = {}

        def place(row):
            key = tuple(round(one, 6) for one in row)
            if key not in places:
                places[key] = len(kinds)
                kinds.append(row)
            return places[key]

        order = [self._result_names[check].index(name) for name in self.results[check]]
        column = array("H")
        for hypothesis, average in zip(self.hypotheses, self.tables[check], strict=True):
            packed = self._homes_of(hypothesis)
            if packed:
                readings = packed["readings"].get(check)
                if readings is None:
                    column.extend([place(average)] * len(packed["control"]))
                else:
                    of_letter = {
                        letter(number): place(_shares([kind[one] for one in order]))
                        for number, kind in enumerate(readings["kinds"])
                    }
                    column.extend(of_letter[one] for one in readings["homes"])
            column.append(place(average))
        return kinds, column


_CONTROLS = {"time clock": "c", "delayed meter": "d", "immediate meter": "i", "twin tank": "t"}
_WATERS = {"town": "t", "well": "w"}


def class_letters(control, water):
    """Return the letters that stand for a simulated home's control and water.

    >>> class_letters("delayed meter", "well")
    ('d', 'w')
    """
    return _CONTROLS[control], _WATERS[water]


def _shares(counts):
    """Return the chances of a home's results, all alike where the check cannot tell."""
    total = sum(counts)
    return [one / total for one in counts] if total else flat_row(counts)


def _differs(letter_of_home, visited, letters):
    return visited is not None and letters.get(visited) != letter_of_home


def _running_order(item):
    _, check = item
    stage = check.get("stage", 5)
    return (stage if stage in (0, *FIRST_LOOK) else 5, check.get("order", 0))
