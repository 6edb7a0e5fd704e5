"""What pictures are made of: lines, words, areas and arrows as scalable vector graphics.

Colors come from the page's style by the classes `figure-…`, so that a picture fits light, dark and
paper; without a style it is drawn in the color of the text. Nothing has an id: many pictures may
stand on one page.
"""

import math
from html import escape

from calculators.quantities import snap

WIDTH = 360

#: kind of line -> width and opacity where the page has no style for it.
LINES = {
    "axis": ("1.5", "1"),
    "grid": ("1", "0.2"),
    "curve": ("2.5", "1"),
    "here": ("1.5", "1"),
    "wall": ("2", "1"),
    "thin": ("1", "0.6"),
    "raw": ("4", "1"),
    "softened": ("4", "1"),
    "brine": ("4", "1"),
    "drain": ("4", "1"),
    "water": ("1.5", "0.8"),
    "grain": ("3", "0.45"),
    "surface": ("3", "1"),
    "set": ("1.5", "1"),
    "really": ("1.5", "1"),
    "spent": ("1.2", "0.9"),
}
#: kind of area -> opacity where the page has no style for it.
AREAS = {"bar": "0.45", "strong": "0.8", "shade": "0.12", "water-area": "0.15"}


def place(number):
    """Return a place in the picture to a tenth, the same on every machine."""
    return f"{math.floor(snap(number * 10) + 0.5) / 10:g}"


def line(kind, path, dashes="none"):
    """Return a line of one kind along a path."""
    width, opacity = LINES[kind]
    return (
        f'<path class="figure-{kind}" d="{path}" fill="none" stroke="currentColor" '
        f'stroke-width="{width}" stroke-opacity="{opacity}" stroke-dasharray="{dashes}"/>'
    )


def area(kind, x, y, width, height):
    """Return a rectangle of one kind; without a size, nothing."""
    if width <= 0 or height <= 0:
        return ""
    return (
        f'<path class="figure-{kind}" d="M{place(x)} {place(y)}H{place(x + width)}'
        f'V{place(y + height)}H{place(x)}Z" fill="currentColor" fill-opacity="{AREAS[kind]}"/>'
    )


def dots(kind, places):
    """Return a dot of one kind at each of the places, all in one path."""
    path = "".join(f"M{place(x)} {place(y)}h0.1" for x, y in places)
    width, opacity = LINES[kind]
    return (
        f'<path class="figure-{kind}" d="{path}" fill="none" stroke="currentColor" '
        f'stroke-width="{width}" stroke-opacity="{opacity}" stroke-linecap="round"/>'
        if path
        else ""
    )


def hatched(kind, left, top, right, bottom, gap=6):
    """Return a rectangle full of slanted lines, so many apart; without a size, nothing."""
    width, height = right - left, bottom - top
    if width <= 0 or height <= 0:
        return ""
    path, start = [], gap - height
    while start < width:
        begin, end = max(0.0, start), min(width, start + height)
        path.append(
            f"M{place(left + begin)} {place(bottom - (begin - start))}"
            f"L{place(left + end)} {place(bottom - (end - start))}"
        )
        start += gap
    return line(kind, "".join(path)) if path else ""


#: The tip of an arrow to each side, from its point.
_TIPS = {"down": "l-5-9h10z", "up": "l-5 9h10z", "right": "l-9-5v10z", "left": "l9-5v10z"}


def arrow(kind, x, y, side):
    """Return the tip of an arrow whose point lies at a place."""
    return (
        f'<path class="figure-tip figure-{kind}-tip" d="M{place(x)} {place(y)}{_TIPS[side]}" '
        'fill="currentColor"/>'
    )


def text(x, y, words, anchor, strong=False):
    """Return words in the picture."""
    weight = ' font-weight="700"' if strong else ""
    return f'<text x="{x}" y="{y}" text-anchor="{anchor}"{weight}>{escape(words)}</text>'


def picture(parts, words, height):
    """Return the whole picture; `words` say what it shows to those who cannot see it."""
    return (
        f'<svg class="figure" viewBox="0 0 {WIDTH} {place(height)}" role="img" '
        f'aria-label="{escape(words)}" xmlns="http://www.w3.org/2000/svg" font-size="13" '
        f'fill="currentColor">{"".join(parts)}</svg>'
    )
