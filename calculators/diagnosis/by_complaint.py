"""Which causes a complaint makes likely, before anything was read."""


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
