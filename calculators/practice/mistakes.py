"""The mistakes that learners make, as wrong ways to reckon.

A mistake is known by words and told in one sentence; it has one or more ways. A way changes what a
calculator is given, or what it says, and the rest of the exercise is worked out from there: so the
wrong answer is always the one that this slip gives with the numbers of the question. The slips are
those that trainers meet; common practice, no source.
"""

from calculators.practice.wrong_ways import WAYS

#: What to say to each.
SENTENCES = {
    "iron-left-out": "The iron is missing: it uses up the bed too, so multiply it by its "
    "allowance and add that to the hardness.",
    "no-reserve": "No reserve is kept: this control waits for the night, so take a day's water "
    "off before you set the counter.",
    "milligrams-for-grains": "A hardness was taken in the wrong unit: see whether it stands in "
    "grains per gallon or in milligrams per liter, and convert it first.",
    "reserve-twice": "The reserve counts once: take one day's water off what the bed softens, no "
    "more and no less.",
    "capacity-at-small-dose": "That is what a large dose of salt gives: a smaller dose gives back "
    "less, so take the capacity of this one.",
    "dose-for-total": "A dose is for each volume of resin, and a regeneration takes the whole: "
    "the resin in the tank leads from one to the other.",
    "gallons-for-minutes": "The salt tells how much water it takes, and the refill flow how long "
    "that runs: divide by both.",
    "voids-forgotten": "Salt fills a good part of the tank: the water has only the voids and the "
    "brine well, so it stands higher.",
    "diameter-for-radius": "An area goes with the radius: halve the diameter before you square it.",
    "liters-for-gallons": "Liters and gallons are mixed up: convert once, then write the unit "
    "that your number has.",
    "seconds-for-flow": "A flow is the water of one minute: divide the water by the seconds, then "
    "multiply by the seconds of a minute.",
    "half-strength-half-capacity": "The first salt does most: capacity does not fall in step with "
    "the salt, so read both doses off the curve.",
    "straight-line-dilution": "New water mixes with the old and carries some of it out: each tank "
    "volume takes the same share of what is left, not the same amount.",
    "floor-ignored": "Even a sound bed lets a little hardness through: take that off the outlet "
    "and off the raw water before you divide.",
    "wrong-side-of-clock": "The start lies on the other side of the set time: a clock that is "
    "behind starts late, and one that is ahead starts early.",
    "infant-left-out": "An infant counts in full: laundry and baths take the water that it does "
    "not drink.",
    "days-rounded-up": "A time clock's days are rounded down: rounded up, the bed is spent before "
    "the night of regeneration.",
    "water-left-out-or-in": "Count all the water that passes the softener and no other: leaks and "
    "softened uses belong in, taps on raw water do not.",
    "sodium-from-setting": "That comes from the setting: the allowance for iron adds no sodium, "
    "so take the hardness that was tested.",
    "bleach-strength-ignored": "The dose is told for the usual household bleach: a stronger one "
    "needs less, by the strengths on the labels.",
    "drops-as-exact": "The color changed somewhere inside the last drop: a count of drops stands "
    "for a range, so allow for it.",
    "cold-blamed": "Cold makes the salt dissolve slowly, but it hardly weakens saturated brine: "
    "look for another reason where brine is weak.",
}


def mistakes_in(exercise):
    """Return the ways of each mistake that can be made in an exercise, by the mistake's words.

    "mistakes" of the exercise are those to tell; where it has none, all that its calculators know.
    """
    wanted = exercise.get("mistakes")
    names = {step["calculate"] for step in exercise["steps"]}
    found = {}
    for way in WAYS:
        if way.calculators & names and (wanted is None or way.mistake in wanted):
            found.setdefault(way.mistake, []).append(way)
    return found


def pairs_in(exercise):
    """Return every two ways of different mistakes that can be made in an exercise together."""
    ways = [way for several in mistakes_in(exercise).values() for way in several]
    return [
        (one, other)
        for place, one in enumerate(ways)
        for other in ways[place + 1 :]
        if one.mistake != other.mistake
    ]
