"""The control's clock: when regeneration really starts, and the hard water that passes in it."""

import math

from calculators.declare import Calculator, Drawing, Input, Output
from calculators.quantities import snap
from calculators.readings import heater_volume, hot_share

FACES = "both clocks"
MECHANICAL, HELD_UP = "power cuts, mechanical clock", "power cuts, clock with hold-up"

#: Share [%] of a weekday's water in each hour from midnight; common practice, no source.
HOURLY_WATER = (
    0.6, 0.4, 0.3, 0.3, 0.8, 2.6, 7.4, 9.0, 6.6, 5.2, 4.7, 4.5,
    4.4, 4.0, 3.7, 4.0, 4.9, 6.1, 6.9, 6.8, 6.2, 5.2, 3.6, 1.8,
)  # fmt: skip

#: Hours: up to the first a clock counts as right, from the second on as half a day out.
RIGHT_WITHIN, HALF_A_DAY_FROM = 0.5, 11.0
#: From this share [%] of a day's water on, regeneration overlaps with use.
NOTABLE_OVERLAP = 2.0


def short_way_round(hours):
    """Return a difference of two times of day [h] as −12 to below 12: the short way round a dial.

    >>> short_way_round(20.0)
    -4.0
    """
    return (snap(hours) + 12) % 24 - 12


def share_drawn(start, length):
    """Return the share [%] of a day's water drawn in `length` [h, 0 to 24] from `start` [h].

    start: hours since midnight, of any day. Within an hour the use is even.

    >>> round(share_drawn(6.5, 1), 6)
    8.2
    """

    def until(hours):
        days, rest = divmod(hours, 24)
        whole = math.floor(rest)
        part = (rest - whole) * HOURLY_WATER[whole]
        return 100 * days + sum(HOURLY_WATER[:whole]) + part

    return until(start + length) - until(start)


def clock_word(error):
    """Return the words for an error of a clock [h, −12 to 12; ahead is above 0]."""
    off = snap(abs(error))
    if off <= RIGHT_WITHIN:
        return "right"
    if off >= HALF_A_DAY_FROM:
        return "about half a day out: look at am and pm"
    return "ahead" if error > 0 else "behind"


def _clock_error(given, work):
    """Return how far the control's clock is ahead of the true time [h]."""
    if given.told_by == FACES:
        return work.step(
            "clock_error",
            "The clock is off by what it shows less the true time, the short way round the dial.",
            "{shown_time} − {true_time}",
            short_way_round(given.shown_time - given.true_time),
            "h",
        )
    if given.told_by == MECHANICAL:
        return work.step(
            "clock_error",
            "A clock driven by the mains stands still in each power cut and falls behind by all of "
            "them together; whole days do not show.",
            "−{power_off}",
            short_way_round(-given.power_off),
            "h",
        )
    if snap(given.longest_cut) <= snap(given.hold_up):
        return work.step(
            "clock_error",
            "A clock with a hold-up keeps time through every power cut that is no longer.",
            "0",
            0.0,
            "h",
        )
    work.put("midnight", 0.0, "12-hour clock")
    return work.step(
        "clock_error",
        "After a longer cut it began again at midnight when the power came back.",
        "{midnight} − {back_at}",
        short_way_round(-given.back_at),
        "h",
    )


def _hard_water(given, work, start):
    """Return the share of the day's water [%] and the hard water [gal] of a start [h]."""
    share = work.step(
        "share",
        "The house draws this share of a usual weekday's water while raw water is passed.",
        "{raw_time} from {true_start}",
        share_drawn(start, given.raw_time / 60),
        "%",
    )
    hard = work.step(
        "hard_water",
        "So much of it comes through hard.",
        "{water} × 1 day × {share}",
        given.water * share / 100,
        "gal",
    )
    return share, hard


def _clock(given, work):
    error = _clock_error(given, work)
    start = work.step(
        "true_start",
        "The control starts when its own clock shows the set time.",
        "{set_time} − ({clock_error})",
        snap(given.set_time - error + 24) % 24,
        "12-hour clock",
    )
    share, hard = _hard_water(given, work, start)
    grains = work.step(
        "grains",
        "It carries this hardness into the house.",
        "{hard_water} × {hardness}",
        hard * given.hardness,
        "grains",
    )
    hot_water = work.step(
        "hot_water",
        "A part of it goes through the water heater.",
        "{hard_water} × {hot_share}",
        hard * given.hot_share / 100,
        "gal",
    )
    rise = work.step(
        "hot_rise",
        "There it mixes with the soft water, so the hot water is harder by so much.",
        "{hardness} × (1 − e^(−{hot_water} ÷ {tank}))",
        -given.hardness * math.expm1(-hot_water / given.tank),
        "gpg",
    )
    on_time = given.water * share_drawn(given.set_time, given.raw_time / 60) / 100
    work.step(
        "hard_water_on_time",
        "With the clock right it would be so much.",
        "{water} × 1 day × the share of {raw_time} from {set_time}",
        on_time,
        "gal",
    )
    if snap(share) >= NOTABLE_OVERLAP:
        work.warn(
            "Regeneration overlaps with water use: "
            + ("set the clock, then" if snap(abs(error)) > RIGHT_WITHIN else "set")
            + " a time at which nobody draws water."
        )
    return {
        "true_start": start,
        "off_by": abs(error),
        "clock_is": clock_word(error),
        "overlap": share,
        "hard_water": hard,
        "hard_water_on_time": on_time,
        "grains": grains,
        "hot_rise": rise,
    }


CLOCK_ERROR = Calculator(
    "clock-error",
    "Clock error and hard water passed",
    "When does the softener really regenerate, and how much hard water does the house get?",
    inputs=[
        Input(
            "told_by",
            "The error is known from",
            "choice",
            default=FACES,
            choices=(FACES, MECHANICAL, HELD_UP),
        ),
        Input(
            "shown_time",
            "The control's clock shows",
            "time of day",
            "12-hour clock",
            example=5,
            low=0,
            high=1439 / 60,
            help="Note it before you set it. Write am or pm, or count the hours through the day.",
            slider=(0, 23.5, 0.5),
            only_when=("told_by", (FACES,)),
        ),
        Input(
            "true_time",
            "The true time",
            "time of day",
            "12-hour clock",
            example=9.5,
            low=0,
            high=1439 / 60,
            usual_low=6,
            help="From a phone at the same moment, written in the same way.",
            unusual="If you meant the afternoon, write pm; without it, hours count from midnight.",
            only_when=("told_by", (FACES,)),
        ),
        Input(
            "power_off",
            "Power cuts in all",
            "time",
            "h",
            example=4.5,
            low=0,
            high=2000,
            help="Since the clock was last set, all cuts together.",
            only_when=("told_by", (MECHANICAL,)),
        ),
        Input(
            "longest_cut",
            "The longest power cut",
            "time",
            "h",
            example=30,
            low=0,
            high=2000,
            help="Since the clock was last set.",
            only_when=("told_by", (HELD_UP,)),
        ),
        Input(
            "hold_up",
            "Hold-up of the clock",
            "time",
            "h",
            default=24,
            low=0,
            high=500,
            usual_low=8,
            usual_high=48,
            help="How long its battery or store keeps time; from the control's sheet.",
            only_when=("told_by", (HELD_UP,)),
        ),
        Input(
            "back_at",
            "The power came back at",
            "time of day",
            "12-hour clock",
            example=19.5,
            low=0,
            high=1439 / 60,
            help="After the last cut that was longer than the hold-up.",
            only_when=("told_by", (HELD_UP,)),
        ),
        Input(
            "set_time",
            "Regeneration is set for",
            "time of day",
            "12-hour clock",
            default=2,
            low=0,
            high=1439 / 60,
            help="The hour entered in the control.",
        ),
        Input(
            "raw_time",
            "Time in which raw water is passed",
            "time",
            "min",
            default=80,
            low=0,
            high=300,
            usual_low=30,
            usual_high=150,
            help="Backwash, brine and rinse together. Nothing for twin tanks and for a valve that "
            "shuts the house off meanwhile.",
        ),
        Input(
            "water",
            "Water the household uses",
            "flow",
            "gal/day",
            example=240,
            low=1,
            high=5000,
            help="Hot and cold together, on a usual weekday.",
        ),
        hot_share(),
        Input(
            "hardness",
            "Hardness of the raw water",
            "hardness",
            "gpg",
            example=20,
            low=0,
            high=200,
            help="As tested, without the allowance for iron.",
        ),
        heater_volume(),
    ],
    outputs=[
        Output("true_start", "Regeneration starts at", "time of day", "12-hour clock"),
        Output("clock_is", "The clock is", "words"),
        Output("off_by", "Off by", "time", "h", step=0.1),
        Output("overlap", "Share of the day's water passed hard", "share", "%", step=0.1),
        Output("hard_water", "Hard water passed", "volume", "gal", step=0.1),
        Output("hard_water_on_time", "With the clock right", "volume", "gal", step=0.1),
        Output("grains", "Hardness passed", "capacity", "grains", step=1),
        Output("hot_rise", "Rise of the hot water", "hardness", "gpg", step=0.1),
    ],
    compute=_clock,
    picture=Drawing("day"),
    sources=["common-practice", "stirred-tank"],
    cautions=[
        "Never force a clock or day wheel backwards.",
        "Where the control has no power, test the outlet with a plug-in lamp only: outlets and "
        "their wiring are a licensed electrician's.",
    ],
)

CALCULATORS = (CLOCK_ERROR,)
