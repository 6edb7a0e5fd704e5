"""The files for learning systems: they keep to the standard, and mark as the handbook does."""

from __future__ import annotations

import io
import itertools
import re
import zipfile
from collections.abc import Iterator
from random import Random
from typing import Any
from xml.etree.ElementTree import Element, fromstring

import pytest

from build_tools.class_pack.learning import elements
from build_tools.class_pack.learning.items import Item
from build_tools.class_pack.learning.package import files
from build_tools.class_pack.learning.structure import PACKAGE, wrong
from build_tools.class_pack.pack import Pack, Wanted
from build_tools.class_pack.posed import Field, Posed, spellings
from build_tools.content.handbook import Handbook
from tests.class_pack.learning_system import marked, parsed, right_answers, shown_feedback

Answers = dict[str, Any]


@pytest.fixture(scope="module")
def items(pack: Pack) -> list[tuple[Posed, Element]]:
    """Every exercise of one of the pack's sheets, and the item that a learning system reads."""
    found = []
    for sheet, data in [*zip(pack.sheets, pack.packages().values(), strict=True)][1:]:
        with zipfile.ZipFile(io.BytesIO(data)) as package:
            for posed in sheet.exercises:
                name = f"{posed.exercise['id']}-sheet-{sheet.number}.xml"
                found.append((posed, parsed(package.read(name))))
    return found


def test_declared_answers_have_the_whole_score_and_the_working_follows(
    items: list[tuple[Posed, Element]],
) -> None:
    for posed, item in items:
        answers = right_answers(item)
        assert marked(item, answers)["SCORE"] == pytest.approx(1)
        (said,) = shown_feedback(item, answers)
        for part in posed.solution:
            assert part["title"] in said
            for step in part.get("workings", ()):
                assert " ".join(step["sentence"].split()) in said
        assert all(" ".join(field.shown.split()) in said for field in posed.fields)


def test_items_mark_every_answer_as_the_handbook_does(items: list[tuple[Posed, Element]]) -> None:
    scores = []
    for posed, item in items:
        for given, answers in tried(posed, item):
            own = posed.mark(given)
            found = marked(item, answers)["SCORE"]
            assert found == pytest.approx(own["score"]), (posed.exercise["id"], answers)
            scores.append(found)
    assert {0, 1} < set(scores)
    assert len(scores) > 120


def tried(posed: Posed, item: Element) -> Iterator[tuple[Answers, Answers]]:
    """Yield answers as the handbook takes them, and the same as a learning system does."""
    if posed.fields[0].kind == "order":
        yield from orders(posed)
        return
    right = {field.name: field.right for field in posed.fields}
    theirs = right_answers(item)
    for number, field in enumerate(posed.fields, 1):
        for own, other in of_field(field, item):
            yield {**right, field.name: own}, {**theirs, f"ANSWER_{number}": other}


def of_field(field: Field, item: Element) -> Iterator[tuple[str, Any]]:
    if field.choices:
        ids = {"".join(one.itertext()): one.get("identifier") for one in item.iter("simpleChoice")}
        yield from ((one, ids[one]) for one in field.choices)
    elif field.kind == "time":
        for minute in (*field.times, field.times[0] - 2, field.times[-1] + 2, 5, 733):
            yield from ((one, one.upper()) for one in spellings(minute % 1440))
    else:
        shares = (0.3, 0.985, 0.995, 1, 1.005, 1.015)
        for share in shares:
            number = round(field.number * share, 9)
            yield f"{number:.9f} {field.unit}", number
        for slip in field.slips:
            for low, high in slip.ranges:
                number = round((low + high) / 2, 9)
                yield f"{number:.9f} {field.unit}", number


def orders(posed: Posed) -> Iterator[tuple[Answers, Answers]]:
    random = Random(posed.seed)
    names = [one["name"] for one in posed.exercise["items"]]
    swapped = [
        [*names[:at], names[at + 1], names[at], *names[at + 2 :]] for at in range(len(names) - 1)
    ]
    for order in [*swapped, *(random.sample(names, len(names)) for _ in range(10))]:
        yield {"order": order}, {"ANSWER_1": [f"step-{one}" for one in order]}


def test_a_known_slip_is_named_and_a_danger_said(items: list[tuple[Posed, Element]]) -> None:
    named = 0
    for posed, item in items:
        for number, field in enumerate(posed.fields, 1):
            for slip in field.slips[:1]:
                low, high = slip.ranges[0]
                answers = {**right_answers(item), f"ANSWER_{number}": (low + high) / 2}
                assert any(slip.sentence in one for one in shown_feedback(item, answers))
                named += 1
        if posed.fields[0].kind == "order":
            answers = {"ANSWER_1": right_answers(item)["ANSWER_1"][::-1]}
            said = shown_feedback(item, answers)
            whys = [pair["why"] for pair in posed.exercise["pairs"]]
            assert all(any(why in one for one in said) for why in whys)
    assert named > 5


def test_the_list_of_files_names_every_file_and_nothing_is_on_another_host(pack: Pack) -> None:
    for data in pack.packages().values():
        with zipfile.ZipFile(io.BytesIO(data)) as package:
            names = package.namelist()
            content = {name: package.read(name).decode("utf-8") for name in names}
        assert names[0] == "imsmanifest.xml"
        hrefs = re.findall(r'<file href="([^"]+)"', content["imsmanifest.xml"])
        assert sorted(hrefs) == sorted(names[1:])
        used = re.findall(
            r'<assessmentItemRef identifier="([^"]+)" href="([^"]+)"', content["test.xml"]
        )
        assert [f"{one}.xml" for one, _ in used] == [href for _, href in used] == names[2:]
        for text in content.values():
            known = {elements.ITEM, elements.PACKAGE}
            assert set(re.findall(r"https?://[^\"<\s]+", text)) <= known


def test_with_an_address_each_working_leads_to_its_calculator(handbook: Handbook) -> None:
    wanted = Wanted("7", exercises=["counter-from-a-test"], address="https://handbook.example/x")
    sheet = Pack(handbook, wanted).sheets[0]
    item = Item(sheet.exercises[0], 1, [], wanted.address).element()
    assert [(one.get("href"), one.text) for one in item.iter("a")] == [
        (
            f"https://handbook.example/x/work-out/{part['calculator']}/",
            f"Try it: {part['title']}",
        )
        for part in sheet.exercises[0].solution
    ]
    assert len(list(item.iter("a"))) == 3


def test_hostile_words_stay_words(pack: Pack) -> None:
    posed = next(one for one in pack.sheets[0].exercises if one.fields[0].kind == "number")
    hostile = "</p><script>alert('&amp;')</script>"
    kept = posed.question["story"]
    try:
        posed.question["story"] = hostile
        made = files([Item(posed, 1, [{"title": hostile, "text": "]]>"}], "")], 1, hostile)
    finally:
        posed.question["story"] = kept
    name = f"{posed.exercise['id']}-sheet-1.xml"
    assert parsed(made[name]).findtext("itemBody/p") == hostile
    assert parsed(made["test.xml"]).get("title") == hostile


BROKEN = {
    "<prompt><p/></prompt>": ["<prompt> cannot hold p."],
    "<script/>": ["<script> is no element that packs use."],
    "<orderInteraction responseIdentifier='A'/>": ["<orderInteraction> cannot hold nothing."],
    "<ul>loose</ul>": ["<ul> cannot hold text."],
    "<variable/>": ["<variable> has no identifier."],
    "<variable identifier='1st'/>": ["<variable> cannot have “1st” as its identifier."],
    "<p onclick='x'/>": ["<p> cannot have onclick."],
    "<lt><variable identifier='A'/></lt>": ["<lt> cannot hold variable."],
    "<responseCondition><responseElse/></responseCondition>": [
        "<responseCondition> cannot hold responseElse."
    ],
    "<assessmentItem identifier='I' title='' adaptive='false' timeDependent='no'><itemBody/>"
    "<outcomeDeclaration identifier='S' cardinality='single'/></assessmentItem>": [
        "<assessmentItem> cannot hold itemBody outcomeDeclaration.",
        "<assessmentItem> cannot have “no” as its timeDependent.",
    ],
    "<assessmentItem identifier='I' title='' adaptive='false' timeDependent='false'>"
    "<outcomeDeclaration identifier='S' cardinality='single'/>"
    "<outcomeDeclaration identifier='S' cardinality='single'/><itemBody>"
    "<p><textEntryInteraction responseIdentifier='A'/></p></itemBody></assessmentItem>": [
        "S is declared twice.",
        "<textEntryInteraction> names A, which is not declared.",
    ],
}


@pytest.mark.parametrize(("text", "said"), BROKEN.items())
def test_a_file_against_the_standard_is_told(text: str, said: list[str]) -> None:
    assert wrong(fromstring(text)) == said


def test_a_list_of_files_without_its_parts_is_told() -> None:
    assert wrong(fromstring("<manifest identifier='M'><resources/></manifest>"), PACKAGE) == [
        "<manifest> cannot hold resources."
    ]


def test_no_file_against_the_standard_is_written(pack: Pack) -> None:
    posed = pack.sheets[0].exercises[0]
    item = Item(posed, 1, [], "")
    item.identifier = "1 2"
    with pytest.raises(ValueError, match="cannot have “1 2” as its identifier"):
        files([item], 1, "Sheet")


def test_no_two_minutes_of_the_day_are_written_alike() -> None:
    for one, other in itertools.combinations(range(0, 1440, 30), 2):
        assert not {*spellings(one)} & {*spellings(other)}, (one, other)
