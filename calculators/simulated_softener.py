"""A home lived through for some days, with a fault or without: what the taps and the tank show."""

from calculators.capacity import capacity_of_dose
from calculators.declare import Calculator, Course, Input, Output
from calculators.quantities import snap
from calculators.readings import CLOCK, control, resin_volume, salt_of_regeneration
from calculators.simulation.clock import DAY
from calculators.simulation.days import course_of_days
from calculators.simulation.home import fitted_home
from calculators.simulation.regeneration import tank_until
from calculators.simulation.story import Story

SOUND = "none"
#: Each fault by its name: what it changes, from the least to the full severity.
FAULTS = {
    "bypass left open": (("bypass_share", 0.0, 1.0),),
    "worn seals": (("seal_leak_share", 0.0, 0.4),),
    "raw water harder than set": (("raw_hardness_factor", 1.0, 2.0),),
    "more people than planned": (("extra_people", 0.0, 6.0),),
    "running toilet": (("leak_flow", 0.0, 0.5),),
    "clock behind": (("clock_offset", 0.0, -600.0),),
    "meter counts too little": (("meter_factor", 1.0, 0.0),),
    "no regeneration": (("days_blocked", 0.0, 1.0),),
    "salt bridge": (("salt_bridged", 0.0, 1.0),),
    "refill plugged": (("refill_factor", 1.0, 0.0),),
    "brine valve leaks": (("brine_valve_leak", 0.0, 1.0),),
    "injector plugged": (("suction_factor", 1.0, 0.0), ("motive_flow_factor", 1.0, 0.0)),
    "drain line blocked": (("drain_flow_factor", 1.0, 0.0),),
    "resin bed short": (("bed_volume_factor", 1.0, 0.3),),
}


def changes_of(fault, severity):
    """Return the changes (name, value, growth) of a fault of FAULTS at a severity [1, 0 to 1].

    A yes or no is a yes from half severity on.
    """
    changes = []
    for name, least, full in FAULTS[fault]:
        value = least + severity * (full - least)
        changes.append((name, float(snap(value) >= 0.5) if name == "days_blocked" else value, 0.0))
    return tuple(changes)


def _story(given):
    home = fitted_home(
        people=int(given.people),
        water_per_person=given.water_per_person,
        hardness=given.hardness,
        iron=0.0,
        resin=given.resin_volume,
        dose=given.salt / given.resin_volume,
        control=given.control,
        salt=given.stock,
        heater=given.tank,
    )
    if given.fault == SOUND:
        return Story(home, int(given.seed))
    changes = changes_of(given.fault, given.severity / 100)
    return Story(home, int(given.seed), changes, DAY * snap(given.onset))


def _simulated_softener(given, work):
    story = _story(given)
    plan = story.home.plan
    work.put("dose", given.salt / given.resin_volume, "lb/ft³")
    work.step(
        "capacity",
        "The salt gives the bed this capacity.",
        "the capacity of {dose} × {resin_volume}",
        capacity_of_dose(given.salt / given.resin_volume) * given.resin_volume,
        "grains",
    )
    work.step(
        "water",
        "The household was planned to draw so much.",
        "{people} × {water_per_person}",
        plan.water,
        "gal/day",
    )
    work.put("setting", plan.setting, "gpg")
    if given.control == CLOCK:
        work.step(
            "set_interval",
            "The clock was set to whole days that the bed lasts.",
            "{capacity} ÷ ({water} × {setting}), down to whole days",
            float(plan.days),
            "days",
        )
    else:
        work.step(
            "counter",
            "The counter was set to the water that the bed lasts for, less the reserve of this "
            "kind of control.",
            "{capacity} ÷ {setting} less the reserve, down to the meter's step",
            plan.counter,
            "gal",
        )
    story.run(DAY * snap(given.days))
    tank_until(story, story.time)
    return _told(given, work, story)


def _told(given, work, story):
    """Tell what the days brought, and return it by name."""
    ledger, tank = story.ledger, story.tank
    drawn = ledger.softened + ledger.passed_by
    daily = work.step(
        "water_drawn",
        "Draw by draw the house then took so much; days differ, as they do in a real home.",
        "the water of all draws ÷ {days}",
        drawn / given.days,
        "gal/day",
    )
    work.put("raw_hardness_load", ledger.raw_grains, "grains")
    work.put("load_at_the_taps", ledger.tap_grains, "grains")
    passed = work.step(
        "passed",
        "Of the hardness in that water this share reached the house.",
        "{load_at_the_taps} ÷ {raw_hardness_load}",
        100 * ledger.tap_grains / ledger.raw_grains,
        "%",
    )
    used = work.step(
        "salt_used",
        "So much salt went from the brine tank to the bed.",
        "the salt of all regenerations",
        tank.drawn,
        "lb",
    )
    drain = work.step(
        "drain_water",
        "And so much water to the drain.",
        "the water of all regenerations",
        ledger.to_drain + ledger.leaked,
        "gal",
    )
    if snap(passed) > 10:
        work.warn("A good part of the hardness passed: the household would call.")
    return {
        "hardest_hot": story.hardest_hot,
        "hardest_cold": story.hardest_cold,
        "passed": passed,
        "regenerations": float(len(story.history)),
        "salt_used": used,
        "level": tank.level(),
        "drain_water": drain,
        "water_drawn": daily,
    }


def follow(given):
    """Return the course of the days for a picture."""
    return course_of_days(_story(given), snap(given.days))


SIMULATED_SOFTENER = Calculator(
    "simulated-softener",
    "A home with its softener through the days",
    "What do the taps and the brine tank show while the days go by?",
    inputs=[
        Input(
            "people",
            "People in the home",
            "count",
            example=4,
            low=1,
            high=10,
            usual_high=8,
            help="The softener is planned for them.",
            slider=(1, 8, 1),
        ),
        Input(
            "water_per_person",
            "Water for each person",
            "flow",
            "gal/day",
            default=60,
            low=20,
            high=150,
            usual_low=35,
            usual_high=100,
            help="Indoor use in a day.",
            shop="water_per_person",
        ),
        Input(
            "hardness",
            "Hardness of the raw water",
            "hardness",
            "gpg",
            example=20,
            low=1,
            high=100,
            usual_low=3,
            usual_high=60,
            help="The control is set to it, rounded up to a whole number; without iron.",
            slider=(4, 40, 1),
        ),
        resin_volume(slider=(0.75, 4, 0.25)),
        salt_of_regeneration(slider=(3, 30, 0.5)),
        control(),
        Input(
            "fault",
            "Fault",
            "choice",
            default=SOUND,
            choices=(SOUND, *FAULTS),
        ),
        Input(
            "severity",
            "Severity of the fault",
            "share",
            "%",
            default=60,
            low=0,
            high=100,
            help="From none of it to the worst.",
            slider=(0, 100, 5),
            only_when=("fault", tuple(FAULTS)),
        ),
        Input(
            "onset",
            "The fault begins after",
            "time",
            "days",
            default=3,
            low=0,
            high=60,
            help="From the start of the picture, which is a night with a fresh bed.",
            slider=(0, 20, 1),
            only_when=("fault", tuple(FAULTS)),
        ),
        Input(
            "stock",
            "Salt in the tank at the start",
            "mass",
            "lb",
            default=120,
            low=1,
            high=400,
            help="Solid salt above the brine of one regeneration; none is added.",
            slider=(20, 240, 10),
        ),
        Input(
            "tank",
            "Volume of the heater",
            "volume",
            "gal",
            default=50,
            low=5,
            high=200,
            help="From its rating plate.",
        ),
        Input(
            "days",
            "Days",
            "time",
            "days",
            default=14,
            low=1,
            high=30,
            help="How long to go on.",
            slider=(2, 30, 1),
        ),
        Input(
            "seed",
            "Number of the household",
            "count",
            default=1,
            low=0,
            high=9999,
            help="Another number is another household with the same figures: its draws fall at "
            "other times.",
        ),
    ],
    outputs=[
        Output("hardest_hot", "Hardest hot water", "hardness", "gpg", step=0.1),
        Output("hardest_cold", "Hardest cold water", "hardness", "gpg", step=0.1),
        Output("passed", "Hardness that reached the house", "share", "%", step=0.1),
        Output("regenerations", "Regenerations", "number", step=1),
        Output("salt_used", "Salt used", "mass", "lb", step=0.1),
        Output("level", "Brine level at the end", "length", "in", step=0.1),
        Output("drain_water", "Water to the drain", "volume", "gal", step=1),
        Output("water_drawn", "Water drawn in a day", "flow", "gal/day", step=1),
    ],
    compute=_simulated_softener,
    picture=Course(follow),
    sources=[
        "capacity-anchor",
        "capacity-high-dose",
        "ion-exchange-equilibrium",
        "stirred-tank",
        "salt-solubility",
        "brine-density",
        "common-practice",
    ],
    cautions=[
        "A picture of how things go together, not a measurement: the home on the call is judged by "
        "its own readings.",
    ],
)

CALCULATORS = (SIMULATED_SOFTENER,)
