"""Reading what people write, and showing numbers the same everywhere."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.quantities import (
    KINDS,
    Quantity,
    QuantityError,
    convert,
    fixed,
    nearest,
    parse,
    plain,
    round_to,
    show,
    significant,
    snap,
    spellings,
    working_number,
)

NUMBERS = {
    "18": 18,
    "1,000": 1000,
    "12,345,678": 12345678,
    "1,234.5": 1234.5,
    "0.5": 0.5,
    ".5": 0.5,
    "5.": 5,
    "1e3": 1000,
    "1.5E-2": 0.015,
    "3/4": 0.75,
    "1 1/2": 1.5,
    "1-1/2": 1.5,
    "½": 0.5,
    "1½": 1.5,
    "2 ¾": 2.75,
    "⅛": 0.125,
    "+7": 7,
    "-3": -3,
    "−3": -3,
    "- 3": -3,
    "-½": -0.5,
    "  18  ": 18,
    "0": 0,
    "0.0": 0,
    "007": 7,
}

ACCEPTED = [
    ("18 gpg", "hardness", 18, "gpg"),
    ("18gpg", "hardness", 18, "gpg"),
    ("18 GPG", "hardness", 18, "gpg"),
    ("18 grains", "hardness", 18, "gpg"),
    ("18 gr.", "hardness", 18, "gpg"),
    ("18 grains per gallon", "hardness", 18, "gpg"),
    ("18 gr / gal", "hardness", 18, "gpg"),
    ("308 ppm", "hardness", 308, "mg/L"),
    ("308 mg/l as CaCO3", "hardness", 308, "mg/L"),
    ("17 °dH", "hardness", 17, "°dH"),
    ("17 dH", "hardness", 17, "°dH"),
    ("30 °fH", "hardness", 30, "°fH"),
    ("3 mmol/L", "hardness", 3, "mmol/L"),
    ("0.3 ppm", "concentration", 0.3, "mg/L"),
    ("300 µg/L", "concentration", 300, "µg/L"),
    ("300 μg/L", "concentration", 300, "µg/L"),
    ("300 ug/l", "concentration", 300, "µg/L"),
    ("300 ppb", "concentration", 300, "µg/L"),
    ("4 gpg per mg/L", "allowance", 4, "gpg per mg/L"),
    ("4 gpg/ppm", "allowance", 4, "gpg per mg/L"),
    ("4 grains per mg/l", "allowance", 4, "gpg per mg/L"),
    ("1½ cu ft", "volume", 1.5, "ft³"),
    ("1.5 ft3", "volume", 1.5, "ft³"),
    ("1.5 ft^3", "volume", 1.5, "ft³"),
    ("1.5 cubic feet", "volume", 1.5, "ft³"),
    ("5-gallon", "volume", 5, "gal"),
    ("5 US gal", "volume", 5, "gal"),
    ("2 quarts", "volume", 2, "qt"),
    ("8 fl. oz", "volume", 8, "fl oz"),
    ("250 ml", "volume", 250, "mL"),
    ("2.4 gpm", "flow", 2.4, "gpm"),
    ("2.4 gallons per minute", "flow", 2.4, "gpm"),
    ("2.4 gal / min", "flow", 2.4, "gpm"),
    ("1 pint a minute", "flow", 1, "pint/min"),
    ("60 gallons a day", "flow", 60, "gal/day"),
    ("60 gpd", "flow", 60, "gal/day"),
    ("60 gal/d", "flow", 60, "gal/day"),
    ("1 gallon an hour", "flow", 1, "gal/h"),
    ("9 lpm", "flow", 9, "L/min"),
    ("90 seconds", "time", 90, "s"),
    ("1/2 hour", "time", 0.5, "h"),
    ("14 d", "time", 14, "days"),
    ("9 pounds", "mass", 9, "lb"),
    ("4 kg", "mass", 4, "kg"),
    ('10"', "length", 10, "in"),
    ("10 inches", "length", 10, "in"),
    ("6 ft", "length", 6, "ft"),
    ("6'", "length", 6, "ft"),
    ("96 sq in", "area", 96, "in²"),
    ("30,000 grains", "capacity", 30000, "grains"),
    ("30 kgr", "capacity", 30, "kilograins"),
    ("6 lb/ft3", "salt dose", 6, "lb/ft³"),
    ("6 lbs per cubic foot", "salt dose", 6, "lb/ft³"),
    ("3 pounds per gallon", "salt strength", 3, "lb/gal"),
    ("4,000 grains per pound", "salt efficiency", 4000, "grains/lb"),
    ("60 psi", "pressure", 60, "psi"),
    ("120 °F", "temperature", 120, "°F"),
    ("120 deg f", "temperature", 120, "°F"),
    ("49 degrees Celsius", "temperature", 49, "°C"),
    ("-5 °C", "temperature", -5, "°C"),
    ("24 volts", "voltage", 24, "V"),
    ("500 mA", "current", 500, "mA"),
    ("35 percent", "share", 35, "%"),
    ("35 per cent", "share", 35, "%"),
    ("60 drips per minute", "drips", 60, "drips/min"),
    ("60 / minute", "drips", 60, "drips/min"),
    ("1 drip/s", "drips", 1, "drips/s"),
    ("1 drip a second", "drips", 1, "drips/s"),
]

REFUSED = [
    (
        "1,5 gpg",
        "hardness",
        "“1,5” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
    ),
    (
        "0,500",
        "hardness",
        "“0,500” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
    ),
    (
        "1.000,5 L",
        "volume",
        "“1.000,5” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
    ),
    (
        "1,000,5 L",
        "volume",
        "“1,000,5” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
    ),
    (
        "1,0000",
        "volume",
        "“1,0000” can be read in two ways. Write a decimal point (1.5) or no comma at all.",
    ),
    ("gpg", "hardness", "“gpg” does not start with a number. Write one, such as 12 or 3/4."),
    ("ten", "volume", "“ten” does not start with a number. Write one, such as 12 or 3/4."),
    ("1.5.2", "volume", "“1.5.2” does not start with a number. Write one, such as 12 or 3/4."),
    ("--3", "volume", "“--3” does not start with a number. Write one, such as 12 or 3/4."),
    ("nan", "volume", "“nan” does not start with a number. Write one, such as 12 or 3/4."),
    ("inf", "volume", "“inf” does not start with a number. Write one, such as 12 or 3/4."),
    ("3/0 gal", "volume", "“3/0 gal” divides by zero. Write a number, such as 3/4."),
    ("1e16 gal", "volume", "“1e16 gal” is a number far too large."),
    ("1e999 gal", "volume", "“1e999 gal” is a number far too large."),
    ("1e-13 gal", "volume", "“1e-13 gal” is a number far too small."),
    ("18", "hardness", "“18” has no unit. Write a hardness, such as 18\u00a0gpg."),
    ("1,200", "mass", "“1,200” has no unit. Write a weight, such as 1,200\u00a0lb."),
    (
        "18 gal",
        "hardness",
        "“18 gal” is a volume. Write a hardness (gpg, mg/L, °dH, °fH, °Clark, mmol/L, meq/L).",
    ),
    ("18 gpg", "mass", "“18 gpg” is a hardness. Write a weight (lb, oz, kg, g)."),
    ("9 lb/ft³", "mass", "“9 lb/ft³” is a salt dose. Write a weight (lb, oz, kg, g)."),
    ("5 min", "share", "“5 min” is a time. Write a share (%)."),
    ("9 lbz", "mass", "“lbz” is no unit for a weight. Use lb, oz, kg, g. The nearest is lb."),
    (
        "3 galons",
        "volume",
        "“galons” is no unit for a volume. "
        "Use gal, qt, pint, cup, fl oz, ft³, L, mL. The nearest is gal.",
    ),
    ("9 zzz", "mass", "“zzz” is no unit for a weight. Use lb, oz, kg, g."),
    ("10 - 20 lb", "mass", "“20 lb” is no unit for a weight. Use lb, oz, kg, g."),
    ("9 lb 3 oz", "mass", "“lb 3 oz” is no unit for a weight. Use lb, oz, kg, g."),
    ("9" * 61, "mass", "“" + "9" * 20 + "…” is too long. Write a number and its unit."),
]


@pytest.mark.parametrize(("text", "number"), NUMBERS.items())
def test_ways_to_write_a_number(text, number):
    assert parse(text, "volume", "gal").number == number


@pytest.mark.parametrize(("text", "kind", "number", "unit"), ACCEPTED)
def test_ways_to_write_a_quantity(text, kind, number, unit):
    quantity = parse(text, kind)

    assert (quantity.number, quantity.unit, quantity.kind) == (number, unit, kind)


@pytest.mark.parametrize(("text", "kind", "sentence"), REFUSED)
def test_refusals_say_what_is_wrong(text, kind, sentence):
    with pytest.raises(QuantityError) as refusal:
        parse(text, kind)

    assert str(refusal.value) == sentence


def test_a_bare_number_is_taken_in_the_unit_asked_for():
    assert parse("18", "hardness", "mg/L").to("mg/L").number == 18


@given(st.text(max_size=70), st.sampled_from(sorted(KINDS)))
def test_any_text_is_a_finite_quantity_or_a_sentence(text, kind):
    try:
        quantity = parse(text, kind, KINDS[kind].units[0])
    except QuantityError as refusal:
        assert str(refusal).endswith(".")
        assert len(str(refusal)) > 20
    else:
        assert abs(quantity.number) <= 1e15
        assert quantity.unit in KINDS[kind].units


@given(
    st.text(alphabet="0123456789.,/-+eE ½¼gpmLladyrinftb³°%'\"", max_size=20),
    st.sampled_from(sorted(KINDS)),
)
def test_any_text_of_digits_and_units_is_a_quantity_or_a_sentence(text, kind):
    try:
        assert parse(text, kind, KINDS[kind].units[0]).unit in KINDS[kind].units
    except QuantityError as refusal:
        assert str(refusal).endswith(".")


@given(st.floats(1e-6, 1e9), st.sampled_from(sorted(KINDS)), st.data())
def test_conversion_there_and_back(number, kind, data):
    unit = data.draw(st.sampled_from(KINDS[kind].units))
    other = data.draw(st.sampled_from(KINDS[kind].units))

    back = convert(convert(number, unit, other, kind), other, unit, kind)
    assert back == pytest.approx(number, rel=1e-12, abs=1e-12)


@given(
    st.integers(1, 10**6),
    st.integers(0, 4),
    st.sampled_from(sorted(set(KINDS) - {"time of day"})),
    st.data(),
)
def test_what_is_shown_can_be_typed_again(count, decimals, kind, data):
    unit = data.draw(st.sampled_from(KINDS[kind].units))
    quantity = parse(f"{plain(count / 10**decimals)} {unit}", kind)

    assert quantity.unit == unit
    assert quantity.number == significant(count / 10**decimals, 6)
    assert parse(quantity.shown("us"), kind).number == quantity.number


@pytest.mark.parametrize(
    ("text", "us", "metric"),
    [
        ("2:00", "2:00 am", "2:00"),
        ("2 am", "2:00 am", "2:00"),
        ("2AM", "2:00 am", "2:00"),
        ("2 a.m.", "2:00 am", "2:00"),
        ("02:05", "2:05 am", "2:05"),
        ("2.30 pm", "2:30 pm", "14:30"),
        ("2:30 pm", "2:30 pm", "14:30"),
        ("14:30", "2:30 pm", "14:30"),
        ("14", "2:00 pm", "14:00"),
        ("6.5", "6:30 am", "6:30"),
        ("0:00", "12:00 am", "0:00"),
        ("12:00 am", "12:00 am", "0:00"),
        ("12 am", "12:00 am", "0:00"),
        ("midnight", "12:00 am", "0:00"),
        ("12:00", "12:00 pm", "12:00"),
        ("12:01 pm", "12:01 pm", "12:01"),
        (" Noon ", "12:00 pm", "12:00"),
        ("13:20", "1:20 pm", "13:20"),
        ("23:59", "11:59 pm", "23:59"),
    ],
)
def test_a_time_of_day_is_read_as_people_write_it(text, us, metric):
    quantity = parse(text, "time of day")

    assert quantity.shown("us").replace("\u00a0", " ") == us
    assert quantity.shown("metric") == metric


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("24:00", "“24:00” is no time of day. Write it like 2:30 pm or 14:30."),
        ("2:60", "“2:60” is no time of day. Write it like 2:30 pm or 14:30."),
        ("14:30 pm", "“14:30 pm” is no time of day. Write it like 2:30 pm or 14:30."),
        ("0:30 pm", "“0:30 pm” is no time of day. Write it like 2:30 pm or 14:30."),
        ("2:5", "“2:5” is no time of day. Write it like 2:30 pm or 14:30."),
        ("-2:00", "“-2:00” is no time of day. Write it like 2:30 pm or 14:30."),
        ("24", "“24” is no time of day. Write it like 2:30 pm or 14:30."),
        ("1400", "“1400” is no time of day. Write it like 2:30 pm or 14:30."),
        ("-1", "“-1” is no time of day. Write it like 2:30 pm or 14:30."),
        ("2 gpg", "“2 gpg” is no time of day. Write it like 2:30 pm or 14:30."),
        (
            "2.30",
            "“2.30” can be read in two ways. Write the minutes after a colon, such as 2:30.",
        ),
        ("night", "“night” does not start with a number. Write one, such as 12 or 3/4."),
    ],
)
def test_a_time_of_day_that_no_clock_shows_is_refused(text, sentence):
    with pytest.raises(QuantityError) as refusal:
        parse(text, "time of day")

    assert str(refusal.value) == sentence


@given(st.integers(0, 1439), st.sampled_from(["us", "metric"]))
def test_a_time_of_day_that_is_shown_can_be_typed_again(minutes, units):
    shown = Quantity(minutes / 60, "12-hour clock", "time of day").shown(units)

    assert parse(shown, "time of day").number * 60 == pytest.approx(minutes)


@pytest.mark.parametrize(
    ("hours", "text"),
    [(24, "12:00\u00a0am"), (25.5, "25:30"), (-0.25, "−0:15"), (-1e-12, "12:00\u00a0am")],
)
def test_what_lies_outside_the_day_is_shown_all_the_same(hours, text):
    assert show(hours, "12-hour clock") == text


@pytest.mark.parametrize(
    ("text", "kind", "us", "metric"),
    [
        ("18 gpg", "hardness", "18 gpg", "308 mg/L"),
        ("60 gal/day", "flow", "60 gal/day", "227 L/day"),
        ("140 °F", "temperature", "140 °F", "60 °C"),
        ("30 min", "time", "30 min", "30 min"),
        ("40 lb", "mass", "40 lb", "18.1 kg"),
        ("5 L", "volume", "5 L", "5 L"),
        ("60 psi", "pressure", "60 psi", "4.14 bar"),
        ("10 in", "length", "10 in", "254 mm"),
        ("6 ft", "length", "6 ft", "1.83 m"),
        ("5 gpm/ft²", "flow per area", "5 gpm/ft²", "204 L/min/m²"),
        ("1 pint/min", "flow", "1 pint/min", "0.473 L/min"),
        ("30 kilograins", "capacity", "30 kilograins", "1,940 g"),
    ],
)
def test_a_quantity_is_shown_in_the_units_of_the_reader(text, kind, us, metric):
    quantity = parse(text, kind)

    assert quantity.shown("us").replace("\u00a0", " ") == us
    assert quantity.shown("metric").replace("\u00a0", " ") == metric


def test_a_number_and_its_unit_stay_on_one_line():
    assert parse("18 gpg", "hardness").shown("us") == "18\u00a0gpg"


@pytest.mark.parametrize(
    ("number", "step", "direction", "expected"),
    [
        (2.5, 1, "nearest", 3),
        (3.5, 1, "nearest", 4),
        (2.4999, 1, "nearest", 2),
        (-2.5, 1, "nearest", -2),
        (-2.6, 1, "nearest", -3),
        (0.25, 0.1, "nearest", 0.3),
        (0.35, 0.1, "nearest", 0.4),
        (1.005, 0.01, "nearest", 1.01),
        (1250, 100, "nearest", 1300),
        (19.0, 1, "up", 19),
        (19.0000001, 1, "up", 20),
        (18.2, 1, "up", 19),
        (-18.2, 1, "up", -18),
        (0.3, 0.1, "up", 0.3),
        (0.1 + 0.2, 0.1, "up", 0.3),
        (1260, 10, "down", 1260),
        (1259.9999, 10, "down", 1250),
        (-1, 10, "down", -10),
        (1.2, 0.1, "down", 1.2),
        (0, 10, "up", 0),
    ],
)
def test_rounding_to_a_step(number, step, direction, expected):
    assert round_to(number, step, direction) == expected


@pytest.mark.parametrize(
    ("number", "digits", "direction", "expected"),
    [
        (0, 3, "nearest", 0),
        (1234, 2, "nearest", 1200),
        (1250, 2, "nearest", 1300),
        (0.0012345, 3, "nearest", 0.00123),
        (0.0012355, 4, "nearest", 0.001236),
        (99.96, 3, "nearest", 100),
        (-1234, 2, "nearest", -1200),
        (3423.6, 4, "down", 3423),
        (3423.6, 4, "up", 3424),
        (3424, 4, "up", 3424),
        (1e15, 3, "nearest", 1e15),
        (1e-12, 3, "nearest", 1e-12),
    ],
)
def test_rounding_to_significant_digits(number, digits, direction, expected):
    assert significant(number, digits, direction) == expected


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (18.0, "18"),
        (0.5, "0.5"),
        (1363.6, "1,363.6"),
        (0.0023, "0.0023"),
        (1234567.0, "1,234,570"),
        (-2.5, "−2.5"),
        (0.0, "0"),
        (-0.0, "0"),
        (0.1 + 0.2, "0.3"),
        (2 / 3, "0.666667"),
        (1e-11, "0"),
    ],
)
def test_plain_numbers(number, text):
    assert plain(number) == text


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (1363.6363, "1,364"),
        (999.95, "1,000"),
        (12.3456, "12.35"),
        (0.0123456, "0.01235"),
        (-1000.5, "−1,000"),
    ],
)
def test_numbers_in_a_working(number, text):
    assert working_number(number) == text


@pytest.mark.parametrize(
    ("number", "step", "text"),
    [
        (18, 0.1, "18.0"),
        (2.4, 0.01, "2.40"),
        (20000, 100, "20,000"),
        (0, 0.1, "0.0"),
        (-0.0, 0.1, "0.0"),
        (-1.5, 0.1, "−1.5"),
        (0.5, 0.5, "0.5"),
        (1.25, 0.125, "1.250"),
    ],
)
def test_numbers_with_the_decimals_of_their_step(number, step, text):
    assert fixed(number, step) == text


@given(st.integers(-(10**6), 10**6), st.sampled_from([0.01, 0.1, 0.5, 1, 10, 100]))
def test_the_last_digit_of_arithmetic_never_shows(halves, step):
    """Round numbers and the halves between them, where a last digit would tip the rounding."""
    number = halves * step / 2
    for off in (number * (1 - 1e-15), number * (1 + 1e-15)):
        assert plain(off) == plain(number)
        assert working_number(off) == working_number(number)
        for direction in ("nearest", "up", "down"):
            assert round_to(off, step, direction) == round_to(number, step, direction)
            assert significant(off, 3, direction) == significant(number, 3, direction)
        assert fixed(round_to(off, step), step) == fixed(round_to(number, step), step)


@given(st.floats(-1e9, 1e9), st.sampled_from([0.01, 0.1, 1, 10, 17.1, 100]))
def test_rounding_moves_less_than_a_step_and_in_its_direction(number, step):
    slack = 1e-8 * step + 1e-9 * abs(number)

    assert abs(round_to(number, step) - number) <= step / 2 + slack
    assert -slack <= round_to(number, step, "up") - number < step + slack
    assert -slack <= number - round_to(number, step, "down") < step + slack


@given(st.floats(-1e12, 1e12))
def test_snapping_twice_is_snapping_once(number):
    assert snap(snap(number)) == snap(number)
    assert snap(number) == pytest.approx(number, rel=1e-11)


def test_the_nearest_spelling():
    assert nearest("hardnes-setting", ["hardness-setting", "small-leak"]) == "hardness-setting"
    assert nearest("zzz", ["hardness-setting", "small-leak"]) is None


def test_spellings_tell_every_kind_they_may_mean():
    found = spellings()

    assert found["grains"] == {"hardness", "capacity"}
    assert found["mg/l"] == {"hardness", "concentration"}
    assert found["lb/ft3"] == {"salt dose"}
