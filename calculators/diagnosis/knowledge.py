"""What the diagnosis knows: causes, checks and simulated homes, made ready for quick answers.

A hypothesis is a cause, two causes of which one brings the other, or a cause nobody thought of.
Each has homes: rows that tell for every simulated check how likely each result is in that home.
A simulated cause has its simulated homes and one row more, its average home, in which all checks
are independent and half judged; a judged cause has only such a row. So the links between readings
that the physics makes are kept, and readings that no simulated home gave still count by their own
likelihoods.
"""

from array import array

from calculators.diagnosis.likelihoods import (
    MISREADING,
    either,
    entropy,
    flat_row,
    judged_row,
    middle,
    misread,
)
from calculators.diagnosis.simulated import CONTROLS, WATERS, SimulatedHomes

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
    `results` as a list of "name" and "label", the normal one first. `homes` is what
    `simulate-homes` writes, or {} where nothing was simulated.
    """

    def __init__(self, data):
        self.faults = data["faults"]
        self.checks = dict(sorted(data["checks"].items(), key=_running_order))
        self.results = {
            name: [one["name"] for one in check["results"]] for name, check in self.checks.items()
        }
        homes = data.get("homes") or {}
        #: By fault, a digest of the code and the changes that its simulated homes come from.
        self.made_from = {
            name: one.get("digest", "") for name, one in (homes.get("faults") or {}).items()
        }
        self._homes = SimulatedHomes(homes, self.results)
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
        self.simulated_checks = self._homes.checks
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
            for hypothesis in self.hypotheses:
                if not self._homes.has(hypothesis):
                    weights.append(1.0)
                    continue
                raw = [
                    (OTHER_CLASS if _differs(control, home.get("control"), CONTROLS) else 1.0)
                    * (OTHER_CLASS if _differs(water, home.get("water"), WATERS) else 1.0)
                    for control, water in self._homes.classes(hypothesis)
                ]
                share = (1 - AVERAGE_HOME) / sum(raw)
                weights += [share * one for one in raw]
                weights.append(AVERAGE_HOME)
            self._cached[key] = weights
        return self._cached[key]

    def homes_of(self, fault):
        """Return how many simulated homes a fault has."""
        return self._homes.count((fault,))

    def simulated_home(self, fault, number):
        """Return the control and the water of a fault's simulated home, and what its checks show.

        number: 0 to below `homes_of(fault)`. What a check shows are the chances of its results; a
        check that cannot tell there is left out.
        """
        control, water = self._homes.classes((fault,))[number]
        start, _ = self.places[self.hypotheses.index((fault,))]
        shown = {}
        for check in self.simulated_checks:
            row = self.kinds[check][self.columns[check][start + number]]
            if max(row) > min(row):
                shown[check] = row
        return _word_for(control, CONTROLS), _word_for(water, WATERS), shown

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

    def _place_homes(self):
        self.places = []
        start = 0
        for hypothesis in self.hypotheses:
            end = start + self._homes.count(hypothesis) + 1
            self.places.append((start, end))
            start = end

    def _judged(self, check):
        """Return the judged row of each hypothesis; of two causes at once the normal is rarer."""
        rows = []
        of_fault = {}
        for hypothesis in self.hypotheses:
            if not hypothesis:
                row = flat_row(self.results[check])
            elif len(hypothesis) == 1:
                given = self.faults[hypothesis[0]].get("likelihoods", {}).get(check)
                row = judged_row(self.results[check], given)
                of_fault[hypothesis[0]] = row
            elif check == COMPLAINT:  # which has no normal result
                row = middle(*(of_fault[name] for name in hypothesis))
            else:
                row = either(*(of_fault[name] for name in hypothesis))
            rows.append(row)
        return rows

    def _table(self, check):
        """Return the row of each hypothesis: from its homes where they show the check."""
        return [
            self._homes.average(hypothesis, check, judged) or judged
            for hypothesis, judged in zip(self.hypotheses, self._judged(check), strict=True)
        ]

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

        column = array("H")
        judged_rows = self._judged(check)
        for number, hypothesis in enumerate(self.hypotheses):
            table, judged = self.tables[check][number], judged_rows[number]
            average = place(middle(table, judged) if self._homes.has(hypothesis) else table)
            shown = self._homes.rows(hypothesis, check, judged)
            if shown is None:
                column.extend([average] * self._homes.count(hypothesis))
            else:
                of_letter = {one: place(row) for one, row in shown[0].items()}
                column.extend(of_letter[one] for one in shown[1])
            column.append(average)
        return kinds, column


def _word_for(letter, letters):
    return next(word for word, one in letters.items() if one == letter)


def _differs(letter_of_home, visited, letters):
    return visited is not None and letters.get(visited) != letter_of_home


def _running_order(item):
    _, check = item
    stage = check.get("stage", 5)
    return (stage if stage in (0, *FIRST_LOOK) else 5, check.get("order", 0))
