"""Marks answers as a learning system does: by the rules in an item, and by nothing else.

It is written from the standard's description of each rule, not from the code that writes items.
"""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

NAMESPACE = "{http://www.imsglobal.org/xsd/imsqti_v2p1}"
READ = {"float": float, "integer": int, "string": str, "identifier": str}


def parsed(data: bytes) -> Element:
    """Return the root of a file, its names without the namespace."""
    root = ElementTree.fromstring(data)
    for one in root.iter():
        one.tag = one.tag.removeprefix(NAMESPACE)
    return root


def right_answers(item: Element) -> dict[str, Any]:
    """Return the right answer of each response, as it is declared."""
    found = {}
    for one in item.findall("responseDeclaration"):
        read = READ[one.get("baseType", "")]
        values = [read(value.text or "") for value in one.iter("value")]
        found[one.get("identifier", "")] = (
            values if one.get("cardinality") == "ordered" else values[0]
        )
    return found


def marked(item: Element, answers: dict[str, Any]) -> dict[str, Any]:
    """Return every outcome after the rules of an item were followed on answers."""
    known: dict[str, Any] = dict.fromkeys(right_answers(item)) | answers
    for one in item.findall("outcomeDeclaration"):
        value = one.find("defaultValue/value")
        read = READ[one.get("baseType", "")]
        numeric = 0 if one.get("baseType") in ("float", "integer") else None
        known[one.get("identifier", "")] = numeric if value is None else read(value.text or "")
    for rule in item.findall("responseProcessing/*"):
        _follow(rule, known)
    return known


def shown_feedback(item: Element, answers: dict[str, Any]) -> list[str]:
    """Return all that is said after answers, each as one text."""
    known = marked(item, answers)
    return [
        " ".join("".join(one.itertext()).split())
        for one in item.findall("modalFeedback")
        if known[one.get("outcomeIdentifier", "")] == one.get("identifier")
    ]


def _follow(rule: Element, known: dict[str, Any]) -> None:
    if rule.tag == "setOutcomeValue":
        known[rule.get("identifier", "")] = _value(rule[0], known)
        return
    assert rule.tag == "responseCondition"
    for branch in rule:
        if branch.tag == "responseElse" or _value(branch[0], known):
            for one in branch if branch.tag == "responseElse" else branch[1:]:
                _follow(one, known)
            return


def _value(one: Element, known: dict[str, Any]) -> Any:
    if one.tag == "variable":
        return known[one.get("identifier", "")]
    if one.tag == "baseValue":
        return READ[one.get("baseType", "")](one.text or "")
    parts = [_value(part, known) for part in one]
    if one.tag in ("and", "or"):
        return (all if one.tag == "and" else any)(parts)
    if any(part is None for part in parts):
        return None  # a missing answer makes every other expression nothing
    if one.tag == "index":
        place = int(one.get("n", ""))
        return parts[0][place - 1] if place <= len(parts[0]) else None
    if one.tag == "stringMatch":
        assert one.get("caseSensitive") == "false"
        return parts[0].lower() == parts[1].lower()
    return _SUMS[one.tag](parts)


def _product(parts: list[float]) -> float:
    made = 1.0
    for part in parts:
        made *= part
    return made


_SUMS = {
    "match": lambda parts: parts[0] == parts[1],
    "lt": lambda parts: parts[0] < parts[1],
    "gt": lambda parts: parts[0] > parts[1],
    "lte": lambda parts: parts[0] <= parts[1],
    "gte": lambda parts: parts[0] >= parts[1],
    "sum": sum,
    "product": _product,
    "divide": lambda parts: parts[0] / parts[1],
}
