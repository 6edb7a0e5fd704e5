"""The problems of the check as other programs read them: JSON lines, and SARIF.

SARIF is the open standard of OASIS for what checkers find (version 2.1.0): code hosts show it
beside the changed lines, and editors list it.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from importlib.metadata import version
from pathlib import Path
from typing import Any
from urllib.parse import quote

from build_tools.content.problems import Problem, Said, in_order, summary

SARIF_VERSION = "2.1.0"
SARIF_SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
_ROOT, _RULE = "HANDBOOK", "content"


def lines(problems: Iterable[Problem], _: Path) -> str:
    """Return what people read."""
    found = list(problems)
    return summary(found) if found else "No problems found."


def json_lines(problems: Iterable[Problem], _: Path) -> str:
    """Return one JSON object a line for each problem, and nothing where there is none."""
    return "\n".join(json.dumps(_data(one), ensure_ascii=False) for one in in_order(problems))


def sarif(problems: Iterable[Problem], root: Path) -> str:
    """Return one SARIF log; `root` is the folder that the problems' files start from."""
    driver = {
        "name": "softener-handbook check",
        "version": version("softener-handbook"),
        "rules": [
            {
                "id": _RULE,
                "shortDescription": {"text": "A source file must be right."},
                "defaultConfiguration": {"level": "error"},
            }
        ],
    }
    run = {
        "tool": {"driver": driver},
        "originalUriBaseIds": {_ROOT: {"uri": f"{root.resolve().as_uri()}/"}},
        "columnKind": "unicodeCodePoints",
        "results": [_result(one) for one in in_order(problems)],
    }
    log = {"$schema": SARIF_SCHEMA, "version": SARIF_VERSION, "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2)


FORMATS: dict[str, Callable[[Iterable[Problem], Path], str]] = {
    "lines": lines,
    "json": json_lines,
    "sarif": sarif,
}


def _data(problem: Problem) -> dict[str, Any]:
    text = problem.text
    known = isinstance(text, Said)
    return {
        "file": problem.file,
        "line": problem.line,
        "message": _plain(text),
        "expected": _plain(text.expected) if known else None,
        "nearest": text.nearest if known else None,
    }


def _result(problem: Problem) -> dict[str, Any]:
    place = {
        "artifactLocation": {"uri": quote(problem.file), "uriBaseId": _ROOT},
        "region": {"startLine": problem.line},
    }
    return {
        "ruleId": _RULE,
        "ruleIndex": 0,
        "level": "error",
        "message": {"text": _plain(problem.text)},
        "locations": [{"physicalLocation": place}],
    }


def _plain(text: str) -> str:
    return str(text).replace("\u00a0", " ")
