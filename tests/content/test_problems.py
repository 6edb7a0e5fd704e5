"""Messages are one line each, in order, with the nearest right spelling."""

from __future__ import annotations

from build_tools.content.problems import Problem, expected, in_order, shortened, summary


def test_a_summary_sorts_by_file_and_line_and_counts() -> None:
    problems = [
        Problem("b.yaml", 2, "late"),
        Problem("a.yaml", 10, "tenth"),
        Problem("a.yaml", 9, "ninth"),
        Problem("a.yaml", 9, "ninth"),
    ]
    assert summary(problems) == ("a.yaml:9: ninth\na.yaml:10: tenth\nb.yaml:2: late\n3 problems.")
    assert in_order(problems)[0].line == 9


def test_one_problem_is_counted_in_the_singular() -> None:
    assert summary([Problem("a.yaml", 1, "wrong")]) == "a.yaml:1: wrong\n1 problem."


def test_the_choices_and_the_nearest_are_named() -> None:
    assert expected("gaol", ["goal", "when"]) == '(expected one of: goal, when; nearest: "goal")'
    assert expected("xyz", ["goal", "when"]) == "(expected one of: goal, when)"
    assert expected("gaol", ["goal"]) == '(expected "goal")'
    assert expected("gaol", []) == "(there are none yet)"


def test_a_long_list_is_cut_to_the_names_most_like_the_word() -> None:
    names = [f"step-{number}" for number in range(20)] + ["drain-flow"]
    assert expected("drain-flo", names) == (
        '(expected one of: drain-flow, step-9, step-8, step-7, …; nearest: "drain-flow")'
    )


def test_long_texts_are_cut_and_kept_on_one_line() -> None:
    assert shortened("one\ntwo") == "one two"
    assert shortened("word " * 40) == "word word word word word word word word word word word word…"
