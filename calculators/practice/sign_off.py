"""Which skills a person is signed off in, and what is still missing.

A skill is a dict of `id`, `title`, `families` and `items` (of its exercises, titles by name),
`safety` (names of items that must be right), `faults` (groups of faults whose practice calls count)
and `heavy`. The rules are the handbook's own choice, for a trainer to judge by; they replace no
license.
"""

from datetime import date

from calculators.practice.record import day_number

#: What a level of competency means.
LEVELS = (
    "not seen",
    "explained",
    "did it with help",
    "did it alone, to standard",
    "taught another",
)
ALONE = 3  # the level that counts
SYSTEMS, HEAVY_SYSTEMS = 2, 1  # on which it was seen
CALLS, CALL_SCORE = 3, 0.8
RUN, RUN_DAYS = 3, 14
MONTHS = 24
RECENT = 20  # answers that the share of right ones is of


class Progress:
    """What a person has of one skill, day by day."""

    def __init__(self, skill, name):
        self._skill = skill
        self._name = name.casefold()
        self._runs = {family: [] for family in skill["families"]}
        self._safe = dict.fromkeys(skill["safety"], False)
        self._systems = set()
        self._calls, self._played = set(), set()
        self._unsafe = set()
        self.answers = []
        self.level, self.level_day = 0, ""
        self.signed_on = self.seen_on = ""

    def answer(self, attempt):
        """Take in an answer; one that belongs to another skill changes nothing."""
        skill, family = self._skill, attempt["family"]
        is_call = "code" in attempt
        if family not in skill["faults"] if is_call else attempt["skill"] != skill["id"]:
            return
        good = attempt["right"] and not attempt["critical"]
        self.answers.append(good)
        if attempt["critical"]:
            self._unsafe.add(attempt["item"])
        elif good:
            self._unsafe.discard(attempt["item"])
        if attempt["item"] in self._safe:
            self._safe[attempt["item"]] = good
        if is_call:
            # Who plays a code again knows what it hides.
            if attempt["score"] >= CALL_SCORE and attempt["code"] not in self._played:
                self._calls.add(attempt["code"])
            self._played.add(attempt["code"])
        elif family in self._runs:
            if good:
                self._runs[family].append(day_number(attempt["day"]))
            else:
                self._runs[family].clear()

    def observe(self, seen):
        """Take in what somebody else saw; what a person says of themselves does not count."""
        if seen["observer"].casefold() == self._name:
            return
        if seen["level"] > self.level:
            self.level, self.level_day = seen["level"], seen["day"]
        if seen["level"] >= ALONE:
            self._systems.add(seen["system"].casefold())
            self.seen_on = seen["day"]

    def end_day(self, day):
        """Note the first day on which nothing was missing."""
        if not self.signed_on and not self.missing():
            self.signed_on = day

    def missing(self):
        """Return what is still missing, as sentences."""
        return [*self._not_seen(), *self._not_practiced(), *self.unsafe()]

    def unsafe(self):
        """Return what of safety is missing, as sentences."""
        found = []
        if self._unsafe:
            found.append(
                f"A safety miss is open. Do again, and do right: {self._titles(self._unsafe)}."
            )
        left = [item for item, good in self._safe.items() if not good and item not in self._unsafe]
        if left:
            found.append(f"Safety exercises that are not right yet: {self._titles(left)}.")
        return found

    def calls_done(self):
        """Return how many different calls reached the score."""
        return len(self._calls)

    def _not_seen(self):
        wanted = HEAVY_SYSTEMS if self._skill["heavy"] else SYSTEMS
        if len(self._systems) < wanted:
            where = "1 system" if wanted == 1 else f"{wanted} different systems"
            yield (f"Seen at level {ALONE} or higher on {where}: {len(self._systems)} of {wanted}.")

    def _not_practiced(self):
        if len(self._calls) < CALLS:
            yield (
                f"Practice calls with a score of at least {CALL_SCORE * 100:.0f}: "
                f"{len(self._calls)} of {CALLS}."
            )
        titles = self._skill["families"]
        short = [titles[family] for family, days in self._runs.items() if not _is_run(days)]
        if short:
            listed = ", ".join(sorted(short))
            yield f"{RUN} right in a row over at least {RUN_DAYS} days, in: {listed}."

    def _titles(self, items):
        return ", ".join(sorted(self._skill["items"].get(item, item) for item in items))


def signed_off(record, skills, today):
    """Return for each skill where a person stands in it on a day.

    What lies after that day is left out. A skill is signed off from the first day on which nothing
    was missing, for MONTHS from that day or from the last time it was seen at level ALONE or
    higher. A safety miss takes it away until it is put right.

    Returns dicts of `skill`, `title`, `level`, `level_day`, `state` ("not yet", "signed off",
    "check again" or "safety first"), `signed_on`, `check_by`, `missing` (sentences), `right` and
    `answers` (of the last RECENT), `calls` (that reached the score) and `observed`.
    """
    last = day_number(today)
    days = {}
    for kind in ("attempts", "observed"):
        for one in sorted(record[kind], key=lambda one: one.get("at", one["day"])):
            if day_number(one["day"]) <= last:
                days.setdefault(one["day"], []).append(one)
    return [_standing(skill, record, days, today) for skill in skills]


def _standing(skill, record, days, today):
    progress = Progress(skill, record["name"])
    for day in sorted(days):
        for one in days[day]:
            if "level" not in one:
                progress.answer(one)
            elif one["skill"] == skill["id"]:
                progress.observe(one)
        progress.end_day(day)
    signed_on = progress.signed_on
    check_by = months_later(max(signed_on, progress.seen_on), MONTHS) if signed_on else ""
    recent = progress.answers[-RECENT:]
    unsafe = progress.unsafe()
    if not signed_on:
        state, missing = "not yet", progress.missing()
    elif unsafe:
        state, missing = "safety first", unsafe
    elif today > check_by:
        state = "check again"
        missing = [f"It was to be seen again at level {ALONE} or higher by {check_by}."]
    else:
        state, missing = "signed off", []
    return {
        "skill": skill["id"],
        "title": skill["title"],
        "level": progress.level,
        "level_day": progress.level_day,
        "state": state,
        "signed_on": signed_on,
        "check_by": check_by,
        "missing": missing,
        "right": sum(recent),
        "answers": len(recent),
        "calls": progress.calls_done(),
        "observed": [one for one in record["observed"] if one["skill"] == skill["id"]],
    }


def months_later(day, months):
    """Return the same day some months later, or the last one of a month that lacks it.

    >>> months_later("2024-02-29", 24)
    '2026-02-28'
    """
    year, month, number = map(int, day.split("-"))
    year, month = year + (month - 1 + months) // 12, (month - 1 + months) % 12 + 1
    for last in (number, 30, 29, 28):
        try:
            return date(year, month, min(number, last)).isoformat()
        except ValueError:
            continue


def _is_run(days):
    return len(days) >= RUN and days[-1] - days[0] >= RUN_DAYS
