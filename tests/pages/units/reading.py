"""What a reader of one unit system finds in a built page, as the page's script would show it."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser

from build_tools.content.typed_quantities import Typed, kinds_of, typed_quantities
from calculators.quantities import KINDS, Quantity, normal_spelling
from calculators.units import METRIC

#: Attributes that people see or hear.
SAID = ("alt", "aria-label", "content", "data-label", "placeholder", "title", "value")
#: Text around which stands where a reader sees it apart from the rest.
_INLINE = {
    "a",
    "abbr",
    "b",
    "code",
    "em",
    "i",
    "mark",
    "small",
    "span",
    "strong",
    "sub",
    "sup",
    "u",
}
_VOID = {"br", "hr", "img", "input", "link", "meta", "source", "wbr"}
#: What is no text of the handbook: what runs, and what trainers type into sources.
_SKIPPED = {"code", "pre", "script", "style"}

TRADE = frozenset(METRIC) - {"12-hour clock"}
#: "mg/L" is the trade's own unit for what is dissolved, in both systems.
ONLY_METRIC = frozenset(METRIC.values()) - {"mg/L", "mg/L per mg/L", "24-hour clock"}


class Reading(HTMLParser):
    """The visible text of a page for readers of the shop's own system, or of the other one.

    pieces: each with what it is: "text", or the name of an attribute.
    """

    def __init__(self, *, other: bool) -> None:
        super().__init__(convert_charrefs=True)
        self.other = other
        self.pieces: list[tuple[str, str]] = []
        self._open: list[tuple[str, bool]] = []
        self._text: list[str] = []
        self._replaced: str | None = None

    @property
    def _hidden(self) -> bool:
        return any(hidden for _, hidden in self._open)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: text or "" for name, text in attrs}
        hidden = (
            tag in _SKIPPED
            or "data-kept" in given
            or "live-form__formula" in given.get("class", "")
            or (tag == "template" and not self.other)
            or ("data-own" in given and self.other)
        )
        if tag not in _INLINE:
            self._end_piece()
        shown = dict(given)
        if self.other and "data-in-other" in given:
            shown |= json.loads(given["data-in-other"])
        if not hidden and not self._hidden:
            self.pieces += [(name, shown[name]) for name in SAID if shown.get(name)]
            if self.other and "data-other" in given:
                self._text.append(given["data-other"])
                hidden = True
        if tag not in _VOID:
            self._open.append((tag, hidden))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in _VOID:
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        while self._open and self._open.pop()[0] != tag:
            pass
        if tag not in _INLINE:
            self._end_piece()

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self._text.append(data)

    def _end_piece(self) -> None:
        text = "".join(self._text)
        if text.strip():
            self.pieces.append(("text", text))
        self._text = []


def read(html: str, *, other: bool) -> list[tuple[str, str]]:
    """Return the pieces of text of a page: its title and description, and its article."""
    head = re.search(r"<title.*?</title>", html, re.DOTALL)
    described = re.search(r'<meta name="description"[^>]*>', html)
    body = re.search(r"<article.*</article>|<main.*</main>", html, re.DOTALL)
    parser = Reading(other=other)
    for part in (head, described, body):
        if part:
            parser.feed(part[0])
    parser.close()
    return parser.pieces


def units_of(typed: Typed) -> set[str]:
    """Return the units that a typed quantity may be in."""
    spelled = normal_spelling(typed.unit)
    return {KINDS[kind].spelled[spelled] for kind in kinds_of(typed.unit)}


def quantities_in(
    pieces: list[tuple[str, str]],
    units: frozenset[str],
    shared: dict[str, tuple[str, float]] | None = None,
) -> list[str]:
    """Return each quantity of these units with the text around it.

    shared: units that count only above a number, see `SHARED` in test_never_mixed.
    """
    found = []
    for place, text in pieces:
        if text.startswith("{"):  # figures that a script fills in
            continue
        for typed in typed_quantities(text):
            if units_of(typed) & units and not _is_shared(typed, shared or {}):
                around = text[max(0, typed.start - 40) : typed.end + 30]
                found.append(f"{place}: {typed.text} in “{' '.join(around.split())}”")
    return found


def _is_shared(typed: Typed, shared: dict[str, tuple[str, float]]) -> bool:
    for unit in units_of(typed) & shared.keys():
        last = typed.ends()[-1].split(" ")[0]
        return float(last.replace(",", "")) <= shared[unit][1]
    return False


class Pairs(HTMLParser):
    """The quantities of a page in both systems: (own, other) of each that is one text."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.pairs: list[tuple[str, str]] = []
        self._other: str | None = None
        self._own: list[str] = []
        self._small = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._small += tag == "small"
        self._other = dict(attrs).get("data-other")
        self._own = []

    def handle_data(self, data: str) -> None:
        if self._other is not None:
            self._own.append(data)

    def handle_endtag(self, tag: str) -> None:
        # What is in small letters names the step of a rounding, which each system has for itself.
        if self._other is not None and not self._small:
            self.pairs.append(("".join(self._own), self._other))
        self._other = None
        self._small -= tag == "small"


def place_of(text: str) -> float:
    """Return what the last place of a shown number is worth: 0.1 for "2.4", 10 for "1,570"."""
    number = text.partition(" ")[0].replace(",", "")
    _, dot, decimals = number.partition(".")
    if dot:
        return 10.0 ** -len(decimals)
    return 10.0 ** (len(number) - len(number.rstrip("0"))) if number.strip("0") else 1.0


#: An answer that is rounded up or down, in a form.
_IN_STEPS = re.compile(r'data-other="[^"]*">([^<]*)</span></strong> <small>(?:up|down) to')


def rounded_in_steps(html: str) -> set[str]:
    """Return the answers of a page's forms that are rounded up or down."""
    return set(_IN_STEPS.findall(html))


def disagree(own: str, other: str, share: float = 0.5) -> bool:
    """Tell whether two texts are quantities of one kind, and not the same within their rounding.

    share: how much of its last place an own number may be away from its shown one.
    """
    if re.fullmatch(r"\d+-hour", own):  # the name of a clock
        return False
    first, second = [*typed_quantities(own)], [*typed_quantities(other)]
    if len(first) != 1 or len(second) != 1:
        return False
    kinds = kinds_of(first[0].unit) & kinds_of(second[0].unit)
    return bool(kinds) and not any(_same(first[0], second[0], kind, share) for kind in kinds)


def _same(first: Typed, second: Typed, kind: str, share: float) -> bool:
    ours, theirs = first.quantities(kind), second.quantities(kind)
    if len(ours) != len(theirs) or not ours:
        return False
    for text, other_text, one, other in zip(first.ends(), second.ends(), ours, theirs, strict=True):
        place = place_of(text)
        around = [
            Quantity(one.number + place * side, one.unit, kind).to(other.unit).number
            for side in (-share, share)
        ]
        reach = place_of(other_text)
        if not min(around) - reach <= other.number <= max(around) + reach:
            return False
    return True
