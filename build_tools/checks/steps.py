"""A step holds one action, in sentences that can be read with wet hands.

What an action is, the handbook itself tells: the first word of each step is a verb of the trade.
The check would rather miss a second action than call something one that is none.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from itertools import chain

from build_tools.content.entries import Passage
from build_tools.content.handbook import Handbook
from build_tools.content.markdown_file import Piece
from build_tools.content.problems import Problem, shortened
from build_tools.content.stages import split_stage

#: Longer sentences are lost between reading and doing.
LONGEST_SENTENCE = 30

#: Verbs that often come second in a sentence, whether or not a step begins with them.
_COMMON_VERBS = frozenset(
    "add adjust advance agree allow apply ask attach begin bring call carry catch check choose "
    "compare confirm connect continue cut detach disconnect dispose divide drop enter explain "
    "fetch find fit follow get give go grease hang hold insert install keep lay lead leave let "
    "lift listen look loosen lower lubricate make measure move multiply observe pour press pull "
    "push put raise read reassemble reconnect record refit regenerate release remove renew "
    "repeat replace reset restart restore return reverse roll say scoop screw see send show "
    "slide start stay stop swirl take tell throw tighten touch try turn unclip unplug unscrew "
    "use wait walk warn wipe withdraw write".split()
)
#: Verbs that are as often something else: a noun or how a thing is. They need an object to count.
_ALSO_NOUNS = frozenset(
    "answer backwash bail bleed block brine brush bypass cap catch check clean clear clip clock "
    "close collect color complete cool count cover cut date dose double drain draw drip drop dry "
    "dye empty end feel fill finish fit flow flush free gauge grease guard guess halve heat hold "
    "inlet jar label leak level light limit line list lock lower mark measure meter mind name "
    "note number open outlet paint park part pass place plug point pour press probe pump "
    "question record refill release repair repeat report rest return reverse rinse rod run salt "
    "sample scale screw seal set shake share shelter show shut sign slow space stand start "
    "station steady step stir stop strain support switch tag talk tap test thread time touch "
    "trace treat try turn valve vent visit walk wash watch water weigh work wrap".split()
)
#: First words of sentences that are no verbs.
_OPENERS = frozenset(
    "a about above after again ahead all always an and another any anything as at away be "
    "because before behind below beside between both but by do down during each either every "
    "everything few first five for four from gently half here how however if in inside instead "
    "into it its just last later least less many more most much near neither never next no "
    "nobody none not nothing now of off on once one only or other otherwise out over per please "
    "quite right same several since slowly so some still straight such than that the their them "
    "then there these they this those three through till to too two under unless until up upon "
    "very well what whatever when where whether which while who whoever whose why with within "
    "without yet you your".split()
)
_OBJECT = (
    r"(?:the|an?|it|its|them|this|that|these|those|each|every|all|both|any|some|one|two|three|your|"
    r"their|another|everything|what|whatever|again|once|twice|until)\b"
)
_OBJECT_OR_PLACE = rf"(?:{_OBJECT}|(?:with|at|into|out|off|for|back|gently|slowly|down|up)\b)"
_COVERED = "\ue000"
_WORD = re.compile(rf"{_COVERED}+|[^\W\d_](?:[\w'’-]*\w)?|\d[\d.,/]*")
_SENTENCE_END = re.compile(r"[.!?][)”\"]?\s+(?=[\"“(]?[^\W\d_a-z]|[\"“(]?\ue000)")
#: Two words for one movement.
_ONE_MOVEMENT = re.compile(
    r"\b(?:press and hold|push and hold|push and turn|press and turn|pull and turn|lift and turn|"
    r"push and twist|wait and (?:see|watch)|look and listen|stop and (?:think|look|refer)|"
    r"go and (?:look|see))\b",
    re.IGNORECASE,
)
#: After these, "and" goes on with what is told, asked or seen.
_TOLD = re.compile(
    r"(?:^|,\s)(?:tell|ask|show|explain|warn|remind|advise|teach|help|let|see|check|make sure|"
    r"confirm|say|write down|note|agree|learn|find out|decide)\b.*"
    r"\b(?:to|that|whether|how|what|who|which|why|where|when|if)\b",
    re.IGNORECASE | re.DOTALL,
)
_CONDITION = re.compile(r"(?:if|when|where|once|after|then|otherwise|next|now|finally)\b", re.I)
#: Words that may stand before a verb: "and gently lift", "Now rinse".
_FILLERS = (
    r"(?:(?:please|now|next|then|also|finally|first|afterward|again|just|you|"
    r"(?!apply\b|supply\b|reply\b)\w+ly),?\s+){0,2}"
)


def check(handbook: Handbook) -> Iterator[Problem]:
    """Yield a problem for each long sentence and each second action in a step."""
    verbs = action_verbs(handbook)
    for passage, kind in all_steps(handbook):
        yield from _second_actions(passage, kind, verbs)
    for group in (handbook.procedures, handbook.faults, handbook.checks):
        for entry in group.values():
            for passage in entry.passages():
                yield from _long_sentences(passage)


def action_verbs(handbook: Handbook) -> frozenset[str]:
    """Return the verbs with which the handbook's steps begin, and some more, in lower case."""
    every = all_steps(handbook)
    firsts = {match[0].lower() for passage, _ in every if (match := _WORD.match(passage.text))}
    return (frozenset(firsts) | _COMMON_VERBS | _ALSO_NOUNS) - _OPENERS


def all_steps(handbook: Handbook) -> Iterator[tuple[Passage, str]]:
    """Yield every text that tells what to do, and what messages call it."""
    return chain(of_procedures(handbook), of_faults_and_checks(handbook))


def of_procedures(handbook: Handbook) -> Iterator[tuple[Passage, str]]:
    """Yield what each step of a procedure tells to do, and what messages call it."""
    for entry in handbook.procedures.values():
        for passage in entry.passages():
            if passage.path[0] == "steps" and passage.path[2:] == ("do",):
                yield passage, "step"


def of_faults_and_checks(handbook: Handbook) -> Iterator[tuple[Passage, str]]:
    """Yield each item of a fault's remedy and of a check's work, and what messages call it."""
    for group, key in ((handbook.faults, "remedy"), (handbook.checks, "how")):
        for entry in group.values():
            for passage in entry.passages():
                if passage.path[0] == key:
                    yield passage, "item"


def _long_sentences(passage: Passage) -> Iterator[Problem]:
    for piece in passage.markdown.pieces:
        for start, sentence in sentences(piece.text):
            words = len(_WORD.findall(sentence))
            if words > LONGEST_SENTENCE:
                said = (
                    f"a sentence of {words} words: {_quoted(sentence)} "
                    f"(expected at most {LONGEST_SENTENCE})"
                )
                yield _at(passage, piece, start, said)


def _second_actions(passage: Passage, kind: str, verbs: frozenset[str]) -> Iterator[Problem]:
    stage, _ = split_stage(passage.text)
    for piece in passage.markdown.pieces:
        text = piece.text
        if stage and text.startswith(stage):
            text = text.replace(f"{stage}:", " " * (len(stage) + 1), 1)
        for number, (start, sentence) in enumerate(sentences(text)):
            second = second_action(sentence, first=number == 0, verbs=verbs)
            if second is not None:
                said = (
                    f"a second action in one {kind}: {_quoted(sentence[second:])} "
                    f"(expected one action, and this in {'a' if kind == 'step' else 'an'} "
                    f"{kind} of its own)"
                )
                yield _at(passage, piece, start + second, said)


def _at(passage: Passage, piece: Piece, position: int, said: str) -> Problem:
    return passage.problem(piece.offset(position), said)


def _quoted(text: str) -> str:
    return f'"{shortened(re.sub(f"{_COVERED}+", "…", text), 40)}"'


def sentences(text: str) -> Iterator[tuple[int, str]]:
    """Yield each sentence of a text and where it begins."""
    start = 0
    for end in _SENTENCE_END.finditer(text):
        yield start, text[start : end.start() + 1]
        start = end.end()
    if text[start:].strip():
        yield start, text[start:]


def second_action(sentence: str, *, first: bool, verbs: frozenset[str]) -> int | None:
    """Return where a second action begins in a sentence, or None.

    first: whether it is the first sentence of its step. In a later one any action is a second.
    """
    if not first and (match := _whole(verbs, _OBJECT_OR_PLACE).match(sentence)):
        return match.start("verb")
    if not first and _CONDITION.match(sentence):
        match = _after_comma(verbs).search(sentence)
        return match.start("verb") if match else None
    for match in _joined(verbs).finditer(sentence):
        before = sentence[: match.start()]
        one = _ONE_MOVEMENT.search(sentence)
        if one and one.start() <= match.start() < one.end():
            continue
        comma = match["comma"] or ";" in match[0] or match["then"]
        if not comma and _TOLD.search(before):
            continue
        if not _has_action(before, verbs):
            continue
        return match.start("verb")
    match = _side_by_side(verbs).search(sentence)
    if match and _begins_with_action(sentence, verbs) and ", or " not in sentence[match.end() :]:
        return match.start("verb")
    return None


def _has_action(before: str, verbs: frozenset[str]) -> bool:
    """Tell whether some word before a joint is a verb: otherwise nothing was to be done yet."""
    return any(word.lower() in verbs for word in _WORD.findall(before))


def _begins_with_action(sentence: str, verbs: frozenset[str]) -> bool:
    """Tell whether a sentence tells what to do from its first word on."""
    first = _WORD.search(sentence)
    return first is not None and first[0].lower() in verbs and not _TOLD.match(sentence)


def _verb(verbs: frozenset[str], follows: str, sure_follows: str = "") -> str:
    sure = "|".join(sorted(verbs - _ALSO_NOUNS, key=len, reverse=True))
    noun = "|".join(sorted(verbs & _ALSO_NOUNS, key=len, reverse=True))
    certain = rf"(?:{sure})\b(?![-’']|\s+nothing\b){sure_follows}"
    return rf"{_FILLERS}(?P<verb>{certain}|(?:{noun})\s+{follows})"


@cache
def _whole(verbs: frozenset[str], follows: str) -> re.Pattern[str]:
    return re.compile(rf"[\"“(]?{_verb(verbs, follows)}", re.IGNORECASE)


@cache
def _after_comma(verbs: frozenset[str]) -> re.Pattern[str]:
    return re.compile(rf",\s+{_verb(verbs, _OBJECT)}", re.IGNORECASE)


@cache
def _joined(verbs: frozenset[str]) -> re.Pattern[str]:
    aside = r"(?:,[^,.;]{1,40},)?"  # "and, with a pick, clear the bore"
    joints = (
        rf"(?P<comma>,)?\s+(?:and|plus|&){aside}\s+(?P<then>then\s+)?"
        r"|(?:,|;)?\s+(?P<alone>then)\s+|;\s+"
    )
    return re.compile(rf"(?:{joints}){_verb(verbs, _OBJECT)}", re.IGNORECASE)


@cache
def _side_by_side(verbs: frozenset[str]) -> re.Pattern[str]:
    """Return the pattern of a second action that no word joins to the first."""
    second = _verb(verbs, _OBJECT, rf"\s+{_OBJECT_OR_PLACE}")
    return re.compile(rf"(?:[,:]\s+|\s[–—-]\s+|\s\(){second}", re.IGNORECASE)
