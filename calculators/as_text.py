"""The door for whoever can hand over nothing but text, such as a page's worker: JSON in and out."""

import json

from calculators import run
from calculators.figures import picture

WORK = {"calculate": run, "draw": picture}


def answer(request):
    """Return as JSON text what was asked for in JSON text.

    The request is ``{"work": …, "calculator": …, "inputs": {…}, "units": …}``. The work
    "calculate" answers with what `calculators.run` returns, "draw" with the calculator's picture as
    SVG, or null where it has none.

    Raises ValueError for text that is not JSON, and KeyError for a request that lacks a part.

    >>> answer('{"work": "draw", "calculator": "air-gap", "inputs": {}, "units": "us"}')
    'null'
    """
    asked = json.loads(request)
    work = WORK[asked["work"]]
    return json.dumps(work(asked["calculator"], asked["inputs"], asked["units"]), allow_nan=False)
