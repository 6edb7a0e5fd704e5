"""Which check to do next: the one that tells most about the cause for its minutes."""

from calculators.diagnosis.knowledge import COMPLAINT, FIRST_LOOK

#: Every check costs a moment of changing over (common practice, no source).
CHANGE_OVER = 0.1
#: What opening something costs beside its minutes: consent, bypass, pressure off.
OPENING = 5
#: How much more a check must tell for its minutes to break the order of the first look.
WORTH_BREAKING_ORDER = 1.5
#: Steps that a check needs first are followed at most so far.
LONGEST_CHAIN = 4


class Option:
    """A check that could be made next.

    first: the check to do now, which is this one or one that it needs or would spoil; steps: all
    checks up to this one in running order; minutes: their cost; bits: what they are expected to
    tell; rate: bits for each minute; locked_by: the checks whose evidence it would destroy.
    """

    def __init__(self, check, steps, minutes, bits, locked_by):
        self.check = check
        self.steps = steps
        self.first = steps[0]
        self.minutes = minutes
        self.bits = bits
        self.rate = bits / minutes
        self.locked_by = locked_by


def minutes_of(check):
    """Return what a check costs in minutes: its waiting is shared with other checks."""
    own = check.get("overlaps_minutes")
    own = check["minutes"] if own is None else own
    return own + CHANGE_OVER + (OPENING if check.get("opens") else 0)


def in_first_look(knowledge, check):
    """Tell whether a check belongs to the first look."""
    return knowledge.checks[check]["stage"] in FIRST_LOOK


def evidence_at_stake(standing, check):
    """Return the checks not yet read whose evidence a check would destroy.

    The first look waits only for checks of the first look: what a deeper check would have read
    is kept, such as a jar of brine.
    """
    return [
        erased
        for erased in standing.knowledge.checks[check].get("erases") or []
        if is_open(standing, erased)
        and (
            in_first_look(standing.knowledge, erased)
            or not in_first_look(standing.knowledge, check)
        )
    ]


def is_spoiled(standing, check):
    """Tell whether a check that was made has destroyed the evidence of this one."""
    knowledge = standing.knowledge
    return any(
        check in (knowledge.checks[done].get("erases") or [])
        and (in_first_look(knowledge, check) or not in_first_look(knowledge, done))
        for done in standing.call.readings
    )


def needs_not_met(standing, check):
    """Return what a check still needs: (check, results) of each finding that is not there yet."""
    missing = []
    for need in standing.knowledge.checks[check].get("needs") or []:
        if not _found(standing, need):
            missing.append((need["check"], _results(need)))
    return missing


def is_open(standing, check):
    """Tell whether a check can still be made in this call, now or after what it needs."""
    call, knowledge = standing.call, standing.knowledge
    if check == COMPLAINT or call.is_answered(check) or not knowledge.applies(check, call.home):
        return False
    if is_spoiled(standing, check):
        return False
    return all(
        not call.is_answered(needed) and needed in knowledge.checks
        for needed, _ in needs_not_met(standing, check)
    )


def options(standing):
    """Return what could be done next, what tells most for its minutes first."""
    found = []
    for check in standing.knowledge.checks:
        if is_open(standing, check):
            option = _option(standing, check)
            if option is not None:
                found.append(option)
    return sorted(found, key=lambda one: -one.rate)


def choose(standing, found=None):
    """Return the option to take: the order of the first look is kept unless breaking it pays.

    None where nothing is left to do.
    """
    found = options(standing) if found is None else found
    if not found:
        return None
    best = found[0]
    in_order = [one for one in found if in_first_look(standing.knowledge, one.check)]
    if not in_order:
        return best
    places = {check: place for place, check in enumerate(standing.knowledge.checks)}
    usual = min(in_order, key=lambda one: places[one.check])
    return best if best.rate >= WORTH_BREAKING_ORDER * usual.rate else usual


def _option(standing, check):
    knowledge = standing.knowledge
    steps = _steps(standing, check)
    if steps is None:
        return None
    places = {one: place for place, one in enumerate(knowledge.checks)}
    before = sorted(steps - {check}, key=places.get)
    chance = 1.0
    for needed, results in needs_not_met(standing, check):
        chance *= standing.chance_of(needed, results)
    bits = chance * standing.information(check)
    bits += sum(standing.information(one) for one in before)
    minutes = sum(minutes_of(knowledge.checks[one]) for one in (*before, check))
    return Option(check, [*before, check], minutes, bits, evidence_at_stake(standing, check))


def _steps(standing, check, depth=0):
    """Return the checks that have to be made up to this one, None where there is no end to them."""
    if depth > LONGEST_CHAIN:
        return None
    steps = {check}
    needed = [one for one, _ in needs_not_met(standing, check)]
    for one in (*needed, *evidence_at_stake(standing, check)):
        if not is_open(standing, one):
            return None
        further = _steps(standing, one, depth + 1)
        if further is None:
            return None
        steps |= further
    return steps


def _results(need):
    return [need["result"]] if isinstance(need["result"], str) else list(need["result"])


def _found(standing, need):
    reading = standing.call.readings.get(need["check"])
    if reading is None:
        return False
    return standing.knowledge.results[need["check"]][reading[0]] in _results(need)
