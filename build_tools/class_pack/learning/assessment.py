"""The test of one sheet, and the list of files that makes a package of it."""

from __future__ import annotations

from collections.abc import Sequence
from xml.etree.ElementTree import Element

from build_tools.class_pack.learning.elements import element
from build_tools.class_pack.learning.expressions import outcome, set_to
from build_tools.class_pack.learning.items import SCORE, Item

TEST, TEST_FILE, MANIFEST = "test", "test.xml", "imsmanifest.xml"


def file_of(item: Item) -> str:
    """Return the name of an item's file."""
    return f"{item.identifier}.xml"


def test(items: Sequence[Item], title: str) -> Element:
    """Return the test: all items in one section, each answered by itself."""
    section = element(
        "assessmentSection",
        *(
            element("assessmentItemRef", identifier=item.identifier, href=file_of(item))
            for item in items
        ),
        identifier="sheet",
        title=title,
        visible=True,
    )
    part = element(
        "testPart",
        element("itemSessionControl", maxAttempts=1, showFeedback=True),
        section,
        identifier="questions",
        navigationMode="nonlinear",
        submissionMode="individual",
    )
    total = element("sum", element("testVariables", variableIdentifier=SCORE))
    return element(
        "assessmentTest",
        outcome(SCORE, "float", "0"),
        part,
        element("outcomeProcessing", set_to(SCORE, total)),
        identifier="class-pack",
        title=title,
    )


def manifest(items: Sequence[Item], identifier: str) -> Element:
    """Return the list of a package's files."""
    needs = [element("dependency", identifierref=item.identifier) for item in items]
    resources = [
        element(
            "resource",
            element("file", href=TEST_FILE),
            *needs,
            identifier=TEST,
            type_="imsqti_test_xmlv2p1",
            href=TEST_FILE,
        )
    ]
    resources += [
        element(
            "resource",
            element("file", href=file_of(item)),
            identifier=item.identifier,
            type_="imsqti_item_xmlv2p1",
            href=file_of(item),
        )
        for item in items
    ]
    return element(
        "manifest",
        element(
            "metadata", element("schema", "QTIv2.1 Package"), element("schemaversion", "1.0.0")
        ),
        element("organizations"),
        element("resources", *resources),
        identifier=identifier,
    )
