"""What each reading says for a cause, and whether all readings together fit one."""

from math import log, log10, sqrt

from calculators.diagnosis.knowledge import UNKNOWN

#: A reading that a cause gives less often than this, and that is not normal, is not explained.
UNEXPLAINED_BELOW = 0.05
#: Two causes that differ by less than this, as a logarithm to ten, look the same so far.
LOOKS_THE_SAME = 0.3
#: The 95th percentile of a normal distribution, in its standard deviations.
PERCENTILE_95 = 1.645


def likelihoods(standing, check):
    """Return {fault: chance} of what was noted at a check, each fault alone."""
    knowledge = standing.knowledge
    result, wrong = standing.call.readings[check]
    rows = knowledge.rows(check, wrong)
    return {
        hypothesis[0]: rows[place][result]
        for place, hypothesis in enumerate(knowledge.hypotheses)
        if len(hypothesis) == 1
    }


def evidence_for(standing, fault):
    """Return (weight, check) of each reading for a fault against all others, the loudest first.

    The weight is the logarithm to ten of how much likelier the fault makes the reading than the
    other faults do on average, each by its chance before the call.
    """
    knowledge = standing.knowledge
    before = {
        hypothesis[0]: standing.before[place]
        for place, hypothesis in enumerate(knowledge.hypotheses)
        if len(hypothesis) == 1
    }
    others = sum(chance for name, chance in before.items() if name != fault)
    weights = []
    for check in standing.call.readings:
        given = likelihoods(standing, check)
        average = sum(chance * given[name] for name, chance in before.items() if name != fault)
        if others and average:
            weights.append((log10(given[fault] * others / average), check))
    return sorted(weights, key=lambda one: -one[0])


def unexplained(standing, fault):
    """Return the checks whose reading is not normal and is not what a fault gives.

    A second cause that comes with the fault explains what it gives.
    """
    return [
        check
        for check, (result, _) in standing.call.readings.items()
        if result and likelihoods(standing, check)[fault] < UNEXPLAINED_BELOW
    ]


def looks_the_same(standing, fault, other):
    """Tell whether all readings so far leave two faults as far apart as they were before."""
    difference = log10(
        (standing.causes[fault] / standing.causes[other])
        * (standing.prior(other) / standing.prior(fault))
    )
    return abs(difference) < LOOKS_THE_SAME


def surprise(standing, fault):
    """Return how unlikely all readings are under a fault, and the bound of 95 in 100 such calls.

    Both are sums of the negative logarithm of each reading's chance; the bound takes them as
    independent and their sum as normally distributed. Above the bound the readings hardly fit
    this one fault.
    """
    knowledge = standing.knowledge
    place = knowledge.hypotheses.index((fault,))
    found = expected = variance = 0.0
    for check, (result, wrong) in standing.call.readings.items():
        row = knowledge.rows(check, wrong)[place]
        found -= log(row[result])
        mean = -sum(chance * log(chance) for chance in row if chance)
        expected += mean
        variance += sum(chance * (log(chance) + mean) ** 2 for chance in row if chance)
    return found, expected + PERCENTILE_95 * sqrt(variance)


def companions(standing, fault):
    """Return (chance, second fault) of the faults that a fault may have brought, given itself."""
    knowledge = standing.knowledge
    own = standing.causes[fault]
    found = [
        (chance / own, hypothesis[1])
        for hypothesis, chance in zip(knowledge.hypotheses, standing.hypotheses, strict=True)
        if hypothesis != UNKNOWN and len(hypothesis) == 2 and hypothesis[0] == fault and own
    ]
    return sorted(found, reverse=True)
