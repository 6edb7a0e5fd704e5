"""Homes: what stands in the basement and who lives there; one by its figures, or sampled."""

from math import exp

from calculators.capacity import capacity_of_dose
from calculators.dissolved_solids import capacity_factor, fresh_leakage
from calculators.flow import usual_backwash
from calculators.quantities import snap
from calculators.readings import CLOCK, DELAYED, IMMEDIATE
from calculators.simulation.brine_tank import BrineTank
from calculators.simulation.physics import USUAL_PHYSICS
from calculators.simulation.plan import IRON_ALLOWANCE, Plan
from calculators.units import GRAIN_PER_GALLON

TOWN, WELL = "town", "well"
#: Resin [ft3] and diameter of its tank [in] as sold.
TANKS = ((0.75, 8.0), (1.0, 9.0), (1.5, 10.0), (2.0, 12.0), (2.5, 13.0), (3.0, 14.0), (4.0, 16.0))
BRINE_TANKS = (14.0, 18.0, 24.0)  # in
#: Heights [in] in brine tanks; common practice, no source.
HIGHEST_LEVEL, LOWEST_FLOAT, FREE_RIM = 20.0, 12.0, 12.0
LEAKAGE_RANGE = 0.05, 0.4  # gpg that pass a fresh bed in sampled homes

#: The home of the handbook's first examples: four people, 20 gpg, some iron, a delayed meter.
USUAL = {
    "people": 4,
    "water_per_person": 60.0,  # gal/day
    "hardness": 20.0,  # gpg
    "iron": 0.5,  # mg/L, allowed for in the setting
    "solids": 450.0,  # mg/L
    "leakage": None,  # gpg past a fresh bed; by the dissolved solids where none is given
    "resin": 1.5,  # ft3
    "tank_diameter": None,  # in
    "dose": 6.0,  # lb/ft3
    "resin_condition": 1.0,  # capacity beside new resin
    "control": DELAYED,
    "reserve": None,  # gal, of a delayed meter; one mean day where none is given
    "set_time": 120.0,  # min after midnight
    "hold_up": 0.0,  # min; 0 is a mechanical clock
    "clock_offset": 0.0,  # min
    "backwash": None,  # gpm
    "backwash_minutes": 10.0,
    "brine_minutes": 60.0,
    "rinse_minutes": 10.0,
    "refill_flow": 0.5,  # gpm
    "brine_tank": 18.0,  # in
    "brine_well": 4.0,  # in
    "brine_heel": 2.0,  # in
    "float_height": 14.0,  # in
    "rim": 34.0,  # in
    "salt": 100.0,  # lb
    "tops_up": 0.0,  # chance that salt is added in a week in which it is wanted
    "heater": 50.0,  # gal
    "pressure": 55.0,  # psi
    "temperature": 55.0,  # °F
    "supply_bore": 1.0,  # in
    "supply_length": 60.0,  # ft
    "drain_bore": 0.5,  # in
    "drain_length": 15.0,  # ft
    "drain_fittings": 2,
    "drain_rise": 3.0,  # ft
    "valve_coefficient": 4.0,  # gpm at a loss of 1 psi
    "habit": 0.0,  # min by which the day is late
    "first_weekday": 0,
    "guests": False,  # whether guests come
    "power_cuts": 0.0,  # in a year
    "water": TOWN,
}


class Home:
    """A home's figures as attributes, the names of USUAL, and the plan made for it."""

    __slots__ = (*USUAL, "plan")

    def __init__(self, **figures):
        """Take figures by name; what is not given is as in USUAL, or follows from the others."""
        unknown = set(figures) - set(USUAL)
        if unknown:
            raise TypeError(f"A home has no {', '.join(sorted(unknown))}.")
        for name, value in USUAL.items():
            setattr(self, name, figures.get(name, value))
        if self.tank_diameter is None:
            holds = [wide for size, wide in TANKS if size >= snap(self.resin)]
            self.tank_diameter = holds[0] if holds else TANKS[-1][1]
        if self.backwash is None:
            self.backwash = usual_backwash(self.tank_diameter)
        if self.leakage is None:
            self.leakage = leakage_of(self.solids, self.dose, self.hardness)
        self.plan = Plan(self)

    def brine_tank_of(self, physics=USUAL_PHYSICS):
        """Return the brine tank as it stands before its first refill."""
        return BrineTank(
            self.brine_tank, self.brine_well, self.brine_heel, self.float_height, self.rim,
            self.temperature, self.salt, physics,
        )  # fmt: skip


def leakage_of(solids, dose, hardness):
    """Return the hardness [gpg] past a fresh bed: `fresh_leakage` in grains per gallon."""
    return fresh_leakage(solids, dose, hardness * GRAIN_PER_GALLON) / GRAIN_PER_GALLON


def _log_normal(random, median, spread, low, high):
    return min(high, max(low, median * exp(random.gauss(0.0, spread))))


def _normal(random, mean, spread, low, high):
    return min(high, max(low, random.gauss(mean, spread)))


def sampled_home(random):
    """Return a home drawn from what a shop's homes are like; common practice, no source."""
    people = random.choices((1, 2, 3, 4, 5, 6), (12, 32, 20, 20, 10, 6))[0]
    water_per_person = random.triangular(38, 80, 55)
    hardness = _log_normal(random, 17.0, 0.4, 5.0, 40.0)
    iron = 0.0 if random.random() < 0.75 else random.uniform(0.2, 1.5)
    well = iron > 0 or random.random() < 0.1
    solids = _log_normal(random, 450.0, 0.4, 100.0, 1500.0)
    dose = float(random.choice((4, 6, 6, 8, 8, 10)))
    load = people * water_per_person * (hardness + IRON_ALLOWANCE * iron)
    each = capacity_of_dose(dose) * capacity_factor(solids)
    control = random.choices((CLOCK, DELAYED, IMMEDIATE), (30, 55, 15))[0]
    # The next size that lasts five days.
    resin = next((size for size, _ in TANKS if size * each >= 5 * load), TANKS[-1][0])
    refill_flow = 0.25 if resin * dose <= 6 else 0.5 if resin * dose <= 20 else 1.0
    mechanical = random.random() < (0.7 if control == CLOCK else 0.3)
    figures = {
        "people": people,
        "water_per_person": water_per_person,
        "hardness": hardness,
        "iron": iron,
        "water": WELL if well else TOWN,
        "solids": solids,
        "leakage": min(LEAKAGE_RANGE[1], max(LEAKAGE_RANGE[0], leakage_of(solids, dose, hardness))),
        "dose": dose,
        "resin": resin,
        "control": control,
        "refill_flow": refill_flow,
        "hold_up": 0.0 if mechanical else 60 * random.uniform(8, 48),
        "clock_offset": random.uniform(-10, 10),
        "heater": float(random.choice((40, 40, 50, 50, 65, 80))),
        "pressure": _normal(random, 55.0, 12.0, 25.0, 90.0),
        "temperature": random.uniform(45, 65),
        "supply_bore": random.choice((0.75, 1.0, 1.0)),
        "supply_length": random.uniform(30, 90),
        "drain_length": random.uniform(5, 25),
        "drain_fittings": random.randint(1, 4),
        "drain_rise": random.uniform(-3, 6),
        "habit": 60 * _normal(random, 0.0, 0.75, -1.5, 1.5),
        "first_weekday": random.randint(0, 6),
        "guests": True,
        "power_cuts": 4.0,
        "salt": random.uniform(70, 200),
        "tops_up": 0.8 if random.random() < 0.8 else 0.0,
    }
    if random.random() < 0.05:  # somebody works at night
        figures["habit"] += 720
    diameter = random.choice((14.0, 18.0, 18.0))
    return fitted_home(diameter, random.uniform(2.0, 5.0), **figures)


def fitted_home(narrowest=18.0, room=3.0, **figures):
    """Return a home whose brine tank is wide enough for its brine, with a float above it.

    narrowest: diameter of the brine tank [in] where it is enough; room: of the float above the
    expected level [in]; figures: as Home takes them.
    """
    for wide in BRINE_TANKS:
        if wide < narrowest:
            continue
        level = expected_level(Home(**figures, brine_tank=wide))
        if level <= HIGHEST_LEVEL:
            break
    float_height = max(LOWEST_FLOAT, level + room)
    return Home(**figures, brine_tank=wide, float_height=float_height, rim=float_height + FREE_RIM)


def expected_level(home, physics=USUAL_PHYSICS):
    """Return the height [in] at which the brine of a sound home stands after its refill."""
    tank = home.brine_tank_of(physics)
    tank.salt += 200.0
    tank.water += home.plan.refill * home.refill_flow
    tank.dissolved = tank.strongest * tank.water
    return tank.level()
