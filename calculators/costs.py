"""What regenerating takes: water, salt and money, each time, in a month and in a year."""

from calculators.brine import ROOM_OF_SALT
from calculators.declare import Calculator, Input, Output
from calculators.usage import DAYS_IN_A_MONTH

DAYS_IN_A_YEAR = 365
ONE, TWO = "one dose", "two doses"


def _water(given, work):
    """Return the water in [gal] and the volume out to the drain [gal] of one regeneration."""
    fast_rinse = given.fast_rinse_flow
    if fast_rinse is None:
        fast_rinse = given.backwash_flow
        work.put("fast_rinse_flow", fast_rinse, "gpm")
    water = work.step(
        "regeneration_water",
        "Backwash, brine with slow rinse, fast rinse, and the refill of the brine tank.",
        "{backwash_time} × {backwash_flow} + {brine_time} × {slow_rinse_flow} + "
        "{fast_rinse_time} × {fast_rinse_flow} + {refill_water}",
        given.backwash_time * given.backwash_flow
        + given.brine_time * given.slow_rinse_flow
        + given.fast_rinse_time * fast_rinse
        + given.refill_water,
        "gal",
    )
    work.put("room_of_salt", ROOM_OF_SALT, "gal/lb")
    drained = work.step(
        "volume_to_drain",
        "All of it goes to the drain, with the salt, which takes up room.",
        "{regeneration_water} + {salt} × {room_of_salt}",
        water + given.salt * ROOM_OF_SALT,
        "gal",
    )
    return water, drained


def _money(given, work, salt, water, which=""):
    """Return the money for one regeneration with so much salt [lb] and water [gal]."""
    return work.step(
        f"{which}money",
        "Salt by the bag, water by the meter, coming in and going to the sewer.",
        f"{{{which}salt}} ÷ {{salt_bag}} × {{salt_bag_price}} + "
        f"{{{which}regeneration_water}} ÷ {{water_price_volume}} × "
        "({water_price} + {sewer_price})",
        salt / given.salt_bag * given.salt_bag_price
        + water / given.water_price_volume * (given.water_price + given.sewer_price),
    )


def _in_a_month(given, work, water, money):
    work.put("days_in_a_month", DAYS_IN_A_MONTH, "days")
    often = work.step(
        "regenerations_in_a_month",
        "So often in a month.",
        "{days_in_a_month} ÷ {interval}",
        DAYS_IN_A_MONTH / given.interval,
    )
    salt = work.step(
        "salt_in_a_month",
        "Salt in a month.",
        "{regenerations_in_a_month} × {salt}",
        often * given.salt,
        "lb",
    )
    bags = work.step(
        "bags_in_a_month", "In bags.", "{salt_in_a_month} ÷ {salt_bag}", salt / given.salt_bag
    )
    water_used = work.step(
        "water_in_a_month",
        "Water in a month.",
        "{regenerations_in_a_month} × {regeneration_water}",
        often * water,
        "gal",
    )
    money_spent = work.step(
        "money_in_a_month",
        "Money in a month.",
        "{regenerations_in_a_month} × {money}",
        often * money,
    )
    return {
        "regenerations": often,
        "salt_month": salt,
        "bags_month": bags,
        "water_month": water_used,
        "money_month": money_spent,
    }


def _in_a_year(work, interval, salt, water, money, which=""):
    work.put("days_in_a_year", DAYS_IN_A_YEAR, "days")
    values = {}
    for what, each, number, unit in (
        ("salt", "salt", salt, "lb"),
        ("water", "regeneration_water", water, "gal"),
        ("money", "money", money, ""),
    ):
        values[f"{which}{what}_year"] = work.step(
            f"{which}{what}_in_a_year",
            f"{what.capitalize()} in a year{' with the other dose' if which else ''}.",
            f"{{days_in_a_year}} ÷ {{{which}interval}} × {{{which}{each}}}",
            DAYS_IN_A_YEAR / interval * number,
            unit,
        )
    return values


def _other_dose(given, work, water, money_year):
    """Return a year with the other dose, and what it costs more."""
    other_water = work.step(
        "other_regeneration_water",
        "With the other dose only the refill changes, in proportion to the salt.",
        "{regeneration_water} + {refill_water} × ({other_salt} ÷ {salt} − 1)",
        water + given.refill_water * (given.other_salt / given.salt - 1),
        "gal",
    )
    money = _money(given, work, given.other_salt, other_water, "other_")
    values = _in_a_year(work, given.other_interval, given.other_salt, other_water, money, "other_")
    values["difference_year"] = work.step(
        "difference_in_a_year",
        "What the other dose costs more in a year; less, where a minus stands before it.",
        "{other_money_in_a_year} − {money_in_a_year}",
        values["other_money_year"] - money_year,
    )
    return values


def _regeneration_cost(given, work):
    water, drained = _water(given, work)
    values = {"water": water, "drained": drained}
    if given.capacity is not None:
        values["water_for_capacity"] = work.step(
            "water_for_capacity",
            "The water of one regeneration, shared out over its capacity.",
            "{regeneration_water} ÷ {capacity}",
            water / (given.capacity / 1000),
            "gal/kilograin",
        )
    values["drained_day"] = work.step(
        "drained_in_a_day",
        "To the drain on an average day, which a septic tank must take.",
        "{volume_to_drain} ÷ {interval}",
        drained / given.interval,
        "gal/day",
    )
    values["money"] = money = _money(given, work, given.salt, water)
    values |= _in_a_month(given, work, water, money)
    values |= _in_a_year(work, given.interval, given.salt, water, money)
    if given.compare == TWO:
        values |= _other_dose(given, work, water, values["money_year"])
    return values


def _time(name, label, default, help):
    return Input(
        name,
        label,
        "time",
        "min",
        default=default,
        low=0,
        high=120,
        help=help,
        equipment=name,
    )


def _flow(name, label, low, high, help, **more):
    return Input(name, label, "flow", "gpm", low=low, high=high, help=help, **more)


def _salt(name, label, example, help, **more):
    return Input(name, label, "mass", "lb", example=example, low=0.5, high=100, help=help, **more)


def _days(name, label, example, **more):
    return Input(
        name,
        label,
        "time",
        "days",
        example=example,
        low=0.2,
        high=60,
        usual_low=2,
        help="On average, from the interval calculator.",
        **more,
    )


def _price(name, label, help, **more):
    return Input(name, label, "number", low=0, high=1e6, help=help, **more)


REGENERATION_COST = Calculator(
    "regeneration-cost",
    "Water, salt and money of regenerating",
    "What does regenerating take in water, salt and money?",
    inputs=[
        _salt(
            "salt",
            "Salt for one regeneration",
            7.5,
            "The whole amount, as it is set.",
            equipment="salt_per_regeneration",
        ),
        _days("interval", "Days between regenerations", 4.5),
        Input(
            "capacity",
            "Capacity of one regeneration",
            "capacity",
            "grains",
            low=500,
            high=400000,
            optional=True,
            help="To set the water beside published marks.",
        ),
        _time("backwash_time", "Backwash time", 10, "As the control is set."),
        _flow(
            "backwash_flow",
            "Backwash flow",
            0.2,
            20,
            "From the unit's sheet, or caught in a bucket.",
            example=2.4,
            equipment="backwash_flow",
        ),
        _time("brine_time", "Time of brine and slow rinse", 60, "Both together, as set."),
        _flow(
            "slow_rinse_flow",
            "Slow rinse flow",
            0.05,
            5,
            "The raw water through the injector, without the brine it draws.",
            example=0.45,
            equipment="slow_rinse_flow",
        ),
        _time("fast_rinse_time", "Fast rinse time", 10, "As the control is set."),
        _flow(
            "fast_rinse_flow",
            "Fast rinse flow",
            0.2,
            20,
            "Leave blank where it is the backwash flow.",
            optional=True,
        ),
        Input(
            "refill_water",
            "Water of the refill",
            "volume",
            "gal",
            example=2.5,
            low=0.1,
            high=40,
            help="Refill flow times the time that is set.",
        ),
        Input(
            "salt_bag",
            "Salt in a bag",
            "mass",
            "lb",
            default=40,
            metric_default=25,
            low=1,
            high=2500,
            help="Printed on the bag.",
            shop="salt_bag",
        ),
        _price(
            "salt_bag_price",
            "Price of a bag",
            "In the shop's own money.",
            example=8,
            shop="salt_bag_price",
        ),
        _price(
            "water_price",
            "Price of water",
            "For the volume named below.",
            example=6,
            shop="water_price",
        ),
        _price(
            "sewer_price",
            "Price of sewer",
            "For the same volume; nothing where the drain runs to a septic tank.",
            default=0,
            shop="sewer_price",
        ),
        Input(
            "water_price_volume",
            "Volume that the prices are for",
            "volume",
            "gal",
            default=1000,
            metric_default=1000,
            low=0.1,
            high=100000,
            help="As on the water bill.",
            shop="water_price_volume",
        ),
        Input("compare", "Compare", "choice", default=ONE, choices=(ONE, TWO)),
        _salt(
            "other_salt",
            "Salt of the other dose",
            13.5,
            "The whole amount for one regeneration.",
            only_when=("compare", (TWO,)),
        ),
        _days(
            "other_interval",
            "Days between regenerations with the other dose",
            6.5,
            only_when=("compare", (TWO,)),
        ),
    ],
    outputs=[
        Output("water", "Water of one regeneration", "volume", "gal", step=1),
        Output("drained", "To the drain each time", "volume", "gal", step=1),
        Output("drained_day", "To the drain on an average day", "flow", "gal/day", digits=2),
        Output(
            "water_for_capacity",
            "Water for the capacity",
            "water for capacity",
            "gal/kilograin",
            digits=2,
        ),
        Output("money", "Money for one regeneration, about", digits=2),
        Output("regenerations", "Regenerations in a month", digits=2),
        Output("salt_month", "Salt in a month", "mass", "lb", step=1),
        Output("bags_month", "Bags in a month", step=0.1),
        Output("water_month", "Water in a month", "volume", "gal", step=1),
        Output("money_month", "Money in a month, about", step=1),
        Output("salt_year", "Salt in a year", "mass", "lb", step=1),
        Output("water_year", "Water in a year", "volume", "gal", digits=3),
        Output("money_year", "Money in a year, about", step=1),
        Output("other_salt_year", "Salt in a year, other dose", "mass", "lb", step=1),
        Output("other_water_year", "Water in a year, other dose", "volume", "gal", digits=3),
        Output("other_money_year", "Money in a year, other dose, about", step=1),
        Output("difference_year", "More money in a year with the other dose, about", step=1),
    ],
    compute=_regeneration_cost,
    sources=["sewer-district", "brine-density", "common-practice"],
    cautions=[
        "Ask whether the drain leads to a sewer or a septic tank: local rules may forbid brine in "
        "either.",
    ],
)

CALCULATORS = (REGENERATION_COST,)
