"""What is set on a control for a home, by the relations of the calculators, in plain numbers."""

from math import ceil, floor

from calculators.brine import ROOM_OF_SALT
from calculators.capacity import capacity_of_dose
from calculators.dissolved_solids import capacity_factor
from calculators.dose import DAYS_WITH_MUCH_IRON, DAYS_WITH_SOME_IRON, MUCH_IRON, SOME_IRON
from calculators.interval import IMMEDIATE_RESERVE
from calculators.quantities import round_to, snap
from calculators.readings import CLOCK, DELAYED, TWIN

IRON_ALLOWANCE = 4.0  # gpg for each mg/L; common practice, no source
SALT_IN_WATER = 3.0  # lb/gal, as the trade counts
METER_STEP, REFILL_STEP = 10.0, 1.0  # gal, min
LONGEST_INTERVAL = 14  # days; common practice, no source


class Plan:
    """Settings of a sound home: hardness setting, capacity, counter or days, refill minutes.

    setting: gpg; capacity: grains; water: gal/day; counter: gal, none on a time clock; days: the
    interval of a time clock, or the longest of a meter; interval: days between regenerations;
    salt: lb that the refill dissolves; refill: min.
    """

    __slots__ = (
        "setting", "capacity", "water", "counter", "days", "interval", "refill", "salt", "brine",
    )  # fmt: skip

    def __init__(self, home):
        self.setting = float(ceil(snap(home.hardness + IRON_ALLOWANCE * home.iron) - 1e-9))
        self.water = home.people * home.water_per_person
        self.capacity = capacity_of_dose(home.dose) * home.resin * capacity_factor(home.solids)
        total = self.capacity / self.setting
        days = total / self.water
        self.days = LONGEST_INTERVAL
        if home.iron > SOME_IRON:
            self.days = DAYS_WITH_MUCH_IRON if home.iron > MUCH_IRON else DAYS_WITH_SOME_IRON
        self.counter = None
        if home.control == CLOCK:
            self.days = min(self.days, max(1, floor(snap(days) + 1e-9)))
            self.interval = float(self.days)
        elif home.control == DELAYED:
            reserve = self.water if home.reserve is None else home.reserve
            self.counter = max(METER_STEP, round_to(total - reserve, METER_STEP, "down"))
            self.interval = min(float(self.days), self.counter / self.water + 0.5)
        else:
            reserve = 0.0 if home.control == TWIN else total * IMMEDIATE_RESERVE / 100
            self.counter = max(METER_STEP, round_to(total - reserve, METER_STEP, "down"))
            self.interval = min(float(self.days), self.counter / self.water)
        exact = home.dose * home.resin / SALT_IN_WATER / home.refill_flow
        self.refill = round_to(exact, REFILL_STEP, "up")
        water = self.refill * home.refill_flow
        self.salt = water * SALT_IN_WATER
        self.brine = water + self.salt * ROOM_OF_SALT
