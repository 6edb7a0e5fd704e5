"""One exercise as an item of the standard: its question, its marking, and what is said then.

Marking does what the handbook's own does: each range in which a number is right, each order that
keeps all pairs, the share of the score, and the sentence for each listed mistake. The working is
shown after every answer.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element

from build_tools.class_pack.learning import expressions as made
from build_tools.class_pack.learning.elements import LANGUAGE, Child, element
from build_tools.class_pack.posed import Field, Posed, spellings

SCORE, WORKING, SHOWN = "SCORE", "WORKING", "shown"
#: The width of a field for a number, in letters.
WIDTH = 12
PLAIN_NUMBER = "Write a number alone, with a point for decimals and without commas."
ORDER = "Put the steps in order, the first on top."


class Item:
    """An exercise on one sheet as an item.

    cautions: {"title", "text"} of each that the exercise prints; address: of the handbook's site,
    with a slash at its end, or "" where it is not known.
    """

    def __init__(
        self, posed: Posed, sheet: int, cautions: list[dict[str, str]], address: str
    ) -> None:
        self.posed = posed
        self.cautions = cautions
        self.address = address
        self.identifier = f"{posed.exercise['id']}-sheet-{sheet}"
        self.title: str = posed.question["title"]
        self._responses: list[Element] = []
        self._outcomes: list[Element] = [
            made.outcome(SCORE, "float", "0", normalMinimum=0.0, normalMaximum=1.0),
            made.outcome("MAXSCORE", "float", "1"),
        ]
        self._rules: list[Element] = []
        self._said: list[Element] = []
        self._body: list[Child] = list(self._story())
        self._parts: list[Element] = []

    def element(self) -> Element:
        """Return the item."""
        for number, field in enumerate(self.posed.fields, 1):
            if field.kind == "order":
                self._order()
            else:
                self._field(field, f"ANSWER_{number}", f"RIGHT_{number}", f"SLIP_{number}")
        if self._parts:
            self._rules.append(made.set_to(SCORE, element("sum", *self._parts)))
        self._outcomes.append(made.outcome(WORKING, "identifier"))
        self._rules.append(made.set_to(WORKING, made.value("identifier", SHOWN)))
        self._said.append(_feedback(WORKING, SHOWN, "The working", *self._working()))
        root = element(
            "assessmentItem",
            *self._responses,
            *self._outcomes,
            element("itemBody", *self._body),
            element("responseProcessing", *self._rules),
            *self._said,
            identifier=self.identifier,
            title=self.title,
            adaptive=False,
            timeDependent=False,
        )
        root.set(LANGUAGE, "en")
        return root

    # The question

    def _story(self) -> Iterator[Element]:
        question = self.posed.question
        yield element("p", question["story"])
        if question["given"]:
            rows = [element("li", f"{one['label']}: {one['shown']}") for one in question["given"]]
            yield element("ul", *rows)
        for one in self.cautions:
            yield element("p", element("strong", f"{one['title']}:"), f" {one['text']}")

    def _field(self, field: Field, answer: str, right: str, slip: str) -> None:
        """Add a field to the body, and its marking."""
        self._outcomes.append(made.outcome(right, "float", "0"))
        share = made.value("float", field.share)
        self._parts.append(element("product", share, made.variable(right)))
        branches = [(self._ask(field, answer), [made.set_to(right, made.value("float", 1))])]
        for one in field.slips:
            said = [made.set_to(slip, made.value("identifier", one.name))]
            branches.append((made.in_one_of(answer, one.ranges), said))
            if not any(said.get("identifier") == one.name for said in self._of(slip)):
                title = "A slip that is known"
                sentence = element("p", one.sentence)
                self._said.append(_feedback(slip, one.name, title, sentence))
        if field.slips:
            self._outcomes.append(made.outcome(slip, "identifier"))
        self._rules.append(made.when(*branches))

    def _of(self, outcome: str) -> list[Element]:
        return [one for one in self._said if one.get("outcomeIdentifier") == outcome]

    def _ask(self, field: Field, answer: str) -> Element:
        """Add a field to the body; return whether its answer is right."""
        if field.choices:
            names = {one: f"choice-{number}" for number, one in enumerate(field.choices, 1)}
            self._responses.append(made.declared(answer, "identifier", [names[field.right]]))
            self._body.append(
                element(
                    "choiceInteraction",
                    element("prompt", f"{field.label}:"),
                    *(element("simpleChoice", one, identifier=names[one]) for one in names),
                    responseIdentifier=answer,
                    shuffle=False,
                    maxChoices=1,
                )
            )
            return made.same(made.variable(answer), made.value("identifier", names[field.right]))
        entry = element("textEntryInteraction", responseIdentifier=answer, expectedLength=WIDTH)
        if field.kind == "time":
            self._responses.append(made.declared(answer, "string", [_spaced(field.shown)]))
            self._body.append(element("p", f"{field.label} ({field.help}): ", entry))
            texts = [one for minute in field.times for one in spellings(minute)]
            return made.written_as(answer, texts)
        self._responses.append(made.declared(answer, "float", [field.number]))
        self._body.append(element("p", f"{field.label}: ", entry, f" {field.unit}".rstrip()))
        self._body.append(element("p", PLAIN_NUMBER))
        return made.in_one_of(answer, field.ranges)

    # Steps in order

    def _order(self) -> None:
        """Add the steps; each order that keeps all pairs is right, and a danger takes the score."""
        exercise, answer = self.posed.exercise, "ANSWER_1"
        names = [one["name"] for one in exercise["items"]]
        ids = {name: f"step-{_word(name)}" for name in names}
        places = {name: f"AT_{_word(name)}" for name in names}
        self._responses.append(
            made.declared(answer, "identifier", [ids[one] for one in names], "ordered")
        )
        self._body.append(
            element(
                "orderInteraction",
                element("prompt", ORDER),
                *(
                    element("simpleChoice", one["text"], identifier=ids[one["name"]])
                    for one in self.posed.question["items"]
                ),
                responseIdentifier=answer,
                shuffle=False,
            )
        )
        self._outcomes += [made.outcome(places[name], "integer", "0") for name in names]
        for place in range(1, len(names) + 1):
            here = element("index", made.variable(answer), n=place)
            self._rules.append(
                made.when(
                    *(
                        (
                            made.same(here, made.value("identifier", ids[name])),
                            [made.set_to(places[name], made.value("integer", place))],
                        )
                        for name in names
                    )
                )
            )
        self._pairs(places)

    def _pairs(self, places: dict[str, str]) -> None:
        pairs = self.posed.exercise["pairs"]
        self._outcomes += [made.outcome("KEPT", "float", "0"), made.outcome("DANGER", "float", "0")]
        for number, pair in enumerate(pairs, 1):
            first, then = (made.variable(places[pair[one]]) for one in ("first", "then"))
            broken = f"PAIR_{number}"
            self._outcomes.append(made.outcome(broken, "identifier"))
            rules = [made.set_to(broken, made.value("identifier", "broken"))]
            if pair["safety"]:
                rules.append(made.set_to("DANGER", made.value("float", 1)))
            more = element("sum", made.variable("KEPT"), made.value("float", 1))
            kept = [made.set_to("KEPT", more)]
            self._rules.append(made.when((element("lt", first, then), kept), (None, rules)))
            title = "This can hurt somebody" if pair["safety"] else "The other way round"
            self._said.append(_feedback(broken, "broken", title, element("p", pair["why"])))
        share = element("divide", made.variable("KEPT"), made.value("float", len(pairs)))
        hurts = element("gt", made.variable("DANGER"), made.value("float", 0))
        none = [made.set_to(SCORE, made.value("float", 0))]
        self._rules.append(made.when((hurts, none), (None, [made.set_to(SCORE, share)])))

    # What is said

    def _working(self) -> Iterator[Element]:
        for field in self.posed.fields:
            if field.kind != "order":
                more = f" (right is {field.also})" if field.also else ""
                yield element("p", f"{field.label}: ", element("strong", field.shown), more)
        for part in self.posed.solution:
            yield element("p", element("strong", part["title"]))
            if part.get("workings"):
                yield element("ol", *(element("li", _step(one)) for one in part["workings"]))
            for key, tag in (("ordered", "ol"), ("sentences", "ul")):
                if part.get(key):
                    yield element(tag, *(element("li", one) for one in part[key]))
            if self.address and part.get("calculator"):
                href = f"{self.address}work-out/{part['calculator']}/"
                yield element("p", element("a", f"Try it: {part['title']}", href=href))


def _step(one: dict[str, str]) -> str:
    parts = [one.get("formula"), one.get("numbers"), one.get("result")]
    return f"{one['sentence']} {' = '.join(part for part in parts if part)}".strip()


def _feedback(outcome: str, identifier: str, title: str, *children: Element) -> Element:
    return element(
        "modalFeedback",
        *children,
        outcomeIdentifier=outcome,
        identifier=identifier,
        showHide="show",
        title=title,
    )


def _word(name: str) -> str:
    return re.sub(r"[^A-Za-z0-9]+", "-", name)


def _spaced(shown: str) -> str:
    return shown.replace("\u00a0", " ")
