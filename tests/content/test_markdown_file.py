"""Markdown is read with the place of all prose, links, images, headings and blocks."""

from __future__ import annotations

from build_tools.content.markdown_file import read_markdown, split_front

PAGE = """\
# Salt & brine {{ fact.x }}

Pour **5** gal
and see [the `long`
link](../a/b.md#c) or ![a
drawing](../images/d.svg) of `7 gal`
here.

!!! note "Mind the tank"

    Indented prose of {{ fact.y }}.

## Brine `tank`
## Brine tank
## Named {#own-name}

| a | b |
|---|---|
| [cell](c.md) | 8 ft |

<p id="raw">Raw 9 ft <img src="e.png"></p>

- item

    ```worked-example
    id: x
      given: {{ 1 }}
    ```
"""


def line(offset: int) -> int:
    return PAGE.count("\n", 0, offset) + 1


def test_prose_has_no_code_and_no_expressions_and_knows_its_lines() -> None:
    found = read_markdown(PAGE)
    text = "\n".join(piece.text for piece in found.pieces)
    for word in ("Pour 5 gal", "a\ndrawing", "Mind the tank", "Indented prose of", "8 ft", "Raw 9"):
        assert word in text
    for word in ("fact", "7 gal", "../", "given", "own-name.md"):
        assert word not in text
    places = {
        word: line(piece.offset(piece.text.index(word)))
        for piece in found.pieces
        for word in ("5", "here", "Indented", "8 ft", "Raw")
        if word in piece.text
    }
    assert places == {"5": 3, "here": 7, "Indented": 11, "8 ft": 19, "Raw": 21}


def test_links_and_images_know_their_lines() -> None:
    found = read_markdown(PAGE)
    assert [(link.target, line(link.offset)) for link in found.links] == [
        ("../a/b.md#c", 5),
        ("c.md", 19),
    ]
    assert [(image.target, image.words, line(image.offset)) for image in found.images] == [
        ("../images/d.svg", "a\ndrawing", 6),
        ("e.png", "", 21),
    ]


def test_anchors_are_those_of_the_page_builder() -> None:
    assert read_markdown(PAGE).anchors == {
        "salt-brine", "brine-tank", "brine-tank_1", "own-name", "raw",
    }  # fmt: skip


def test_a_fenced_block_keeps_its_content_and_place() -> None:
    (fence,) = read_markdown(PAGE).fences
    assert (fence.word, fence.content) == ("worked-example", "id: x\n  given: {{ 1 }}\n")
    assert line(fence.offset) == 25
    assert fence.content_line + 1 == 26
    assert PAGE[fence.offset : fence.end].strip().endswith("```")


def test_a_block_that_is_never_closed_ends_with_the_page() -> None:
    (fence,) = read_markdown("a\n\n```worked-example\nid: x\n").fences
    assert fence.content == "id: x\n"


def test_front_matter_is_split_off_with_its_place() -> None:
    assert split_front("---\na: b\n---\n# T\n", "a.md") == ("a: b\n", 13, [])
    assert split_front("---\n---\n# T\n", "a.md") == ("", 8, [])
    assert split_front("# T\n---\n", "a.md") == (None, 0, [])


def test_front_matter_that_is_not_closed_is_a_problem() -> None:
    front, offset, problems = split_front("---\na: b\n# T\n", "a.md")
    assert (front, offset) == (None, 13)
    assert [str(problem) for problem in problems] == [
        'a.md:1: the front matter is not closed (expected a second line "---")'
    ]
