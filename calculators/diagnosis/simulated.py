"""The simulated homes of all hypotheses, as rows of chances in the order of a check's results."""

from calculators.diagnosis.home_codes import letter
from calculators.diagnosis.likelihoods import counted_row, flat_row

CONTROLS = {"time clock": "c", "delayed meter": "d", "immediate meter": "i", "twin tank": "t"}
WATERS = {"town": "t", "well": "w"}


def class_letters(control, water):
    """Return the letters that stand for a simulated home's control and water.

    >>> class_letters("delayed meter", "well")
    ('d', 'w')
    """
    return CONTROLS[control], WATERS[water]


class SimulatedHomes:
    """What `simulate-homes` has written, read for the checks and results of a handbook.

    A result beside the normal one that no home of any fault ever shows, such as a smell, is one
    that the simulation does not know; its chance is the judged one of each fault.
    """

    def __init__(self, data, results):
        self._of = {
            tuple(name.split("+")): homes
            for name, homes in (data.get("faults") or {}).items()
            if homes["control"]
        }
        self._results = results
        self._order = {
            check: [names.index(one) if one in names else None for one in results[check]]
            for check, names in (data.get("results") or {}).items()
            if check in results
        }
        self.checks = [check for check in results if check in self._order]
        self._unknown = {check: self._never_seen(check) for check in self.checks}

    def has(self, hypothesis):
        """Tell whether a hypothesis has homes."""
        return hypothesis in self._of

    def count(self, hypothesis):
        """Return how many homes a hypothesis has."""
        return len(self._of[hypothesis]["control"]) if hypothesis in self._of else 0

    def classes(self, hypothesis):
        """Return the letters of each home's control and water."""
        homes = self._of[hypothesis]
        return list(zip(homes["control"], homes["water"], strict=True))

    def average(self, hypothesis, check, judged):
        """Return how often the homes of a hypothesis show each result, None where they do not."""
        packed = self._packed(hypothesis, check)
        if packed is None:
            return None
        return self._with_judged(check, counted_row(self._counts(check, packed)), judged)

    def rows(self, hypothesis, check, judged):
        """Return the row of every kind of home by its letter, and the letters of all homes.

        None where no home of the hypothesis shows anything in the check.
        """
        packed = self._packed(hypothesis, check)
        if packed is None:
            return None
        rows = {
            letter(place): self._with_judged(check, self._shares(check, kind), judged)
            for place, kind in enumerate(packed["kinds"])
        }
        return rows, packed["homes"]

    def _packed(self, hypothesis, check):
        if check not in self._order or hypothesis not in self._of:
            return None
        return self._of[hypothesis]["readings"].get(check)

    def _shares(self, check, kind):
        """Return the chances of a home's results, all alike where the check cannot tell there."""
        total = sum(kind)
        if not total:
            return flat_row(self._results[check])
        return [0.0 if one is None else kind[one] / total for one in self._order[check]]

    def _counts(self, check, packed):
        """Return how often each result was seen, each home counting as one."""
        counts = [0.0] * len(self._results[check])
        for place, kind in enumerate(packed["kinds"]):
            if sum(kind):
                homes = packed["homes"].count(letter(place))
                for result, share in enumerate(self._shares(check, kind)):
                    counts[result] += homes * share
        return counts

    def _never_seen(self, check):
        seen = [0.0] * len(self._results[check])
        for homes in self._of.values():
            if check in homes["readings"]:
                counts = self._counts(check, homes["readings"][check])
                seen = [one + more for one, more in zip(seen, counts, strict=True)]
        return [place for place, often in enumerate(seen) if place and not often]

    def _with_judged(self, check, row, judged):
        """Return a row in which the results that the simulation does not know are the judged."""
        unknown = self._unknown[check]
        share = sum(judged[place] for place in unknown)
        if not share:
            return row
        mixed = [(1 - share) * chance for chance in row]
        for place in unknown:
            mixed[place] += judged[place]
        return mixed
