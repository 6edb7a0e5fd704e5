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
PIPE, BRINE_LINE, RISER, LEFT_TOP, RIGHT_TOP = 86, 118, 200, 166, 234
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
        ("brine", f"M52 318V{BRINE_LINE}H{LEFT_TOP - 14}", (LEFT_TOP - 8, BRINE_LINE, "right")),
        ("raw", f"M{LEFT_TOP} {PIPE}V106", None),
        ("brine", f"M{LEFT_TOP} 130V156", (LEFT_TOP, 162, "down")),
        *_through_the_bed("brine", "drain"),
        _up_the_riser_to_the_drain(),
    ]


def _slow_rinse():
    return [
        _raw_to_the_house(),
        ("raw", f"M{LEFT_TOP} {PIPE}V156", (LEFT_TOP, 162, "down")),
        *_through_the_bed("raw", "drain"),
        _up_the_riser_to_the_drain(),
    ]


def _refill():
    return [
        ("raw", f"M4 {PIPE}H{LEFT_TOP}V{BRINE_LINE}H52V312", (52, 318, "down")),
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
        ("Service: raw water goes down through the bed,", "softened water up the riser to the house."),
        "softened",
        _service(),
    ),
    "backwash": (
        ("Backwash: raw water goes down the riser, lifts", "the bed and washes dirt out to the drain."),
        "raw",
        _backwash(),
    ),
    "brine draw": (
        ("Brine draw: water driven through the injector", "draws brine along, down through the bed."),
        "raw",
        _brine_draw(),
    ),
    "slow rinse": (
        ("Slow rinse: the brine is gone; the injector's", "water pushes it on through the bed, slowly."),
        "raw",
        _slow_rinse(),
    ),
    "fast rinse": (
        ("Fast rinse: raw water goes fast down through the", "bed, packs it and takes the last salt out."),
        "raw",
        _slow_rinse(),
    ),
    "refill": (
        ("Refill: measured water goes down the brine line", "and dissolves salt for the next time."),
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
    return picture([*parts, _key(used)], _words(lines, house, used), FLOOR + 26 + 18 * 2)


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
        f"M4 {PIPE}H356M{LEFT_TOP} {PIPE}V156M{RISER} {PIPE}V330M{RIGHT_TOP} 156V{BRINE_LINE}"
        f"M{RISER} {BRINE_LINE}H{DRAIN}V324M{LEFT_TOP} {BRINE_LINE}H52V318",
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
        (x + (6 if y % 24 else 0), y) for y in range(248, 348, 12) for x in range(14, 94, 12)
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
    x = LEFT_TOP
    shape = f"M{x - 9} 106h18l-6 12l6 12h-18l6-12z"
    label = text(VALVE[0] - 6, 108, "injector", "end")
    return line("wall" if position in ("brine draw", "slow rinse") else "thin", shape) + label


def _cup():
    return line("wall", f"M{DRAIN - 16} 332V{FLOOR}h32V332")


def _bypass(position):
    return picture([], position, 100)


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
