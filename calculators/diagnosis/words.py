"""Chances and minutes in plain words: never more exact than the model is."""

_NICE = (20, 25, 30, 40, 50, 100, 200, 500)


def chance_in_words(chance):
    """Return a chance as a person would say it.

    >>> chance_in_words(0.7), chance_in_words(0.97), chance_in_words(0.012)
    ('about 7 in 10', 'more than 9 in 10', 'about 1 in 100')
    """
    if chance > 0.95:
        return "more than 9 in 10"
    if chance >= 0.075:
        return f"about {max(1, min(9, round(10 * chance)))} in 10"
    if chance * _NICE[-1] < 1:
        return f"less than 1 in {_NICE[-1]}"
    return f"about 1 in {min(_NICE, key=lambda one: abs(1 / one - chance))}"


def weight_in_words(tenfold):
    """Return how loudly a result speaks, from the logarithm to ten of its likelihood ratio.

    >>> weight_in_words(0.2), weight_in_words(-1.2)
    ('a nudge', 'strong')
    """
    size = abs(tenfold)
    if size < 0.3:
        return "a nudge"
    if size < 1:
        return "clear"
    return "strong" if size < 2 else "nearly decisive"


def minutes_in_words(minutes):
    """Return minutes as a person would say them.

    >>> minutes_in_words(0.25), minutes_in_words(1), minutes_in_words(4.8)
    ('less than a minute', '1 minute', '5 minutes')
    """
    if minutes < 0.75:
        return "less than a minute"
    whole = round(minutes)
    return "1 minute" if whole == 1 else f"{whole} minutes"


def listed(names):
    """Return names as a list in a sentence.

    >>> listed(["the clock", "the counters", "the salt"])
    'the clock, the counters and the salt'
    """
    names = list(names)
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"
