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


class Heard:
    """What customers say with each complaint, counted once for many questions.

    A complaint's words are those of its label and, by their chance of making it, those that the
    customers of each fault say in the faults' files.
    """

    def __init__(self, knowledge):
        self._sentences = [
            (said, _stems(said), fault["likelihoods"].get(COMPLAINT, {}))
            for fault in knowledge.faults.values()
            for said in fault.get("customer_says") or []
        ]
        self._complaints = {}
        for one in knowledge.checks[COMPLAINT]["results"]:
            name, words = one["name"], _Words()
            words.add(_stems(one["label"]), LABEL)
            for _, stems, chances in self._sentences:
                words.add(stems, chances.get(name, 0))
            self._complaints[name] = words
        self._everywhere = _Words()
        for words in self._complaints.values():
            self._everywhere.add_all(words)

    def complaints_for(self, words):
        """Return the complaints that a customer's words most likely mean, the likeliest first.

        How much oftener a word falls with one complaint than with all of them speaks for that
        complaint (Bayes' rule, words taken as independent and complaints as equally common). Each
        is {"complaint": its name, "heard": the sentence that comes nearest, or ""}. Empty where no
        word is known.
        """
        wanted = _stems(words)
        known = [word for word in wanted if word in self._everywhere.weights]
        found = {
            name: sum(self._speaks_for(name, word) for word in known) for name in self._complaints
        }
        ranked = sorted((one for one in found if found[one] > 0), key=lambda one: -found[one])
        return [{"complaint": one, "heard": self._nearest(one, wanted)} for one in ranked[:TOLD]]

    def _speaks_for(self, complaint, word):
        """Return how much oftener a word falls with a complaint than with all, as a logarithm."""
        return math.log(self._complaints[complaint].share(word) / self._everywhere.share(word))

    def _nearest(self, complaint, wanted):
        """Return the sentence of a complaint that shares most of what speaks for the complaint."""
        speaks = {word: max(0.0, self._speaks_for(complaint, word)) for word in wanted}
        fits = [
            (sum(speaks[word] for word in wanted & stems) * chances.get(complaint, 0), said)
            for said, stems, chances in self._sentences
        ]
        most, said = max(fits, default=(0, ""))
        return said if most else ""


class _Words:
    """Words and their weights, from weighted sentences."""

    def __init__(self):
        self.weights = {}
        self._total = 0.0

    def add(self, stems, weight):
        """Add the words of a sentence that counts so much."""
        if weight:
            for word in stems:
                self.weights[word] = self.weights.get(word, 0.0) + weight
            self._total += weight * len(stems)

    def add_all(self, other):
        """Add what other sentences hold."""
        for word, weight in other.weights.items():
            self.weights[word] = self.weights.get(word, 0.0) + weight
        self._total += other._total

    def share(self, word):
        """Return the share of a word in all words, never quite nothing."""
        return (self.weights.get(word, 0.0) + RARE) / (self._total + 1)


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
