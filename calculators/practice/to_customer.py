"""A small look at what a learner writes to the customer: found, done, to watch, and no jargon.

It looks for words and understands nothing: a good text may lack its words, and a bad one have them.
Whoever teaches reads it.
"""

import re

#: Words of which one at least tells what was found, what was done, and what to watch.
FOUND = (
    "found", "because", "cause", "reason", "was", "were", "had", "stood", "came",
)  # fmt: skip
DONE = (
    "cleaned", "cleared", "replaced", "renewed", "changed", "set", "opened", "filled", "broke",
    "fixed", "repaired", "tested", "checked", "adjusted", "regenerated", "explained", "showed",
    "put", "turned", "emptied", "fitted", "measured", "plugged", "reset", "started", "tightened",
)  # fmt: skip
WATCH = (
    "watch", "look", "check", "listen", "call", "keep", "if", "every", "until", "tomorrow",
    "tonight", "month", "next", "please",
)  # fmt: skip
#: Fewer words tell nothing.
LEAST_WORDS = 12
#: Terms that a customer's home has on its walls and in its kitchen.
PLAIN = (
    "salt", "softener", "water", "iron", "hardness", "heater", "tank", "drain", "meter", "toilet",
    "pressure", "valve", "clock", "setting", "settings", "soft water", "hard water", "filter",
)  # fmt: skip


def looked_over(text, jargon):
    """Return what a text has: {"found", "done", "watch": bool, "jargon": [words], "long": bool}.

    jargon: words that a customer does not know, in any case.

    >>> looked_over("I found the screen blocked and cleaned it. Call if it is hard again.", ["screen"])
    {'found': True, 'done': True, 'watch': True, 'jargon': ['screen'], 'long': True}
    """
    words = re.findall(r"[a-zé’'-]+", text.lower())
    joined = f" {' '.join(words)} "
    spoken = {
        term.lower() for term in jargon if term.lower() not in PLAIN and f" {term.lower()} " in joined
    }
    return {
        "found": any(word in FOUND for word in words),
        "done": any(word in DONE for word in words),
        "watch": any(word in WATCH for word in words),
        "jargon": sorted(spoken),
        "long": len(words) >= LEAST_WORDS,
    }
