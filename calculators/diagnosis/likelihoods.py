"""How likely each result of a check is: judged rows, misreadings, and two causes at once."""

from math import log2

#: How often a result is noted wrongly, by the kind of check (common practice, no source).
MISREADING = {"look": 0.01, "instrument": 0.03, "feel": 0.05}
#: How often it is wrong where the technician is not sure of having seen it well.
UNSURE = 0.2
#: How often a check reads normal that the fault does not touch (common practice, no source).
UNTOUCHED = 0.985
#: What stands beside a count, so that a result never seen is unlikely and not impossible.
PSEUDO_COUNT = 0.5


def judged_row(results, given):
    """Return the chance of each result, as judged for one fault.

    results: the names, the normal one first. given: {name: chance}, where what is missing to one
    is the normal result's; None for a check that the fault does not touch.

    >>> judged_row(["loose", "bridge", "mush"], {"bridge": 0.75})
    [0.25, 0.75, 0.0]
    """
    if given is None:
        if len(results) == 1:
            return [1.0]
        rest = (1 - UNTOUCHED) / (len(results) - 1)
        return [UNTOUCHED] + [rest] * (len(results) - 1)
    row = [float(given.get(name, 0)) for name in results]
    row[0] += max(0.0, 1 - sum(row))
    total = sum(row)
    return [chance / total for chance in row]


def flat_row(results):
    """Return the same chance for each result: what a cause that nobody thought of would give."""
    return [1 / len(results)] * len(results)


def counted_row(counts):
    """Return the chance of each result from how often it was seen.

    >>> counted_row([8, 1, 0])
    [0.8095238095238095, 0.14285714285714285, 0.047619047619047616]
    """
    total = sum(counts) + PSEUDO_COUNT * len(counts)
    return [(count + PSEUDO_COUNT) / total for count in counts]


def misread(row, chance):
    """Return what is noted, where with a chance any result is noted in the place of the true one.

    >>> misread([1.0, 0.0], 0.2)
    [0.9, 0.1]
    """
    slip = chance / len(row)
    return [(1 - chance) * one + slip for one in row]


def entropy(row):
    """Return how uncertain a result is, in bits.

    >>> entropy([0.5, 0.25, 0.25])
    1.5
    """
    return -sum(chance * log2(chance) for chance in row if chance > 0)


def either(first, second):
    """Return the chances for two causes at once: normal only where both leave it normal.

    >>> [round(one, 3) for one in either([0.5, 0.5, 0.0], [0.8, 0.0, 0.2])]
    [0.4, 0.429, 0.171]
    """
    normal = first[0] * second[0]
    abnormal = [one + other for one, other in zip(first[1:], second[1:], strict=True)]
    total = sum(abnormal)
    if not total:
        return [1.0] + [0.0] * len(abnormal)
    return [normal] + [(1 - normal) * one / total for one in abnormal]
