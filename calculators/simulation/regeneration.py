"""The regeneration of a story's bed: positions of the valve, brine drawn, rinse, refill.

Backwash, brine and slow rinse, fast rinse, refill. In the first three a valve with one tank feeds
raw water to the house; a twin tank regenerates the bed that rests. The water of a regeneration
brings its own hardness to the drain and loads no bed: a simplification.
"""

from math import exp, inf, sqrt

from calculators.readings import TWIN
from calculators.simulation.bed import exchanged_salt, regenerated, share_that_counts
from calculators.simulation.physics import GALLONS_IN_A_CUBIC_FOOT
from calculators.simulation.positions import BACKWASH, BRINE, FAST_RINSE, REFILL, SERVICE
from calculators.simulation.pressure import CONTROL_NEED
from calculators.simulation.service import serve_raw
from calculators.units import GALLON, POUND
from calculators.water_properties import density


class Cycle:
    """One regeneration: when, and what it did to the bed.

    begun, ended: true times [min]; left_before, left_after: capacity [grains]; salt: drawn to the
    bed [lb]; pore_salt: left in it at the end [lb].
    """

    __slots__ = ("begun", "ended", "left_before", "left_after", "salt", "pore_salt")

    def __init__(self, begun, left):
        self.begun, self.ended = begun, None
        self.left_before = self.left_after = left
        self.salt = self.pore_salt = 0.0


def start(story):
    """Begin a regeneration: reset counters, turn the valve, or change tanks."""
    tank_until(story, story.time)
    story.days_since, story.last_begun = 0, story.time
    story.counter = story.counter_set
    story.cycle = Cycle(story.time, story.left)
    if story.home.control == TWIN:
        story.left, story.resting = story.resting, story.left
    if not story.condition.piston_travels:  # the control believes it ran
        story.cycle.ended = story.time
        story.history.append(story.cycle)
        return
    flush_pores(story)
    _enter(story, BACKWASH)


def _enter(story, position):
    story.mode = position
    story.minutes_left = _minutes_of(story, position)
    if story.condition.stall_position == position:
        story.minutes_left = inf
    if position == BRINE:
        usable = story.condition.usable_brine_share * (1 - story.condition.mush_share)
        tank_until(story, story.time)
        story.brine_allowed = story.tank.above_heel() * usable


def _minutes_of(story, position):
    home = story.home
    if position == BACKWASH:
        return home.backwash_minutes
    if position == BRINE:
        return home.brine_minutes
    if position == FAST_RINSE:
        return home.rinse_minutes
    return home.plan.refill * story.condition.salt_dose_factor


def finish_position(story):
    """Go on to the next position; after the refill back to service."""
    tank_until(story, story.time)
    if story.mode < REFILL:
        if story.mode == FAST_RINSE:
            _close_cycle(story)
        _enter(story, story.mode + 1)
        return
    story.mode, story.minutes_left = SERVICE, inf


def _close_cycle(story):
    """Note what the cycle did; the refill that follows serves the next one."""
    cycle = story.cycle
    cycle.ended = story.time
    cycle.left_after = story.resting if story.home.control == TWIN else story.left
    cycle.pore_salt = story.pore_salt
    story.history.append(cycle)
    story.pore_water = story.ledger.softened
    story.cycle_done()


def tank_until(story, now):
    """Bring the brine tank to a time: salt dissolves, water runs in while something lets it."""
    minutes = now - story.tank.time
    if minutes <= 0:
        return
    inflow = story.condition.brine_valve_leak / 60
    if story.mode == REFILL and story.alive:
        inflow += refill_flow(story)
    if inflow > 0:
        story.tank.fill(inflow, minutes, float_height(story))
    else:
        story.tank.settle(now)


def float_height(story):
    """Return the height [in] at which the float now shuts."""
    return story.tank.float_height * story.condition.float_height_factor


def refill_flow(story):
    """Return the flow [gpm] that now refills the tank: its control's, unless pressure is short."""
    now = story.condition
    if not now.brine_valve_opens:
        return 0.0
    felt = story.pressure.at_softener(0.0, now)
    return story.home.refill_flow * now.refill_factor * min(1.0, sqrt(felt / CONTROL_NEED))


def live_in_position(story, until):
    """Live in a position that passes raw water to the house, piece by piece of its draws.

    Each draw changes the pressure, and with it what the drain and the injector pass.
    """
    pieces, count = story.pieces, len(story.pieces)
    while story.time < until:
        end, flow, hot = until, 0.0, 0.0
        if story.index < count:
            begin, stop, flow, hot = pieces[story.index]
            if begin > story.time:
                end, flow, hot = min(begin, until), 0.0, 0.0
            else:
                end = min(stop, until)
                if end < stop:
                    pieces[story.index] = (end, stop, flow, hot)
                else:
                    story.index += 1
        minutes = end - story.time
        drain_in_position(story, story.time, minutes, flow)
        if flow:
            serve_raw(story, flow, hot, minutes)
        story.time = end


def drain_in_position(story, begin, minutes, house):
    """Let the valve's position act for some minutes while the house draws a flow [gpm].

    A twin's resting bed is told of them afterwards, without the draws of the house.
    """
    if story.mode == BRINE:
        _brine(story, begin, minutes, house)
    elif story.mode in (BACKWASH, FAST_RINSE):
        flow = story.pressure.drain_flow(house, story.condition)
        _rinse(story, flow * minutes)


def _rinse(story, water):
    """Send raw water [gal] through the bed to the drain."""
    ledger = story.ledger
    ledger.to_drain += water
    ledger.regeneration_grains += water * story.raw
    ledger.drain_grains += water * story.raw
    rinsed = story.pore_salt * (1 - _left_of_pores(story, water))
    ledger.salt_rinsed += rinsed
    story.pore_salt -= rinsed


def _left_of_pores(story, water):
    """Return the share [1] of the salt in the bed that water [gal] through it leaves there."""
    return exp(-water / (story.physics.rinse_mixing * GALLONS_IN_A_CUBIC_FOOT * story.volume))


def _brine(story, begin, minutes, house):
    """Draw brine while there is some above the heel, then rinse slowly."""
    suction, motive = story.pressure.injector_flows(house, story.condition)
    tank = story.tank
    if not story.condition.brine_valve_opens:
        suction = 0.0
    if suction < 0:
        inflow = -suction + story.condition.brine_valve_leak / 60
        tank_until(story, begin)
        tank.fill(inflow, minutes, float_height(story))
        _rinse(story, motive * minutes)
        return
    drawing = 0.0
    if suction > 0 and story.brine_allowed > 0:
        there = min(story.brine_allowed, tank.above_heel())
        drawing = min(minutes, there / suction)
        tank_until(story, begin + drawing)
        _draw(story, suction * drawing, motive * drawing)
        story.brine_allowed -= suction * drawing
        if drawing < minutes:
            story.brine_allowed = 0.0
    tank_until(story, begin + minutes)
    _rinse(story, motive * (minutes - drawing))


def _draw(story, brine, motive_water):
    """Send brine [gal], thinned by the injector's water [gal], through the bed."""
    if brine <= 0:
        return
    water, salt = story.tank.draw(brine)
    pounds_a_gallon = density(story.home.temperature) / 1000 * GALLON / POUND
    strength = 100 * salt / (salt + pounds_a_gallon * (water + motive_water))
    counts = salt * share_that_counts(strength)
    before = story.resting if story.home.control == TWIN else story.left
    after = regenerated(before, counts, story.volume, story.quality, story.physics)
    if story.home.control == TWIN:
        story.resting = after
    else:
        story.left = after
    story.pore_salt += salt
    story.cycle.salt += salt
    ledger = story.ledger
    ledger.to_drain += water + motive_water
    ledger.regeneration_grains += motive_water * story.raw
    ledger.drain_grains += motive_water * story.raw + (after - before)
    ledger.recovered += after - before
    ledger.exchanged += exchanged_salt(after - before)
    ledger.salt_to_bed += salt


def flush_pores(story):
    """Let the water served since the last regeneration have taken its salt to the taps."""
    served = (story.ledger.softened - story.pore_water) * story.bed_share
    kept = story.pore_salt * _left_of_pores(story, served)
    story.ledger.salt_to_taps += story.pore_salt - kept
    story.pore_salt = kept
    story.pore_water = story.ledger.softened
