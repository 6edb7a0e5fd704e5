"""What a household draws through the softener."""

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.quantities import snap

DAYS_IN_A_MONTH = 30.4


def _household_load(given, work):
    work.put("days_in_a_month", DAYS_IN_A_MONTH, "days")
    guests = work.step(
        "average_guests",
        "Guests count for the nights they stay, spread over the month.",
        "{guest_nights} ÷ {days_in_a_month}",
        given.guest_nights / DAYS_IN_A_MONTH,
    )
    heads = work.step(
        "heads",
        "Infants count in full: laundry and baths make up for what they do not drink.",
        "{people} + {infants} + {average_guests}",
        given.people + given.infants + guests,
    )
    indoor = work.step(
        "indoor_water",
        "Water for everyone that passes the softener.",
        "{heads} × {water_per_person} × {softened_share}",
        heads * given.water_per_person * given.softened_share / 100,
        "gal/day",
    )
    water = work.step(
        "water",
        "Leaks and other uses pass the softener too.",
        "{indoor_water} + {leak} + {other_use} + {outdoor_use}",
        indoor + given.leak + given.other_use + given.outdoor_use,
        "gal/day",
    )
    if snap(water) == 0:
        raise InputProblem("people", "Nobody uses any water: write how many people live there.")
    load = work.step(
        "load",
        "All the water brings its hardness, allowances included.",
        "{water} × {setting}",
        water * given.setting,
        "grains/day",
    )
    most_guests = work.step(
        "most_guests",
        "On the busiest day all guests are there at once; the reserve must cover that day.",
        "the larger of {guests_at_once} and {average_guests}",
        max(given.guests_at_once, guests),
    )
    busiest = work.step(
        "busiest_day",
        "So much more water than on a usual day.",
        "{water} + ({most_guests} − {average_guests}) × {water_per_person} × {softened_share}",
        water + (most_guests - guests) * given.water_per_person * given.softened_share / 100,
        "gal/day",
    )
    return {"water": water, "load": load, "busiest_day": busiest}


HOUSEHOLD_LOAD = Calculator(
    "household-load",
    "Daily water and hardness load of a household",
    "How much water, and how much hardness, must be softened each day?",
    inputs=[
        Input(
            "people",
            "People in the home",
            "count",
            example=4,
            low=0,
            high=30,
            usual_high=10,
            help="Everyone who sleeps there, infants apart.",
        ),
        Input(
            "infants",
            "Infants",
            "count",
            default=0,
            low=0,
            high=10,
            help="Counted in full.",
        ),
        Input(
            "water_per_person",
            "Water for each person",
            "flow",
            "gal/day",
            default=60,
            low=10,
            high=300,
            usual_low=35,
            usual_high=100,
            help="Indoor use in a day. Better than any rule: the winter quarter of a water bill.",
            shop="water_per_person",
        ),
        Input(
            "setting",
            "Hardness setting",
            "hardness",
            "gpg",
            example=20,
            low=0,
            high=260,
            usual_high=70,
            help="The number entered in the control, with the allowance for iron.",
        ),
        Input(
            "guest_nights",
            "Guest nights in a month",
            "count",
            default=0,
            low=0,
            high=900,
            help="Guests times the nights they stay.",
        ),
        Input(
            "guests_at_once",
            "Most guests at once",
            "count",
            default=0,
            low=0,
            high=30,
            help="For the busiest day.",
        ),
        Input(
            "leak",
            "Leaks",
            "flow",
            "gal/day",
            default=0,
            low=0,
            high=14400,
            help="From a leak that has been measured. Repair it first if you can.",
        ),
        Input(
            "other_use",
            "Other softened use",
            "flow",
            "gal/day",
            default=0,
            low=0,
            high=2000,
            help="A hot tub, a home business, animals.",
        ),
        Input(
            "outdoor_use",
            "Outdoor use on softened water",
            "flow",
            "gal/day",
            default=0,
            low=0,
            high=5000,
            usual_high=50,
            help="Hoses and sprinklers fed after the softener.",
            unusual="Put irrigation on raw water.",
        ),
        Input(
            "softened_share",
            "Share of indoor water that is softened",
            "share",
            "%",
            default=100,
            low=10,
            high=100,
            help="Less than all where some taps are left on raw water.",
        ),
    ],
    outputs=[
        Output("water", "Water to soften", "flow", "gal/day", step=1),
        Output("load", "Hardness load", "load", "grains/day", step=100),
        Output("busiest_day", "Water on the busiest day", "flow", "gal/day", step=1),
    ],
    compute=_household_load,
    picture=Curve("people", 1, 10, ["load"]),
    sources=["common-practice", "indoor-use"],
)

CALCULATORS = (HOUSEHOLD_LOAD,)
