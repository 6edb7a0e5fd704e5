"""Service: what the house draws through the bed and the heater, and what its taps give."""

from math import exp, inf, sqrt

from calculators.leakage import USUAL_FLOW
from calculators.readings import TWIN
from calculators.simulation.bed import FAR_FROM_SPENT, SLOWEST, left_after
from calculators.simulation.heater import mixed
from calculators.simulation.positions import REFILL, SERVICE

#: What is less is the last digit of a number, not water [gal, gpm].
A_SIP = 1e-6
#: A hot draw larger than this share of the heater is cut in parts while the bed gives out: then
#: the hardness of its own inflow moves by more than this share of the raw hardness.
LARGE_DRAW, MOVES = 0.1, 0.02


def serve(story, until):
    """Let the house draw softened water until a time; stop where a counter says at once.

    Return whether it did. Nearly all the work is done here, so it is one loop over the pieces
    of constant flow, on local names.
    """
    pieces, index, count = story.pieces, story.index, len(story.pieces)
    left, heater, counter = story.left, story.heater, story.counter
    raw, share, now = story.raw, story.bed_share, story.condition
    drop = (raw - story.leakage) * share
    front_root = story.front * sqrt(share / (story.volume * USUAL_FLOW))
    slow = SLOWEST * story.volume / share if share else 1.0
    through = 1 - now.bypass_share
    stall = story.physics.meter_stall / through if through else inf
    meter_share = story.meter_share if counter is not None else 0.0
    at_once = story.at_once and story.mode == SERVICE
    if at_once and counter <= 0:
        return True
    crossing = now.cross_connection_share
    to_heater, added = 1 - crossing, crossing * raw + now.heater_scale
    tank = story.home.heater
    large = LARGE_DRAW * tank
    water = taps = heater_in = hot_water = 0.0
    hardest_cold, hardest_hot = story.hardest_cold, story.hardest_hot
    spent = False
    while index < count:
        begin, stop, flow, hot = pieces[index]
        if begin >= until:
            break
        end = stop if stop <= until else until
        minutes = end - begin
        if crossing:
            flow -= crossing * hot
        if hot * minutes > large:
            minutes = steady_minutes(minutes, left, drop * flow, story.front)
            end = begin + minutes
        if meter_share and flow >= stall:
            counted = flow * minutes * meter_share
            if at_once and counted >= counter:
                minutes *= counter / counted
                end = begin + minutes
                counted, spent = counter, True
            counter -= counted
        volume = flow * minutes
        after = left - drop * volume
        front = front_root * sqrt(flow if flow > slow else slow)
        if front and after < FAR_FROM_SPENT * front:
            after = left_after(left, drop * volume, front)
        if volume > 0:
            cold = raw - (left - after) / volume
            left = after
            water += volume
            taps += cold * volume
            if cold > hardest_cold and volume > A_SIP:
                hardest_cold = cold
            if hot:
                hot_water += hot * minutes
                drawn = hot * minutes * to_heater
                heater_in += cold * drawn
                heater = cold + (heater - cold) * exp(-drawn / tank)
                tapped = heater * to_heater + added
                if tapped > hardest_hot:
                    hardest_hot = tapped
        if end < stop:
            pieces[index] = (end, stop, pieces[index][2], hot)
        else:
            index += 1
        if spent:
            until = end
            break
    ledger = story.ledger
    ledger.softened += water
    ledger.raw_grains += raw * water
    ledger.tap_grains += taps
    _book_heater(story, heater_in, heater, hot_water)
    story.index, story.left, story.counter = index, left, counter
    story.hardest_cold, story.hardest_hot = hardest_cold, hardest_hot
    story.time = until
    return spent


def _book_heater(story, grains_in, holds, hot_water):
    """Book what went through the heater, and let it hold what it now does [gpg]."""
    ledger, now = story.ledger, story.condition
    ledger.heater_in += grains_in
    ledger.heater_out += grains_in - story.home.heater * (holds - story.heater)
    ledger.hot_water += hot_water
    ledger.crossed_water += now.cross_connection_share * hot_water
    ledger.crossed_grains += now.cross_connection_share * hot_water * story.raw
    ledger.scale_grains += now.heater_scale * hot_water
    story.heater = holds


def serve_raw(story, flow, hot, minutes):
    """Let the house draw raw water around the bed at a flow [gpm]."""
    crossing = story.condition.cross_connection_share
    water = (flow - crossing * hot) * minutes
    drawn = hot * minutes * (1 - crossing)
    holds = mixed(story.heater, story.raw, drawn, story.home.heater)
    story.ledger.passed_by += water
    story.ledger.raw_grains += story.raw * water
    story.ledger.tap_grains += story.raw * water
    _book_heater(story, story.raw * drawn, holds, hot * minutes)
    story.hardest_cold = max(story.hardest_cold, story.raw)
    if hot:
        tapped = holds * (1 - crossing) + crossing * story.raw + story.condition.heater_scale
        story.hardest_hot = max(story.hardest_hot, tapped)


def steady_minutes(minutes, left, pace, front):
    """Return how long a draw goes on before the share that passes moves much [min].

    pace: load [grains/min]; front: at the usual flow [grains]. A stirred heater is exact for an
    inflow that stays the same, so a large hot draw is halved until it nearly does.
    """
    while front and minutes > 1e-3:
        after = left_after(left, pace * minutes, front)
        if exp(-after / front) - exp(-left / front) <= MOVES:
            break
        minutes /= 2
    return minutes


def tap(story, flow):
    """Return the hardness [gpg] of the cold water that a tap gives now at a flow [gpm]."""
    if SERVICE < story.mode < REFILL and story.home.control != TWIN:
        return story.raw
    return story.raw - (story.raw - valve_outlet(story, flow)) * (1 - story.condition.bypass_share)


def valve_outlet(story, flow, left=None):
    """Return the hardness [gpg] behind the valve, before the bypass, at a flow [gpm] to it.

    left: capacity left [grains], where it is not the present one.
    """
    now = story.condition
    around = (1 - now.seal_leak_share) * (1 - now.riser_leak_share)
    each = max(flow * around / story.volume, SLOWEST)
    front = story.front * sqrt(each / USUAL_FLOW)
    passing = exp(-(story.left if left is None else left) / front)
    soft = story.leakage + (story.raw - story.leakage) * passing
    return story.raw - around * (story.raw - soft)


def hot_tap(story):
    """Return the hardness [gpg] of the hot water that a tap gives now."""
    now = story.condition
    crossing = now.cross_connection_share
    return story.heater * (1 - crossing) + crossing * story.raw + now.heater_scale
