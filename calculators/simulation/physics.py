"""What the simulation takes for granted about resin, brine and draws, in one place.

A benchmark moves these to see how much the diagnosis leans on them.
"""

from calculators.brine_strength import DISSOLVING_TIME
from calculators.capacity import CURVE_HALF, CURVE_TOP
from calculators.injector import USUAL_MOTIVE, USUAL_SUCTION
from calculators.leakage import USUAL_FRONT
from calculators.units import CUBIC_FOOT, GALLON

GALLONS_IN_A_CUBIC_FOOT = CUBIC_FOOT / GALLON

#: Name and usual value. All but the first two are common practice, no source.
USUAL = (
    ("curve_top", CURVE_TOP),  # grains/ft3: capacity that no dose passes
    ("curve_half", CURVE_HALF),  # lb/ft3: dose that gives half of it
    ("heel", 3 * USUAL_FRONT),  # grains/ft3 left when the outlet passes a twentieth
    ("front", USUAL_FRONT),  # grains/ft3 at the usual flow
    ("dissolving_time", DISSOLVING_TIME),  # min at 20 °C
    ("pick_up", 0.3),  # salt in water above the salt, of saturated
    ("suction", USUAL_SUCTION),  # gpm/ft3
    ("motive", USUAL_MOTIVE),  # gpm/ft3
    ("salt_bulk", 74.0),  # lb/ft3 of loose salt
    ("rinse_mixing", 0.6),  # bed volumes that thin the salt left by a factor of e
    ("meter_stall", 0.2),  # gpm below which a meter stands still
    ("raw_passing", 1.0),  # of the leakage of a fresh bed
)
#: The shift leaves alone what chemistry fixes: what a pound of salt can exchange.
_TOGETHER = {"curve_top": "curve_half"}


class Physics:
    """The constants above as attributes."""

    __slots__ = tuple(name for name, _ in USUAL)

    def __init__(self, shift=0.0, random=None):
        """Take the usual values, or move each by a share [1], up or down as `random` says.

        The top and the half of the capacity curve move together, because their ratio is what a
        pound of salt exchanges, which chemistry bounds.
        """
        for name, value in USUAL:
            setattr(self, name, value)
        if shift:
            for name, value in USUAL:
                if name not in _TOGETHER.values():
                    factor = 1 + shift if random.random() < 0.5 else 1 - shift
                    setattr(self, name, value * factor)
                    if name in _TOGETHER:
                        other = _TOGETHER[name]
                        setattr(self, other, getattr(self, other) * factor)


SOLID_SALT = 135.0  # lb/ft3 of salt without voids; source: salt-solubility-handbook
USUAL_PHYSICS = Physics()
