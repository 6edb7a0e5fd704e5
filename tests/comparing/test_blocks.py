"""A page as the blocks that readers see without scripts."""

from __future__ import annotations

from typing import Any

from build_tools.comparing.block import quantity, words_before
from build_tools.comparing.blocks import blocks, title_of

PAGE = """\
# Salt

Aim.
{: .aim #aim }

## Steps {#steps}

<div class="steps" markdown>

1.  <span id="step-1"></span>Add 9 lb of salt.

    Why: it takes 3/4 of an hour.

1.  <span id="step-2"></span>Wait.

</div>

!!! warning "Heavy bags"

    A bag has 40 lb.

| Salt | Capacity |
| :-- | :-- |
| 6 lb | 20,000 grains |

<figure><svg aria-label="From 3 lb to 15 lb" viewBox="0 0 9 9"><text>7</text></svg></figure>
<section hidden><p>Not seen: 5.</p><input type="text" value="5"></section>
<label>Salt (lb)</label><input type="text" value="9 lb">
<select><option>1</option><option selected>2 tanks</option></select>
<dl><div><dt>Water</dt><dd><strong>3.0 gal</strong></dd></div></dl>
<script>let one = 1;</script>
"""


def seen() -> list[tuple[str, tuple[str, ...], str]]:
    """Return the page's blocks in short."""
    return [(one.kind, one.place, one.text) for one in blocks(PAGE)]


def test_a_page_is_read_as_it_is_seen() -> None:
    assert seen() == [
        ("heading", (), "Salt"),
        ("paragraph", (), "Aim."),
        ("heading", (), "Steps"),
        ("step", ("Steps", "step 1"), "Add 9 lb of salt."),
        ("step", ("Steps", "step 1"), "Why: it takes 3/4 of an hour."),
        ("step", ("Steps", "step 2"), "Wait."),
        ("paragraph", ("Steps",), "Heavy bags"),
        ("paragraph", ("Steps",), "A bag has 40 lb."),
        ("head of a table", ("Steps",), "Salt | Capacity"),
        ("row", ("Steps", "6 lb"), "6 lb | 20,000 grains"),
        ("picture", ("Steps", "picture"), "From 3 lb to 15 lb"),
        ("label", ("Steps",), "Salt (lb)"),
        ("default", ("Steps", "Salt (lb)"), "9 lb"),
        ("choice", ("Steps",), "2 tanks"),
        ("label", ("Steps",), "Water"),
        ("answer", ("Steps", "Water"), "3.0 gal"),
    ]
    assert title_of(blocks(PAGE)) == "Salt"


def test_a_number_has_its_unit_its_column_and_the_words_before_it() -> None:
    found = {one.kind: one for one in blocks(PAGE)}
    row = found["row"]
    assert [quantity(row, one) for one in row.numbers] == [("6", "lb"), ("20,000", "grains")]
    assert [row.column_of(one) for one in row.numbers] == ["", "Capacity"]
    step = next(one for one in blocks(PAGE) if one.kind == "step")
    assert words_before(step, step.numbers[0]) == "Add"
    assert step.words == "Add # lb of salt."
    assert (step.anchor, row.anchor) == ("step-1", "steps")


def test_a_form_of_the_handbook(before: dict[str, Any]) -> None:
    found = blocks(before["pages"]["work-out/hardness-setting.md"]["text"])
    default = next(one for one in found if one.kind == "default")
    assert default.above == ("form",)
    assert default.anchor == "hardness-setting"
    assert default.label == "Hardness of the raw water (mg/L)"
    answer = next(one for one in found if one.kind == "answer")
    assert answer.label == "Enter in the control"
    assert answer.numbers and all(one.mark for one in answer.numbers)
