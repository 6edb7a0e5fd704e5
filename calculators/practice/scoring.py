"""The score of a finished practice call, in its parts; all weights are common practice, no source."""

from calculators.diagnosis.knowledge import COMPLAINT, FIRST_LOOK
from calculators.practice.hidden_call import NO_FAULT
from calculators.practice.to_customer import looked_over

#: What each part counts at the most; together 100.
CAUSE, REMEDY, CLOSING, ECONOMY, CONFIDENCE, SAFETY, WORDS = 40, 8, 7, 15, 10, 15, 5
#: Of the cause's points: the right group, and the effect in the place of its cause.
RIGHT_GROUP, EFFECT = 1 / 2, 1 / 4
#: What is taken off: for a good part that was replaced, for evidence destroyed unread, and for each
#: cause that was named or repaired and was none.
GOOD_PART, DESTROYED, WRONG_CAUSE = 10, 5, 10
#: What opening without the customer's consent costs of the points for safety.
NO_CONSENT = 5
#: More a call with a critical miss never has.
CRITICAL_MOST = 50
#: Minutes that everybody has for listening to the customer.
LISTENING = 1.0
#: A closing test would show the fault, were it still there, in at least so many homes.
TELLING = 0.5
#: Checks that ask people.
TOLD = (COMPLAINT, "interview")
#: From this part of the cause's points on the cause counts as found.
_WHOLE = 0.999


class Score:
    """points: {part: (points, most)}; taken: [(sentence, points)]; critical: sentences; total;
    right: whether every cause was found; sure: the confidence that was first stated, in per cent."""

    __slots__ = ("points", "taken", "critical", "total", "right", "sure", "words", "minutes")


def score(played, best_minutes, jargon=()):
    """Return the Score of a played call.

    best_minutes: what is enough: what the diagnosis needed on the same call, or the first look;
    jargon: words that a customer does not
    know.
    """
    made = Score()
    part = cause_share(played)
    made.right = part >= _WHOLE
    made.minutes = searching_minutes(played)
    made.words = looked_over(played.told, jargon)
    made.critical = critical_misses(played)
    remedied = [one for one in played.hidden.faults if one not in played.faults]
    made.points = {
        "cause": (CAUSE * part, CAUSE),
        "remedy": (REMEDY * len(remedied) / len(played.hidden.faults), REMEDY),
        "closing test": (CLOSING * closing_test_is_right(played), CLOSING),
        "economy": (economy(part, best_minutes, made.minutes), ECONOMY),
        "confidence": (confidence(played), CONFIDENCE),
        "safety": (safety(played, made.critical), SAFETY),
        "words": (words(made.words, played.told), WORDS),
    }
    made.taken = taken_off(played)
    total = sum(points for points, _ in made.points.values())
    total = max(0.0, total - sum(points for _, points in made.taken))
    made.total = round(min(total, CRITICAL_MOST) if made.critical else total)
    named = played.named
    made.sure = named[0]["confidence"] if named else 0.0
    return made


def namings_that_count(played):
    """Return the namings that were followed by a repair, and the last one: others were taken back."""
    counted, open_naming = [], None
    for one in played.log:
        if one["what"] == "name":
            open_naming = one
        elif one["what"] == "remedy" and open_naming:
            counted.append(open_naming)
            open_naming = None
    return [*counted, open_naming] if open_naming else counted


def cause_share(played):
    """Return what part [0 to 1] of the points for the cause was earned.

    Of two faults each counts half; of a cause and its effect the cause three quarters. One that
    was not named counts by its group, or by its effect that was named in its place.
    """
    hidden, faults = played.hidden.faults, played.knowledge.faults
    named = {cause for one in namings_that_count(played) for cause in one["causes"]}
    shares = [1 / len(hidden)] * len(hidden)
    if len(hidden) == 2 and hidden[0] in (faults[hidden[1]].get("follows") or []):
        shares = [1 - EFFECT, EFFECT]
    earned = 0.0
    for fault, share in zip(hidden, shares, strict=True):
        others = [one for one in named if one not in hidden]
        effects = [one for one in others if fault in (faults[one].get("follows") or [])]
        if fault in named:
            earned += share
        elif effects:
            earned += share * EFFECT
        elif any(faults[one]["group"] == faults[fault]["group"] for one in others):
            earned += share * RIGHT_GROUP
    return earned


def searching_minutes(played):
    """Return the minutes up to the last naming that counts, with repairs in vain, without right ones."""
    counted = namings_that_count(played)
    last = played.log.index(counted[-1]) if counted else len(played.log)
    return sum(
        one["minutes"]
        for place, one in enumerate(played.log)
        if (not one["right"] if one["what"] == "remedy" else place < last)
    )


def closing_test_is_right(played):
    """Tell whether a test after the last right repair would have shown the fault, were it there."""
    last = max((place for place, one in enumerate(played.log) if _is_right(one)), default=None)
    if last is None:
        return False
    return any(
        one["what"] == "prove" and tells(played.hidden, played.hidden.faults, one["check"])
        for one in played.log[last:]
    )


def tells(hidden, faults, check):
    """Tell whether a check can close a call with one of these faults.

    It proves the fault, shows it in most homes, or showed something in this one before the repair.
    What people tell proves nothing.
    """
    knowledge = hidden.knowledge
    if check in TOLD or not knowledge.applies(check, {"control": hidden.control}):
        return False
    before = hidden.reading(check, hidden.faults)["result"]
    if before not in (None, knowledge.results[check][0]):
        return True
    for fault in faults:
        proofs = [one["check"] for one in knowledge.faults[fault].get("proved_by") or []]
        row = knowledge.tables[check][knowledge.hypotheses.index((fault,))]
        if check in proofs or (fault != NO_FAULT and 1 - row[0] >= TELLING):
            return True
    return False


def first_look_minutes(knowledge):
    """Return the minutes of the whole first look: nobody loses points for taking all of it."""
    return sum(
        check["minutes"] for check in knowledge.checks.values() if check["stage"] in FIRST_LOOK
    )


def economy(part, best, minutes):
    """Return the points for few minutes, beside those of the diagnosis, as far as the cause is right.

    >>> economy(1.0, 4.0, 9.0), economy(1.0, 9.0, 4.0), economy(0.0, 4.0, 0.0)
    (7.5, 15.0, 0.0)
    """
    return ECONOMY * part * min(1.0, (best + LISTENING) / (minutes + LISTENING))


def confidence(played):
    """Return the points for a stated confidence: the first naming's, by the square of its distance.

    Over many calls nobody earns more than by saying what they believe.
    """
    if not played.named:
        return 0.0
    first = played.named[0]
    hit = any(one in played.hidden.faults for one in first["causes"])
    return CONFIDENCE * (1 - (first["confidence"] / 100 - hit) ** 2)


def critical_misses(played):
    """Return a sentence for each kind of critical miss."""
    missed = {kind for one in played.log for kind in one.get("missed", ())}
    sentences = []
    if "pressure" in missed:
        sentences.append(
            "Something was opened before the unit was made safe: bypass, pressure off, unplugged."
        )
    if "danger" in missed:
        sentences.append("The work went on although a danger was seen that ends it at once.")
    return sentences


def safety(played, critical):
    """Return the points for safety and consent; a call without a check or a repair has none."""
    if critical or not any(one["what"] in ("check", "remedy") for one in played.log):
        return 0.0
    unasked = any("consent" in one.get("missed", ()) for one in played.log)
    return float(SAFETY - NO_CONSENT * unasked)


def words(found, text):
    """Return the points for what was told to the customer."""
    if not text or not found["long"]:
        return 0.0
    told = found["found"] + found["done"] + found["watch"]
    return float(told + max(0, WORDS - 3 - len(found["jargon"])))


def taken_off(played):
    """Return (sentence, points) of what is taken off, in the order in which it happened."""
    knowledge, hidden = played.knowledge, played.hidden.faults
    useful = {part for fault in hidden for part in knowledge.faults[fault].get("parts") or []}
    counted = {id(one) for one in namings_that_count(played)}
    charged = {one["remedy"] for one in played.remedies}
    taken = []
    for one in played.log:
        if one["what"] == "name" and id(one) in counted:
            wrong = [
                cause for cause in one["causes"] if cause not in hidden and cause not in charged
            ]
            charged.update(wrong)
            taken += [
                (f"Named what was not at fault: {knowledge.faults[cause]['title']}.", WRONG_CAUSE)
                for cause in wrong
            ]
        elif one["what"] == "check" and one["destroyed"]:
            title = knowledge.checks[one["check"]]["title"]
            gone = "; ".join(knowledge.checks[each]["title"] for each in one["destroyed"])
            taken.append((f"“{title}” destroyed evidence that was not read: {gone}.", DESTROYED))
        elif one["what"] == "remedy":
            if not one["right"]:
                title = knowledge.faults[one["remedy"]]["title"]
                taken.append((f"Repaired what was not at fault: {title}.", WRONG_CAUSE))
            taken += [
                (f"Replaced what was good: {part}.", GOOD_PART)
                for part in one["parts"]
                if part not in useful
            ]
    return taken


def _is_right(one):
    return one["what"] == "remedy" and one["right"]
