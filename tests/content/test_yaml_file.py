"""YAML is read with the line of every part, and what does not parse is told in a sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.content.yaml_file import YamlFile, read_text, read_yaml

TEXT = """\
# a comment
title: First
steps:
  - do: >-
      Open the valve and
      wait for water.
    why: |
      Air must leave.
      It takes a while.
  - do: a plain text that
      goes on
tools: [hose, "a long
  bucket"]
"""


def problems(read: YamlFile) -> list[str]:
    return [str(problem) for problem in read.problems]


def test_every_key_and_item_has_its_line() -> None:
    read = read_yaml(TEXT, "a.yaml")
    assert problems(read) == []
    assert read.line() == 2
    assert read.line("steps") == 3
    assert read.line("steps", 0) == read.line("steps", 0, "do") == 4
    assert read.line("steps", 0, "why") == 7
    assert read.line("steps", 1) == 10
    assert read.line("tools", 1) == 12


def test_an_unknown_part_has_the_line_of_what_is_around_it() -> None:
    read = read_yaml(TEXT, "a.yaml")
    assert read.line("steps", 1, "expect", 0) == 10
    assert read.line("goal") == 2


@pytest.mark.parametrize(
    ("path", "word", "line"),
    [
        (("title",), "First", 2),
        (("steps", 0, "do"), "Open", 5),
        (("steps", 0, "do"), "water", 6),
        (("steps", 0, "why"), "Air", 8),
        (("steps", 0, "why"), "takes", 9),
        (("steps", 1, "do"), "plain", 10),
        (("steps", 1, "do"), "goes", 11),
        (("tools", 1), "long", 12),
        (("tools", 1), "bucket", 13),
    ],
)
def test_a_word_of_a_text_has_its_line(path: tuple[str | int, ...], word: str, line: int) -> None:
    read = read_yaml(TEXT, "a.yaml")
    text = read.data
    for part in path:
        text = text[part]
    assert read.line_at(path, text, text.index(word)) == line


def test_lines_count_from_the_place_of_the_text_in_its_file() -> None:
    read = read_yaml("id: x\nstory: >-\n  A\n  B\n", "a.md", first_line=40)
    assert read.line("story") == 41
    assert read.line_at(("story",), "A B", 2) == 43


def test_values_follow_yaml_1_2() -> None:
    read = read_yaml(
        "a: yes\nb: 12:30\nc: true\nd: 1_000\ne: 0.5\nf: 7\ng:\nh: '7'\ni: 010\nj: 2020-01-01\n", ""
    )
    assert read.data == {
        "a": "yes", "b": "12:30", "c": True, "d": "1_000", "e": 0.5, "f": 7, "g": None, "h": "7",
        "i": 10, "j": "2020-01-01",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "1: this is empty (expected lines \"key: value\")"),
        ("# only a comment\n", "1: this is empty (expected lines \"key: value\")"),
        ("- a\n- b\n", "1: this is a list (expected lines \"key: value\")"),
        ("\nwords\n", "2: this is a text without keys (expected lines \"key: value\")"),
        (
            "a: 1\nb: 2\na: 3\n",
            '3: the key "a" is here twice, first on line 1 (expected each key once)',
        ),
        (
            "a: b: c\n",
            "1: the YAML does not parse: mapping values are not allowed in this context (expected "
            'quotes around a text that holds ": ")',
        ),
        (
            "a:\n\t- b\n",
            "2: the YAML does not parse: while scanning for the next token found character that "
            "cannot start any token (expected spaces, not tabs, before a key; quotes around a text "
            "that begins with a sign such as @, ` or %)",
        ),
        (
            "a: 'b\n",
            "2: the YAML does not parse: while scanning a quoted scalar found unexpected end of "
            "stream (expected a closing quote)",
        ),
        (
            "a: [b\n",
            "2: the YAML does not parse: while parsing a flow sequence did not find expected ',' "
            'or \']\' (expected a closing "]", or quotes around a text that begins with "[")',
        ),
        (
            "a: {{ fact.b }}\n",
            '1: a key is not a plain word (expected quotes around a text that begins with "{{" or '
            '"[")',
        ),
        (
            "a: {{ fact.b }} gal\n",
            "1: the YAML does not parse: while parsing a block mapping did not find expected key "
            '(expected a line "key: value", indented like the lines around it; quotes around a '
            'text that begins with "{" or with a quote)',
        ),
        (
            "a: b\n---\nc: d\n",
            "2: the YAML does not parse: expected a single document in the stream but found "
            'another document (expected one document: no line "---" in the middle of the file)',
        ),
        (
            "a: *b\n",
            "1: the YAML does not parse: found undefined alias (expected quotes around a text that "
            'begins with "*")',
        ),
        (
            "a: &x [1]\nb: *x\n",
            '1: a part marked with "&" is used again with "*" (expected each part written out)',
        ),
        (
            "a: !b c\n",
            '1: "!b" is a YAML tag (expected quotes around a text that begins with "!")',
        ),
        (
            "a: b\nc: \x07\n",
            "2: the file holds a character that YAML does not allow (U+0007; expected plain text)",
        ),
    ],
)  # fmt: skip
def test_what_is_wrong_is_one_sentence(text: str, said: str) -> None:
    assert problems(read_yaml(text, "a.yaml")) == [f"a.yaml:{said}"]


def test_deep_nesting_is_a_problem_and_not_a_crash() -> None:
    for text in ("[" * 5000, "a: " + "{b: " * 900 + "}" * 900):
        assert len(problems(read_yaml(text, "a.yaml"))) == 1


def test_a_part_that_contains_itself_is_a_problem() -> None:
    assert problems(read_yaml("a: &x [*x]\n", "a.yaml")) == [
        'a.yaml:1: a part marked with "&" is used again with "*" (expected each part written out)'
    ]


def test_a_file_that_is_not_utf_8_is_a_problem(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes("a: b\nc: 140 °F\n".encode("latin-1"))
    text, found = read_text(path, "a.yaml")
    assert text is None
    assert [str(problem) for problem in found] == [
        "a.yaml:2: the file is not UTF-8 text (expected a file saved with the encoding UTF-8)"
    ]


@pytest.mark.parametrize("end", ["\r\n", "\r"])
def test_a_byte_order_mark_and_other_line_ends_are_no_matter(tmp_path: Path, end: str) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes(f"\ufeffa: b{end}c: d{end}".encode())
    text, found = read_text(path, "a.yaml")
    assert found == []
    assert read_yaml(text or "", "a.yaml").data == {"a": "b", "c": "d"}


@pytest.mark.parametrize(
    ("text", "cut"),
    [
        ("do: Use a #6 bit", '1: YAML leaves out "#6 bit"'),
        ("steps:\n  - Use a bit\n    of #7 size\n  - Stop", '3: YAML leaves out "#7 size"'),
        ("steps: [a bit #8\n  ]", '1: YAML leaves out "#8"'),
        ("do: 'Use a #6 bit'", ""),
        ("do: Use a bit#6", ""),
        ("do: Use a bit # the smallest that fits", ""),
        ("do: >-\n  Use a #6 bit", ""),
    ],
)
def test_a_text_that_yaml_would_cut_is_told(text: str, cut: str) -> None:
    advice = 'expected quotes around a text that holds " #", or a blank after the "#" of a comment'
    told = [f"a.yaml:{cut} as a comment ({advice})"] if cut else []
    assert problems(read_yaml(text, "a.yaml")) == told
