"""The resin bed: what passes in service, and what brine gives back."""

from math import exp, expm1, log1p, sqrt

from calculators.capacity import SALT_CEILING
from calculators.leakage import SHORTEST_FRONT, USUAL_FLOW, USUAL_FRONT
from calculators.simulation.physics import USUAL_PHYSICS

#: The most the exchange sites of new resin hold; from memory, 1.9 eq/L.
MOST_HELD = 43700.0  # grains/ft3
#: So many fronts of capacity left pass less than the last digit of a number: nothing is worked out.
FAR_FROM_SPENT = 30.0
#: No front gets shorter than at this flow [gpm/ft3].
SLOWEST = USUAL_FLOW * (SHORTEST_FRONT / USUAL_FRONT) ** 2
#: How well weak brine regenerates: strength at the bed [percent] and share of its salt that counts;
#: common practice, no source.
WEAK_BRINE = ((0.0, 0.0), (3.0, 0.4), (5.0, 0.75), (8.0, 1.0))


def front_of(flow, volume, front=USUAL_FRONT):
    """Return the length of the exchange front [grains] of a bed [ft3] at a flow [gpm].

    front: length [grains/ft3] at 3 gpm/ft3. The law is `leakage.front_length`, for a whole bed.

    >>> front_of(4.5, 1.5)
    1500.0
    """
    return front * volume * sqrt(max(flow / volume, SLOWEST) / USUAL_FLOW)


def left_after(left, load, front):
    """Return the capacity left [grains] after a load [grains] went in at a constant flow.

    left, load: 0 or more; front: from `front_of`, above 0. At every moment the share exp(-left /
    front) of the hardness passes, so the loss of capacity is an equation that has this exact
    answer for the whole draw. What passed is load - (left - answer).

    >>> left_after(50000.0, 100.0, 1000.0)
    49900.0
    >>> round(left_after(3000.0, 100.0, 1000.0), 2)
    2905.22
    """
    if left - load > FAR_FROM_SPENT * front:
        return left - load
    # Never a hair above what a bed that passes nothing would keep.
    return max(left - load, front * _log_of_growth(left / front, load / front))


def _log_of_growth(left, load):
    """Return ln(1 + (e^left - 1) e^-load), also where e^left is beyond all numbers."""
    if left > 600:
        return left - load + log1p(exp(min(600.0, load - left)) - exp(-left))
    return log1p(expm1(left) * exp(-load))


def share_that_counts(strength):
    """Return the share [1] of the salt that regenerates, for brine of a strength at the bed.

    strength: percent by weight, 0 or more. Full from 8 percent on, less below, in straight lines.
    Common practice, no source.

    >>> share_that_counts(4), share_that_counts(10)
    (0.575, 1.0)
    """
    weaker, share_of_weaker = WEAK_BRINE[0]
    for stronger, share in WEAK_BRINE[1:]:
        if strength < stronger:
            place = (strength - weaker) / (stronger - weaker)
            return share_of_weaker + place * (share - share_of_weaker)
        weaker, share_of_weaker = stronger, share
    return 1.0


def regenerated(left, salt, volume, quality=1.0, physics=USUAL_PHYSICS):
    """Return the capacity [grains] of a bed [ft3] with so much left after salt [lb] that counts.

    quality: capacity [1] of this resin beside new resin. Up to the heel every pound converts all
    it can; above it a pound converts less with the square of what is already converted, which adds
    up to the curve of `capacity_of_dose` for a bed run down to its heel. Salt may come in portions:
    the answer is the same. Never more than the sites hold.

    >>> round(regenerated(3000, 6, 1) - 3000)
    19985
    """
    ceiling = physics.curve_top / physics.curve_half
    each = left / volume
    dose = salt / volume
    heel = physics.heel
    if each < heel:
        needed = (heel - each) / ceiling
        if dose <= needed:
            return left + ceiling * salt
        dose -= needed
        each = heel
    top = physics.curve_top * quality
    room = 1 - (each - heel) / top
    if room <= 0:
        return left
    room = 1 / (1 / room + ceiling * dose / physics.curve_top)
    gained = min(heel + top * (1 - room), each + ceiling * dose, MOST_HELD * quality)
    return volume * max(each, gained)


def exchanged_salt(grains):
    """Return the pure salt [lb] whose sodium took the place of so much hardness [grains]."""
    return grains / SALT_CEILING
