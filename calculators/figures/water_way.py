"""The water's way through the valve in each position, and around the softener in bypass.

A plan of our own, not of any valve: what is joined to what, and what kind of water moves where.
"""

from calculators.declare import Drawing, Input
from calculators.figures.shapes import WIDTH, area, arrow, dots, line, picture, text

#: Kinds of water: dashes, and how the key calls them. The dashes tell them apart without color.
DASHES = {"raw": "none", "softened": "12 4", "brine": "2 3", "drain": "10 3 2 3"}
KINDS = {
    "raw": "raw water",
    "softened": "softened water",
    "brine": "brine",
    "drain": "to the drain",
}
#: Where the parts of the plan stand.
PIPE, BRINE_LINE, RISER, LEFT_TOP, RIGHT_TOP, INJECTOR = 86, 118, 200, 180, 234, 156
VALVE = (140, 66, 120, 66)  # x, y, width, height
DRAIN = 310
FLOOR, BED, LIFTED_BED = 352, 226, 178
COLUMNS = (160, 180, 220, 240)


def _service():
    return [
        ("raw", f"M4 {PIPE}H{LEFT_TOP}V156", (LEFT_TOP, 160, "down")),
        *_through_the_bed("raw", "softened"),
        ("softened", f"M{RISER} 330V{PIPE}H352", (356, PIPE, "right")),
    ]


def _raw_to_the_house():
    return ("raw", f"M4 {PIPE}H352", (356, PIPE, "right"))


def _up_the_riser_to_the_drain():
    return ("drain", f"M{RISER} 330V{BRINE_LINE}H{DRAIN}V318", (DRAIN, 324, "down"))


def _backwash():
    return [
        _raw_to_the_house(),
        ("raw", f"M{RISER} {PIPE}V324", (RISER, 330, "down")),
        *(("drain", f"M{x} 318V204", (x, 196, "up")) for x in COLUMNS),
        ("drain", f"M{RIGHT_TOP} 164V{BRINE_LINE}H{DRAIN}V318", (DRAIN, 324, "down")),
    ]


def _brine_draw():
    return [
        _raw_to_the_house(),
        ("brine", f"M52 318V{BRINE_LINE}H{INJECTOR - 12}", (INJECTOR - 4, BRINE_LINE, "right")),
        ("raw", f"M{INJECTOR} {PIPE}V106", None),
        ("brine", f"M{INJECTOR} 130V156", (INJECTOR, 162, "down")),
        *_through_the_bed("brine", "drain"),
        _up_the_riser_to_the_drain(),
    ]


def _slow_rinse():
    return [
        _raw_to_the_house(),
        ("raw", f"M{INJECTOR} {PIPE}V156", (INJECTOR, 162, "down")),
        *_through_the_bed("raw", "drain"),
        _up_the_riser_to_the_drain(),
    ]


def _fast_rinse():
    return [
        _raw_to_the_house(),
        ("raw", f"M{LEFT_TOP} {PIPE}V156", (LEFT_TOP, 162, "down")),
        *_through_the_bed("raw", "drain"),
        _up_the_riser_to_the_drain(),
    ]


def _refill():
    return [
        ("raw", f"M4 {PIPE}H{INJECTOR}V{BRINE_LINE}H52V312", (52, 318, "down")),
    ]


def _through_the_bed(above, below):
    """Return water that moves down through the bed and changes on its way."""
    return [
        part
        for x in COLUMNS
        for part in ((above, f"M{x} 196V258", None), (below, f"M{x} 258V312", (x, 318, "down")))
    ]


#: Position -> two lines on what happens, what the house gets, and the ways of moving water.
POSITIONS = {
    "service": (
        (
            "Service: raw water goes down the bed and",
            "up the riser to the house, softened.",
        ),
        "softened",
        _service(),
    ),
    "backwash": (
        (
            "Backwash: raw water goes down the riser,",
            "lifts the bed and washes out the dirt.",
        ),
        "raw",
        _backwash(),
    ),
    "brine draw": (
        (
            "Brine draw: the injector's jet of water",
            "draws brine along, down through the bed.",
        ),
        "raw",
        _brine_draw(),
    ),
    "slow rinse": (
        (
            "Slow rinse: the injector's water alone",
            "pushes the brine on through the bed.",
        ),
        "raw",
        _slow_rinse(),
    ),
    "fast rinse": (
        (
            "Fast rinse: raw water rushes down, packs",
            "the bed and takes the last salt along.",
        ),
        "raw",
        _fast_rinse(),
    ),
    "refill": (
        (
            "Refill: measured water takes the brine",
            "line and dissolves salt for next time.",
        ),
        "softened",
        _refill(),
    ),
}
ONE_HANDLE, THREE_VALVES = "one-handle bypass", "three-valve bypass"


def _draw(given):
    if given.position in POSITIONS:
        return _position(given.position)
    return _bypass(given.position)


def _position(position):
    lines, house, ways = POSITIONS[position]
    lifted = position == "backwash"
    parts = [text(4, 18 + 18 * index, words, "start", True) for index, words in enumerate(lines)]
    parts += [_resting_pipes(), _resin_tank(LIFTED_BED if lifted else BED), _brine_tank(), _cup()]
    parts.append(_injector(position))
    for kind, path, tip in ways:
        parts.append(line(kind, path, DASHES[kind]))
        parts.append(arrow(kind, *tip) if tip else "")
    parts += [
        text(4, PIPE - 8, "raw water in", "start"),
        text(356, PIPE - 8, "to the house:", "end"),
        text(356, PIPE + 18, house, "end"),
        text(VALVE[0] + VALVE[2] / 2, VALVE[1] - 6, "valve", "middle"),
        text(52, FLOOR + 16, "brine tank", "middle"),
        text(RISER, FLOOR + 16, "resin tank", "middle"),
        text(WIDTH - 4, FLOOR + 16, "drain", "end"),
        text(60, 150, "brine line", "start"),
        text(268, 176, "riser", "start"),
        line("thin", f"M266 172H{RISER + 4}"),
        text(268, 290, "bed", "start"),
        line("thin", "M266 286H250"),
    ]
    used = [kind for kind in KINDS if any(kind == way[0] for way in ways)]
    return picture(
        [*parts, _key(used)], _words(lines, house, used), FLOOR + 44 + 18 * ((len(used) - 1) // 2)
    )


def _words(lines, house, used):
    moving = ", ".join(KINDS[kind] for kind in used)
    return f"{' '.join(lines)} Moving: {moving}. The house gets {KINDS[house]}."


def _key(used):
    parts = []
    for index, kind in enumerate(used):
        x, y = 4 + 186 * (index % 2), FLOOR + 36 + 18 * (index // 2)
        parts.append(line(kind, f"M{x} {y - 4}h40", DASHES[kind]))
        parts.append(text(x + 48, y, KINDS[kind], "start"))
    return "".join(parts)


def _resting_pipes():
    """Return every pipe, thin: what moves is drawn over it."""
    return line(
        "thin",
        f"M4 {PIPE}H356M{INJECTOR} {PIPE}V156M{LEFT_TOP} {PIPE}V156M{RISER} {PIPE}V330M{RIGHT_TOP} 156V{BRINE_LINE}"
        f"M{RISER} {BRINE_LINE}H{DRAIN}V324M{INJECTOR} {BRINE_LINE}H52V318",
    )


def _resin_tank(bed):
    x, y, width, height = VALVE
    beads = [
        (column + (5 if row % 20 else 0), row)
        for row in range(bed, FLOOR - 6, 10 if bed == BED else 14)
        for column in range(146, 256, 11)
        if not RISER - 8 < column + 5 < RISER + 12
    ]
    return "".join(
        [
            line("wall", f"M{x} {y}h{width}v{height}h-{width}z"),
            line("wall", f"M140 {y + height}V{FLOOR - 12}q0 12 12 12H248q12 0 12-12V{y + height}"),
            dots("grain", beads),
            line("wall", f"M{RISER - 14} 330h28v12h-28z"),
        ]
    )


def _brine_tank():
    salt = [
        (x + (6 if y % 24 else 0), y)
        for y in range(248, 348, 12)
        for x in range(14, 94, 12)
        if not 36 < x + 3 < 64
    ]
    return "".join(
        [
            line("wall", f"M6 222V{FLOOR}H98V222"),
            line("thin", f"M40 228V{FLOOR}M64 228V{FLOOR}"),
            area("shade", 6, 300, 92, FLOOR - 300),
            dots("grain", salt),
        ]
    )


def _injector(position):
    x = INJECTOR
    shape = f"M{x - 9} 106h18l-6 12l6 12h-18l6-12z"
    label = text(VALVE[0] - 6, 108, "injector", "end")
    return line("wall" if position in ("brine draw", "slow rinse") else "thin", shape) + label


def _cup():
    return line("wall", f"M{DRAIN - 16} 332V{FLOOR}h32V332")


def _bypass(position):
    one_handle = position == ONE_HANDLE
    if one_handle:
        lines = (
            "One-handle bypass: inlet joins outlet,",
            "and both ways to the softener are shut.",
        )
    else:
        lines = (
            "Three-valve bypass: the one between is",
            "open, the two at the softener are shut.",
        )
    parts = [text(4, 18 + 18 * index, words, "start", True) for index, words in enumerate(lines)]
    parts.append(line("thin", f"M4 {PIPE}H352M140 {PIPE}V196M220 {PIPE}V196"))
    parts.append(line("raw", f"M4 {PIPE}H352", DASHES["raw"]))
    parts.append(arrow("raw", 356, PIPE, "right"))
    if one_handle:
        parts += [
            line("wall", "M112 62H248V136H112ZM180 62V48M164 48h32"),
            line("wall", "M130 124h20M210 124h20"),
            text(256, 130, "shut", "start"),
            text(104, 130, "shut", "end"),
        ]
    else:
        parts += [
            _stop(180, PIPE, "across"),
            _stop(140, 140, "down", shut=True),
            _stop(220, 140, "down", shut=True),
            text(180, PIPE + 26, "open", "middle"),
            text(122, 145, "shut", "end"),
            text(238, 145, "shut", "start"),
        ]
    parts += [
        text(4, PIPE - 10, "raw water in", "start"),
        text(356, PIPE - 10, "to the house:", "end"),
        text(356, PIPE + 20, "raw", "end"),
        line("wall", "M120 196H240V236H120Z"),
        text(180, 221, "valve", "middle"),
        line("wall", "M130 236V338q0 12 12 12H218q12 0 12-12V236"),
        text(180, 280, "softener:", "middle"),
        text(180, 298, "no water", "middle"),
        text(180, 316, "moves", "middle"),
        text(132, 184, "inlet", "end"),
        text(228, 184, "outlet", "start"),
        text(180, 374, "It still holds pressure until you let it off.", "middle"),
    ]
    words = (
        f"{' '.join(lines)} Raw water goes past the softener to the house. No water moves through "
        "the softener, and it still holds pressure until you let it off."
    )
    return picture(parts, words, 386)


def _stop(x, y, along, shut=False):
    """Return a stop valve in a pipe: two triangles, filled where it is shut."""
    shape = "l16-9v18z" if along == "across" else "l-9-16h18z"
    other = "l-16-9v18z" if along == "across" else "l-9 16h18z"
    drawn = line("wall", f"M{x} {y}{shape}M{x} {y}{other}")
    return drawn.replace('fill="none"', 'fill="currentColor"') if shut else drawn


WATER_WAY = Drawing(
    "water-way",
    [
        Input(
            "position",
            "Position of the valve",
            "choice",
            choices=(*POSITIONS, ONE_HANDLE, THREE_VALVES),
        )
    ],
    _draw,
)
