"""The water heater read backwards: what a hot sample says about when the water changed."""

import math

from calculators.declare import Calculator, Curve, Input, InputProblem, Output
from calculators.heater import draw_for_share, share_left
from calculators.quantities import snap
from calculators.readings import heater_volume, hot_share


def share_left_in_series(drawn, tank, tanks):
    """Return the share [1] of the old water left after a draw through equal stirred tanks in a row.

    drawn, tank: volumes in the same unit, drawn 0 or more, tank above 0: the whole volume, which
    `tanks` [whole, 1 or more] parts share. One part is a stirred tank; many parts come near to plug
    flow. Source: stirred-tank.

    >>> round(share_left_in_series(100, 50, 3), 5)
    0.06197
    """
    passed = tanks * drawn / tank
    return share_left(passed, 1) * sum(passed**k / math.factorial(k) for k in range(tanks))


def draw_for_share_in_series(share, tank, tanks):
    """Return the draw that leaves a share [1, above 0 to 1]; see `share_left_in_series`.

    Found by halving, as it has no closed form for more than one tank.
    """
    if tanks == 1:
        return draw_for_share(share, tank)
    if snap(share) >= 1:
        return 0.0
    low, high = 0.0, tank
    while share_left_in_series(high, tank, tanks) > share:
        low, high = high, 2 * high
    for _ in range(60):
        middle = (low + high) / 2
        if share_left_in_series(middle, tank, tanks) > share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _shares(given, work):
    """Return the share of the old water left [1] and what one drop of the test is in it [1]."""
    change = given.before - given.cold
    if snap(abs(change)) <= snap(given.drop):
        raise InputProblem(
            "before",
            "The hot water before and the cold water differ by no more than one drop of the test: "
            "the heater keeps no record of such a change.",
        )
    share = (given.hot - given.cold) / change
    drop = given.drop / abs(change)
    if not snap(-drop) <= snap(share) <= snap(1 + drop):
        raise InputProblem(
            "hot",
            "The hot water lies outside the old and the new hardness, so this is not one change "
            "thinned by new water. Look for a crossover, scale in the heater, or several changes.",
        )
    work.step(
        "share_left",
        "The hot water lies between the old hardness and the new: so much of the old is left.",
        "({hot} − {cold}) ÷ ({before} − {cold})",
        100 * share,
        "%",
    )
    work.step(
        "one_drop",
        "One drop more or less in the hot test is so much of the change.",
        "{drop} ÷ |{before} − {cold}|",
        100 * drop,
        "%",
    )
    return min(max(share, 0.0), 1.0), drop


def _heater_history(given, work):
    share, drop = _shares(given, work)
    hot_water = work.step(
        "hot_water",
        "The household draws so much hot water in a day.",
        "{water} × {hot_share}",
        given.water * given.hot_share / 100,
        "gal/day",
    )
    turned = "softer" if snap(given.before) > snap(given.cold) else "harder"
    values = {"turned": turned}
    settled = snap(share) <= snap(drop)
    if not settled:
        sentence = "So much was drawn since the change."
        values["drawn"], values["hours"] = _since(given, work, "", sentence, share, hot_water)
    sentence = "With one drop nearer to the old hardness, it was less."
    least = _since(given, work, "least_", sentence, share + drop, hot_water)
    values["least_drawn"], values["least_hours"] = least
    if settled:
        work.warn(
            "The hot water is within one drop of the cold: it has settled, and the test can only "
            "tell the shortest time since the change."
        )
        return values
    sentence = "With one drop nearer to the new hardness, it was more."
    most = _since(given, work, "most_", sentence, share - drop, hot_water)
    values["most_drawn"], values["most_hours"] = most
    work.warn(_GRADUAL[turned])
    return values


def _since(given, work, which, sentence, share, hot_water):
    """Return the draw [gal] that leaves this share [1] of the old water, and its time [h]."""
    share = min(share, 1.0)
    work.put("share", 100 * share, "%")
    drawn = work.step(
        f"{which}drawn",
        sentence,
        "−{tank} × ln({share})" if given.tanks == 1 else "{tank} in {tanks} parts, to {share}",
        draw_for_share_in_series(share, given.tank, int(given.tanks)),
        "gal",
    )
    hours = work.step(
        f"{which}hours",
        "At the household's own use that took so long.",
        f"{{{which}drawn}} ÷ {{hot_water}}",
        24 * drawn / hot_water,
        "h",
    )
    return drawn, hours


_GRADUAL = {
    "softer": "If the heater had not yet taken on the whole of the old hardness, the change is "
    "younger than this.",
    "harder": "If the water hardened by and by, as it does when a bed runs out, the first hard "
    "water came earlier than this.",
}

HEATER_HISTORY = Calculator(
    "heater-history",
    "What the hot sample says about the past",
    "When did the water change, judging by the hot and the cold sample?",
    inputs=[
        heater_volume(help="From its rating plate. A tankless heater keeps no record."),
        Input(
            "before",
            "Hardness of the hot water before the change",
            "hardness",
            "gpg",
            example=20,
            low=0,
            high=200,
            help="Raw hardness where the water has turned soft; that of softened water where it "
            "has turned hard.",
        ),
        Input(
            "cold",
            "Hardness of the cold water now",
            "hardness",
            "gpg",
            example=0,
            low=0,
            high=200,
            help="At a tap the softener feeds, run until the pipe is clear.",
        ),
        Input(
            "hot",
            "Hardness of the hot water now",
            "hardness",
            "gpg",
            example=4,
            low=0,
            high=200,
            help="Run the hot tap until the heat is steady, then let the sample cool. Of a drop "
            "count take off half a drop.",
        ),
        Input(
            "drop",
            "One drop of the test",
            "hardness",
            "gpg",
            default=1,
            low=0.05,
            high=10,
            help="What one drop counts; half of it where the sample was doubled.",
        ),
        Input(
            "water",
            "Water the household uses",
            "flow",
            "gal/day",
            example=240,
            low=1,
            high=5000,
            help="Hot and cold together.",
        ),
        hot_share(),
        Input(
            "tanks",
            "Stirred tanks in a row",
            "count",
            default=1,
            low=1,
            high=3,
            help="One for a common heater; more for a tall one, which mixes less from end to end.",
        ),
    ],
    outputs=[
        Output("turned", "The water turned", "words"),
        Output("hours", "So long ago", "time", "h", step=1),
        Output("least_hours", "At least", "time", "h", step=1),
        Output("most_hours", "At most", "time", "h", step=1),
        Output("drawn", "Hot water drawn since", "volume", "gal", step=1),
        Output("least_drawn", "At least drawn", "volume", "gal", step=1),
        Output("most_drawn", "At most drawn", "volume", "gal", step=1),
    ],
    compute=_heater_history,
    picture=Curve("hot", 0.5, 19.5, ["hours", "least_hours", "most_hours"]),
    sources=["stirred-tank", "common-practice", "hot-water-burns"],
    cautions=[
        "Hot water scalds: let the sample cool before you test it, and keep children away from the "
        "running tap.",
        "Take the hot sample before you draw the heater down: drawing wipes the record out.",
    ],
)

CALCULATORS = (HEATER_HISTORY,)
