"""The days of one home, event by event: all flows are constant between two events.

Times are true minutes from a midnight. Between events every state moves by its closed form, so
nothing depends on a step of time.
"""

from math import exp, inf
from random import Random

from calculators.dissolved_solids import capacity_factor
from calculators.readings import CLOCK, IMMEDIATE, TWIN
from calculators.simulation.bed import left_after
from calculators.simulation.changes import Condition
from calculators.simulation.clock import DAY, Clock
from calculators.simulation.household import Household, pieces_of
from calculators.simulation.ledger import Ledger
from calculators.simulation.physics import USUAL_PHYSICS
from calculators.simulation.positions import REFILL, SERVICE
from calculators.simulation.pressure import Pressure
from calculators.simulation.regeneration import (
    drain_in_position,
    finish_position,
    live_in_position,
    start,
    tank_until,
)
from calculators.simulation.service import A_SIP, serve
from calculators.water import IRON, charge_equivalent

#: Below this share of its voltage a control stands still; common practice, no source.
LEAST_VOLTAGE = 0.85
LEAST_QUALITY, LEAST_VOLUME = 0.4, 0.1  # what losses of every cycle leave at the least
YEAR = 365.25 * DAY
CUT_MEDIAN, CUT_SPREAD, CUT_LEAST = 90.0, 1.0, 1.0  # min; common practice, no source
BAG = 40.0  # lb
LOW_SALT, SALT_OVER_WATER = 0.2, 2.0  # share of the stock, in: a careful customer adds salt


class Story:
    """One home's days. `run` lives them; attributes tell its state at `time`.

    left: capacity left in the bed in service [grains]; resting: of a twin's other bed; heater:
    hardness it holds [gpg]; counter: gallons left on the meter; mode: position of the valve;
    pore_salt: salt left in the bed by the last regeneration [lb]; history: the regenerations;
    last_begun: when the control last began one [min]; salt_seen: solid salt at each midnight, less
    what was added [lb]; hardest_cold, hardest_hot: at the taps [gpg] since `watch` was called.
    """

    __slots__ = (
        "home", "physics", "condition", "changes", "onset", "pending", "ledger", "pressure",
        "clock", "tank", "household", "chance", "time", "tomorrow", "draws", "pieces", "index",
        "left", "resting", "heater", "counter", "counter_set", "interval", "days_since", "mode",
        "minutes_left", "pore_salt", "pore_water", "history", "cycle_quality", "cycle_volume",
        "raw", "leakage", "bed_share", "meter_share", "volume", "quality", "front", "base_flow",
        "alive", "next_set", "next_cut", "cut_ends", "next_cut_length", "brine_allowed",
        "hardest_cold", "hardest_hot", "at_once", "cycle", "last_begun", "salt_seen",
        "watched_from",
    )  # fmt: skip

    def __init__(self, home, seed=0, changes=(), onset=inf, physics=USUAL_PHYSICS, phase=0.0):
        """Begin at a midnight with a bed regenerated some share `phase` [1] of an interval ago.

        changes: triples (name, value, growth a day) that act from the true time `onset` [min].
        """
        random = Random(seed)
        self.home, self.physics, self.changes, self.onset = home, physics, tuple(changes), onset
        self.pending = bool(self.changes)
        self.condition, self.ledger = Condition(), Ledger()
        self.pressure = Pressure(home, physics)
        self.clock = Clock(home.clock_offset, home.hold_up)
        self.tank = home.brine_tank_of(physics)
        self.household = Household(
            home.people, home.water_per_person, home.habit, home.first_weekday,
            Random(random.getrandbits(64)), home.guests,
        )  # fmt: skip
        self.chance = random
        self.time, self.tomorrow = 0.0, 0.0
        self.draws, self.pieces, self.index = [], [], 0
        self.left = self.resting = self.volume = self.quality = 0.0
        self.cycle_quality = self.cycle_volume = 1.0
        self.mode, self.minutes_left, self.brine_allowed = SERVICE, inf, 0.0
        self.pore_salt = self.pore_water = 0.0
        self.history, self.cycle, self.salt_seen = [], None, []
        self.last_begun = -phase * home.plan.interval * DAY
        self.alive = True
        self.cut_ends = self.next_cut_length = 0.0
        self.next_cut = inf
        self._plan_cut(0.0)
        self._derive()
        self._begin(phase)
        self.heater = self.hardest_hot = self.hardest_cold = self.leakage
        self.next_set = self.clock.next_time(home.set_time, -1.0)
        self.watched_from = (0.0, 0.0)

    def _begin(self, phase):
        """Let the bed, the counter and the brine tank be what a last regeneration left."""
        home, plan, tank = self.home, self.home.plan, self.tank
        full = home.dose * self.physics.curve_top / (home.dose + self.physics.curve_half)
        full = self.volume * (self.physics.heel + full * self.quality)
        tank.fill(plan.refill * home.refill_flow, 1.0)
        tank.settle(DAY)
        tank.time = tank.filled = 0.0
        used = phase * plan.water * plan.interval
        self.resting = full
        self.left = left_after(full, used * (self.raw - self.leakage), self.front)
        self.days_since = int(phase * plan.interval)
        self.counter = None if plan.counter is None else plan.counter - used

    # The present condition

    def _derive(self):
        """Work out what follows from the condition, the home and the cycles lived through."""
        home, now = self.home, self.condition
        self.raw = home.hardness * now.raw_hardness_factor + charge_equivalent(now.iron, IRON)
        self.leakage = min(home.leakage * self.physics.raw_passing, self.raw)
        around = (1 - now.seal_leak_share) * (1 - now.riser_leak_share)
        through = 1 - now.bypass_share
        self.bed_share = through * around
        self.meter_share = 0.0 if now.flow_reversed else through * now.meter_factor
        quality = home.resin_condition * capacity_factor(home.solids)
        quality *= now.resin_capacity_factor * self.cycle_quality
        volume = home.resin * now.bed_volume_factor * self.cycle_volume
        if self.volume:
            kept = min(1.0, quality * volume / (self.quality * self.volume))
            self.ledger.lost += (1 - kept) * (self.left + self.resting)
            self.left *= kept
            self.resting *= kept
        self.quality, self.volume = quality, volume
        self.front = self.physics.front * volume * now.front_length_factor
        self.base_flow = now.leak_flow if now.leak_flow > A_SIP else 0.0
        plan = home.plan
        self.interval = plan.days
        if home.control == CLOCK:
            self.interval = max(1, round(plan.days * now.setting_factor))
        self.counter_set = None if plan.counter is None else plan.counter * now.setting_factor
        self._see_power()

    def _see_power(self):
        """See whether the control runs, and let its clock stop or run."""
        now = self.condition
        self.alive = bool(
            not self.cut_ends
            and now.power_on
            and now.supply_voltage_share >= LEAST_VOLTAGE
            and now.clock_runs
        )
        if self.alive:
            self.clock.run(self.time)
        else:
            self.clock.stop(self.time)
        self.next_set = inf
        if self.alive:
            self.next_set = self.clock.next_time(self.home.set_time, self.time)
        self.at_once = (
            self.alive and self.home.control in (IMMEDIATE, TWIN) and not now.days_blocked
        )

    def _take_changes(self, at_onset):
        """Let the changes act as they have grown by now."""
        tank_until(self, self.time)
        now = self.condition
        offset = now.clock_offset
        now.take(self.changes, (self.time - self.onset) / DAY)
        if now.clock_offset != offset:
            self.clock.offset += now.clock_offset - offset
        if at_onset:
            self.pending = False
            if now.salt_left >= 0:
                self.tank.set_salt(now.salt_left)
            if now.salt_bridged:
                self.tank.bridge(now.salt_bridged)
            if now.heater_hardness >= 0:
                self.heater = now.heater_hardness
        self._derive()

    # Events

    def run(self, until):
        """Live until a true time [min]."""
        while self.time < until:
            if self.time >= self.tomorrow:
                self._new_day()
            stop = min(until, self.tomorrow)
            if self.pending:
                if self.time >= self.onset:
                    self._take_changes(at_onset=True)
                    self._cut_pieces()
                else:
                    stop = min(stop, self.onset)
            self._live(stop)

    def watch(self):
        """Begin to watch how hard the water is."""
        self.hardest_cold = self.hardest_hot = 0.0
        ledger = self.ledger
        self.watched_from = (ledger.tap_grains, ledger.softened + ledger.passed_by)

    def usual_cold(self):
        """Return the mean hardness [gpg] of the cold water since `watch` was called."""
        grains, water = self.watched_from
        water = self.ledger.softened + self.ledger.passed_by - water
        return (self.ledger.tap_grains - grains) / water if water > 0 else self.leakage

    def _new_day(self):
        number = round(self.tomorrow / DAY)
        if self.changes and not self.pending and self.time >= self.onset:
            self._take_changes(at_onset=False)
        if number % 7 == 0:
            self._top_up()
        tank = self.tank
        self.salt_seen.append(tank.salt + tank.hanging - tank.added)
        running = [draw for draw in self.draws if draw[1] > self.tomorrow]
        now = self.condition
        today = self.household.day(number, now.extra_people, now.peak_flow_factor)
        self.draws = sorted(running + today) if running else today
        self.tomorrow += DAY
        self._cut_pieces()

    def _cut_pieces(self):
        self.pieces = pieces_of(self.draws, self.time, self.tomorrow, self.base_flow)
        self.index = 0

    def _top_up(self):
        """Let a careful customer add salt where little is seen."""
        tank = self.tank
        if not self.home.tops_up or self.condition.salt_left >= 0:
            return
        tank_until(self, self.time)
        seen = tank.salt + tank.hanging
        low = seen < LOW_SALT * self.home.salt
        low = low or seen * tank.in_a_pound < tank.level() + SALT_OVER_WATER
        if low and self.chance.random() < self.home.tops_up:
            tank.add_salt(2 * BAG)

    def _plan_cut(self, now):
        if self.home.power_cuts:
            self.next_cut = now + self.chance.expovariate(self.home.power_cuts / YEAR)
            length = CUT_MEDIAN * exp(self.chance.gauss(0.0, CUT_SPREAD))
            self.next_cut_length = max(CUT_LEAST, length)

    def _live(self, stop):
        """Live until a time within the day, from event to event."""
        while self.time < stop:
            begun = self.time
            position_ends = self.time + self.minutes_left if self.alive else inf
            cut = self.cut_ends or self.next_cut
            due = min(position_ends, self.next_set, cut, stop)
            position = self.mode
            raw = SERVICE < position < REFILL and self.home.control != TWIN
            crossed = False
            if raw:
                live_in_position(self, due)
            elif due > self.time:
                crossed = serve(self, due)
            if SERVICE < position < REFILL and not raw:  # the bed that rests, by itself
                drain_in_position(self, begun, self.time - begun, 0.0)
            if self.alive:
                self.minutes_left -= self.time - begun
            leak = self.condition.drain_leak * (self.time - begun)
            if leak and not raw:
                self.ledger.leaked += leak
                self.ledger.leaked_grains += leak * self.raw
            if crossed:
                start(self)
            elif self.time >= position_ends:
                finish_position(self)
            elif self.time >= self.next_set:
                self._at_set_time()
            elif self.time >= cut:
                self._power_cut()

    def _at_set_time(self):
        self.next_set = self.clock.next_time(self.home.set_time, self.time)
        self.days_since += 1
        if self.mode != SERVICE or self.condition.days_blocked:
            return
        spent = self.counter is not None and self.counter <= 0
        if spent or self.days_since >= self.interval:
            start(self)

    def _power_cut(self):
        """Begin or end a power cut."""
        if self.cut_ends:
            self.cut_ends = 0.0
            self._plan_cut(self.time)
        else:
            self.cut_ends = self.time + self.next_cut_length
        self._see_power()

    def cycle_done(self):
        """Let a whole cycle wear the bed; see `regeneration.finish_position`."""
        now = self.condition
        if now.capacity_loss_per_cycle or now.resin_loss_per_cycle:
            worn = self.cycle_quality * (1 - now.capacity_loss_per_cycle)
            self.cycle_quality = max(LEAST_QUALITY, worn)
            gone = self.cycle_volume * (1 - now.resin_loss_per_cycle)
            self.cycle_volume = max(LEAST_VOLUME, gone)
            self._derive()
