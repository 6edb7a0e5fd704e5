"""From a customer's own words to the complaints they most likely mean."""

import math
import re

from calculators.diagnosis.knowledge import COMPLAINT

#: Words that every customer uses.
_COMMON = frozenset(
    "a about all also am an and are as at be been but by can did do does for from get gets got had "
    "has have he her his how i if in is it its just like me more my no not of off on or our out "
    "so some than that the their them then there they this to too up us was we were what when "
    "which while will with you your".split()
)
_ENDINGS = ("ing", "ed", "es", "s", "e", "y")
TOLD = 3
#: A label counts as so many sentences of customers; a word not heard with a complaint counts so
#: little (both from trials with the shipped handbook).
LABEL, RARE = 3, 0.05


def complaints_for(knowledge, words):
    """Return the complaints that a customer's words most likely mean, the likeliest first.

    A complaint's words are those of its label and, by their chance of making it, those that the
    customers of each fault say in the faults' files. How much oftener a word falls with one
    complaint than with all of them speaks for that complaint (Bayes' rule, words taken as
    independent and complaints as equally common). Each is {"complaint": its name, "heard": the
    sentence that comes nearest, or ""}. Empty where no word is known.
    """
    wanted = _stems(words)
    sentences = [
        (said, _stems(said), fault["likelihoods"].get(COMPLAINT, {}))
        for fault in knowledge.faults.values()
        for said in fault.get("customer_says") or []
    ]
    labels = {one["name"]: _stems(one["label"]) for one in knowledge.checks[COMPLAINT]["results"]}
    said_with = {
        name: [
            *((label, LABEL) for label in [labels[name]]),
            *((stems, chances[name]) for _, stems, chances in sentences if chances.get(name)),
        ]
        for name in labels
    }
    everywhere = [one for heard in said_with.values() for one in heard]
    known = [word for word in wanted if _share(word, everywhere) > _share("", everywhere)]
    found = {
        name: sum(math.log(_share(word, heard) / _share(word, everywhere)) for word in known)
        for name, heard in said_with.items()
    }
    ranked = sorted((one for one in found if found[one] > 0), key=lambda one: -found[one])
    return [{"complaint": one, "heard": _nearest(one, wanted, sentences)} for one in ranked[:TOLD]]


def _share(word, heard):
    """Return the share of a word in all words of weighted sentences, never quite nothing."""
    count = sum(weight for stems, weight in heard if word in stems)
    return (count + RARE) / (sum(weight * len(stems) for stems, weight in heard) + 1)


def _nearest(complaint, wanted, sentences):
    """Return the sentence of a complaint that shares most words with the wanted ones."""
    fits = [
        (len(wanted & stems) * chances.get(complaint, 0), said)
        for said, stems, chances in sentences
    ]
    most, said = max(fits, default=(0, ""))
    return said if most else ""


def _stems(text):
    """Return the telling words of a text, without their endings.

    >>> sorted(_stems("The salt never goes down!"))
    ['down', 'go', 'never', 'salt']
    """
    found = set()
    for word in re.findall(r"[a-z]+", text.lower()):
        if word in _COMMON:
            continue
        for ending in _ENDINGS:
            if word.endswith(ending) and len(word) - len(ending) >= 2:
                word = word[: -len(ending)]
                break
        found.add(word)
    return frozenset(found)
