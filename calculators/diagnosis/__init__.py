"""Finding the cause: which faults fit the readings of a call, and which check to do next.

The one door is `picture(Knowledge(data), call)`. Bayes' rule over the faults of the handbook, with
simulated homes where a fault acts on the simulation and judged likelihoods where it does not
(`knowledge`, `standing`); the next check by what it is expected to tell for its minutes
(`next_check`); when to stop (`stopping`); the reasons in plain words (`weighing`, `explanation`);
the shop's own record of calls (`shares`).
"""

from calculators.diagnosis.knowledge import Knowledge
from calculators.diagnosis.picture import picture

__all__ = ["Knowledge", "picture"]
