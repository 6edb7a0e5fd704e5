"""The door for whoever can hand over nothing but text, such as a page's worker: JSON in and out."""

import json

from calculators import run
from calculators.diagnosis import Knowledge, numbers
from calculators.diagnosis.heard import Heard
from calculators.diagnosis.picture import picture
from calculators.figures import picture as drawing
from calculators.practice import exercises, record_work
from calculators.practice.calls import Calls
from calculators.translating import Translator

#: What speaks another language, once it was handed over.
_spoken = {}
#: What the diagnosis knows, once it was handed over, and what was made of it.
_learned = {}


def answer(request):
    """Return as JSON text what was asked for in JSON text.

    The request is ``{"work": …}`` with what this work takes:

    - "calculate": "calculator", "inputs", "units"; answers with what `calculators.run` returns.
    - "draw": the same; answers with the calculator's picture as SVG, or null where it has none.
    - "speak": "words", what `calculators.translating.Translator` takes; answers null. What is
      calculated or drawn afterwards comes in that language.
    - "learn": "knowledge", as JSON text, what `calculators.diagnosis.Knowledge` takes; answers null.
    - "diagnose": "call"; answers with what `calculators.diagnosis.picture` returns.
    - "complaints": "words"; answers with the complaints that a customer's words may mean.
    - "record", "observe", "remember", "crew": see `calculators.practice.record_work`.
    - "read": "check", "numbers", "units"; answers with the result that the numbers show.
    - "new call": "family", "fault", "seed", "" for any; answers with a practice call's code.
    - "practice call": "code", "moves", "units"; answers with what the call shows after the moves.
    - "score": the same and "jargon"; answers with the debrief of a finished practice call.
    - "replay": "code", "moves", "units"; answers with its readings' worth and the home's days.
    - "pose": "exercise", "seed", "units"; answers with a question of `calculators.practice`.
    - "mark": the same and "answers"; answers with how they are.

    Raises ValueError for text that is not JSON, KeyError for a request that lacks a part, and
    LookupError where a diagnosis is asked for and nothing was learned.

    >>> answer('{"work": "draw", "calculator": "air-gap", "inputs": {}, "units": "us"}')
    'null'
    """
    asked = json.loads(request)
    return json.dumps(_WORK[asked["work"]](asked), allow_nan=False)


def _learn(asked):
    _learned.clear()
    _learned["knowledge"] = Knowledge(json.loads(asked["knowledge"]))


def _knowledge():
    if not _learned:
        raise LookupError("The diagnosis has not been given its knowledge: let it learn first.")
    return _learned["knowledge"]


def _heard():
    if "heard" not in _learned:
        _learned["heard"] = Heard(_knowledge())
    return _learned["heard"]


def _calls():
    if "calls" not in _learned:
        _learned["calls"] = Calls(_knowledge())
    return _learned["calls"]


def _speak(asked):
    _spoken["translator"] = Translator(asked["words"])


def _calculate(asked):
    translator = _spoken.get("translator")
    if translator is None:
        return run(asked["calculator"], asked["inputs"], asked["units"])
    inputs = {name: translator.typed(text) for name, text in asked["inputs"].items()}
    return translator.result(run(asked["calculator"], inputs, asked["units"]))


def _draw(asked):
    translator = _spoken.get("translator")
    if translator is None:
        return drawing(asked["calculator"], asked["inputs"], asked["units"])
    inputs = {name: translator.typed(text) for name, text in asked["inputs"].items()}
    drawn = drawing(asked["calculator"], inputs, asked["units"])
    return drawn and translator.svg(drawn)


_WORK = {
    "speak": _speak,
    "calculate": _calculate,
    "draw": _draw,
    "learn": _learn,
    "diagnose": lambda asked: picture(_knowledge(), asked["call"]),
    "complaints": lambda asked: _heard().complaints_for(asked["words"]),
    "pose": lambda asked: exercises.asked(asked, _learned.get("knowledge")),
    "mark": lambda asked: exercises.asked(asked, _learned.get("knowledge")),
    "record": record_work.record,
    "observe": record_work.observe,
    "remember": record_work.remember,
    "crew": record_work.crew,
    "read": lambda asked: numbers.read(asked["check"], asked["numbers"], asked["units"]),
    "new call": lambda asked: _calls().new(asked["family"], asked["fault"], asked["seed"]),
    "practice call": lambda asked: _calls().answer(asked["code"], asked["moves"], asked["units"]),
    "score": lambda asked: _calls().debrief(
        asked["code"], asked["moves"], asked["units"], asked["jargon"]
    ),
    "replay": lambda asked: _calls().replay(asked["code"], asked["moves"], asked["units"]),
}
