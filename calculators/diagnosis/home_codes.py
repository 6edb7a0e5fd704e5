"""Simulated homes as short text: one letter a home for each check.

A home's readings are drawn a few times, because a test kit errs. Homes with the same counts share
a kind; the text has the letter of each home's kind, in the order of the homes.
"""

_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"
_FURTHER = 0x100  # letters with accents and the like follow where one alphabet does not do


def letter(place):
    """Return the letter of a kind by its place in the list.

    >>> letter(0), letter(61)
    ('A', '9')
    """
    return _LETTERS[place] if place < len(_LETTERS) else chr(_FURTHER + place - len(_LETTERS))


def pack(counts):
    """Return the homes' counts as kinds and letters.

    >>> pack([[4, 0], [3, 1], [4, 0]])
    {'kinds': [[4, 0], [3, 1]], 'homes': 'ABA'}
    """
    kinds = []
    places = {}
    for one in counts:
        if tuple(one) not in places:
            places[tuple(one)] = len(kinds)
            kinds.append(list(one))
    return {"kinds": kinds, "homes": "".join(letter(places[tuple(one)]) for one in counts)}


def unpack(packed):
    """Return each home's counts.

    >>> unpack({"kinds": [[4, 0], [3, 1]], "homes": "ABA"})
    [[4, 0], [3, 1], [4, 0]]
    """
    kinds = {letter(place): counts for place, counts in enumerate(packed["kinds"])}
    return [kinds[one] for one in packed["homes"]]
