"""The standing of a call in plain words: what leads, what speaks for and against it, what next."""

from calculators.diagnosis.next_check import minutes_of
from calculators.diagnosis.stopping import best_split
from calculators.diagnosis.weighing import (
    companions,
    evidence_for,
    looks_the_same,
    surprise,
    unexplained,
)
from calculators.diagnosis.words import chance_in_words, listed, minutes_in_words

#: Another cause is worth a word from this chance on.
WORTH_A_WORD = 0.05
#: A reading speaks for or against a cause from this weight on, a logarithm to ten.
SPEAKS = 0.1
READINGS_TOLD = 3
#: A cause that is not in the handbook is worth a word from this chance on.
WORTH_DOUBT = 0.15


def explain(standing, found, option, stopped, tried):
    """Return sentences: the leader, the readings for and against it, its likeness, what next."""
    if stopped is not None and stopped["why"] == "danger":
        told = listed(stopped["dangers"])
        return [f"Stop here: {told}. Make the place safe and get help before anything else."]
    sentences = [_leader(standing)]
    if standing.call.readings:
        sentences += _for_and_against(standing)
    sentences += _others(standing)
    sentences += _doubts(standing)
    sentences += _what_next(standing, found, option, stopped, tried)
    return sentences


def splits(standing, check):
    """Return the two likely faults that a check tells apart best, or None."""
    rows = standing.predicted(check)
    likely = [
        (place, standing.knowledge.hypotheses[place][0])
        for place in sorted(rows, key=lambda one: -standing.hypotheses[one])
        if len(standing.knowledge.hypotheses[place]) == 1
    ][:5]
    best, most = None, 0.0
    for number, (place, first) in enumerate(likely):
        for other, second in likely[number + 1 :]:
            pairs = zip(rows[place], rows[other], strict=True)
            apart = sum(abs(one - two) for one, two in pairs)
            worth = apart * standing.hypotheses[place] * standing.hypotheses[other]
            if worth > most:
                best, most = (first, second), worth
    return best


def _leader(standing):
    leader = standing.leader
    now, before = standing.causes[leader], standing.prior(leader)
    if not standing.call.readings:
        return (
            f"Nothing is read yet. Of all calls, {_title(standing, leader)} is the most common "
            f"cause ({chance_in_words(now)})."
        )
    return (
        f"{_title(standing, leader)} leads ({chance_in_words(now)}; "
        f"{chance_in_words(before)} before any reading)."
    )


def _for_and_against(standing):
    weights = evidence_for(standing, standing.leader)
    speaks = [check for weight, check in weights if weight > SPEAKS][:READINGS_TOLD]
    against = [check for weight, check in weights if weight < -SPEAKS][-1:]
    sentences = []
    if speaks:
        sentences.append(f"For it: {'; '.join(_reading(standing, one) for one in speaks)}.")
    told = _reading(standing, against[0]) if against else "nothing yet"
    sentences.append(f"Against it: {told}.")
    return sentences


def _others(standing):
    leader = standing.leader
    others = [one for one in standing.ranking[1:4] if standing.causes[one] >= WORTH_A_WORD]
    if not others or not standing.call.readings:
        return []
    same = [one for one in others if looks_the_same(standing, leader, one)]
    if same:
        return [f"{listed(_title(standing, one) for one in same)} would look the same so far."]
    second = others[0]
    return [f"Second is {_title(standing, second)} ({chance_in_words(standing.causes[second])})."]


def _doubts(standing):
    leader = standing.leader
    if not standing.call.readings:
        return []
    sentences = []
    brought = [one for chance, one in companions(standing, leader) if chance > 0.5]
    if brought:
        sentences.append(f"It has probably brought {_title(standing, brought[0])} with it.")
    if standing.unknown >= WORTH_DOUBT:
        sentences.append(
            f"It may be something else altogether ({chance_in_words(standing.unknown)})."
        )
    found, bound = surprise(standing, leader)
    odd = [one for one in unexplained(standing, leader) if one not in _told_by(standing, brought)]
    if found > bound:
        sentences.append("These results do not fit one cause well: read again what is odd.")
    if odd:
        told = "; ".join(_reading(standing, one) for one in odd)
        sentences.append(f"Not yet explained: {told}.")
    return sentences


def _told_by(standing, brought):
    """Return the checks whose reading a second fault explains."""
    explained = set()
    for fault in brought:
        explained |= set(standing.call.readings) - set(unexplained(standing, fault))
    return explained


def _what_next(standing, found, option, stopped, tried):
    knowledge = standing.knowledge
    if stopped is None:
        return [_next(standing, option), *_try(standing, tried)]
    if stopped["why"] == "found":
        proof = stopped["prove"]
        if stopped["proved"] or not proof:
            return ["Stop testing and repair it, then prove that it is cured."]
        title = knowledge.checks[proof[0]]["title"]
        return [f"Stop searching. Prove it before the repair: {title}."]
    if stopped["why"] == "one repair":
        return ["One repair serves all causes that are left: stop testing and do it."]
    told = " or ".join(_title(standing, one) for one in stopped["causes"])
    sentence = f"No check left is worth its minutes: it is probably {told}."
    split = best_split(standing, *stopped["causes"], found) if stopped["causes"][1:] else None
    if split is not None:
        sentence += f" {knowledge.checks[split]['title']} would tell them apart."
    return [sentence, *_try(standing, tried)]


def _next(standing, option):
    check = standing.knowledge.checks[option.first]
    minutes = minutes_in_words(minutes_of(check))
    told = f"Next: {check['title']}, {minutes}"
    if option.first != option.check:
        target = standing.knowledge.checks[option.check]["title"]
        return f"{told}: it has to come before {target}."
    pair = splits(standing, option.check)
    if pair is None or not standing.call.readings:
        return f"{told}."
    first, second = (_title(standing, one) for one in pair)
    return f"{told}: it tells {first} from {second}."


def _try(standing, tried):
    if tried is None:
        return []
    minutes = minutes_in_words(standing.knowledge.faults[tried]["minutes"])
    return [
        f"Or repair and see: {_title(standing, tried)} takes {minutes} and may end the call at once."
    ]


def _title(standing, fault):
    return standing.knowledge.faults[fault]["title"]


def _reading(standing, check):
    result, _ = standing.call.readings[check]
    of_check = standing.knowledge.checks[check]
    label = of_check["results"][result]["label"]
    return f"{of_check['title']}: {label[:1].lower()}{label[1:]}"
