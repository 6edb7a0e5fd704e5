"""What every drawing keeps to, and what each of them shows."""

import re
import xml.etree.ElementTree as ElementTree

import pytest

from calculators import CALCULATORS, run
from calculators.clock import HOURLY_WATER
from calculators.declare import Drawing
from calculators.figures import picture
from calculators.figures.causes import SHOWN, causes_picture
from calculators.figures.drawings import DRAWINGS, drawing
from calculators.figures.shapes import WIDTH
from calculators.quantities import SYSTEMS
from tests.parity.cases import parity_cases

SVG = "{http://www.w3.org/2000/svg}"
DRAWN = [one.name for one in CALCULATORS.values() if isinstance(one.picture, Drawing)]
POSITIONS = DRAWINGS["water-way"].inputs[0].choices
#: A letter is at most about so wide, and a strong one.
LETTER, STRONG = 7.0, 7.7
CAUSES = [(f"Cause {number}", 0.1, 0.4 / (number + 1)) for number in range(9)]


def example(name, units="us"):
    inputs = CALCULATORS[name].inputs
    return {one.name: text for one in inputs if (text := one.example_text(units))}


def without_calculator():
    """Return drawings as (what, SVG)."""
    for position in POSITIONS:
        yield position, drawing("water-way", {"position": position})[0]
    for used in ("0 %", "3 %", "60 %", "99 %", "100 %"):
        for flow in ("0.5 gpm/ft³", "3 gpm/ft³", "10 gpm/ft³"):
            svg, _ = drawing("resin-bed", {"used": used, "flow": flow})
            yield f"bed {used} {flow}", svg
    yield "causes", causes_picture(["Complaint: Hard water", "Salt: none"], CAUSES, (0.1, 0.05))


def of_calculators():
    for name in DRAWN:
        for units in SYSTEMS:
            yield f"{name} {units}", picture(name, example(name, units), units)


EVERY = [*without_calculator(), *of_calculators()]
every = pytest.mark.parametrize("svg", [svg for _, svg in EVERY], ids=[what for what, _ in EVERY])


def walked(path):
    """Return all places that a path of straight lines and bends goes through."""
    places, x, y = [], 0.0, 0.0
    for command, written in re.findall(r"([a-zA-Z])([^a-zA-Z]*)", path):
        numbers = [float(one) for one in re.findall(r"-?\d+(?:\.\d+)?", written)]
        relative = command.islower()
        if command in "Hh":
            x = numbers[0] + (x if relative else 0)
        elif command in "Vv":
            y = numbers[0] + (y if relative else 0)
        elif command not in "Zz":
            x, y = numbers[-2] + (x if relative else 0), numbers[-1] + (y if relative else 0)
        places.append((x, y))
    return places


def texts(svg):
    return [one.text for one in ElementTree.fromstring(svg).iter(f"{SVG}text")]


def stays_within(svg):
    tree = ElementTree.fromstring(svg)
    _, _, width, height = map(float, tree.get("viewBox").split())
    assert width == WIDTH
    for path in tree.iter(f"{SVG}path"):
        for x, y in walked(path.get("d")):
            assert -1 <= x <= width + 1
            assert -1 <= y <= height + 1
    for one in tree.iter(f"{SVG}text"):
        x, y = float(one.get("x")), float(one.get("y"))
        long = (STRONG if one.get("font-weight") else LETTER) * len(one.text)
        start = {"start": x, "middle": x - long / 2, "end": x - long}[one.get("text-anchor")]
        assert start >= -2
        assert start + long <= width + 3
        assert 8 <= y <= height


@every
def test_everything_stays_within_the_picture(svg):
    stays_within(svg)


@every
def test_a_drawing_has_words_and_nothing_that_a_page_forbids(svg):
    tree = ElementTree.fromstring(svg)

    assert tree.get("role") == "img"
    assert len(tree.get("aria-label")) > 30
    for element in tree.iter():
        assert element.tag.removeprefix(SVG) in {"svg", "path", "text", "circle"}
        assert not {"id", "style", "href"} & set(element.attrib)
        assert not any(name.startswith("on") for name in element.attrib)
    assert "nan" not in svg
    assert "inf" not in svg.replace("infants", "")


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize(
    ("name", "outputs"),
    [
        ("brine-level", ["height"]),
        ("clock-error", ["overlap"]),
        ("hardness-units", ["grains_per_gallon", "mg_per_liter", "wording"]),
        ("drop-count", ["reading", "estimate", "lowest", "highest"]),
        ("regeneration-timetable", ["minutes", "drained", "slow_begins", "fast_water"]),
    ],
)
def test_the_words_of_a_drawing_say_the_answer(name, outputs, units):
    values = run(name, example(name, units), units)["values"]
    words = ElementTree.fromstring(picture(name, example(name, units), units)).get("aria-label")

    assert set(DRAWN) == {
        "brine-level",
        "clock-error",
        "hardness-units",
        "drop-count",
        "regeneration-timetable",
    }
    for output in outputs:
        assert values[output]["shown"] in words


def test_whatever_is_typed_a_drawing_stays_within_its_frame():
    for case in parity_cases(4000):
        if case["calculator"] in DRAWN:
            svg = picture(case["calculator"], case["inputs"], case["units"])
            if svg is not None:
                stays_within(svg)


@pytest.mark.parametrize("position", POSITIONS)
def test_every_position_has_a_way_of_its_own(position):
    svg, problems = drawing("water-way", {"position": position})

    assert problems == {}
    others = [drawing("water-way", {"position": other})[0] for other in POSITIONS]
    assert others.count(svg) == 1
    assert position in ElementTree.fromstring(svg).get("aria-label").lower()


@pytest.mark.parametrize("position", POSITIONS)
def test_kinds_of_water_differ_without_color(position):
    tree = ElementTree.fromstring(drawing("water-way", {"position": position})[0])
    dashes = {
        (one.get("class"), one.get("stroke-dasharray"))
        for one in tree.iter(f"{SVG}path")
        if one.get("class") in ("figure-raw", "figure-softened", "figure-brine", "figure-drain")
    }
    assert len(dashes) == len({kind for kind, _ in dashes}) == len({dash for _, dash in dashes})


@pytest.mark.parametrize(
    ("position", "house"),
    [("service", "softened"), ("backwash", "raw"), ("brine draw", "raw"), ("slow rinse", "raw"),
     ("fast rinse", "raw"), ("refill", "softened"), ("one-handle bypass", "raw")],
)  # fmt: skip
def test_a_way_says_what_the_house_gets(position, house):
    assert house in texts(drawing("water-way", {"position": position})[0])


def test_a_brine_tank_is_true_to_scale():
    inputs = {
        "brine": "3 gal",
        "tank_diameter": "20 in",
        "salt_depth": "20 in",
        "water_left": "4 in",
    }
    svg = picture("brine-level", inputs)
    tree = ElementTree.fromstring(svg)
    wall = next(one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-wall")
    surface = next(one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-surface")

    corners = walked(wall.get("d"))
    floor, wide = corners[1][1], corners[2][0] - corners[1][0]
    high = floor - walked(surface.get("d"))[0][1]
    height = run("brine-level", inputs)["values"]["height"]["number"]
    assert high / wide == pytest.approx(height / 20, rel=0.01)


def test_labels_of_a_brine_tank_stand_apart():
    svg = picture(
        "brine-level",
        {
            "brine": "3 gal", "tank_diameter": "18 in", "grid_height": "2 in", "salt_depth": "4 in",
            "float_height": "7 in", "overflow_height": "8 in",
        },
    )  # fmt: skip
    heights = sorted(
        float(one.get("y"))
        for one in ElementTree.fromstring(svg).iter(f"{SVG}text")
        if one.get("text-anchor") == "start" and float(one.get("x")) > 100
    )
    assert len(heights) == 6
    assert all(after - before >= 16 for before, after in zip(heights, heights[1:], strict=False))


def test_a_day_shows_each_hour_and_a_night_past_midnight():
    svg = picture("clock-error", {**example("clock-error"), "set_time": "11:30 pm"})
    tree = ElementTree.fromstring(svg)
    bars = [one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-bar"]
    outlines = [one for one in tree.iter(f"{SVG}path") if one.get("class") == "figure-set"]
    assert len(bars) == len(HOURLY_WATER)
    assert len(outlines) == 3  # before midnight, after it, and in the key


def test_a_bed_at_its_end_lets_a_twentieth_pass_and_a_fresh_one_next_to_nothing():
    assert "5 % of the hardness passes the bed" in texts(drawing("resin-bed", {"used": "100"})[0])
    fresh = texts(drawing("resin-bed", {"used": "0"})[0])
    assert "less than 0.1 % of the hardness passes the bed" in fresh
    assert not any(one.startswith("spent") for one in fresh)


def test_a_faster_flow_has_a_longer_front():
    def front(flow):
        shown = texts(drawing("resin-bed", {"used": "40 %", "flow": flow})[0])
        told = next(one for one in shown if one.startswith("front"))
        return float(re.search(r"[\d.]+", told)[0])

    assert front("1 gpm/ft³") < front("3 gpm/ft³") < front("8 gpm/ft³")


def test_a_drawing_says_what_is_wrong():
    assert drawing("resin-bed", {"used": "120 %"}) == (
        None,
        {"used": "120 % is above the limit of 100 %.".replace(" %", "\u00a0%")},
    )


def test_causes_have_bars_for_the_likeliest_and_one_for_the_others():
    svg = causes_picture(["Complaint: Hard water"], CAUSES, (0.1, 0.05))
    shown = texts(svg)

    assert [one for one in shown if one.startswith("Cause")] == [
        name for name, _, _ in CAUSES[:SHOWN]
    ]
    assert "every other cause" in shown
    assert "10 % → 40 %" in shown


def test_a_drawing_with_a_problem_is_none():
    for name in DRAWN:
        first = CALCULATORS[name].inputs[0].name
        assert picture(name, {**example(name), first: "3 galons"}) is None
