"""Draws that overlap are summed, whatever lies before the time looked at."""

from calculators.simulation.household import pieces_of


def test_a_draw_that_has_ended_is_no_part_of_those_that_overlap():
    """Of three overlapping draws the second ends before the time looked at."""
    draws = [(0, 20, 2.0, 0.0), (1, 5, 1.0, 0.5), (12, 15, 3.0, 1.0)]

    assert pieces_of(draws, 10, 30) == [
        (10, 12, 2.0, 0.0),
        (12, 15, 5.0, 1.0),
        (15, 20, 2.0, 0.0),
    ]
