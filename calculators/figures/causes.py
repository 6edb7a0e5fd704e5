"""The likeliest causes before and after what was found, as bars."""

from calculators.figures.shapes import WIDTH, area, line, picture, place, text

#: So many causes have bars of their own; the others stand together.
SHOWN = 6
ROW, BAR = 50, 10
#: So many letters fit on a line, and so many strong ones, also where a device's letters are wide.
LETTERS = (46, 38)
LEFT, RIGHT = 4, 112


def causes_picture(found, causes, unknown):
    """Return the picture of how likely the causes are.

    found: what was found, the complaint first, a line each. causes: (name, chance before, chance
    after), chances of 1, the likeliest afterwards first. unknown: both chances of a cause that is
    not in the handbook.
    """
    parts, y = [], 18
    for index, words in enumerate(found):
        for part in _lines(words, LETTERS[index == 0]):
            parts.append(text(LEFT, y, part, "start", index == 0))
            y += 17
    rows = [*causes[:SHOWN]]
    others = [sum(one[when] for one in causes[SHOWN:]) for when in (1, 2)]
    rows.append(("every other cause", others[0] + unknown[0], others[1] + unknown[1]))
    y += 6
    parts.append(_key(y))
    y += 12
    for name, before, after in rows:
        parts += [text(LEFT, y + 14, name, "start"), *_bars(y + 20, before, after)]
        y += ROW
    told = "; ".join(
        f"{name} from {_percent(before)} to {_percent(after)}" for name, before, after in rows
    )
    return picture(parts, f"{'. '.join(found)}. How likely each cause is: {told}.", y + 4)


def _bars(y, before, after):
    full = WIDTH - LEFT - RIGHT
    widths = [max(1.0, chance * full) for chance in (before, after)]
    outline = f"M{LEFT} {place(y)}h{place(widths[0])}v{BAR}h-{place(widths[0])}z"
    beside = LEFT + max(widths) + 8
    return [
        line("thin", outline),
        area("strong", LEFT, y + BAR + 2, widths[1], BAR),
        text(place(beside), place(y + BAR + 6), f"{_percent(before)} → {_percent(after)}", "start"),
    ]


def _percent(chance):
    number = 100 * chance
    if 0 < number < 1:
        return "below 1 %"
    return f"{number:.0f} %"


def _lines(words, most):
    """Return words on lines that fit the picture."""
    lines = [""]
    for word in words.split():
        if len(lines[-1]) + len(word) >= most:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines


def _key(y):
    return "".join(
        [
            line("thin", f"M{LEFT} {y - 9}h24v{BAR}h-24z"),
            text(LEFT + 30, y, "before", "start"),
            area("strong", LEFT + 90, y - 9, 24, BAR),
            text(LEFT + 120, y, "after these findings", "start"),
        ]
    )
