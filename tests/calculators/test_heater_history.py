"""The hot sample read backwards."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators import run
from calculators.heater import draw_for_share, share_left
from calculators.heater_history import draw_for_share_in_series, share_left_in_series

TANK = st.floats(5, 200)
PARTS = st.integers(1, 3)
OUTSIDE = (
    "The hot water lies outside the old and the new hardness, so this is not one change thinned by "
    "new water. Look for a crossover, scale in the heater, or several changes."
)
HALF_A_DAY = {"tank": 50, "before": 20, "cold": 0, "hot": 4, "water": 240}


@given(TANK, st.floats(0, 1000))
def test_one_tank_in_a_row_is_the_stirred_tank(tank, drawn):
    assert share_left_in_series(drawn, tank, 1) == pytest.approx(share_left(drawn, tank), rel=1e-12)


@given(st.floats(1e-6, 1), TANK)
def test_one_tank_in_a_row_needs_the_draw_of_the_stirred_tank(share, tank):
    assert draw_for_share_in_series(share, tank, 1) == draw_for_share(share, tank)


@given(TANK, PARTS, st.floats(0.01, 500), st.floats(0.01, 500))
def test_less_is_left_after_a_larger_draw(tank, parts, drawn, more):
    assume(drawn > 0.01 * tank and more > 0.01 * tank and drawn + more < 10 * tank)

    more_left = share_left_in_series(drawn, tank, parts)
    assert 0 < share_left_in_series(drawn + more, tank, parts) < more_left < 1


@given(st.floats(1e-6, 0.999), TANK, PARTS)
def test_the_draw_for_a_share_leaves_that_share(share, tank, parts):
    drawn = draw_for_share_in_series(share, tank, parts)

    assert share_left_in_series(drawn, tank, parts) == pytest.approx(share, rel=1e-9)


@given(TANK, PARTS)
def test_nothing_was_drawn_while_all_is_left(tank, parts):
    assert draw_for_share_in_series(1.0, tank, parts) == 0


@given(TANK)
def test_more_parts_keep_more_at_half_a_tank_and_less_at_three(tank):
    early = [share_left_in_series(tank / 2, tank, parts) for parts in (1, 2, 3)]
    late = [share_left_in_series(3 * tank, tank, parts) for parts in (1, 2, 3)]

    assert early == sorted(early)
    assert late == sorted(late, reverse=True)


@given(TANK, st.floats(10, 100), st.floats(0.5, 2))
def test_backwards_is_the_washout_undone(answer, tank, before, tanks_drawn):
    drawn = tank * tanks_drawn
    hot = answer("heater-washout", "hot_now", tank=tank, before=before, cold=0, drawn=drawn)
    asked = {"tank": tank, "before": before, "cold": 0, "hot": hot, "water": 240, "drop": 0.05}

    assert answer("heater-history", "drawn", **asked) == pytest.approx(drawn)


@given(st.floats(2, 18), st.floats(0.1, 1.9), PARTS)
def test_the_answer_lies_inside_its_interval(hot, drop, tanks):
    values = run("heater-history", {**HALF_A_DAY, "hot": hot, "drop": drop, "tanks": tanks})[
        "values"
    ]

    for what in ("hours", "drawn"):
        low, middle, high = (values[f"{end}{what}"]["number"] for end in ("least_", "", "most_"))
        assert low <= middle <= high


@given(st.floats(2, 18), st.floats(0.1, 0.9), PARTS)
def test_a_finer_test_narrows_the_interval(answer, hot, drop, tanks):
    def width(one_drop):
        asked = {**HALF_A_DAY, "hot": hot, "drop": one_drop, "tanks": tanks}
        most = answer("heater-history", "most_hours", **asked)
        return most - answer("heater-history", "least_hours", **asked)

    assert width(drop / 2) < width(drop)


@given(st.floats(2, 17), st.floats(0.1, 1))
def test_hotter_hardness_of_a_softened_heater_is_younger(answer, hot, more):
    later = answer("heater-history", "hours", **{**HALF_A_DAY, "hot": hot})

    assert answer("heater-history", "hours", **{**HALF_A_DAY, "hot": hot + more}) < later


@given(st.floats(5, 60), st.floats(1.01, 3))
def test_the_draw_is_proportional_to_the_tank_and_the_time_to_the_use(answer, tank, times):
    one = {**HALF_A_DAY, "tank": tank}
    drawn = answer("heater-history", "drawn", **one)
    hours = answer("heater-history", "hours", **one)

    assert answer("heater-history", "drawn", **{**one, "tank": tank * times}) == pytest.approx(
        times * drawn
    )
    assert answer("heater-history", "hours", **{**one, "water": 240 * times}) == pytest.approx(
        hours / times
    )


def test_soft_turned_hard_mirrors_hard_turned_soft(answer):
    hard = {**HALF_A_DAY, "before": 0, "cold": 20, "hot": 16}

    for name in ("drawn", "least_hours", "most_hours"):
        assert answer("heater-history", name, **hard) == pytest.approx(
            answer("heater-history", name, **HALF_A_DAY)
        )
    assert run("heater-history", hard)["values"]["turned"]["words"] == "harder"
    assert run("heater-history", HALF_A_DAY)["values"]["turned"]["words"] == "softer"


@pytest.mark.parametrize(
    ("inputs", "warning"),
    [
        (
            {"hot": 4},
            "If the heater had not yet taken on the whole of the old hardness, the change is "
            "younger than this.",
        ),
        (
            {"before": 0, "cold": 20, "hot": 4},
            "If the water hardened by and by, as it does when a bed runs out, the first hard "
            "water came earlier than this.",
        ),
        (
            {"hot": 1},
            "The hot water is within one drop of the cold: it has settled, and the test can only "
            "tell the shortest time since the change.",
        ),
    ],
)
def test_what_the_answer_cannot_know(inputs, warning):
    assert run("heater-history", {**HALF_A_DAY, **inputs})["warnings"] == [warning]


@pytest.mark.parametrize("hot", [0, 0.5, 1])
def test_settled_hot_water_tells_only_the_shortest_time(hot):
    values = run("heater-history", {**HALF_A_DAY, "hot": hot})["values"]

    assert set(values) == {"turned", "least_hours", "least_drawn"}
    assert values["least_drawn"]["number"] == pytest.approx(draw_for_share((hot + 1) / 20, 50))


@pytest.mark.parametrize("hot", [20, 20.5, 21])
def test_hot_water_as_before_is_no_more_than_a_drop_old(hot):
    values = run("heater-history", {**HALF_A_DAY, "hot": hot})["values"]

    assert values["drawn"]["number"] == 0
    assert values["least_drawn"]["number"] == 0
    assert values["most_drawn"]["number"] == pytest.approx(draw_for_share(0.95, 50))


@pytest.mark.parametrize(
    ("inputs", "problems"),
    [
        (
            {"hot": 21.1},
            {"hot": OUTSIDE},
        ),
        (
            {"cold": 5, "hot": 3.9},
            {"hot": OUTSIDE},
        ),
        (
            {"before": 3, "cold": 2, "hot": 2.5},
            {
                "before": "The hot water before and the cold water differ by no more than one drop "
                "of the test: the heater keeps no record of such a change."
            },
        ),
    ],
)
def test_what_is_no_simple_dilution_is_refused(inputs, problems):
    assert run("heater-history", {**HALF_A_DAY, **inputs})["problems"] == problems
