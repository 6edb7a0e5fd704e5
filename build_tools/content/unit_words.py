"""The words behind the signs of units: "gal/min" is gallons per minute."""

from __future__ import annotations

#: Sign -> its singular and its plural.
WORDS = {
    "gal": ("gallon", "gallons"),
    "qt": ("quart", "quarts"),
    "pint": ("pint", "pints"),
    "cup": ("cup", "cups"),
    "fl oz": ("fluid ounce", "fluid ounces"),
    "ft³": ("cubic foot", "cubic feet"),
    "L": ("liter", "liters"),
    "mL": ("milliliter", "milliliters"),
    "m³": ("cubic meter", "cubic meters"),
    "s": ("second", "seconds"),
    "min": ("minute", "minutes"),
    "h": ("hour", "hours"),
    "day": ("day", "days"),
    "days": ("day", "days"),
    "lb": ("pound", "pounds"),
    "oz": ("ounce", "ounces"),
    "kg": ("kilogram", "kilograms"),
    "g": ("gram", "grams"),
    "mg": ("milligram", "milligrams"),
    "µg": ("microgram", "micrograms"),
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "mm": ("millimeter", "millimeters"),
    "cm": ("centimeter", "centimeters"),
    "m": ("meter", "meters"),
    "in²": ("square inch", "square inches"),
    "ft²": ("square foot", "square feet"),
    "cm²": ("square centimeter", "square centimeters"),
    "m²": ("square meter", "square meters"),
    "gpg": ("grain per gallon", "grains per gallon"),
    "°dH": ("German degree", "German degrees"),
    "°fH": ("French degree", "French degrees"),
    "°Clark": ("Clark degree", "Clark degrees"),
    "mmol": ("millimole", "millimoles"),
    "meq": ("milliequivalent", "milliequivalents"),
    "grains": ("grain", "grains"),
    "kilograin": ("kilograin", "kilograins"),
    "kilograins": ("kilograin", "kilograins"),
    "eq": ("equivalent", "equivalents"),
    "gpm": ("gallon per minute", "gallons per minute"),
    "psi": ("pound per square inch", "pounds per square inch"),
    "√psi": ("square root of a psi", "square root of the psi"),
    "bar": ("bar", "bar"),
    "√bar": ("square root of a bar", "square root of the bar"),
    "kPa": ("kilopascal", "kilopascals"),
    "V": ("volt", "volts"),
    "A": ("ampere", "amperes"),
    "mA": ("milliampere", "milliamperes"),
    "Ω": ("ohm", "ohms"),
    "%": ("percent", "percent"),
    "drips": ("drip", "drips"),
    "°F": ("degree Fahrenheit", "degrees Fahrenheit"),
    "°C": ("degree Celsius", "degrees Celsius"),
    "12-hour clock": ("12-hour clock", "12-hour clock"),
    "24-hour clock": ("24-hour clock", "24-hour clock"),
}


def spelled_out(unit: str) -> str:
    """Return the words of a unit, in the plural."""
    return _words(unit, plural=True)


def _words(unit: str, *, plural: bool) -> str:
    if unit in WORDS:
        return WORDS[unit][plural]
    joint = " per " if " per " in unit else "/"
    above, _, below = unit.rpartition(joint)
    between = " for each " if joint == " per " else " per "
    return _words(above, plural=plural) + between + _words(below, plural=False)
