"""How often each fault is behind a call, from judgement and the shop's own finished calls."""

#: How many finished calls the judged shares weigh as much as (common practice, no source).
JUDGED_CALLS = 200


def updated_shares(judged, counts):
    """Return the shares of calls after a shop's own calls were counted.

    judged: {fault: share} in any common unit, above 0 in all; counts: {fault: finished calls}. The
    judged shares count as `JUDGED_CALLS` calls beside those counted: the mean of a Dirichlet
    distribution (a textbook relation, from memory). The shares make one together.

    >>> updated_shares({"salt": 3, "power": 1}, {"power": 100})
    {'salt': 0.5, 'power': 0.5}
    """
    whole = sum(judged.values())
    calls = JUDGED_CALLS + sum(counts.get(name, 0) for name in judged)
    return {
        name: (JUDGED_CALLS * share / whole + counts.get(name, 0)) / calls
        for name, share in judged.items()
    }
