"""Two renderings of a text made one, and the elements that come of it."""

from __future__ import annotations

import pytest

from build_tools.content.unit_marks import kept, other, own
from build_tools.pages.units.elements import with_elements
from build_tools.pages.units.pairs import Unlike, paired

PAIRS = {
    "one quantity": ("It takes 18\u00a0gpg.", "It takes 308\u00a0mg/L."),
    "a plain space": ("Tests 18 gpg, soft.", "Tests 308\u00a0mg/L, soft."),
    "a range": ("From 12 to 18\u00a0gpg.", "From 205 to 308\u00a0mg/L."),
    "bold": ("**9\u00a0lb** of salt", "**4.08\u00a0kg** of salt"),
    "a link": (
        "[Loss at 7\u00a0gpm](../a.md) | 3\u00a0psi |",
        "[Loss at 26\u00a0L/min](../a.md) | 0.2\u00a0bar |",
    ),
    "a tag": ('<input value="9 lb">', '<input value="4.08 kg" data-exact="9 lb">'),
    "a picture": ("<svg><text>9</text></svg>", "<svg><text>4</text><path/></svg>"),
    "a cell alone": ("| 9 | x |", "| 4.08 | x |"),
}


@pytest.mark.parametrize("name", PAIRS)
def test_each_side_of_a_pair_is_its_rendering(name: str) -> None:
    first, second = PAIRS[name]
    made = paired(f"# Title\n{first}\nEnd", f"# Title\n{second}\nEnd")
    assert own(made) == f"# Title\n{first}\nEnd"
    assert other(made) == f"# Title\n{second}\nEnd"


def test_what_is_the_same_has_no_mark() -> None:
    assert paired("18 gpg", "18 gpg") == "18 gpg"


def test_texts_that_differ_in_more_than_quantities_are_refused() -> None:
    with pytest.raises(Unlike, match="a warning more"):
        paired("one\ntwo", "one\na warning more\ntwo")


@pytest.mark.parametrize(
    ("first", "second", "html"),
    [
        ("a 9 lb b", "a 4.08 kg b", 'a <span data-other="4.08 kg">9 lb</span> b'),
        (
            '<p title="9 lb">x</p>',
            '<p title="4.08 kg">x</p>',
            '<p title="9 lb" data-in-other="{&quot;title&quot;:&quot;4.08 kg&quot;}">x</p>',
        ),
        (
            "<p>x</p>",
            '<p data-exact="9 lb">x</p>',
            '<p data-in-other="{&quot;data-exact&quot;:&quot;9 lb&quot;}">x</p>',
        ),
        (
            "<title>9 lb - Book</title>",
            "<title>4.08 kg - Book</title>",
            '<title data-other="4.08 kg - Book">9 lb - Book</title>',
        ),
        (
            "<svg>9</svg>",
            "<svg>4</svg>",
            "<svg data-own>9</svg><template data-other-block><svg>4</svg></template>",
        ),
    ],
)
def test_marks_become_elements(first: str, second: str, html: str) -> None:
    assert with_elements(paired(first, second)) == html


def test_what_is_kept_says_so() -> None:
    assert with_elements(f"a {kept('1 in')} pipe") == "a <span data-kept>1 in</span> pipe"
    assert with_elements(f'<p title="{kept("1 in")}">') == '<p title="1 in">'
