"""What a household draws: every draw of a day, and the pieces of constant flow they make."""

from bisect import bisect_right
from math import erf, exp, pi, sqrt

from calculators.clock import HOURLY_WATER
from calculators.simulation.clock import DAY

#: Share [%] of a day's water in each hour of a Saturday or Sunday; common practice, no source.
WEEKEND_WATER = (
    1.0, 0.6, 0.4, 0.3, 0.4, 1.0, 2.6, 5.0, 7.2, 8.4, 8.2, 7.2,
    6.2, 5.5, 4.9, 4.7, 5.0, 5.6, 6.1, 6.0, 5.4, 4.3, 2.6, 1.4,
)  # fmt: skip

#: Each draw for a person and day: name, how many, gal, gpm, hot share [1]; common practice, no
#: source.
DRAWS = (
    ("toilet", 5.0, 1.8, 3.0, 0.0),
    ("shower", 0.80, 17.0, 2.1, 0.65),
    ("tap", 20.0, 0.6, 1.0, 0.40),
    ("clothes washer", 0.35, 28.0, 3.0, 0.20),
    ("dishwasher", 0.12, 6.0, 1.5, 1.0),
    ("bath", 0.07, 30.0, 4.0, 0.60),
)
#: Water [gal] that a person draws in a day by the table.
WATER_BY_TABLE = sum(count * gallons for _, count, gallons, _, _ in DRAWS)
SPREAD = 0.25  # standard deviation of the logarithm of a draw's volume
GUEST_STAYS = 0.5  # in a month
DAYS_IN_A_MONTH = 30.4


def _minutes_of(hourly):
    """Return a table of a thousandth of the day's water each: (first minute, minutes it takes)."""
    table = []
    for hour, share in enumerate(hourly):
        parts = round(10 * share)
        table += [(60 * (hour + part / parts), 60 / parts) for part in range(parts)]
    return tuple(table)


def _volume_factors(parts=256):
    """Return as many equally likely factors of a draw's volume: log-normal, with a mean of one.

    The places of the normal distribution are found one after another by Newton's method.
    """
    factors, place = [], -3.0
    for part in range(parts):
        wanted, off = (part + 0.5) / parts, 1.0
        while abs(off) > 1e-9:
            steep = exp(-place * place / 2) / sqrt(2 * pi)
            off = (0.5 * (1 + erf(place / sqrt(2))) - wanted) / steep
            place -= max(-0.5, min(0.5, off))
        factors.append(exp(SPREAD * place))
    mean = sum(factors) / parts
    return tuple(factor / mean for factor in factors)


WEEKDAY_TABLE, WEEKEND_TABLE = _minutes_of(HOURLY_WATER), _minutes_of(WEEKEND_WATER)
FACTORS = _volume_factors()


def _counts(mean):
    """Return the chances, added up, of 0, 1, 2 ... events where `mean` are usual (Poisson)."""
    chance = exp(-mean)
    added, count, sums = chance, 0, [chance]
    while added < 1 - 1e-12 and count < 10 * mean + 50:
        count += 1
        chance *= mean / count
        added += chance
        sums.append(added)
    return sums


class Household:
    """People, their habits, and the draws of each of their days in turn.

    people; water_per_person [gal/day]; habit: minutes by which their day is late; first_weekday:
    0 to 6, 5 and 6 are the weekend; peak: factor of flows; volumes stay.
    """

    __slots__ = ("people", "habit", "first_weekday", "guests", "volumes", "random", "_sums")

    def __init__(self, people, water_per_person, habit, first_weekday, random, guests=True):
        self.people, self.habit, self.first_weekday = people, habit, first_weekday
        scale = water_per_person / WATER_BY_TABLE
        self.volumes = [gallons * scale for _, _, gallons, _, _ in DRAWS]
        self.random = random
        self.guests = [] if guests else None  # nights left and heads of each stay
        self._sums = {}

    def _heads(self, extra):
        """Return how many draw water today; let guests come and go."""
        if self.guests is None:
            return self.people + extra
        random = self.random
        self.guests = [(nights - 1, heads) for nights, heads in self.guests if nights > 1]
        if random.random() < GUEST_STAYS / DAYS_IN_A_MONTH:
            self.guests.append((random.randint(2, 6), random.randint(1, 3)))
        return self.people + extra + sum(heads for _, heads in self.guests)

    def day(self, number, extra_people=0.0, peak=1.0):
        """Return the draws of a day: (start, end, flow, hot flow) in min and gpm, by start.

        number: of the day, from 0; times are true minutes from the start of the story. A draw that
        runs past midnight runs on. Draws of one kind are independent of all others.
        """
        heads = self._heads(extra_people)
        random = self.random.random
        midnight = DAY * number
        weekend = (self.first_weekday + number) % 7 > 4
        table = WEEKEND_TABLE if weekend else WEEKDAY_TABLE
        habit, parts = self.habit, len(table)
        factors, sizes = FACTORS, len(FACTORS)
        sums = self._sums.get(heads)
        if sums is None:
            sums = [_counts(heads * count) for _, count, _, _, _ in DRAWS]
            self._sums[heads] = sums
        draws = []
        for (_, _, _, flow, hot), volume, likely in zip(DRAWS, self.volumes, sums, strict=True):
            count = bisect_right(likely, random())
            if not count:
                continue
            flow *= peak
            hot_flow = flow * hot
            usual = volume / flow
            for _ in range(count):
                place = random() * parts
                part = int(place)
                minute, length = table[part]
                start = midnight + (minute + (place - part) * length + habit) % DAY
                end = start + usual * factors[int(random() * sizes)]
                draws.append((start, end, flow, hot_flow))
        draws.sort()
        return draws


def pieces_of(draws, start, end, base=0.0):
    """Return the pieces of constant flow (start, end, flow, hot flow) of draws between two times.

    draws: sorted by start. base: a cold flow [gpm] that never stops; with it the pieces leave no
    gaps. Draws that overlap are summed; what lies outside start and end is cut off.
    """
    pieces = []
    last = start
    index, count = 0, len(draws)
    while index < count:
        draw = draws[index]
        index += 1
        begin, stop, flow, hot = draw
        if stop <= start:
            continue
        if begin >= end:
            break
        if index == count or draws[index][0] >= stop:  # alone
            begin = max(begin, start)
            stop = min(stop, end)
            if base:
                if begin > last:
                    pieces.append((last, begin, base, 0.0))
                last = stop
                flow += base
            pieces.append((begin, stop, flow, hot))
            continue
        together, until = [draw], stop
        while index < count and draws[index][0] < until:
            draw = draws[index]
            index += 1
            together.append(draw)
            if draw[1] > until:
                until = draw[1]
        begin = max(begin, start)
        if base and begin > last:
            pieces.append((last, begin, base, 0.0))
        last = min(until, end)
        _sum_up(together, start, end, base, pieces)
    if base and last < end:
        pieces.append((last, end, base, 0.0))
    return pieces


def _sum_up(draws, start, end, base, pieces):
    """Add the pieces of draws that overlap."""
    turns = []
    for begin, stop, flow, hot in draws:
        if stop <= start:
            continue
        turns.append((begin if begin > start else start, flow, hot))
        turns.append((stop, -flow, -hot))
    turns.sort()
    last = None
    flow = hot = 0.0
    running = 0
    for time, more, more_hot in turns:
        stop = time if time < end else end
        if running and stop > last:
            pieces.append((last, stop, flow + base, hot if hot > 0 else 0.0))
        last = stop
        if time >= end:
            break
        running += 1 if more > 0 else -1
        if running:
            flow += more
            hot += more_hot
        else:
            flow = hot = 0.0
