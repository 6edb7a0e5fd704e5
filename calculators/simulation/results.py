"""From what was measured at a visit to the name of a check's result.

The page and the simulated visits use the same lines. Every function returns a name, or None where
the measurement cannot tell.
"""

from calculators.brine_strength import SATURATED, strength_of_gravity
from calculators.clock import HALF_A_DAY_FROM, RIGHT_WITHIN, short_way_round
from calculators.flow import HIGH_FLOW, LOW_FLOW, NO_FLOW
from calculators.leakage import FASTEST_FLOW
from calculators.meter import DEAD_BELOW, LOW_BELOW
from calculators.pressure import MARK, PLUGGED
from calculators.quantities import snap

#: All lines below: common practice, no source.
SOFT_LEAST, SOFT_SHARE = 1.0, 0.04  # gpg, or this share of the raw hardness
RAW_FROM, SLIP_BELOW = 0.75, 0.25  # shares of the raw hardness
HOT_HARDER, HOT_SOFTER, LEAST_DIFFERENCE = 0.10, 0.15, 1.0  # shares of raw; gpg
HIGHER_FROM = 1.2  # raw hardness over the setting
OVERDUE, OPTIMISTIC, SHORT_REFILL = 1.5, 1.15, 0.85  # over what was planned
UNMOVED_OVER = 5.0  # gal drawn over which a counter must move
LEVEL_WITHIN = 1.5  # in
REFILL_LOW, REFILL_HIGH = 0.85, 1.15  # of minutes set times rated flow
DRAWS_FROM, NONE_BELOW = 0.80, 0.20  # of the suction expected
VOLTAGE_FROM, PRESSURE_FROM = 0.85, 25.0  # share of the rating; psi running
STRONG_FROM = 0.90  # of saturated, by weight


def pair(cold, hot, raw):
    """Return the result of a cold and a hot sample beside the raw water, all best estimates [gpg].

    The first line that fits counts.

    >>> pair(0.5, 12.5, 19.5), pair(19.5, 18.5, 19.5)
    ('hot-harder', 'both-raw')
    """
    soft = max(SOFT_LEAST, SOFT_SHARE * raw)
    cold, hot, raw = snap(cold), snap(hot), snap(raw)
    if cold < soft and hot < soft:
        return "both-soft"
    if cold >= RAW_FROM * raw and hot >= RAW_FROM * raw:
        return "both-raw"
    if hot > cold + max(LEAST_DIFFERENCE, HOT_HARDER * raw):
        return "hot-harder"
    if cold > hot + max(LEAST_DIFFERENCE, HOT_SOFTER * raw):
        return "hot-softer"
    return "slip" if cold < SLIP_BELOW * raw else "partial"


def raw_hardness(raw, allowance, setting):
    """Return the result of a raw test [gpg] with the card's allowance for iron, by the setting."""
    return "higher" if snap(raw + allowance) >= snap(HIGHER_FROM * setting) else "matches"


def clock_reading(error, blank):
    """Return the result of a clock that shows an error [min, ahead above 0], or shows nothing."""
    if blank:
        return "blank"
    off = snap(abs(short_way_round(error / 60)))
    if off <= RIGHT_WITHIN:
        return "right"
    return "half-day-out" if off >= HALF_A_DAY_FROM else "hours-out"


def settings_and_counters(
    days, interval, longest, counter=None, planned_counter=None, refill=1.0, planned_refill=1.0,
    counted=None, drawn=0.0, set_interval=None,
):  # fmt: skip
    """Return the result of the settings and counters beside the plan made from the card.

    days: since the last regeneration; interval, longest: planned, and the most the control allows
    [days]; counter, planned_counter: gal; refill, planned_refill: min; counted: gal by the counter
    while `drawn` gal ran, None without a meter; set_interval: days set on a time clock.
    """
    if counted is not None and drawn >= UNMOVED_OVER and counted <= 0:
        return "frozen"
    if snap(days) > snap(max(OVERDUE * interval, longest)):
        return "overdue"
    too_much = counter is not None and snap(counter) > snap(OPTIMISTIC * planned_counter)
    too_long = set_interval is not None and snap(set_interval) > snap(OPTIMISTIC * interval)
    if too_much or too_long or snap(refill) < snap(SHORT_REFILL * planned_refill):
        return "optimistic"
    return "agree"


def salt_height(salt, water):
    """Return the result of the top of the salt [in] beside the water [in]; no salt is 0."""
    if snap(salt) <= 0:
        return "empty"
    return "above" if snap(salt) >= snap(water) else "below"


def brine_level(level, expected):
    """Return the result of a water height [in] beside the one expected."""
    if snap(abs(level - expected)) <= LEVEL_WITHIN:
        return "expected"
    return "high" if level > expected else "low"


def _straddles(share, error, lines):
    low, high = snap(share * (1 - 2 * error)), snap(share * (1 + 2 * error))
    return any(low < line < high for line in lines)


def backwash_flow(share, error=0.0):
    """Return the result of a flow that is a share [1] of the rating, known to an error [1]."""
    lines = NO_FLOW / 100, LOW_FLOW / 100, HIGH_FLOW / 100
    if _straddles(share, error, lines):
        return None
    none, low, high = lines
    share = snap(share)
    if share < none:
        return "none"
    if share < low:
        return "low"
    return "in-band" if share <= high else "high"


def brine_draw(share, rises=False):
    """Return the result of a suction that is a share [1] of the one expected, or a level that
    rises while brine should be drawn."""
    if rises:
        return "pushes"
    if snap(share) < NONE_BELOW:
        return "none"
    return "draws" if snap(share) >= DRAWS_FROM else "slow"


def refill_measured(share):
    """Return the result of a refill that is a share [1] of minutes set times rated flow."""
    if snap(share) < REFILL_LOW:
        return "low"
    return "in-band" if snap(share) <= REFILL_HIGH else "over"


def leakage_slow_and_fast(slow, fast, raw):
    """Return the result of two samples behind the valve at slow and fast flow, estimates [gpg]."""
    soft = max(SOFT_LEAST, SOFT_SHARE * raw)
    if snap(slow) >= soft:
        return "hard-both"
    return "hard-fast" if snap(fast) >= soft else "soft-both"


def meter_against_bucket(share, error=0.0):
    """Return the result of a count that is a share [1] of the water, known to an error [1].

    A count too high reads as one that agrees: it only makes the control early.
    """
    lines = DEAD_BELOW / 100, LOW_BELOW / 100
    if share > 0 and _straddles(share, error, lines):
        return None
    if snap(share) < lines[0]:
        return "zero"
    return "low" if snap(share) < lines[1] else "agrees"


def pressure_loss(loss, expected):
    """Return the result of a pressure loss [psi] at no more than the rated flow."""
    high = snap(loss) > snap(PLUGGED / 100 * expected) or snap(loss) > MARK
    return "high" if high else "normal"


def supply_voltage(share):
    """Return the result of a voltage that is a share [1] of the rating."""
    return "in-band" if snap(share) >= VOLTAGE_FROM else "low-or-none"


def supply_pressure(running):
    """Return the result of a pressure [psi] at a raw tap while water runs."""
    return "enough" if snap(running) >= PRESSURE_FROM else "low"


def brine_hydrometer(gravity):
    """Return the result of a hydrometer reading of brine that had time enough."""
    return "strong" if strength_of_gravity(gravity) / SATURATED >= STRONG_FROM else "weak"


def peak_flow(flow, resin, loss):
    """Return the result of a peak flow [gpm] for a bed [ft3] that costs so much pressure [psi]."""
    over = snap(flow / resin) > FASTEST_FLOW or snap(loss) > MARK
    return "over" if over else "within"
