"""The part of the standard that packs use, and whether a file keeps to it.

The standard's own schema asks who puts it into a product to register, and no package has it, so it
is no part of this project. What stands here is written after it: for each element that packs use,
the elements that may stand in it and its attributes. A file that passes is a file of the schema; not
every file of the schema passes. docs/class-pack.md tells how to hold a pack to the schema itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple
from xml.etree.ElementTree import Element

NAME = r"[A-Za-z_][A-Za-z0-9._-]*"
NUMBER = r"-?[0-9]+(\.[0-9]+)?"
WHOLE = r"-?[0-9]+"
YES_NO = "true|false"
ANY = r".*"
BASE = "boolean|float|identifier|integer|string"
HREF = r"[^ ]+"


class Kind(NamedTuple):
    """What may be in an element, as a pattern of names with a space after each; whether text may
    stand between; its attributes with the pattern of each, and which of them must be there."""

    inside: str
    text: bool = False
    attributes: Mapping[str, str] = MappingProxyType({})
    needed: tuple[str, ...] = ()


_INLINE = "strong|em|a|textEntryInteraction"
_BLOCK = "p|ul|ol"
_VALUES = (
    "variable|baseValue|match|stringMatch|index|and|or|lt|gt|lte|gte|sum|product|divide|"
    "testVariables"
)
_RULES = "responseCondition|setOutcomeValue"
_OF_RESPONSE = {"identifier": NAME, "cardinality": "single|ordered", "baseType": BASE}
_OF_INTERACTION = {"responseIdentifier": NAME, "shuffle": YES_NO}
_ONE, _TWO = f"(({_VALUES}) )", f"(({_VALUES}) ){{2}}"
_MANY = f"(({_VALUES}) )+"
_IF = f"(({_VALUES}) )(({_RULES}) )*"

#: Every element of items and tests.
ITEM = {
    "assessmentItem": Kind(
        "(responseDeclaration )*(outcomeDeclaration )*(itemBody )?(responseProcessing )?"
        "(modalFeedback )*",
        attributes={
            "identifier": NAME,
            "title": ANY,
            "adaptive": YES_NO,
            "timeDependent": YES_NO,
            "lang": "[a-z-]+",
        },
        needed=("identifier", "title", "adaptive", "timeDependent"),
    ),
    "responseDeclaration": Kind(
        "(correctResponse )?", attributes=_OF_RESPONSE, needed=("identifier", "cardinality")
    ),
    "correctResponse": Kind("(value )+"),
    "defaultValue": Kind("(value )+"),
    "value": Kind("", text=True),
    "outcomeDeclaration": Kind(
        "(defaultValue )?",
        attributes={**_OF_RESPONSE, "normalMinimum": NUMBER, "normalMaximum": NUMBER},
        needed=("identifier", "cardinality"),
    ),
    "itemBody": Kind(f"(({_BLOCK}|choiceInteraction|orderInteraction) )*"),
    "p": Kind(f"(({_INLINE}) )*", text=True),
    "li": Kind(f"(({_INLINE}|{_BLOCK}) )*", text=True),
    "strong": Kind("", text=True),
    "a": Kind("", text=True, attributes={"href": HREF}, needed=("href",)),
    "ul": Kind("(li )*"),
    "ol": Kind("(li )*"),
    "textEntryInteraction": Kind(
        "",
        attributes={"responseIdentifier": NAME, "expectedLength": WHOLE},
        needed=("responseIdentifier",),
    ),
    "choiceInteraction": Kind(
        "(prompt )?(simpleChoice )+",
        attributes={**_OF_INTERACTION, "maxChoices": WHOLE},
        needed=("responseIdentifier",),
    ),
    "orderInteraction": Kind(
        "(prompt )?(simpleChoice )+", attributes=_OF_INTERACTION, needed=("responseIdentifier",)
    ),
    "prompt": Kind("", text=True),
    "simpleChoice": Kind("", text=True, attributes={"identifier": NAME}, needed=("identifier",)),
    "responseProcessing": Kind(f"(({_RULES}) )*"),
    "responseCondition": Kind("responseIf (responseElseIf )*(responseElse )?"),
    "responseIf": Kind(_IF),
    "responseElseIf": Kind(_IF),
    "responseElse": Kind(f"(({_RULES}) )*"),
    "setOutcomeValue": Kind(_ONE, attributes={"identifier": NAME}, needed=("identifier",)),
    "variable": Kind("", attributes={"identifier": NAME}, needed=("identifier",)),
    "baseValue": Kind("", text=True, attributes={"baseType": BASE}, needed=("baseType",)),
    "match": Kind(_TWO),
    "stringMatch": Kind(_TWO, attributes={"caseSensitive": YES_NO}, needed=("caseSensitive",)),
    "index": Kind(_ONE, attributes={"n": WHOLE}, needed=("n",)),
    "and": Kind(_MANY),
    "or": Kind(_MANY),
    "lt": Kind(_TWO),
    "gt": Kind(_TWO),
    "lte": Kind(_TWO),
    "gte": Kind(_TWO),
    "sum": Kind(_MANY),
    "product": Kind(_MANY),
    "divide": Kind(_TWO),
    "modalFeedback": Kind(
        f"(({_BLOCK}) )*",
        attributes={
            "outcomeIdentifier": NAME,
            "identifier": NAME,
            "showHide": "show|hide",
            "title": ANY,
        },
        needed=("outcomeIdentifier", "identifier", "showHide"),
    ),
    "assessmentTest": Kind(
        "(outcomeDeclaration )*(testPart )+(outcomeProcessing )?",
        attributes={"identifier": NAME, "title": ANY},
        needed=("identifier", "title"),
    ),
    "testPart": Kind(
        "(itemSessionControl )?(assessmentSection )+",
        attributes={
            "identifier": NAME,
            "navigationMode": "linear|nonlinear",
            "submissionMode": "individual|simultaneous",
        },
        needed=("identifier", "navigationMode", "submissionMode"),
    ),
    "itemSessionControl": Kind("", attributes={"maxAttempts": WHOLE, "showFeedback": YES_NO}),
    "assessmentSection": Kind(
        "(assessmentItemRef )*",
        attributes={"identifier": NAME, "title": ANY, "visible": YES_NO},
        needed=("identifier", "title", "visible"),
    ),
    "assessmentItemRef": Kind(
        "", attributes={"identifier": NAME, "href": HREF}, needed=("identifier", "href")
    ),
    "outcomeProcessing": Kind("(setOutcomeValue )*"),
    "testVariables": Kind(
        "", attributes={"variableIdentifier": NAME}, needed=("variableIdentifier",)
    ),
}
#: Every element of the list of a package's files.
PACKAGE = {
    "manifest": Kind(
        "(metadata )?organizations resources ",
        attributes={"identifier": NAME},
        needed=("identifier",),
    ),
    "metadata": Kind("(schema )?(schemaversion )?"),
    "schema": Kind("", text=True),
    "schemaversion": Kind("", text=True),
    "organizations": Kind(""),
    "resources": Kind("(resource )*"),
    "resource": Kind(
        "(file )*(dependency )*",
        attributes={"identifier": NAME, "type": ANY, "href": HREF},
        needed=("identifier", "type"),
    ),
    "file": Kind("", attributes={"href": HREF}, needed=("href",)),
    "dependency": Kind("", attributes={"identifierref": NAME}, needed=("identifierref",)),
}


def wrong(root: Element, kinds: dict[str, Kind] = ITEM) -> list[str]:
    """Return a sentence for each place where a file does not keep to the standard."""
    found = list(_wrong(root, kinds))
    if root.tag == "assessmentItem":
        found += _unbound(root)
    return found


def _wrong(one: Element, kinds: dict[str, Kind]) -> Iterator[str]:
    kind = kinds.get(one.tag)
    if kind is None:
        yield f"<{one.tag}> is no element that packs use."
        return
    inside = "".join(f"{child.tag} " for child in one)
    if not re.fullmatch(kind.inside, inside):
        yield f"<{one.tag}> cannot hold {inside.strip() or 'nothing'}."
    written = [one.text, *(child.tail for child in one)]
    if not kind.text and any(part and part.strip() for part in written):
        yield f"<{one.tag}> cannot hold text."
    for name in kind.needed:
        if name not in one.attrib:
            yield f"<{one.tag}> has no {name}."
    for full, value in one.attrib.items():
        name = full.partition("}")[2] or full
        pattern = kind.attributes.get(name)
        if pattern is None:
            yield f"<{one.tag}> cannot have {name}."
        elif not re.fullmatch(pattern, value, re.DOTALL):
            yield f"<{one.tag}> cannot have “{value}” as its {name}."
    for child in one:
        yield from _wrong(child, kinds)


def _unbound(item: Element) -> Iterator[str]:
    """Yield a sentence for each name that nothing declares, and each that is declared twice."""
    declared = [
        one.get("identifier", "")
        for tag in ("responseDeclaration", "outcomeDeclaration")
        for one in item.iter(tag)
    ]
    for name in sorted({one for one in declared if declared.count(one) > 1}):
        yield f"{name} is declared twice."
    for tag, attribute in _NAMING.items():
        for one in item.iter(tag):
            if one.get(attribute) not in declared:
                yield f"<{tag}> names {one.get(attribute)}, which is not declared."


#: Elements that name a response or an outcome, and the attribute that does.
_NAMING = {
    "variable": "identifier",
    "setOutcomeValue": "identifier",
    "modalFeedback": "outcomeIdentifier",
    "textEntryInteraction": "responseIdentifier",
    "choiceInteraction": "responseIdentifier",
    "orderInteraction": "responseIdentifier",
}
