"""Elements of XML, made in few words and written the same each time."""

from __future__ import annotations

from xml.etree import ElementTree
from xml.etree.ElementTree import Element

ITEM = "http://www.imsglobal.org/xsd/imsqti_v2p1"
PACKAGE = "http://www.imsglobal.org/xsd/imscp_v1p1"
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"

Child = Element | str


def element(tag: str, *children: Child, **attributes: str | float | bool | None) -> Element:
    """Return an element; an attribute's name may end in `_`, and one that is None is left out."""
    made = Element(tag)
    for name, value in attributes.items():
        if value is not None:
            made.set(name.rstrip("_"), text(value))
    for child in children:
        if not isinstance(child, str):
            made.append(child)
        elif len(made):
            made[-1].tail = (made[-1].tail or "") + child
        else:
            made.text = (made.text or "") + child
    return made


def text(value: str | float | bool) -> str:
    """Return a value as the standard writes it.

    >>> text(True), text(0.25), text(3.0), text(1e-07)
    ('true', '0.25', '3', '0.0000001')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return f"{value:.12f}".rstrip("0").rstrip(".")
    return str(value)


def written(root: Element, namespace: str) -> bytes:
    """Return an element and all in it as a file of XML."""
    root.set("xmlns", namespace)
    ElementTree.indent(root)
    return ElementTree.tostring(root, encoding="utf-8", xml_declaration=True) + b"\n"
