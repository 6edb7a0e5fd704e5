"""The door for whoever can hand over nothing but text, such as a page's worker: JSON in and out.

The knowledge is handed over once with `learn`; each call is then a question to `answer`.
"""

import json

from calculators.diagnosis.knowledge import Knowledge
from calculators.diagnosis.picture import picture

_learned = {}


def learn(text):
    """Take the knowledge of a handbook as JSON text, in the place of what was learned before.

    Raises ValueError for text that is not JSON, and KeyError for knowledge that lacks a part.
    """
    _learned["knowledge"] = Knowledge(json.loads(text))


def answer(request):
    """Return as JSON text the whole answer to a call that is given as JSON text.

    The request is what `calculators.diagnosis.picture.picture` takes. Raises ValueError for text
    that is not JSON, and LookupError where nothing was learned yet.
    """
    if not _learned:
        raise LookupError("The diagnosis has not been given its knowledge: call learn first.")
    return json.dumps(picture(_learned["knowledge"], json.loads(request)), allow_nan=False)
