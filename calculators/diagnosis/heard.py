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


def complaints_for(knowledge, words):
    """Return the complaints that a customer's words most likely mean, the likeliest first.

    Words count by how rare they are among all that customers say in the faults' files; a fault
    whose customers say them speaks for its complaints by their chances. Each is {"complaint": its
    name, "heard": the sentence that comes nearest, or ""}. Empty where no word is known.
    """
    wanted = _stems(words)
    sentences = [
        (name, said, _stems(said))
        for name, fault in knowledge.faults.items()
        for said in fault.get("customer_says") or []
    ]
    labels = {
        one["name"]: _stems(one["label"]) for one in knowledge.checks[COMPLAINT]["results"]
    }
    everything = [stems for _, _, stems in sentences] + list(labels.values())
    worth = {
        word: math.log(len(everything) / sum(word in stems for stems in everything))
        for word in wanted
        if any(word in stems for stems in everything)
    }
    found = {
        name: 2 * sum(worth.get(word, 0) for word in wanted & stems)
        for name, stems in labels.items()
    }
    nearest = dict.fromkeys(found, (0.0, ""))
    best = {}
    for name, said, stems in sentences:
        fits = sum(worth.get(word, 0) for word in wanted & stems)
        if fits > best.get(name, (0.0, ""))[0]:
            best[name] = (fits, said)
    for name, (fits, said) in best.items():
        for complaint, chance in knowledge.faults[name]["likelihoods"].get(COMPLAINT, {}).items():
            found[complaint] += fits * chance
            nearest[complaint] = max(nearest[complaint], (fits * chance, said))
    ranked = sorted((one for one in found if found[one] > 0), key=lambda one: -found[one])
    return [{"complaint": one, "heard": nearest[one][1]} for one in ranked[:TOLD]]


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
