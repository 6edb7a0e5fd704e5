"""The best salt dose: the least salt that still lasts a good many days."""

from calculators.capacity import LEAST_FITTED, MOST_FITTED, capacity_of_dose, dose_of_capacity
from calculators.declare import Calculator, Input, InputProblem, Output
from calculators.efficiency import EFFICIENT, OLD, STRICT
from calculators.quantities import round_to, snap
from calculators.readings import CLOCK, DELAYED, control, resin_condition, resin_volume, salt_step
from calculators.usage import DAYS_IN_A_MONTH

#: Iron comes off badly with little salt and settles in with time, so the trade keeps to these.
SOME_IRON, MUCH_IRON = 0.3, 1.0  # mg/L
DAYS_WITH_SOME_IRON, DAYS_WITH_MUCH_IRON = 7, 4
DOSE_WITH_MUCH_IRON = 8.0  # lb/ft3
SHORTEST_GOOD = 2  # days
WAIT_FOR_NIGHT = 0.5  # days, on average


class _Bed:
    """One bed in one home: what it needs in salt for any number of days between regenerations."""

    def __init__(self, given, reserve):
        self.given = given
        self.reserve = reserve
        self.resin = given.resin_volume * given.resin_condition / 100
        self.least_dose, self.mark, longest = LEAST_FITTED, given.efficiency_mark, None
        if snap(given.iron) > MUCH_IRON:
            self.least_dose, self.mark = DOSE_WITH_MUCH_IRON, min(given.efficiency_mark, OLD)
            longest = DAYS_WITH_MUCH_IRON
        elif snap(given.iron) >= SOME_IRON:
            longest = DAYS_WITH_SOME_IRON
        self.longest = min(given.longest_interval, longest or given.longest_interval)

    def needed(self, days):
        """Return the capacity [grains/ft3] that each volume of resin must give."""
        return (days + self.reserve) * self.given.load / self.resin

    def can_last(self, days):
        """Tell whether any dose gives enough for so many days."""
        return snap(self.needed(days)) <= snap(capacity_of_dose(MOST_FITTED))

    def salt(self, days):
        """Return the salt to set [lb]."""
        dose = max(dose_of_capacity(self.needed(days)), self.least_dose)
        return round_to(dose * self.given.resin_volume, self.given.salt_step, "up")

    def capacity(self, salt):
        """Return the capacity [grains] that a set salt [lb] gives."""
        return capacity_of_dose(salt / self.given.resin_volume) * self.resin

    def best_days(self):
        """Return the longest whole days whose salt reaches the mark; it gives way for two days.

        Where no salt reaches the mark, as in worn resin, at least the longest days of the salt
        that does most. Raises InputProblem where the bed does not last a day.
        """
        reached = {}
        days = 1
        while days <= snap(self.longest) and self.can_last(days):
            salt = self.salt(days)
            reached[days] = snap(self.capacity(salt) / salt)
            days += 1
        if not reached:
            raise InputProblem(
                "load",
                "Even with much salt this bed does not last a day: use more resin, or twin tanks.",
            )
        best = _longest(reached, self.mark)
        if best < SHORTEST_GOOD:
            short = min(SHORTEST_GOOD, _longest(reached, min(self.mark, OLD)))
            best = max(short, _longest(reached, max(reached.values())))
        return best


def _longest(reached, mark):
    return max((days for days, brought in reached.items() if brought >= snap(mark)), default=0)


def _interval(given, work, bed):
    """Return the days wanted, or those that the trade's rule gives."""
    if given.wanted_interval is None:
        work.put("efficiency_mark", bed.mark, "grains/lb")
        work.put("longest_interval", bed.longest, "days")
        return work.step(
            "interval",
            "The rule: of all whole days up to the longest, take the most whose salt still brings "
            "the efficiency wanted; where that is not even two days, the mark gives way.",
            "the most days up to {longest_interval} with at least {efficiency_mark}, or with what "
            "can be reached",
            float(bed.best_days()),
            "days",
        )
    wanted = snap(given.wanted_interval)
    if given.control == CLOCK and wanted != int(wanted):
        raise InputProblem(
            "wanted_interval", "A time clock counts whole days: write a whole number."
        )
    if not bed.can_last(wanted):
        raise InputProblem(
            "wanted_interval",
            f"Even a dose of {work.shown(MOST_FITTED, 'lb/ft³')} does not last so long: choose "
            "fewer days, or use more resin.",
        )
    if wanted > snap(bed.longest):
        work.warn("That is longer than the longest interval for this water: choose fewer days.")
    return work.step("interval", "The days wanted.", "{wanted_interval}", wanted, "days")


def _set_salt(work, bed, days):
    """Return the exact dose [lb/ft3] and the salt that is set [lb]."""
    needed = work.step(
        "needed_capacity",
        "Each volume of resin must give so much, the reserve included.",
        "({interval} + {reserve_days}) × {load} ÷ ({resin_volume} × {resin_condition})",
        bed.needed(days),
        "grains/ft³",
    )
    dose = work.step(
        "exact_dose",
        "The dose on the curve of capacity.",
        "the dose that gives {needed_capacity}",
        dose_of_capacity(needed),
        "lb/ft³",
    )
    work.put("least_dose", bed.least_dose, "lb/ft³")
    salt = work.step(
        "salt",
        "Never below the least dose that cleans the bed; round up, for less would run out early.",
        "the larger of {exact_dose} and {least_dose}, × {resin_volume}, up to a multiple of "
        "{salt_step}",
        bed.salt(days),
        "lb",
    )
    return dose, salt


def _neighbors(work, bed, days, late):
    """Return the salt of a month for a day less and a day more, as far as they may be chosen."""
    values = {}
    for name, word, sign, other in (
        ("sooner", "less", "−", days - 1),
        ("later", "more", "+", days + 1),
    ):
        if snap(other) < 1 or not bed.can_last(other):
            continue
        if other > days and snap(other) > snap(bed.longest):
            continue
        work.put(f"salt_a_day_{name}", bed.salt(other), "lb")
        values[f"month_{name}"] = work.step(
            f"month_{name}",
            f"A day {word} between regenerations would change the month to this.",
            f"{{salt_a_day_{name}}} × {{days_in_a_month}} ÷ ({{mean_interval}} {sign} 1 day)",
            bed.salt(other) * DAYS_IN_A_MONTH / (other + late),
            "lb",
        )
    return values


def _best_salt_dose(given, work):
    delayed = given.control == DELAYED
    reserve, late = (given.reserve_days, WAIT_FOR_NIGHT) if delayed else (0.0, 0.0)
    work.put("reserve_days", reserve, "days")
    bed = _Bed(given, reserve)
    days = _interval(given, work, bed)
    exact, salt = _set_salt(work, bed, days)
    if snap(salt / given.resin_volume) > MOST_FITTED:
        work.warn("The dose lies outside the range the curve was fitted to: take it as a guess.")
    capacity = work.step(
        "capacity",
        "So much the set salt gives back, reserve included.",
        "the capacity of {salt} in {resin_volume} × {resin_condition}",
        bed.capacity(salt),
        "grains",
    )
    efficiency = work.step(
        "efficiency",
        "The salt efficiency, or what the salt brings back for its weight.",
        "{capacity} ÷ {salt}",
        capacity / salt,
        "grains/lb",
    )
    if snap(efficiency) < snap(bed.mark):
        work.warn("The salt is used less well than the mark asks: more resin would save salt.")
    if given.wanted_interval is None and days < SHORTEST_GOOD:
        work.warn("The interval is very short: the bed is small for this home.")
    work.put("wait_for_night", late, "days")
    mean = work.step(
        "mean_interval",
        "A delayed control waits for night, on average half a day; the others do not wait.",
        "{interval} + {wait_for_night}",
        days + late,
        "days",
    )
    work.put("days_in_a_month", DAYS_IN_A_MONTH, "days")
    month = work.step(
        "salt_in_a_month",
        "Over a month.",
        "{salt} × {days_in_a_month} ÷ {mean_interval}",
        salt * DAYS_IN_A_MONTH / mean,
        "lb",
    )
    operating = work.step(
        "operating_efficiency",
        "What is left over in the bed is regenerated too, so the home itself gets less out of the "
        "salt.",
        "{mean_interval} × {load} ÷ {salt}",
        mean * given.load / salt,
        "grains/lb",
    )
    return {
        "interval": days,
        "mean_interval": mean,
        "salt": salt,
        "exact_dose": exact,
        "capacity": capacity,
        "efficiency": efficiency,
        "operating_efficiency": operating,
        "month": month,
        **_neighbors(work, bed, days, late),
    }


BEST_SALT_DOSE = Calculator(
    "best-salt-dose",
    "Best salt dose for an interval",
    "What is the least salt that lasts long enough?",
    inputs=[
        Input(
            "load",
            "Hardness load of the household",
            "load",
            "grains/day",
            example=4800,
            low=50,
            high=100000,
            help="Water in a day times the hardness setting.",
        ),
        resin_volume(help="Of one tank, where there are two."),
        resin_condition(),
        control(),
        Input(
            "reserve_days",
            "Reserve",
            "time",
            "days",
            default=1,
            low=0,
            high=3,
            usual_low=0.5,
            usual_high=1.5,
            help="Days of water kept back for the wait until night.",
            only_when=("control", (DELAYED,)),
        ),
        Input(
            "wanted_interval",
            "Days wanted between regenerations",
            "time",
            "days",
            low=1,
            high=30,
            usual_low=2,
            optional=True,
            help="Leave blank for the trade's rule.",
            unusual="Short intervals save salt and spend water.",
        ),
        Input(
            "iron",
            "Dissolved iron",
            "concentration",
            "mg/L",
            default=0,
            low=0,
            high=15,
            usual_high=1,
            help="With iron the trade regenerates sooner, and with much iron uses more salt.",
            unusual="Look at treatment ahead of the softener.",
        ),
        Input(
            "longest_interval",
            "Longest interval",
            "time",
            "days",
            default=14,
            low=1,
            high=60,
            help="A bed should not stand longer; iron shortens it further.",
        ),
        Input(
            "efficiency_mark",
            "Efficiency wanted",
            "salt efficiency",
            "grains/lb",
            default=EFFICIENT,
            low=1000,
            high=5000,
            usual_low=OLD,
            usual_high=STRICT,
            help="The usual mark is that of a softener called efficient; local rules may ask more.",
        ),
        salt_step(),
    ],
    outputs=[
        Output("salt", "Set the salt to", "mass", "lb", digits=None),
        Output("interval", "Days planned between regenerations", "time", "days", step=0.1),
        Output("mean_interval", "Days between regenerations, on average", "time", "days", step=0.1),
        Output("exact_dose", "Dose that the load alone asks for", "salt dose", "lb/ft³", digits=3),
        Output("capacity", "Capacity at this salt", "capacity", "grains", step=100),
        Output(
            "efficiency",
            "Salt efficiency",
            "salt efficiency",
            "grains/lb",
            digits=3,
        ),
        Output(
            "operating_efficiency",
            "Hardness softened for the weight of salt",
            "salt efficiency",
            "grains/lb",
            digits=3,
        ),
        Output("month", "Salt in a month", "mass", "lb", step=1),
        Output("month_sooner", "Salt in a month, a day less", "mass", "lb", step=1),
        Output("month_later", "Salt in a month, a day more", "mass", "lb", step=1),
    ],
    compute=_best_salt_dose,
    sources=["capacity-anchor", "capacity-high-dose", "efficiency-standard", "common-practice"],
    cautions=[
        "With much iron, or a private drain, follow the treatment plan and the local rule rather "
        "than the least salt.",
    ],
)

CALCULATORS = (BEST_SALT_DOSE,)
