"""Which causes a complaint makes likely before anything was read, and what would show them."""

from math import log2


def likely_causes(faults, complaint):
    """Return (fault, share) of the calls with a complaint, the likeliest first.

    Bayes' rule for one finding: a fault's share is its share of all calls times the chance that
    it makes this complaint, over the sum of these. faults: name -> "share_of_calls" and
    "likelihoods" with a row "complaint", all from 0 to 1. A fault that never makes the complaint
    is left out; the list is empty when none does.

    >>> faults = {
    ...     "bridge": {"share_of_calls": 0.03, "likelihoods": {"complaint": {"hard": 0.5}}},
    ...     "empty": {"share_of_calls": 0.06, "likelihoods": {"complaint": {"hard": 0.75}}},
    ... }
    >>> likely_causes(faults, "hard")
    [('empty', 0.75), ('bridge', 0.25)]
    """
    weights = {
        name: fault["share_of_calls"] * fault["likelihoods"]["complaint"].get(complaint, 0)
        for name, fault in faults.items()
    }
    total = sum(weights.values())
    ordered = sorted((-weight, name) for name, weight in weights.items() if weight > 0)
    return [(name, -weight / total) for weight, name in ordered]


def telling_results(faults, name):
    """Return (check, result) of what speaks for a fault, the most telling first, one a check.

    A result tells much where the fault often shows it and calls seldom do: it is ranked by its
    chance with the fault times the logarithm of that chance over the mean of all calls, in bits.
    Only results that the fault makes likelier than the mean are returned; complaints are left out.

    >>> faults = {
    ...     "bridge": {"share_of_calls": 0.5, "likelihoods": {"rod": {"hollow": 0.9}}},
    ...     "empty": {"share_of_calls": 0.5, "likelihoods": {"lid": {"no salt": 1.0}}},
    ... }
    >>> telling_results(faults, "bridge")
    [('rod', 'hollow')]
    """
    total = sum(fault["share_of_calls"] for fault in faults.values())
    found = []
    for check, chances in faults[name]["likelihoods"].items():
        best = 0.0, ""
        for result, chance in chances.items():
            mean = sum(
                fault["share_of_calls"] * fault["likelihoods"].get(check, {}).get(result, 0)
                for fault in faults.values()
            )
            if check != "complaint" and chance * total > mean > 0:
                best = max(best, (chance * log2(chance * total / mean), result))
        if best[1]:
            found.append((-best[0], check, best[1]))
    return [(check, result) for _, check, result in sorted(found)]
