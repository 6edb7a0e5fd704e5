"""The units of the trade: every kind of quantity, its units, and how people spell them.

One table a kind. A factor says how many base units one unit is worth; the base unit of a kind is
the one whose factor is 1. The second entry lists other spellings, parted by commas. Spellings are
compared in lower case, with "per" and "a" read as "/".

Exact by definition: grain 64.79891 mg, US gallon 3.785411784 L, imperial gallon 4.54609 L, pound
0.45359237 kg, inch 2.54 cm. Molar masses (g/mol), from the standard atomic weights of the
International Union of Pure and Applied Chemistry: CaCO3 100.0869, CaO 56.0774.
"""

GRAIN = 64.79891  # mg
GALLON = 3.785411784  # L
IMPERIAL_GALLON = 4.54609  # L
POUND = 0.45359237  # kg
INCH = 2.54  # cm
CUBIC_FOOT = (12 * INCH) ** 3 / 1000  # L
CALCIUM_CARBONATE = 100.0869  # g/mol
CALCIUM_OXIDE = 56.0774  # g/mol
GRAIN_PER_GALLON = GRAIN / GALLON  # mg/L

VOLUME = {
    "gal": (GALLON, "gallon, gallons, gals, us gal, us gallon, us gallons"),
    "qt": (GALLON / 4, "quart, quarts, qts"),
    "pint": (GALLON / 8, "pints, pt, pts"),
    "cup": (GALLON / 16, "cups"),
    "fl oz": (GALLON / 128, "floz, fluid ounce, fluid ounces, fl. oz"),
    "ft³": (CUBIC_FOOT, "cu ft, cubic foot, cubic feet, cubic ft"),
    "L": (1.0, "liter, liters, litre, litres"),
    "mL": (0.001, "milliliter, milliliters, millilitre, millilitres, cc, cm3"),
    "m³": (1000.0, "cubic meter, cubic meters, cubic metre, cubic metres"),
}

TIME = {
    "s": (1 / 60, "sec, secs, second, seconds"),
    "min": (1.0, "mins, minute, minutes"),
    "h": (60.0, "hr, hrs, hour, hours"),
    "days": (1440.0, "day, d"),
}

MASS = {
    "lb": (POUND, "lbs, pound, pounds"),
    "oz": (POUND / 16, "ounce, ounces"),
    "kg": (1.0, "kilogram, kilograms, kilo, kilos"),
    "g": (0.001, "gram, grams"),
}

#: What is dissolved in a glass: apart from MASS, so that nobody weighs salt in milligrams.
SMALL_MASS = {"mg": (1.0, "milligram, milligrams")}

LENGTH = {
    "in": (INCH, 'inch, inches, ", ″'),
    "ft": (12 * INCH, "foot, feet, ', ′"),
    "mm": (0.1, "millimeter, millimeters, millimetre, millimetres"),
    "cm": (1.0, "centimeter, centimeters, centimetre, centimetres"),
    "m": (100.0, "meter, meters, metre, metres"),
}

AREA = {
    "in²": (INCH**2, "sq in, square inch, square inches"),
    "ft²": (144 * INCH**2, "sq ft, square foot, square feet"),
    "cm²": (1.0, "sq cm, square centimeter, square centimeters, square centimetres"),
    "m²": (10000.0, "sq m, square meter, square meters, square metres"),
}

HARDNESS = {
    "gpg": (GRAIN_PER_GALLON, "grain, grains, gr, grains/gallon, grains/gal, gr/gal, grain/gallon"),
    "mg/L": (1.0, "ppm, mg/l as caco3, mg/l caco3, ppm as caco3, ppm caco3"),
    "°dH": (10 * CALCIUM_CARBONATE / CALCIUM_OXIDE, "dh, °d, german degrees, german degree"),
    "°fH": (10.0, "fh, °f hardness, french degrees, french degree"),
    "°Clark": (GRAIN / IMPERIAL_GALLON, "clark, °e, english degrees, clark degrees"),
    "mmol/L": (CALCIUM_CARBONATE, "mmol, millimoles/liter, millimoles/litre"),
    "meq/L": (CALCIUM_CARBONATE / 2, "meq, milliequivalents/liter, milliequivalents/litre"),
}

CONCENTRATION = {
    "mg/L": (1.0, "ppm, milligrams/liter, milligrams/litre"),
    "µg/L": (0.001, "ug/l, μg/l, ppb, micrograms/liter, micrograms/litre"),
}

CAPACITY = {
    "grains": (GRAIN / 1000, "grain, gr"),
    "kilograins": (GRAIN, "kilograin, kgr"),
    "g": (1.0, "gram, grams, g caco3, g as caco3"),
    "eq": (CALCIUM_CARBONATE / 2, "equivalent, equivalents"),
}


def _spellings(table, name):
    return [name, *(word.strip() for word in table[name][1].split(","))]


def _ratios(named, above, below):
    """Return the table of some ratios, each with every spelling of its two sides.

    `named` maps a ratio such as "gal/h" to its own short spellings, such as "gph".
    """
    made = {}
    for ratio, short in named.items():
        top, bottom = ratio.rsplit("/", 1)
        bottom = {"day": "days", "kilograin": "kilograins"}.get(bottom, bottom)
        spelled = [
            f"{one}/{other}"
            for one in _spellings(above, top)
            for other in _spellings(below, bottom)
        ]
        made[ratio] = (above[top][0] / below[bottom][0], ", ".join([short, *spelled]))
    return made


_FLOW = _ratios(
    {
        "gal/min": "gpm",
        "gal/h": "gph",
        "gal/day": "gpd",
        "qt/min": "",
        "pint/min": "",
        "cup/min": "",
        "fl oz/min": "",
        "ft³/min": "",
        "L/min": "lpm",
        "L/s": "",
        "L/h": "lph",
        "L/day": "lpd",
        "mL/min": "",
        "m³/h": "",
        "m³/day": "",
    },
    VOLUME,
    TIME,
)
FLOW = {"gpm": _FLOW.pop("gal/min"), **_FLOW}
LOAD = _ratios({"grains/day": "", "g/day": ""}, CAPACITY, TIME)
SALT_DOSE = _ratios({"lb/ft³": "", "kg/L": "", "g/L": "", "kg/m³": ""}, MASS, VOLUME)
POWDER_DOSE = _ratios({"oz/ft³": "", "g/L": ""}, MASS, VOLUME)
LIQUID_DOSE = _ratios({"fl oz/ft³": "", "mL/L": ""}, VOLUME, VOLUME)
SALT_ROOM = _ratios({"gal/lb": "", "L/kg": ""}, VOLUME, MASS)
SALT_STRENGTH = _ratios({"lb/gal": "", "kg/L": "", "g/L": ""}, MASS, VOLUME)
RESIN_CAPACITY = _ratios(
    {"grains/ft³": "", "kilograins/ft³": "", "g/L": "", "eq/L": ""}, CAPACITY, VOLUME
)
SALT_EFFICIENCY = _ratios({"grains/lb": "", "g/kg": ""}, CAPACITY, MASS)
WATER_FOR_CAPACITY = _ratios(
    {"gal/kilograin": "gal/1000 grains", "mL/g": "", "L/g": ""}, VOLUME, CAPACITY
)
FLOW_PER_AREA = {
    "gpm/ft²": (FLOW["gpm"][0] / (AREA["ft²"][0] / 10000), "gpm/sq ft, gpm/square foot"),
    "L/min/m²": (1.0, "l/min/sq m"),
}
FLOW_PER_VOLUME = _ratios({"gpm/ft³": "", "L/min/L": ""}, FLOW, VOLUME)
INTAKE = _ratios({"mg/day": ""}, SMALL_MASS, TIME)
ALLOWANCE = {
    "gpg per mg/L": (GRAIN_PER_GALLON, "gpg/ppm, grains/mg/l, grains/ppm"),
    "mg/L per mg/L": (1.0, "ppm/ppm, mg/mg"),
}
PRESSURE = {
    "psi": (6.894757293168361, "lb/in2, pounds/square inch"),
    "bar": (100.0, "bars"),
    "kPa": (1.0, "kilopascal, kilopascals"),
}
PRESSURE_GRADIENT = _ratios({"psi/ft": "", "bar/m": "", "kPa/m": ""}, PRESSURE, LENGTH)
#: The flow at which a valve costs one unit of pressure; the pressure goes with its square.
FLOW_COEFFICIENT = {
    "gpm/√psi": (FLOW["gpm"][0] / PRESSURE["psi"][0] ** 0.5, "cv, gpm/sqrt psi"),
    "L/min/√bar": (1 / PRESSURE["bar"][0] ** 0.5, "l/min/sqrt bar"),
    "m³/h/√bar": (FLOW["m³/h"][0] / PRESSURE["bar"][0] ** 0.5, "kv, m3/h/sqrt bar"),
}
VOLTAGE = {"V": (1.0, "volt, volts")}
CURRENT = {"A": (1.0, "amp, amps, ampere, amperes"), "mA": (0.001, "milliamp, milliamps")}
WIRE_RESISTANCE = {
    "Ω/ft": (100 / LENGTH["ft"][0], "ohm/ft, ohms/ft, ohms/foot"),
    "Ω/m": (1.0, "ohm/m, ohms/m, ohms/meter, ohms/metre"),
}
SHARE = {"%": (1.0, "percent, per cent, pct")}
DRIPS = {
    "drips/min": (1.0, "drip/min, drips/minute, drops/min, drops/minute, drop/min, /min, /minute"),
    "drips/s": (
        60.0,
        "drip/s, drips/second, drip/second, drop/s, drops/s, drops/second, drop/second, "
        "/s, /second",
    ),
}
#: Degrees Celsius are the base; Fahrenheit is the one unit with an offset (see `quantities`).
TEMPERATURE = {
    "°F": (5 / 9, "f, deg f, degrees f, degrees fahrenheit, fahrenheit"),
    "°C": (1.0, "c, deg c, degrees c, degrees celsius, celsius"),
}

#: Hours since midnight, which `quantities` reads and shows as a clock has them.
TIME_OF_DAY = {"12-hour clock": (1.0, ""), "24-hour clock": (1.0, "")}

#: kind -> (how a sentence calls it, its table)
TABLES = {
    "hardness": ("a hardness", HARDNESS),
    "concentration": ("a concentration", CONCENTRATION),
    "allowance": ("an allowance for iron or manganese", ALLOWANCE),
    "volume": ("a volume", VOLUME),
    "flow": ("a flow", FLOW),
    "flow per area": ("a flow for each area of bed", FLOW_PER_AREA),
    "flow per volume": ("a flow for each volume of resin", FLOW_PER_VOLUME),
    "time": ("a time", TIME),
    "time of day": ("a time of day", TIME_OF_DAY),
    "mass": ("a weight", MASS),
    "small mass": ("a small weight", SMALL_MASS),
    "length": ("a length", LENGTH),
    "area": ("an area", AREA),
    "capacity": ("a softening capacity", CAPACITY),
    "resin capacity": ("a capacity for each volume of resin", RESIN_CAPACITY),
    "load": ("a hardness load", LOAD),
    "intake": ("an amount for each day", INTAKE),
    "salt dose": ("a salt dose", SALT_DOSE),
    "powder dose": ("a weight for each volume of resin", POWDER_DOSE),
    "liquid dose": ("a volume for each volume of resin", LIQUID_DOSE),
    "salt strength": ("an amount of salt in water", SALT_STRENGTH),
    "room of salt": ("a volume for each weight of salt", SALT_ROOM),
    "salt efficiency": ("a salt efficiency", SALT_EFFICIENCY),
    "water for capacity": ("an amount of water for each amount of capacity", WATER_FOR_CAPACITY),
    "pressure": ("a pressure", PRESSURE),
    "pressure gradient": ("a pressure for each length", PRESSURE_GRADIENT),
    "flow coefficient": ("a flow coefficient", FLOW_COEFFICIENT),
    "temperature": ("a temperature", TEMPERATURE),
    "voltage": ("a voltage", VOLTAGE),
    "current": ("a current", CURRENT),
    "wire resistance": ("a resistance for each length of wire", WIRE_RESISTANCE),
    "share": ("a share", SHARE),
    "drips": ("a drip rate", DRIPS),
}

#: The unit a reader in metric units sees in place of each US unit.
METRIC = {
    "gpg": "mg/L",
    "gpg per mg/L": "mg/L per mg/L",
    "gal": "L",
    "qt": "L",
    "pint": "L",
    "cup": "mL",
    "fl oz": "mL",
    "ft³": "L",
    "gpm": "L/min",
    "gal/h": "L/h",
    "gal/day": "L/day",
    "qt/min": "L/min",
    "pint/min": "L/min",
    "cup/min": "mL/min",
    "fl oz/min": "mL/min",
    "ft³/min": "L/min",
    "gpm/ft²": "L/min/m²",
    "gpm/ft³": "L/min/L",
    "lb": "kg",
    "oz": "g",
    "in": "mm",
    "ft": "m",
    "in²": "cm²",
    "ft²": "m²",
    "grains": "g",
    "kilograins": "g",
    "grains/day": "g/day",
    "grains/ft³": "g/L",
    "kilograins/ft³": "g/L",
    "lb/ft³": "g/L",
    "oz/ft³": "g/L",
    "fl oz/ft³": "mL/L",
    "lb/gal": "kg/L",
    "gal/lb": "L/kg",
    "grains/lb": "g/kg",
    "gal/kilograin": "mL/g",
    "psi": "bar",
    "psi/ft": "bar/m",
    "gpm/√psi": "L/min/√bar",
    "°F": "°C",
    "Ω/ft": "Ω/m",
    "12-hour clock": "24-hour clock",
}
