"""How the causes stand after the readings of a call: Bayes' rule over simulated homes."""

from operator import mul

from calculators.diagnosis.knowledge import UNKNOWN
from calculators.diagnosis.likelihoods import entropy

#: A hypothesis below this chance is left out where the next check is weighed, and a home below
#: this part of its hypothesis.
SMALL = 0.001


class Standing:
    """The chance of every cause after a call's readings.

    `hypotheses` has the chance of each hypothesis of the knowledge; `causes` that of each fault,
    where two causes at once count for the one that brought the other; `unknown` the chance of a
    cause that is not in the handbook. All chances together are 1.
    """

    def __init__(self, knowledge, call):
        self.knowledge = knowledge
        self.call = call
        self._homes = knowledge.home_weights(call.home)
        weights = []
        for hypothesis, prior in zip(knowledge.hypotheses, knowledge.priors, strict=True):
            for fault in hypothesis:
                prior *= knowledge.class_factor(fault, call.home)
            weights.append(0.0 if call.excluded.intersection(hypothesis) else prior)
        self.before = _normal(weights)
        for check, (result, wrong) in call.readings.items():
            if check in knowledge.columns:
                chances = knowledge.chances(check, result, wrong)
                self._homes = list(map(mul, self._homes, chances))
            else:
                rows = knowledge.rows(check, wrong)
                weights = [one * row[result] for one, row in zip(weights, rows, strict=True)]
        self._sums = [sum(self._homes[start:end]) for start, end in knowledge.places]
        self.hypotheses = _normal(list(map(mul, weights, self._sums)))
        self.causes = dict.fromkeys(knowledge.faults, 0.0)
        self.unknown = 0.0
        for hypothesis, chance in zip(knowledge.hypotheses, self.hypotheses, strict=True):
            if hypothesis == UNKNOWN:
                self.unknown = chance
            else:
                self.causes[hypothesis[0]] += chance
        self.ranking = sorted(self.causes, key=self.causes.get, reverse=True)
        self._predicted = {}
        self._kept = None

    @property
    def leader(self):
        """The likeliest fault."""
        return self.ranking[0]

    def prior(self, fault):
        """Return the chance of a fault before any reading of this call, alone or with another."""
        pairs = zip(self.knowledge.hypotheses, self.before, strict=True)
        return sum(chance for one, chance in pairs if one and one[0] == fault)

    def likely(self):
        """Return the places of the hypotheses that the next check has to tell apart."""
        return [
            place
            for place, chance in enumerate(self.hypotheses)
            if chance > SMALL and self.knowledge.hypotheses[place] != UNKNOWN
        ]

    def predicted(self, check):
        """Return for each likely hypothesis the chances of what a check would be noted to show."""
        if check not in self._predicted:
            self._predicted[check] = {
                place: self._predict(check, place) for place in self._likely_homes
            }
        return self._predicted[check]

    def information(self, check):
        """Return how much a check is expected to tell about the causes, in bits."""
        rows = self.predicted(check)
        shares = [self.hypotheses[place] for place in rows]
        total = sum(shares)
        if not total:
            return 0.0
        overall = [sum(map(mul, shares, column)) / total for column in zip(*rows.values())]
        if check in self.knowledge.columns:
            doubts = [entropy(row) for row in rows.values()]
        else:
            of_all = self.knowledge.entropies(check)
            doubts = [of_all[place] for place in rows]
        return max(0.0, entropy(overall) - sum(map(mul, shares, doubts)) / total)

    def chance_of(self, check, results):
        """Return the chance that a check, when made, shows one of these results."""
        names = self.knowledge.results[check]
        wanted = [names.index(one) for one in results]
        rows = self.predicted(check)
        total = sum(self.hypotheses[place] for place in rows)
        if not total:
            return 0.0
        return (
            sum(
                self.hypotheses[place] * sum(row[one] for one in wanted)
                for place, row in rows.items()
            )
            / total
        )

    @property
    def _likely_homes(self):
        """For each likely hypothesis its homes that still count: their places and weights.

        The average home stands last, whatever its weight.
        """
        if self._kept is None:
            self._kept = {}
            for place in self.likely():
                start, end = self.knowledge.places[place]
                least = SMALL * self._sums[place]
                kept = [one for one in range(start, end - 1) if self._homes[one] > least]
                kept.append(end - 1)
                self._kept[place] = kept, [self._homes[one] for one in kept]
        return self._kept

    def _predict(self, check, place):
        knowledge = self.knowledge
        wrong = knowledge.misreading(check)
        if check not in knowledge.columns:
            return knowledge.rows(check, wrong)[place]
        column = knowledge.columns[check]
        kept, weights = self._likely_homes[place]
        total = sum(weights)
        alike = knowledge.alike[check][place]
        if alike is None:
            counted = [0.0] * len(knowledge.kinds[check])
            for home, weight in zip(kept, weights, strict=True):
                counted[column[home]] += weight
            counted = [(kind, weight) for kind, weight in enumerate(counted) if weight]
        else:
            counted = [(alike, total - weights[-1]), (column[kept[-1]], weights[-1])]
        kinds = knowledge.noted_kinds(check, wrong)
        row = [0.0] * len(knowledge.results[check])
        for kind, weight in counted:
            part = weight / total
            for result, chance in enumerate(kinds[kind]):
                row[result] += part * chance
        return row


def _normal(weights):
    total = sum(weights)
    return [one / total for one in weights] if total else weights
