"""All checks together: in order, all at once, and never an exception whatever is broken."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from build_tools.checks import find_problems
from build_tools.content.problems import summary
from tests.content.small_shop import FILES, problems_of, write


def test_a_good_shop_has_no_problems(tmp_path: Path) -> None:
    assert problems_of(tmp_path, FILES) == []


def test_a_missing_folder_is_a_problem(tmp_path: Path) -> None:
    found = find_problems(tmp_path / "docs_src", tmp_path)
    assert [str(problem) for problem in found] == [
        "docs_src/shop.yaml:1: the file is missing (expected the shop's name, town, units and "
        "prices)"
    ]


def test_problems_of_all_kinds_are_told_together_by_file_and_line(tmp_path: Path) -> None:
    files = dict(FILES)
    for name, old, new in [
        ("shop.yaml", "  - clock-unit", "  - clok-unit"),
        ("procedures/first-look.yaml", "{{ fact.flush_time }}", "{{ fact.flush }}"),
        ("procedures/first-look.yaml", "First look", "First 5 gal"),
        ("faults/salt-bridge.yaml", "seen:", "sean:"),
        ("learn/hardness.md", "setting: 20 gpg", "setting: 19 gpg"),
        ("learn/hardness.md", "units.md", "unit.md"),
    ]:
        files[name] = files[name].replace(old, new, 1)
    docs = write(tmp_path, files)
    lines = summary(find_problems(docs, tmp_path)).split("\n")
    assert [line.partition(" ")[0] for line in lines] == [
        "docs_src/faults/salt-bridge.yaml:1:",
        "docs_src/faults/salt-bridge.yaml:5:",
        "docs_src/learn/hardness.md:14:",
        "docs_src/learn/hardness.md:27:",
        "docs_src/procedures/first-look.yaml:1:",
        "docs_src/procedures/first-look.yaml:12:",
        "docs_src/shop.yaml:25:",
        "7",
    ]
    assert lines[-1] == "7 problems."


def test_the_order_of_the_lines_is_the_same_each_time(tmp_path: Path) -> None:
    files = {**FILES, "shop.yaml": FILES["shop.yaml"].replace("people", "peple")}
    assert problems_of(tmp_path, files) == problems_of(tmp_path, files)


PIECES = [
    "{{", "}}", "{%", "{#", "---\n", "```\n", "```worked-example\n", ":", ": ", "- ", "\t", '"', "'",
    "[", "]", "{", "&a ", "*a", "!b ", "|\n", ">\n", "#", "5 gal", "1e999", "-1", "0", "null", "true",
    "\u2028", "\x85", "\x00", "\r", "é", "½", "../", "<img>", "![](", "{{ fact.bucket }}", "{{ 1/0 }}",
    "{{ unit.x.y }}", "{{ example(1) }}", "{{ work_out(fact) }}", "{{ work_out('small-leak', 3) }}",
    "{{ fact }}", "{{ shop['name'] }}", "{{ fact['a b'] }}", "9" * 400, "<<: ", "? ",
]  # fmt: skip
TEXT_FILES = sorted(name for name in FILES if not name.endswith(".svg"))


@st.composite
def broken_texts(draw: st.DrawFn) -> tuple[str, str]:
    """Draw a file of the small shop and what some careless edits make of it."""
    name = draw(st.sampled_from(TEXT_FILES))
    lines = FILES[name].split("\n")
    for _ in range(draw(st.integers(1, 3))):
        place = draw(st.integers(0, len(lines) - 1))
        edit = draw(st.sampled_from(["delete", "swap", "insert", "replace", "cut", "indent"]))
        at = draw(st.integers(0, len(lines[place])))
        if edit == "delete" and len(lines) > 1:
            del lines[place]
        elif edit == "swap":
            other = draw(st.integers(0, len(lines) - 1))
            lines[place], lines[other] = lines[other], lines[place]
        elif edit == "insert":
            lines[place] = lines[place][:at] + draw(st.sampled_from(PIECES)) + lines[place][at:]
        elif edit == "replace":
            key = lines[place].partition(":")[0]
            lines[place] = f"{key}: {draw(st.sampled_from(PIECES) | st.text(max_size=8))}"
        elif edit == "cut":
            lines[place] = lines[place][:at]
        else:
            lines[place] = "  " + lines[place]
    return name, "\n".join(lines)


@settings(max_examples=200, deadline=None)
@given(broken=broken_texts())
def test_whatever_is_broken_gives_problems_and_never_an_exception(broken: tuple[str, str]) -> None:
    name, text = broken
    with tempfile.TemporaryDirectory() as folder:
        docs = write(Path(folder), FILES)
        (docs / name).write_bytes(text.encode("utf-8", "surrogatepass"))
        found = find_problems(docs, Path(folder))
    lines = text.count("\n") + text.count("\u2028") + text.count("\x85") + text.count("\r") + 1
    for problem in found:
        assert "\n" not in str(problem)
        if problem.file == f"docs_src/{name}":
            assert 1 <= problem.line <= lines


@settings(max_examples=60, deadline=None)
@given(name=st.sampled_from(TEXT_FILES), data=st.binary(max_size=60))
def test_a_file_of_any_bytes_gives_problems_and_never_an_exception(name: str, data: bytes) -> None:
    with tempfile.TemporaryDirectory() as folder:
        docs = write(Path(folder), FILES)
        (docs / name).write_bytes(data)
        for problem in find_problems(docs, Path(folder)):
            assert "\n" not in str(problem)
