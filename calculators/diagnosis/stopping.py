"""When to stop testing: found, one repair for all that is left, nothing more to learn, danger."""

from calculators.diagnosis.next_check import choose, is_open, minutes_of, needs_not_met

#: A cause is found at this chance: a wrong repair of 20 minutes against a check of 3 minutes
#: breaks even at 1 - 3/20.
FOUND = 0.85
#: A cause below this chance is not counted among those left.
LEFT = 0.05
#: All causes left with one repair among them must make this much together.
ONE_REPAIR = 0.90
#: Below this many bits for each minute no check is worth its time.
NOTHING_MORE = 0.01
#: What trying a repair costs beside the repair: seeing whether it helped, in minutes.
SEEING = 3
#: No repair is tried on a cause less likely than this.
TRY_FROM = 0.3
#: A procedure that so many faults share is no repair, such as closing the visit.
COMMON_PROCEDURE = 8


def stop(standing, option, dangers=()):
    """Return why to stop testing, as plain data, or None to go on.

    dangers: what was found that ends the work at once. option: the next check that would be made.
    """
    if dangers:
        return {"why": "danger", "dangers": list(dangers)}
    leader = standing.leader
    if standing.causes[leader] >= FOUND:
        proofs = proving_checks(standing, leader)
        done = [check for check, results in proofs if _shown(standing, check, results)]
        left = [] if done else [check for check, _ in proofs if _can_prove(standing, check)]
        return {"why": "found", "cause": leader, "proved": bool(done), "prove": left[:1]}
    left = [name for name in standing.ranking if standing.causes[name] > LEFT]
    shared = _shared_repair(standing, left)
    if len(left) > 1 and shared and sum(standing.causes[one] for one in left) >= ONE_REPAIR:
        return {"why": "one repair", "causes": left, "procedures": shared}
    if option is None or option.rate < NOTHING_MORE:
        return {"why": "nothing more to learn", "causes": left[:2] or [leader]}
    return None


def repair_and_see(standing, option):
    """Return the fault whose repair is worth trying before the next check, or None.

    Trying pays where its chance exceeds one minus the minutes of the next check over the minutes
    that a vain repair costs. Without a next check any likely repair is worth trying.
    """
    leader = standing.leader
    chance = standing.causes[leader]
    vain = standing.knowledge.faults[leader]["minutes"] + SEEING
    next_minutes = vain if option is None else option.minutes
    return leader if chance >= max(TRY_FROM, 1 - next_minutes / vain) else None


def proving_checks(standing, fault):
    """Return (check, results) of each finding that proves a fault."""
    return [
        (
            one["check"],
            [one["result"]] if isinstance(one["result"], str) else list(one["result"]),
        )
        for one in standing.knowledge.faults[fault].get("proved_by") or []
        if one["check"] in standing.knowledge.checks
    ]


def best_split(standing, first, second, found):
    """Return the open check that would tell two faults apart best for its minutes, or None."""
    best, most = None, 0.0
    places = {
        hypothesis[0]: place
        for place, hypothesis in enumerate(standing.knowledge.hypotheses)
        if len(hypothesis) == 1
    }
    for option in found:
        rows = standing.predicted(option.check)
        if places[first] in rows and places[second] in rows:
            pairs = zip(rows[places[first]], rows[places[second]], strict=True)
            apart = sum(abs(one - other) for one, other in pairs) / 2
            worth = apart / minutes_of(standing.knowledge.checks[option.check])
            if apart > 0.2 and worth > most:
                best, most = option.check, worth
    return best


def _can_prove(standing, check):
    """Tell whether a check can be made now and is not itself the beginning of the repair."""
    opens = standing.knowledge.checks[check].get("opens")
    return not opens and is_open(standing, check) and not needs_not_met(standing, check)


def _shown(standing, check, results):
    reading = standing.call.readings.get(check)
    return reading is not None and standing.knowledge.results[check][reading[0]] in results


def _shared_repair(standing, left):
    """Return the procedures that all faults left share, where they are of one group."""
    faults = standing.knowledge.faults
    if len({faults[name]["group"] for name in left}) > 1:
        return []
    shared = None
    for name in left:
        own = [
            one
            for one in faults[name].get("procedures") or []
            if sum(one in (fault.get("procedures") or []) for fault in faults.values())
            < COMMON_PROCEDURE
        ]
        shared = own if shared is None else [one for one in shared if one in own]
    return shared or []


def advised_check(standing):
    """Return the check that the diagnosis says to make: at the end what proves the cause, or None."""
    option = choose(standing)
    stopped = stop(standing, option)
    if stopped and stopped["why"] == "found":
        return next(iter(stopped["prove"]), None)
    if stopped and stopped["why"] == "nothing more to learn":
        return None
    return option.first if option else None
