"""The HTML of a form, before any script touches it."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser

import markdown
import pytest

from build_tools.browser.form import form_html
from calculators import CALCULATORS, run
from calculators.declare import Calculator, Input, Output
from calculators.figures import curve_picture
from tests.browser.visits import example_of


def html_of(name: str, texts: dict[str, str], units: str = "us", **options: object) -> str:
    result = run(name, texts, units)
    chosen = {"form_id": "f", "runtime_url": "../runtime/1"} | options
    return form_html(CALCULATORS[name], result, texts=texts, units=units, **chosen)


class Tags(HTMLParser):
    """Collects every start tag with its attributes."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def named(self, *names: str) -> list[dict[str, str | None]]:
        return [attributes for tag, attributes in self.found if tag in names]


def every_form() -> list[tuple[str, str]]:
    return [(name, units) for name in CALCULATORS for units in ("us", "metric")]


@pytest.mark.parametrize(("name", "units"), every_form())
def test_every_field_is_labeled_described_and_off(name: str, units: str) -> None:
    html = html_of(name, example_of(name, units), units)
    tags = Tags(html)
    ids = [attributes["id"] for _, attributes in tags.found if "id" in attributes]
    assert len(ids) == len(set(ids))
    fields = tags.named("input", "select")
    assert [one["id"] for one in fields] == [f"f-{one.name}" for one in CALCULATORS[name].inputs]
    assert [one["for"] for one in tags.named("label")] == [one["id"] for one in fields]
    for one in fields:
        assert set(one["aria-describedby"].split()) <= set(ids)
        assert "readonly" in one or "disabled" in one


@pytest.mark.parametrize(("name", "units"), every_form())
def test_the_field_texts_alone_give_the_answer_shown(name: str, units: str) -> None:
    result = run(name, example_of(name, units), units)
    tags = Tags(html_of(name, example_of(name, units), units))
    texts = {}
    for one in tags.named("input"):
        texts[one["id"].removeprefix("f-")] = one["value"]
    for one in tags.named("select"):
        texts[one["id"].removeprefix("f-")] = result["inputs"][one["id"].removeprefix("f-")][
            "choice"
        ]
    again = run(name, texts, units)
    shown = {output: value["shown"] for output, value in again["values"].items()}
    assert shown == {output: value["shown"] for output, value in result["values"].items()}


@pytest.mark.parametrize("name", ["sanitizing-dose", "resin-cleaner-dose"])
def test_a_question_of_safety_is_left_to_the_reader(name: str) -> None:
    html = html_of(name, example_of(name, "us"))
    fields = {one["id"].removeprefix("f-"): None for one in Tags(html).named("select")}
    for chosen in re.findall(r'<option value="([^"]*)" selected>', html):
        one = next(field for field, choice in fields.items() if choice is None)
        fields[one] = chosen
    assert fields == {one: CALCULATORS[name].input(one).default for one in fields}
    assert set(run(name, {**example_of(name, "us"), **fields})["problems"]) == {"last_cycle"}


def test_markdown_leaves_it_as_it_is() -> None:
    html = html_of("small-leak", {"measured": "drips", "drips": "60 /min"})
    page = markdown.markdown(f"Before.\n\n{html}\n\nAfter.", extensions=["md_in_html", "attr_list"])
    assert page == f"<p>Before.</p>\n{html}\n\n<p>After.</p>"


def test_it_runs_no_script_of_its_own() -> None:
    html = html_of("small-leak", {"measured": "drips", "drips": "60 /min"})
    tags = Tags(html)
    assert tags.named("script", "style") == []
    assert not any(name.startswith("on") or name == "style" for _, a in tags.found for name in a)


def test_what_the_author_wrote_stands_in_the_field_as_written() -> None:
    (field, *_) = Tags(html_of("hardness-setting", {"hardness": "310 mg/L"})).named("input")
    assert field["value"] == "310 mg/L"


def test_an_input_that_does_not_count_is_hidden_and_has_its_example_ready() -> None:
    tags = Tags(html_of("small-leak", {"measured": "drips", "drips": "60 /min"}))
    fields = {one["data-input"]: one for one in tags.named("div") if "data-input" in one}
    assert "hidden" not in fields["drips"]
    assert "hidden" in fields["cistern_area"]
    (area,) = (one for one in tags.named("input") if one["id"] == "f-cistern_area")
    assert area["value"] == "96 in²"


def test_text_of_every_kind_is_escaped() -> None:
    danger = '<b title="x">&'
    calculator = Calculator(
        "danger",
        danger,
        danger,
        [Input("size", danger, "number", default=1, help=danger)],
        [Output("size", danger)],
        lambda given, work: {},
        sources=(),
    )
    result = {
        "calculator": "danger",
        "inputs": {"size": {"label": danger, "number": 1.0, "unit": "", "shown": danger}},
        "values": {"size": {"label": danger, "number": 1.0, "unit": "", "shown": danger}},
        "workings": [dict.fromkeys(("sentence", "formula", "numbers", "result"), danger)],
        "warnings": [danger],
        "problems": {},
    }
    html = form_html(
        calculator,
        result,
        form_id="d",
        texts={"size": danger},
        units="us",
        runtime_url="x",
    )
    assert Tags(html).named("b") == []
    assert html.count("&lt;b title=&#34;x&#34;&gt;&amp;") == 12


def test_a_picture_stands_in_the_form_of_a_calculator_that_has_a_curve() -> None:
    texts = example_of("resin-capacity", "us")
    html = html_of("resin-capacity", texts, picture=curve_picture("resin-capacity", texts))
    assert len(Tags(html).named("svg")) == 1
    without = next(one.name for one in CALCULATORS.values() if not one.picture)
    assert 'data-part="picture"' not in html_of(without, example_of(without, "us"))


def test_units_that_can_be_filled_in_are_offered_by_their_title() -> None:
    texts = example_of("brine-refill", "us")
    carried = {"Small <unit>": {"salt": "6 lb", "refill_flow": '0.5 "gpm"'}}
    html = html_of("brine-refill", texts, carried=carried)
    [_, option] = Tags(html).named("option")
    assert json.loads(option["value"]) == carried["Small <unit>"]
    assert "Small &lt;unit&gt;" in html
    assert "<select" not in html_of("brine-refill", texts)


def test_an_example_without_an_answer_is_refused() -> None:
    with pytest.raises(ValueError, match="the example of the form 'f' has no answer: .*psi"):
        html_of("hardness-setting", {"hardness": "18 psi"})
